import type { Regime, System } from '../../../document/index.ts'
import { useAppStore } from '../../context.tsx'
import { ChoiceField, SegmentedField } from '../../fields/index.ts'
import styles from './opening.module.css'

const OBJECTIVES: readonly {
  readonly id: NonNullable<Regime['objective']>
  readonly label: string
  readonly note: string
}[] = [
  { id: 'fewest-products', label: 'the fewest products', note: 'Less to buy, to store and to keep apart.' },
  { id: 'cheapest', label: 'the least money', note: 'By your prices below; what is in stock costs nothing more.' },
  {
    id: 'least-salt',
    label: 'the least salt',
    note: 'Every dose leaves salts behind; only an exchange takes them out.',
  },
]
const DOSING: readonly { readonly id: NonNullable<Regime['dosing']>; readonly label: string }[] = [
  { id: 'reckoned', label: 'as reckoned' },
  { id: 'whole-packages', label: 'whole packages' },
]

/** By what the plan chooses where several ways reach the bands, and whether it rounds to packages. */
export function Choices({ system }: { readonly system: System }) {
  const store = useAppStore()
  const systemId = system.id
  const { objective = 'fewest-products', dosing = 'reckoned' } = system.regime
  return (
    <div className={styles['fields']}>
      <ChoiceField
        label="If there is more than one way, take"
        value={objective}
        options={OBJECTIVES}
        onChange={(chosen) => store.getState().dispatch({ id: 'setRegime', args: { systemId, objective: chosen } })}
        description={OBJECTIVES.find(({ id }) => id === objective)?.note}
      />
      <SegmentedField
        label="Amounts"
        value={dosing}
        options={DOSING}
        onChange={(chosen) => store.getState().dispatch({ id: 'setRegime', args: { systemId, dosing: chosen } })}
        description={
          dosing === 'whole-packages' ? 'Only where the result stays inside its band; else as reckoned.' : undefined
        }
      />
    </div>
  )
}
