import { expect } from 'vitest'
import {
  applyCommand,
  type Command,
  commandLabel,
  fromJson,
  linkOf,
  record,
  redo,
  type Spec,
  specFromLink,
  startHistory,
  toJson,
  undo,
  validateSpec,
} from '../../src/document/index.ts'

/** Freezes all of it, so that a write to it throws. */
export function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const item of Object.values(value)) deepFreeze(item)
  }
  return value
}

/**
 * Checks an edit five ways: its result is a valid document and what `check` wants; undo gives the bytes back; redo does it
 * again; the result goes through JSON and a link unharmed; the input isn't changed.
 */
export function commandFiveWays(spec: Spec, command: Command, check: (after: Spec, before: Spec) => void): Spec {
  const bytes = toJson(spec)
  const argsBytes = JSON.stringify(command.args)
  deepFreeze(spec)
  deepFreeze(command.args)

  const result = applyCommand(spec, command)
  if (!result.ok)
    throw new Error(`${command.id}: ${result.problem.code} at ${result.problem.path}: ${result.problem.what}`)
  const after = result.value
  expect(validateSpec(after)).toEqual({ ok: true, value: after })
  check(after, spec)
  const afterBytes = toJson(after)
  expect(afterBytes, 'the edit changes something').not.toBe(bytes)

  const done = record(startHistory(spec), after, commandLabel(command))
  const undone = undo(done)
  expect(toJson(undone.present)).toBe(bytes)
  expect(toJson(redo(undone).present)).toBe(afterBytes)

  const reread = fromJson(afterBytes)
  expect(reread.ok && toJson(reread.value)).toBe(afterBytes)
  const linked = specFromLink(linkOf(after, 'https://example.org/shoalbook/'))
  expect(linked.ok && toJson(linked.value)).toBe(afterBytes)

  expect(toJson(spec)).toBe(bytes)
  expect(JSON.stringify(command.args)).toBe(argsBytes)
  return after
}
