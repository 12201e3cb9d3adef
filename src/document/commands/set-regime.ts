import * as v from 'valibot'
import { ok } from '../../base/index.ts'
import { Id } from '../schema/numbers.ts'
import { BATHING } from '../schema/system.ts'
import { defineEdit } from './define.ts'
import { changed, editSystem } from './places.ts'

/** A key that is given as undefined is unknown from then on; one that isn't given stays. */
export const setRegime = defineEdit({
  id: 'setRegime',
  label: 'Change regime',
  args: v.strictObject({ systemId: Id, id: v.exactOptional(Id), ...BATHING }),
  apply: (spec, { systemId, ...changes }) =>
    editSystem(spec, systemId, (system) => ok({ ...system, regime: changed(system.regime, changes) })),
})
