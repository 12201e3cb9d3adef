import { deriveTargets, deriveTargetWarnings } from '../../../derive/index.ts'
import { TARGET_KEYS } from '../../../plan/index.ts'
import { useApp } from '../../context.tsx'
import { Section } from '../basin/Section.tsx'
import { readingRow } from '../scale/index.ts'
import type { NumberedProps } from './Readings.tsx'
import { NoTarget, Target } from './Target.tsx'
import styles from './water.module.css'

/** The bands to work to, each with its source; the owner's own rule. */
export function Targets({ system, number }: NumberedProps) {
  const spec = useApp((state) => state.spec)
  const targets = deriveTargets(spec, system.id)
  const warnings = deriveTargetWarnings(spec, system.id)
  return (
    <Section number={number} title="Targets">
      <p className={styles['intro']}>
        Bands, not points: a reading inside its band gets no line in the plan. A line that has to be written aims for
        the number in the middle.
      </p>
      <div className={styles['targets']}>
        <div className={styles['targetRow']} aria-hidden="true">
          <span className={styles['faint']}>mg/L, but pH</span>
          <span className={styles['faint']}>from</span>
          <span className={styles['faint']}>aim</span>
          <span className={styles['faint']}>to</span>
        </div>
        {TARGET_KEYS.map((key) => {
          const row = readingRow(key)
          if (!row) return null
          const band = targets[key]
          return band ? (
            <Target
              key={key}
              systemId={system.id}
              targetKey={key}
              row={row}
              band={band}
              warnings={warnings.filter(({ path }) => path === `targets.${key}`)}
            />
          ) : (
            <NoTarget key={key} systemId={system.id} targetKey={key} row={row} />
          )
        })}
      </div>
    </Section>
  )
}
