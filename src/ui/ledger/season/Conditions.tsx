import { upkeepBasisOf } from '../../../derive/index.ts'
import type { ClimateMonth, Command, Equipment, HelperId, System } from '../../../document/index.ts'
import { useApp, useAppStore } from '../../context.tsx'
import { Button, ChoiceField, NumberField, QuantityField, SwitchField } from '../../fields/index.ts'
import { amountFromG, gFromAmount, measureOf } from '../opening/amounts.ts'
import { productOptions } from '../water/products.ts'
import { withMonth } from './climate.ts'
import styles from './season.module.css'
import { MONTHS, noonOf } from './upkeep-words.ts'

const COVERS: readonly { readonly id: NonNullable<Equipment['coverKind']>; readonly label: string }[] = [
  { id: 'none', label: 'None' },
  { id: 'bubble', label: 'Bubble sheet' },
  { id: 'solid', label: 'Solid sheet' },
  { id: 'slatted', label: 'Slats' },
]

const HELPERS: readonly { readonly id: HelperId; readonly label: string }[] = [
  { id: 'mineral-cartridge', label: 'Mineral cartridge' },
  { id: 'oxidation-unit', label: 'Oxidation unit' },
  { id: 'ozone', label: 'Ozone' },
  { id: 'uv', label: 'UV lamp' },
]

interface ConditionsProps {
  readonly system: System
  readonly dayMs: number
  readonly onDay: (dayMs: number | undefined) => void
  readonly isToday: boolean
}

