import { useRef, useState } from 'react'
import { PRODUCTS } from '../../../chemicals/index.ts'
import {
  Button,
  ChoiceField,
  DateTimeField,
  finishTyping,
  QuantityField,
  SaveButton,
  useFormFocus,
} from '../../fields/index.ts'
import { amountFromG, gFromAmount, measureOf } from '../opening/amounts.ts'
import { useDoubt } from '../opening/useDoubt.ts'
import { useProducts } from '../opening/useProducts.ts'
import styles from './logbook.module.css'

export interface DoseDraft {
  readonly at: string
  readonly product: string
  readonly amountG: number
}

interface Props {
  readonly start: { readonly at: string; readonly product: string | undefined; readonly amountG: number | undefined }
  readonly doneLabel: string
  /** Answers whether it was taken. */
  readonly onDone: (dose: DoseDraft) => boolean
  readonly onCancel: () => void
}

/** A dose that was given, whatever plan it came from. */
export function DoseForm({ start, doneLabel, onDone, onCancel }: Props) {
  const list = useProducts()
  const choices = (list ?? PRODUCTS).rows
    .filter((row) => !row.isAccounting)
    .map(({ id, label, strength }) => ({ id, label, note: strength }))
  const [at, setAt] = useState(start.at)
  const [product, setProduct] = useState(start.product)
  const [amountG, setAmountG] = useState(start.amountG)
  // What was put in last: the press takes up the open field in the same breath, before the next rendering.
  const newest = useRef({ at: start.at, amountG: start.amountG })
  const [complaint, setComplaint] = useState<string | undefined>()
  const putAmount = (next: number | undefined) => {
    newest.current.amountG = next
    setAmountG(next)
    setComplaint(undefined)
  }
  const form = useRef<HTMLDivElement>(null)
  useFormFocus(form, true)
  const doubt = useDoubt(product, amountG)
  const finish = () => {
    const seenG = doubt.seenAmountG()
    if (!finishTyping(form.current)) return setComplaint(undefined)
    if (product === undefined) return setComplaint('Choose the product first.')
    const dose = newest.current
    if (dose.amountG === undefined || !(dose.amountG > 0)) return setComplaint('Type how much was given.')
    if (doubt.isDoubtful(dose.amountG) && seenG !== dose.amountG) return
    if (onDone({ at: dose.at, product, amountG: dose.amountG })) onCancel()
  }
  return (
    <div ref={form} className={styles['form']}>
      <DateTimeField
        label="When"
        value={at}
        isPast
        onChange={(iso) => {
          newest.current.at = iso
          setAt(iso)
        }}
      />
      <ChoiceField
        label="Product"
        value={product}
        options={choices}
        onChange={(id) => {
          // A poured amount means nothing for a powder: it is asked for again.
          if (product === undefined || measureOf(id, list) !== measureOf(product, list)) putAmount(undefined)
          setProduct(id)
          setComplaint(undefined)
        }}
      />
      {product === undefined ? null : (
        <QuantityField
          key={measureOf(product, list)}
          label="Amount"
          quantity={measureOf(product, list)}
          value={amountG === undefined ? undefined : amountFromG(product, amountG, list)}
          min={0}
          onChange={(amount) => putAmount(amount === undefined ? undefined : gFromAmount(product, amount, list))}
          description={measureOf(product, list) === 'liquid' ? 'As poured.' : 'As weighed.'}
        />
      )}
      <p className={styles['doubt']} role="alert">
        {doubt.words}
      </p>
      {complaint ? (
        <p className={styles['failed']} role="alert">
          {complaint}
        </p>
      ) : null}
      <div className={styles['buttons']}>
        <SaveButton onPress={finish}>{doubt.words ? doubt.sureLabel : doneLabel}</SaveButton>
        <Button tone="quiet" onPress={onCancel}>
          Leave it
        </Button>
      </div>
    </div>
  )
}
