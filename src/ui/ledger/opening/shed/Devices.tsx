import { useState } from 'react'
import type { DeviceEntry, System } from '../../../../document/index.ts'
import { useAppStore, useCanEdit } from '../../../context.tsx'
import { Button, ChoiceField } from '../../../fields/index.ts'
import styles from '../opening.module.css'
import { DeviceFields } from './DeviceFields.tsx'
import { DEVICE_KINDS, freeId } from './shed-words.ts'

/** Feeders, skimmers, floaters and buckets with all that they have held: traces of two chlorines together burn. */
export function Devices({ system }: { readonly system: System }) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const [kind, setKind] = useState<DeviceEntry['kind']>('feeder')
  const devices = system.equipment.devices ?? []
  const add = () => {
    const label = DEVICE_KINDS.find(({ id }) => id === kind)?.label ?? kind
    const count = devices.filter((device) => device.kind === kind).length
    const name = `${label.charAt(0).toUpperCase()}${label.slice(1)}${count > 0 ? ` ${count + 1}` : ''}`
    const id = freeId(
      kind,
      devices.map((device) => device.id),
    )
    store
      .getState()
      .dispatch({ id: 'addDevice', args: { systemId: system.id, device: { id, kind, name, isNew: false, held: [] } } })
  }
  return (
    <section
      className={styles['section']}
      aria-label="What chemicals go through"
      {...(devices.length === 0 ? { 'data-screen-only': true } : {})}
    >
      <h3>What chemicals go through</h3>
      <p className={styles['faint']}>
        A feeder, skimmer, floater or bucket keeps traces of all that it has held. One that has held stabilised chlorine
        is never for the other kind, nor the other way round, unless it is new.
      </p>
      {devices.map((device) => (
        <DeviceFields key={device.id} device={device} system={system} />
      ))}
      {canEdit && (
        <div className={styles['start']}>
          <ChoiceField label="Kind" value={kind} options={DEVICE_KINDS} onChange={setKind} isCompact />
          <Button onPress={add}>Add a device</Button>
        </div>
      )}
    </section>
  )
}
