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
import type { AppStoreState } from '../../../state/index.ts'
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

/** The water that the first body belongs to, or the only one where nothing is drawn. */
export function systemOf(spec: Spec): System | undefined {
  return spec.systems.find((system) => system.id === spec.bodies[0]?.system) ?? spec.systems[0]
}

/** The first body of water with its system, and what they come to. */
export function useBasin(): Basin {
  const spec = useApp((state) => state.spec)
  return useMemo(() => {
    const body = spec.bodies[0]
    const system = systemOf(spec)
    return {
      spec,
      body,
      system,
      derived: body ? deriveBody(body) : undefined,
      volume: system ? deriveVolume(spec, system.id) : undefined,
    }
  }, [spec])
}

/**
 * The body that is edited, a new one only when one of these parts changed: what is dragged on the sheet redraws the
 * sections that show it and no others. Handlers that need the other parts read them from the store.
 */
export function useBodyParts(parts: readonly (keyof Body)[]): Body | undefined {
  const select = useMemo(() => {
    let kept: Body | undefined
    return (state: AppStoreState) => {
      const body = state.spec.bodies[0]
      if (body === undefined || kept === undefined || parts.some((part) => body[part] !== kept?.[part])) kept = body
      return kept
    }
  }, [parts])
  return useApp(select)
}

/** Parts that typed depths are converted with. */
export const REFERENCE_PARTS = ['id', 'depthsMeasuredFrom', 'tileLineM', 'levelM', 'freeboardM'] as const

/** One edit of the document; answers the problem where it was refused. */
export function useEdit(): <Id extends CommandId>(id: Id, args: CommandArgs<Id>) => Answer {
  const store = useAppStore()
  return useCallback((id, args) => store.getState().dispatch(command(id, args)), [store])
}
