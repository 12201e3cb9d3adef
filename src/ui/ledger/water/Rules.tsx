import { deriveWater } from '../../../derive/index.ts'
import type { SiteRules } from '../../../document/index.ts'
import { LOCAL_CODE_FIRST, RULES } from '../../../water/index.ts'
import { useApp, useAppStore, useUnits } from '../../context.tsx'
import { ChoiceField, QuantityField } from '../../fields/index.ts'
import { Section } from '../basin/Section.tsx'
import { Incident } from './Incident.tsx'
import type { NumberedProps } from './Readings.tsx'
import { ruleLines } from './rule-lines.ts'
import styles from './water.module.css'

const OPTIONS = RULES.rows.map(({ id, label, edition }) => ({ id, label, note: edition }))
/** No figure of an owner makes sense beyond [mg/L]. */
const MOST_MG_PER_L = 20

/** The rules that bathing goes by: whose, what they come to in this water, and where that stands written. */
export function Rules({ system, number }: NumberedProps) {
  const store = useAppStore()
  const units = useUnits()
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const { sanitation, known, from } = deriveWater(spec, system.id, nowMs)
  const { limits } = sanitation
  const own = spec.site.rules ?? {}
  const set = (rules: Partial<SiteRules>) => store.getState().dispatch({ id: 'setRules', args: rules })
  const isOwnFloor = limits.floorSource === 'your own floor'
  const lines = ruleLines(limits, from === 'readings' ? known : {}, sanitation.combined, units)
  return (
    <Section number={number} title="Rules for bathing">
      <p>
        <strong>{LOCAL_CODE_FIRST}</strong> Choose the rules that come nearest to it; labels of products count too.
      </p>
      <ChoiceField
        label="Rules"
        value={own.profile ?? 'default'}
        options={OPTIONS}
        onChange={(profile) => set({ profile: profile === 'default' ? undefined : profile })}
        isCompact
      />
      <table className={styles['table']}>
        <thead>
          <tr>
            <th scope="col">reading</th>
            <th scope="col">rule</th>
            <th scope="col">measured</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.id}>
              <th scope="row">
                {line.label}
                <span className={styles['under']}>{line.status}</span>
              </th>
              <td>{line.rule}</td>
              <td>
                {line.measured ?? 'unknown'}
                {line.outside && <span className={styles['under']}>{line.outside}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles['faint']}>
        {stabiliserWords(limits.stabiliser)} From: {limits.profile.source}; {limits.profile.edition}.
        {isOwnFloor && ' The floor is your own.'}
      </p>
      {limits.notes
        .filter((note) => note !== LOCAL_CODE_FIRST)
        .map((note) => (
          <p key={note} className={styles['faint']}>
            {note.replace(LOCAL_CODE_FIRST, '').trim()}
          </p>
        ))}
      <div className={styles['form']}>
        <QuantityField
          label="Your own chlorine floor"
          quantity="concentration"
          value={own.chlorineFloorMgPerL}
          onChange={(chlorineFloorMgPerL) => set({ chlorineFloorMgPerL })}
          min={0}
          max={MOST_MG_PER_L}
          placeholder="as the rules"
          description="It can only raise the floor. Ozone, UV, ions and electrolysis lower none."
        />
        <QuantityField
          label="Your own ceiling"
          quantity="concentration"
          value={own.chlorineCeilingMgPerL}
          onChange={(chlorineCeilingMgPerL) => set({ chlorineCeilingMgPerL })}
          min={0}
          max={MOST_MG_PER_L}
          placeholder="as the rules"
          description="It can only lower the ceiling."
        />
      </div>
      <Incident incidents={sanitation.incidents} />
    </Section>
  )
}

function stabiliserWords(stabiliser: 'none' | 'present' | 'unknown'): string {
  if (stabiliser === 'none') return 'For water without stabiliser, as measured.'
  if (stabiliser === 'present') return 'For water with stabiliser, as measured.'
  return 'Stabiliser is not measured, so it counts as present.'
}
