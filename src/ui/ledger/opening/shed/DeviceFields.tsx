import { useState } from 'react'
import type { Problem } from '../../../../base/index.ts'
import { deriveMayHold } from '../../../../derive/index.ts'
import { command, type DeviceEntry, type System } from '../../../../document/index.ts'
import { useApp, useAppStore, useCanEdit } from '../../../context.tsx'
import {
  Button,
  ChoiceField,
  DateTimeField,
  Disclosure,
  isoFromMs,
  ProblemNote,
  SwitchField,
  TextField,
} from '../../../fields/index.ts'
import { productLabel, productOf } from '../amounts.ts'
import styles from '../opening.module.css'
import { dateOf } from '../schedule.ts'
import { useProducts } from '../useProducts.ts'
import { heldWords, verdictWords } from './shed-words.ts'

interface DeviceFieldsProps {
  readonly device: DeviceEntry
  readonly system: System
}

/** One device: its name, whether it was new, all that it has held, and whether a product may go in. */
export function DeviceFields({ device, system }: DeviceFieldsProps) {
  const store = useAppStore()
  const canEdit = useCanEdit()
  const nowMs = useApp((state) => state.nowMs)
  const list = useProducts()
  const ids = { systemId: system.id, deviceId: device.id }
  const set = (change: Partial<Omit<DeviceEntry, 'id'>>) =>
    store.getState().dispatch(command('setDevice', { ...ids, device: change }))
  const newest = device.held.at(-1)
  return (
    <Disclosure title={device.name} aside={heldWords(device, newest && productLabel(newest.product, list))}>
      <div className={styles['fields']}>
        <TextField label="Name" value={device.name} onChange={(name) => set({ name })} />
        <SwitchField
          label="Bought new for this pool: nothing else was ever in it"
          value={device.isNew}
          onChange={(isNew) => set({ isNew })}
        />
      </div>
      {device.held.length > 0 && (
        <ul className={styles['held']} aria-label={`What ${device.name} has held`}>
          {device.held.map((each, index) => (
            <li key={`${each.product}${each.at}`}>
              <span>
                {productLabel(each.product, list)}, {dateOf(Date.parse(each.at), nowMs)}
              </span>
              {canEdit && (
                <Button
                  tone="quiet"
                  label={`Strike out: ${productLabel(each.product, list)} in ${device.name}`}
                  onPress={() => set({ held: device.held.filter((_, at) => at !== index) })}
                >
                  Strike out
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
      {canEdit && <PutIn device={device} system={system} set={set} />}
      {canEdit && (
        <div className={styles['buttons']}>
          <Button tone="quiet" onPress={() => store.getState().dispatch({ id: 'removeDevice', args: ids })}>
            Remove {device.name}
          </Button>
        </div>
      )}
    </Disclosure>
  )
}

interface PutInProps extends DeviceFieldsProps {
  readonly set: (change: Partial<Omit<DeviceEntry, 'id'>>) => Problem | undefined
}

/** Asks the device's history first: a product that must never go in can only be written down as having been there. */
function PutIn({ device, system, set }: PutInProps) {
  const store = useAppStore()
  const nowMs = useApp((state) => state.nowMs)
  const spec = useApp((state) => state.spec)
  const list = useProducts()
  const [productId, setProductId] = useState<string | undefined>()
  const [at, setAt] = useState(() => isoFromMs(nowMs))
  const [refused, setRefused] = useState<Problem | undefined>()
  const product = productId === undefined ? undefined : productOf(productId, list)
  const verdict = product && deriveMayHold(spec, system.id, device.id, product.id)
  const options = (list?.rows ?? [])
    .filter(({ isAccounting, form }) => !isAccounting && form !== 'gas')
    .map(({ id, label, strength }) => ({ id, label, note: strength }))
  return (
    <>
      <div className={styles['fields']}>
        <ChoiceField label="Product" value={productId} options={options} onChange={setProductId} />
        {product && <DateTimeField label="When" value={at} onChange={(iso) => void setAt(iso)} />}
      </div>
      {product && verdict && (
        <div className={styles['note']} role="note">
          {verdictWords(verdict, product).map((words, index) => (
            <p key={words}>{index === 0 ? <strong>{words}</strong> : words}</p>
          ))}
        </div>
      )}
      {refused && <ProblemNote problem={refused} />}
      {product && verdict && (
        <div className={styles['buttons']}>
          {verdict.answer === 'may' && (
            <Button
              tone="main"
              onPress={() => {
                const args = { systemId: system.id, deviceId: device.id, product: product.id, at }
                const problem = store.getState().dispatch({ id: 'holdInDevice', args })
                setRefused(problem)
                if (!problem) setProductId(undefined)
              }}
            >
              Put it in
            </Button>
          )}
          <Button
            onPress={() => {
              setRefused(set({ held: [...device.held, { product: product.id, at }] }))
              setProductId(undefined)
            }}
          >
            It has been in there before
          </Button>
        </div>
      )}
    </>
  )
}
