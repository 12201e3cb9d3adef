import { useState } from 'react'
import type { Result } from '../../../base/index.ts'
import type { DerivedWater } from '../../../derive/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import type { IncidentResponse } from '../../../water/index.ts'
import { useUnits } from '../../context.tsx'
import { Disclosure, inOwnUnits, ProblemNote, SegmentedField, usePrinting } from '../../fields/index.ts'
import { spanWords } from '../opening/schedule.ts'
import { sourceWords } from './source-words.ts'
import styles from './water.module.css'

const KINDS = [
  { id: 'formed', label: 'formed stool' },
  { id: 'diarrhoea', label: 'diarrhoea' },
] as const
type Kind = (typeof KINDS)[number]['id']

/** What to do after faeces in the water, or why chlorine can't mend it here. On paper both kinds stand. */
export function Incident({ incidents }: { readonly incidents: DerivedWater['sanitation']['incidents'] }) {
  const [kind, setKind] = useState<Kind>('diarrhoea')
  const isPrinting = usePrinting()
  const shown = isPrinting ? KINDS : KINDS.filter(({ id }) => id === kind)
  const { diarrhoea } = incidents
  const stands = diarrhoea.ok
    ? undefined
    : diarrhoea.problem.code === 'incident-stabiliser-too-high'
      ? 'can’t be treated as it is'
      : 'measure stabiliser first'
  return (
    <Disclosure title="After faeces in the water" aside={stands}>
      {!isPrinting && <SegmentedField label="What it was" value={kind} options={KINDS} onChange={setKind} />}
      {shown.map(({ id, label }) => (
        <div key={id} className={styles['sub']}>
          {isPrinting && <h5>After {label}</h5>}
          <Response response={incidents[id]} />
        </div>
      ))}
    </Disclosure>
  )
}

function Response({ response }: { readonly response: Result<IncidentResponse> }) {
  const units = useUnits()
  if (!response.ok) return <ProblemNote problem={response.problem} />
  const { holds, steps, otherEdition } = response.value
  return (
    <>
      <ol className={styles['steps']}>
        {steps.map((step) => (
          <li key={step}>{inOwnUnits(step, units)}</li>
        ))}
      </ol>
      <table className={styles['table']}>
        <caption className={styles['caption']}>
          {holds.length > 1 ? 'Any one of these will do' : 'What has to be held'}
        </caption>
        <thead>
          <tr>
            <th scope="col">source</th>
            <th scope="col">free chlorine</th>
            <th scope="col">for</th>
          </tr>
        </thead>
        <tbody>
          {holds.map((hold) => (
            <tr key={hold.freeMgPerL}>
              <th scope="row" className={styles['faint']}>
                {sourceWords(hold)}
              </th>
              <td>{formatQuantity('concentration', hold.freeMgPerL, units, { digits: 0 })}</td>
              <td>{hoursWords(hold.hours, (hours) => spanWords(hours, units))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {otherEdition && <p className={styles['faint']}>{inOwnUnits(otherEdition, units)}</p>}
    </>
  )
}

/** To the quarter hour, never rounded down: it is a least time. */
function hoursWords(hours: number, say: (hours: number) => string): string {
  return hours < 1 ? say(hours) : say(Math.ceil(hours * 4 - 1e-9) / 4)
}
