import { useCallback, useMemo } from 'react'
import { type DerivedBody, type DerivedVolume, deriveBody, deriveVolume } from '../../../derive/index.ts'
import {
  type Body,
  type CommandArgs,
  type CommandId,
  command,
  type Spec,
  type System,
} from '../../../document/index.ts'
import { useApp, useAppStore } from '../../context.tsx'
import type { Answer } from '../../fields/index.ts'

export interface Basin {
  readonly spec: Spec
  /** The body that is edited; undefined on a blank sheet. */
  readonly body: Body | undefined
  readonly system: System | undefined
  readonly derived: DerivedBody | undefined
  readonly volume: DerivedVolume | undefined
}

/** The first body of water with its system, and what they come to. */
export function useBasin(): Basin {
  const spec = useApp((state) => state.spec)
  return useMemo(() => {
    const body = spec.bodies[0]
    const system = spec.systems.find((s) => s.id === body?.system) ?? spec.systems[0]
    return {
      spec,
      body,
      system,
      derived: body ? deriveBody(body) : undefined,
      volume: system ? deriveVolume(spec, system.id) : undefined,
    }
  }, [spec])
}

/** One edit of the document; answers the problem where it was refused. */
export function useEdit(): <Id extends CommandId>(id: Id, args: CommandArgs<Id>) => Answer {
  const store = useAppStore()
  return useCallback((id, args) => store.getState().dispatch(command(id, args)), [store])
}
