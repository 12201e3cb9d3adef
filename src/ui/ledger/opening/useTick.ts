import type { NoteEntry, System } from '../../../document/index.ts'
import { useApp, useAppStore } from '../../context.tsx'
import { isoFromMs } from '../../fields/index.ts'

/** The log's last tick of a line that doses nothing. */
export function tickOf(system: System, line: string): NoteEntry | undefined {
  return system.log.findLast((entry): entry is NoteEntry => entry.kind === 'note' && entry.line === line)
}

/** Ticks lines off that dose nothing, and takes the last tick back. */
export function useTick(system: System) {
  const store = useAppStore()
  const nowMs = useApp((state) => state.nowMs)
  const systemId = system.id
  return {
    done: (line: string, text: string) =>
      store.getState().dispatch({ id: 'tickLine', args: { systemId, line, at: isoFromMs(nowMs), text } }),
    takeBack: (line: string) => {
      const entry = tickOf(system, line)
      return entry && store.getState().dispatch({ id: 'removeLog', args: { systemId, id: entry.id } })
    },
  }
}
