import { memo, useId } from 'react'
import { deriveVolume } from '../../../derive/index.ts'
import type { CommandArgs, Equipment, HelperId, SurfaceKind, System } from '../../../document/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useApp, useUnits } from '../../context.tsx'
import { ChoiceField, NumberField, QuantityField, SwitchField, TextField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { Section } from './Section.tsx'
import { systemOf, useEdit } from './useBasin.ts'

/** More than any pool’s pipes hold, or its pump moves in an hour [m³]. */
const MOST_M3 = 10_000

const SURFACES: readonly { readonly id: SurfaceKind; readonly label: string; readonly note: string }[] = [
  { id: 'plaster', label: 'plaster or concrete', note: 'Gives and takes calcium: the water must hold enough' },
  { id: 'tile', label: 'tile', note: 'Its grout behaves as plaster does' },
  { id: 'vinyl', label: 'vinyl', note: 'Never emptied wholly; calcium matters little' },
  { id: 'fibreglass', label: 'fibreglass', note: 'Never emptied wholly; calcium matters little' },
]

const COVERS: readonly { readonly id: NonNullable<Equipment['coverKind']>; readonly label: string }[] = [
  { id: 'none', label: 'none' },
  { id: 'bubble', label: 'bubble sheet' },
  { id: 'solid', label: 'solid sheet' },
  { id: 'slatted', label: 'slats' },
]

const HELPERS: readonly { readonly id: HelperId; readonly label: string }[] = [
  { id: 'mineral-cartridge', label: 'Mineral cartridge' },
  { id: 'oxidation-unit', label: 'Oxidation unit' },
  { id: 'ozone', label: 'Ozone' },
  { id: 'uv', label: 'Ultraviolet lamp' },
]

/** Where it lies, what it is lined with, and what serves it. */
export const PlaceSection = memo(function PlaceSection({ number }: { readonly number: number }) {
  const name = useApp((state) => state.spec.name)
  const place = useApp((state) => state.spec.site)
  const system = useApp((state) => systemOf(state.spec))
  const edit = useEdit()
  const site = (part: CommandArgs<'setSite'>) => edit('setSite', part)
  return (
    <Section number={number} title="Place and surface">
      <div className={styles['group']}>
        <TextField label="Name of the pool" value={name} onChange={(next) => edit('setName', { name: next })} />
        <QuantityField
          label="Latitude"
          quantity="angle"
          value={place.latitudeDeg}
          min={-90}
          max={90}
          onChange={(latitudeDeg) => site({ latitudeDeg })}
          description="South with a minus sign. Sunlight follows from it, and most of the chlorine that is used up."
        />
        <QuantityField
          label="Height above the sea"
          quantity="elevation"
          value={place.elevationM}
          min={-450}
          max={6000}
          onChange={(elevationM) => site({ elevationM })}
        />
        <SwitchField
          label="Indoors"
          value={place.indoor ?? false}
          onChange={(indoor) => site({ indoor: indoor || undefined })}
          description="Under a roof no sun uses chlorine up, and some rules allow other combined chlorine."
        />
        <ChoiceField
          label="Surface"
          value={place.surface}
          options={SURFACES}
          onChange={(surface) => site({ surface })}
          description="Targets follow from it unless you set your own."
        />
      </div>
      {system ? <EquipmentFields system={system} /> : null}
    </Section>
  )
})

function EquipmentFields({ system }: { readonly system: System }) {
  const edit = useEdit()
  const units = useUnits()
  const helpId = useId()
  // As words: the section is not redrawn while the volume changes and these don't.
  const turnover = useApp(({ spec }) => {
    const pump = system.equipment.pumpM3PerH
    const volume = pump ? deriveVolume(spec, system.id) : undefined
    return pump && volume ? formatQuantity('duration', volume.m3 / pump, units, { digits: 1 }) : undefined
  })
  const { equipment, regime } = system
  const change = (part: Omit<CommandArgs<'setEquipment'>, 'systemId'>) =>
    edit('setEquipment', { systemId: system.id, ...part })
  const helps = new Set(equipment.helpers)
  return (
    <>
      <div className={styles['group']}>
        <QuantityField
          label="Water in pipes and filter"
          quantity="volume"
          value={system.plumbingM3}
          min={0}
          max={MOST_M3}
          isRequired
          onChange={(m3) =>
            m3 === undefined ? undefined : edit('setPlumbing', { systemId: system.id, plumbingM3: m3 })
          }
          description="Heater and surge tank included; it is dosed with the rest."
        />
        <QuantityField
          label="Flow of the filter pump"
          quantity="flow"
          value={equipment.pumpM3PerH}
          min={0}
          max={MOST_M3}
          onChange={(pumpM3PerH) => change({ pumpM3PerH })}
          {...(turnover ? { description: `One turnover of the whole water takes ${turnover}.` } : {})}
        />
        <QuantityField
          label="Pump runs a day"
          quantity="duration"
          value={equipment.pumpHoursPerDay}
          min={0}
          max={24}
          onChange={(pumpHoursPerDay) => change({ pumpHoursPerDay })}
        />
        <ChoiceField
          label="Cover"
          value={equipment.coverKind}
          options={COVERS}
          onChange={(coverKind) => change({ coverKind })}
        />
        {equipment.coverKind && equipment.coverKind !== 'none' ? (
          <QuantityField
            label="Covered a day"
            quantity="duration"
            value={equipment.coverHoursPerDay}
            min={0}
            max={24}
            onChange={(coverHoursPerDay) => change({ coverHoursPerDay })}
          />
        ) : null}
        <NumberField
          label="Bathers a day"
          value={regime.bathersPerDay}
          digits={0}
          min={0}
          max={5000}
          onChange={(bathersPerDay) => edit('setRegime', { systemId: system.id, bathersPerDay })}
        />
        <QuantityField
          label="Each stays"
          quantity="duration"
          value={regime.bathingHours}
          min={0}
          max={24}
          onChange={(bathingHours) => edit('setRegime', { systemId: system.id, bathingHours })}
        />
      </div>
      <fieldset className={styles['group']} aria-labelledby={helpId}>
        <h4 id={helpId}>Devices that help</h4>
        {HELPERS.map(({ id, label }) => (
          <SwitchField
            key={id}
            label={label}
            value={helps.has(id)}
            onChange={(isOn) =>
              change({ helpers: isOn ? [...equipment.helpers, id] : equipment.helpers.filter((h) => h !== id) })
            }
          />
        ))}
        <p className={styles['say']}>
          They may spare chlorine. None of them lowers the chlorine floor: a residual at the code’s minimum has to stand
          in the water all the time.
        </p>
      </fieldset>
    </>
  )
}
