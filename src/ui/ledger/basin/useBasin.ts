import { useCallback, useMemo } from 'react'
import { type DerivedBody, type DerivedVolume, deriveBody, deriveVolume } from '../../../derive/index.ts'
import type { Body, Command, Spec, System } from '../../../document/index.ts'
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

type ArgsOf<Id extends Command['id']> = Extract<Command, { readonly id: Id }>['args']

/** One edit of the document; answers the problem where it was refused. */
export function useEdit(): <Id extends Command['id']>(id: Id, args: ArgsOf<Id>) => Answer {
  const store = useAppStore()
  return useCallback(
    // The pair is one of the commands by its type; only the compiler can't join the two halves of a union.
    <Id extends Command['id']>(id: Id, args: ArgsOf<Id>) => store.getState().dispatch({ id, args } as Command),
    [store],
  )
}
