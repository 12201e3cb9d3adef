import type { Problem } from '../base/index.ts'
import type { Spec } from '../document/index.ts'
import type { Notice } from './types.ts'

const problem = (text: string, hint?: string): Notice => ({ tone: 'problem', text, hint })
const info = (text: string): Notice => ({ tone: 'info', text })

/** What the app says about its own doings; all in one place. */
export const WORDS = {
  linkCopied: info('Link copied. Whoever opens it sees this plan; nothing is stored anywhere else.'),
  linkNotCopied: problem('The browser did not let the link be copied.', 'It is shown here: copy it by hand.'),
  tooLongForLink: problem('This plan is too long for a link.', 'Save it as a file and send that, or shorten its log.'),
  madeMine: info('This is your own copy now, saved in this browser only. Your earlier plan is one Undo away.'),
  viewOnly: problem(
    'This plan came by a link and is only looked at.',
    'Press “Make it mine” to work on your own copy.',
  ),
  storageFailed: problem(
    'This browser’s storage does not work, so nothing is saved by itself.',
    'Work goes on; save a file from the Logbook before you leave.',
  ),
  fileUnreadable: problem(
    'The file could not be read; nothing was changed.',
    'Check that it is still there and try again.',
  ),
  badFile: 'The file holds no plan that can be opened; nothing was changed.',
  badLink: 'This link could not be read, so your own plan is shown.',
  badSaved:
    'The saved plan could not be read, so the example is shown. The saved one stays as it is until you change something.',
} as const

/** A notice for complaints about a file: the first one, where in the file it is, and how many more there are. */
export function noticeOf(lead: string, problems: readonly Problem[]): Notice {
  const [first, ...rest] = problems
  const where = first && first.path !== '' ? ` (at ${first.path})` : ''
  const more = rest.length > 0 ? ` ${rest.length} more like it.` : ''
  return { tone: 'problem', text: `${lead} ${first?.what ?? ''}${where}${more}`.trim(), hint: first?.hint }
}

/** A notice for an edit that was refused: its path names a part of the command, which says nothing to whoever made it. */
export function refusalOf({ what, hint }: Problem): Notice {
  return { tone: 'problem', text: what, hint }
}

/** A file name for any system: letters, figures and hyphens. */
export function fileNameOf(spec: Spec): string {
  const plain = spec.name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
  return `${plain === '' ? 'pool' : plain}.shoalbook.json`
}
