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
  SegmentedField,
  useFormFocus,
} from '../../fields/index.ts'
import { amountFromG, formatAmount, gFromAmount, measureOf, saidG } from './amounts.ts'
import styles from './opening.module.css'
import { dosesOf, plannedOf } from './pours.ts'
import { useDoubt } from './useDoubt.ts'
import { useProducts } from './useProducts.ts'

interface TickFormProps {
  readonly line: DoseLine
  readonly systemId: string
  readonly onClose: () => void
}

type Part = 'one' | 'all'

/** What was really given, and when: filled in with the plan's amount, of several pours the first, and the present moment. */
export function TickForm({ line, systemId, onClose }: TickFormProps) {
  const store = useAppStore()
  const nowMs = useApp((state) => state.nowMs)
  const units = useUnits()
  const list = useProducts()
  const { pours } = line
  const [part, setPart] = useState<Part>(pours.length > 1 ? 'one' : 'all')
  // what the line says is what was weighed, as long as nobody says otherwise
  const saidOf = (each: Part) => saidG(line.productId, plannedOf(line, each), units, list)
  const plannedG = plannedOf(line, part)
  const [amountG, setAmountG] = useState(() => saidOf(part))
  const [at, setAt] = useState(() => isoFromMs(nowMs))
  const [problem, setProblem] = useState<Problem | undefined>()
  const form = useRef<HTMLElement>(null)
  useFormFocus(form, true)
  // What was put in last: the press that writes it down takes up the open field, before the next rendering.
  const newest = useRef({ amountG, at })
  const measure = measureOf(line.productId, list)
  const text = formatAmount(line.productId, plannedG, units, list)
  const doubt = useDoubt(line.productId, amountG, {
    amountG: plannedG,
    highG: (line.highG * plannedG) / line.amountG,
    text,
  })
  const save = () => {
    const seenG = doubt.seenAmountG()
    if (!finishTyping(form.current)) return
    if (doubt.isDoubtful(newest.current.amountG) && seenG !== newest.current.amountG) return
    const { dispatch } = store.getState()
    let refused: Problem | undefined
    for (const dose of dosesOf(line, part, newest.current))
      refused ??= dispatch(
        { id: 'logDose', args: { systemId, product: line.productId, line: line.key, ...dose } },
        { mergeKey: `${line.key} ${newest.current.at}` },
      )
    setProblem(refused)
    if (!refused) onClose()
  }
  return (
    <section ref={form} className={styles['form']} aria-label="What was given">
      {pours.length > 1 && (
        <SegmentedField
          label="What went in"
          value={part}
          options={[
            { id: 'one', label: `pour 1 of ${pours.length}` },
            { id: 'all', label: `all ${pours.length}` },
          ]}
          onChange={(next) => {
            setPart(next)
            newest.current.amountG = saidOf(next)
            setAmountG(newest.current.amountG)
          }}
          description={
            part === 'one'
              ? 'What is left of the line then comes as a line of its own.'
              : 'Each is written down by itself, as long before the last as the plan has it.'
          }
          isCompact
        />
      )}
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
      <DateTimeField
        label={part === 'all' && pours.length > 1 ? 'When, the last pour' : 'When'}
        value={at}
        isPast
        onChange={(iso) => {
          newest.current.at = iso
          setAt(iso)
        }}
        isCompact
      />
      <p className={styles['doubt']} role="alert">
        {doubt.words}
      </p>
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
