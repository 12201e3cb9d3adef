import { useState } from 'react'
import type { Problem } from '../../../base/index.ts'
import type { DoseLine } from '../../../plan/index.ts'
import { useApp, useAppStore } from '../../context.tsx'
import { Button, DateTimeField, isoFromMs, ProblemNote, QuantityField } from '../../fields/index.ts'
import { amountFromG, gFromAmount, measureOf } from './amounts.ts'
import styles from './opening.module.css'

interface TickFormProps {
  readonly line: DoseLine
  readonly systemId: string
  readonly onClose: () => void
}

/** What was really given, and when: filled in with the plan's amount and the present moment. */
export function TickForm({ line, systemId, onClose }: TickFormProps) {
  const store = useAppStore()
  const nowMs = useApp((state) => state.nowMs)
  const [amountG, setAmountG] = useState(line.amountG)
  const [at, setAt] = useState(() => isoFromMs(nowMs))
  const [problem, setProblem] = useState<Problem | undefined>()
  const measure = measureOf(line.productId)
  const save = () => {
    const refused = store.getState().dispatch({
      id: 'logDose',
      args: { systemId, product: line.productId, amountG, at, line: line.key },
    })
    setProblem(refused)
    if (!refused) onClose()
  }
  return (
    <section className={styles['form']} aria-label="What was given">
      <QuantityField
        label={measure === 'liquid' ? 'Poured in' : 'Weighed in'}
        quantity={measure}
        value={amountFromG(line.productId, amountG)}
        onChange={(si) => {
          if (si !== undefined) setAmountG(gFromAmount(line.productId, si))
        }}
        min={0}
        isCompact
        isRequired
      />
      <DateTimeField label="When" value={at} onChange={setAt} isCompact />
      {problem && <ProblemNote problem={problem} />}
      <div className={styles['formButtons']}>
        <Button tone="main" onPress={save}>
          Write it down
        </Button>
        <Button tone="quiet" onPress={onClose}>
          Not yet
        </Button>
      </div>
    </section>
  )
}