/** What the upkeep depends on: change it and see. All but the day is saved. */
export function Conditions({ system, dayMs, onDay, isToday }: ConditionsProps) {
  const store = useAppStore()
  const spec = useApp((state) => state.spec)
  const basis = upkeepBasisOf(spec, system.id, dayMs)
  const date = new Date(dayMs)
  const month = date.getUTCMonth()
  const edit = (command: Command) => store.getState().dispatch(command)
  const systemId = system.id
  if (!basis.ok) return null
  const { input } = basis.value
  const { feed } = system.regime
  const setFeed = (next: System['regime']['feed']) => edit({ id: 'setRegime', args: { systemId, feed: next } })
  const weather: ClimateMonth = spec.site.climate?.[month] ?? {
    airC: input.airC,
    humidityPercent: input.humidityPercent,
    windMPerS: input.windMPerS,
    sunshine: input.sunshine,
  }
  const setWeather = (change: Partial<ClimateMonth>) => {
    const climate = withMonth(spec.site.climate, month, { ...weather, ...change }, weather).map((row) => ({ ...row }))
    return edit({ id: 'setSite', args: { climate } })
  }
  return (
    <section className={styles['section']}>
      <h2>What it depends on</h2>
      <p className={styles['intro']}>Change a number and see what follows. Weather is kept month by month.</p>
      <div className={styles['day']}>
        <ChoiceField
          label="Month"
          value={String(month)}
          options={MONTHS.map((label, index) => ({ id: String(index), label }))}
          onChange={(id) => onDay(noonOf(dayMs, Number(id), date.getUTCDate()))}
          isCompact
          isDisabled={false}
        />
        <NumberField
          label="Day"
          value={date.getUTCDate()}
          onChange={(day) => {
            if (day !== undefined) onDay(noonOf(dayMs, month, day))
          }}
          min={1}
          max={31}
          digits={0}
          isCompact
          isRequired
          isDisabled={false}
        />
        {!isToday && (
          <Button tone="quiet" onPress={() => onDay(undefined)}>
            Today
          </Button>
        )}
      </div>
      <div className={styles['form']}>
        <ChoiceField
          label="Daily chlorine"
          value={input.chlorineProductId}
          options={productOptions('dailyChlorine')}
          isCompact
          onChange={(product) => edit({ id: 'setProduct', args: { systemId, purpose: 'dailyChlorine', product } })}
        />
        <QuantityField
          key={measureOf(input.chlorineProductId)}
          label="Fed now, each dose"
          quantity={measureOf(input.chlorineProductId)}
          value={feed && amountFromG(input.chlorineProductId, feed.amountG)}
          onChange={(amount) =>
            setFeed(
              amount === undefined
                ? undefined
                : { amountG: gFromAmount(input.chlorineProductId, amount), perWeek: feed?.perWeek ?? 7 },
            )
          }
          min={0}
        />
        <NumberField
          label="Doses a week"
          value={feed?.perWeek}
          onChange={(perWeek) => feed && setFeed(perWeek === undefined ? undefined : { ...feed, perWeek })}
          min={0}
          max={1000}
          isDisabled={!feed}
          description={feed ? undefined : 'Type the dose first.'}
        />
        <QuantityField
          label={`Air in ${MONTHS[month]}`}
          quantity="temperature"
          value={weather.airC}
          onChange={(si) => (si === undefined ? undefined : setWeather({ airC: si }))}
          min={-30}
          max={50}
          isRequired
        />
        <QuantityField
          label="Water"
          quantity="temperature"
          value={input.waterC}
          onChange={(si) => setWeather({ waterC: si })}
          min={0}
          max={42}
        />
        <QuantityField
          label="Humidity"
          quantity="percent"
          value={weather.humidityPercent}
          onChange={(si) => (si === undefined ? undefined : setWeather({ humidityPercent: si }))}
          min={1}
          max={100}
          isRequired
        />
        <QuantityField
          label="Wind"
          quantity="wind"
          value={weather.windMPerS}
          onChange={(si) => (si === undefined ? undefined : setWeather({ windMPerS: si }))}
          min={0}
          max={20}
          isRequired
        />
        <QuantityField
          label="Sunshine, of what is possible"
          quantity="percent"
          value={weather.sunshine * 100}
          onChange={(si) => (si === undefined ? undefined : setWeather({ sunshine: si / 100 }))}
          min={0}
          max={100}
          isRequired
        />
        <QuantityField
          label="Latitude"
          quantity="angle"
          value={input.latitudeDeg}
          onChange={(si) => (si === undefined ? undefined : edit({ id: 'setSite', args: { latitudeDeg: si } }))}
          min={-66}
          max={66}
          isRequired
        />
        <NumberField
          label="Bathers a day"
          value={input.bathersPerDay}
          onChange={(value) => edit({ id: 'setRegime', args: { systemId, bathersPerDay: value } })}
          min={0}
          max={500}
        />
        <QuantityField
          label="Hours each"
          quantity="duration"
          value={input.bathingHours}
          onChange={(si) => edit({ id: 'setRegime', args: { systemId, bathingHours: si } })}
          min={0}
          max={12}
        />
        <ChoiceField
          label="Cover"
          value={input.coverKind}
          options={COVERS}
          onChange={(coverKind) => edit({ id: 'setEquipment', args: { systemId, coverKind } })}
        />
        <QuantityField
          label="Covered, a day"
          quantity="duration"
          value={input.coverHoursPerDay}
          onChange={(si) => edit({ id: 'setEquipment', args: { systemId, coverHoursPerDay: si } })}
          min={0}
          max={24}
        />
        <QuantityField
          label="Pump runs, a day"
          quantity="duration"
          value={input.pumpHoursPerDay}
          onChange={(si) => edit({ id: 'setEquipment', args: { systemId, pumpHoursPerDay: si } })}
          min={0}
          max={24}
        />
        {HELPERS.map(({ id, label }) => (
          <SwitchField
            key={id}
            label={label}
            value={system.equipment.helpers.includes(id)}
            onChange={(isOn) =>
              edit({ id: 'setEquipment', args: { systemId, helpers: withHelper(system.equipment.helpers, id, isOn) } })
            }
          />
        ))}
      </div>
    </section>
  )
}

function withHelper(helpers: readonly HelperId[], id: HelperId, isOn: boolean): readonly HelperId[] {
  return isOn ? [...helpers.filter((helper) => helper !== id), id] : helpers.filter((helper) => helper !== id)
}
