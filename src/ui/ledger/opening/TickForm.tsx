import { useRef, useState } from 'react'
import type { Problem } from '../../../base/index.ts'
import type { DoseLine } from '../../../plan/index.ts'
import { useApp, useAppStore, useUnits } from '../../context.tsx'
import {
  Button,
  DateTimeField,
  finishTyping,
  isoFromMs,
  ProblemNote,
  QuantityField,
  SaveButton,
  useFormFocus,
} from '../../fields/index.ts'
import { amountFromG, formatAmount, gFromAmount, measureOf, saidG } from './amounts.ts'
import styles from './opening.module.css'
import { useDoubt } from './useDoubt.ts'
import { useProducts } from './useProducts.ts'

interface TickFormProps {
  readonly line: DoseLine
  readonly systemId: string
  readonly onClose: () => void
}

/** What was really given, and when: filled in with the plan's amount and the present moment. */
export function TickForm({ line, systemId, onClose }: TickFormProps) {
  const store = useAppStore()
  const nowMs = useApp((state) => state.nowMs)
  const units = useUnits()
  const list = useProducts()
  // what the line says is what was weighed, as long as nobody says otherwise
  const [amountG, setAmountG] = useState(() => saidG(line.productId, line.amountG, units, list))
  const [at, setAt] = useState(() => isoFromMs(nowMs))
  const [problem, setProblem] = useState<Problem | undefined>()
  const form = useRef<HTMLElement>(null)
  useFormFocus(form, true)
  // What was put in last: the press that writes it down takes up the open field, before the next rendering.
  const newest = useRef({ amountG, at })
  const measure = measureOf(line.productId, list)
  const text = formatAmount(line.productId, line.amountG, units, list)
  const doubt = useDoubt(line.productId, amountG, { amountG: line.amountG, highG: line.highG, text })
  const save = () => {
    const seenG = doubt.seenAmountG()
    if (!finishTyping(form.current)) return
    if (doubt.isDoubtful(newest.current.amountG) && seenG !== newest.current.amountG) return
    const refused = store.getState().dispatch({
      id: 'logDose',
      args: { systemId, product: line.productId, line: line.key, ...newest.current },
    })
    setProblem(refused)
    if (!refused) onClose()
  }
  return (
    <section ref={form} className={styles['form']} aria-label="What was given">
      <QuantityField
        label={measure === 'liquid' ? 'Poured in' : 'Weighed in'}
        quantity={measure}
        value={amountFromG(line.productId, amountG, list)}
        onChange={(si) => {
          if (si === undefined) return
          newest.current.amountG = gFromAmount(line.productId, si, list)
          setAmountG(newest.current.amountG)
        }}
        min={0}
        isCompact
        isRequired
      />
      <p className={styles['doubt']} role="alert">
        {doubt.words}
      </p>
      <DateTimeField
        label="When"
        value={at}
        isPast
        onChange={(iso) => {
          newest.current.at = iso
          setAt(iso)
        }}
        isCompact
      />
      {problem && <ProblemNote problem={problem} />}
      <div className={styles['formButtons']}>
        <SaveButton onPress={save}>{doubt.words ? doubt.sureLabel : 'Write it down'}</SaveButton>
        <Button tone="quiet" onPress={onClose}>
          Not yet
        </Button>
      </div>
    </section>
  )
}
