import type { Problem } from '../base/index.ts'

/** Words for a plan that has no volume to work with. */
export function noVolume(systemId: string): Problem {
  return {
    code: 'no-volume',
    path: `systems.${systemId}`,
    what: 'The volume of the water is not known yet.',
    why: 'Every dose is multiplied by it.',
    hint: 'Draw the pool or type its volume in the Basin chapter; where a drawing shows a problem, mend that first.',
  }
}
