import type { AppState } from '../../../state/index.ts'

/** Where the plan is, and whether it is safe there. */
export function keepingWords(standing: AppState['standing'], saveState: AppState['saveState']): string {
  if (standing === 'link') return 'This plan came by a link. It is only looked at and not kept in this browser.'
  switch (saveState) {
    case 'saving':
      return 'Saving in this browser…'
    case 'saved':
      return 'Saved in this browser.'
    case 'failed':
      return 'Not saved: this browser’s storage refused it. Save a file before you leave.'
    case 'idle':
      return 'Nothing changed since it was opened.'
  }
}
