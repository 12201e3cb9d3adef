import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { DEVICE_CHANGES } from '../schema/owner.ts'
import { defineEdit } from './define.ts'
import { editDevice } from './owner-places.ts'
import { changed } from './places.ts'

/** Corrects what is known of a device, its history too; putting something in is `holdInDevice`, which says no where it must. */
export const setDevice = defineEdit({
  id: 'setDevice',
  label: 'Change device',
  args: v.strictObject({ systemId: Id, deviceId: Id, device: v.strictObject(DEVICE_CHANGES) }),
  apply: (spec, { systemId, deviceId, device }) =>
    editDevice(spec, systemId, deviceId, (old) => ok(changed(old, device))),
})
