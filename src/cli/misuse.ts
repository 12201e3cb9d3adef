import { nearest } from './unknown-keys.ts'

const MORE = '`npm run -s cli -- --help` tells all.'
/** Beyond this share of its letters changed, a word is like none. */
const MOST_CHANGED = 0.4

/** What is wrong with how the program was called, in a line, and where to read on. */
export const misuseText = (message: string): string => `${message}\n${MORE}\n`

/** A verb that there isn't, with the one that may be meant, or all. */
export function noSuchVerb(asked: string | undefined, verbs: readonly string[]): string {
  const all = `${verbs.slice(0, -1).join(', ')} or ${verbs[verbs.length - 1]}`
  if (asked === undefined) return `Say what to do: ${all}.`
  const near = nearest(asked, verbs, MOST_CHANGED)
  return `There is no verb “${asked}”. ${near === undefined ? `Use ${all}.` : `The nearest is ${near}.`}`
}

/** An option that there isn't, with those that there are. */
export function noSuchOption(asked: string, options: readonly string[]): string {
  const near = nearest(asked, options, MOST_CHANGED)
  const known = near === undefined ? `Use ${options.map((each) => `--${each}`).join(', ')}` : `The nearest is --${near}`
  return `There is no option --${asked}. ${known}.`
}

/** By the system's name of the trouble: what is wrong with the file and what to do. */
const UNREADABLE: Readonly<Record<string, (file: string) => string>> = {
  ENOENT: (file) => `There is no file ${file}. Check its name and folder, or give - to read what is piped in.`,
  EISDIR: (file) => `${file} is a folder. Give a file in it, or - to read what is piped in.`,
  EACCES: (file) => `${file} may not be read by you. Change its permissions, or copy it to where you may read.`,
}

/** Why a file can't be read, and what to do. */
export function cannotRead(file: string, error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  const known = Object.hasOwn(UNREADABLE, code) ? UNREADABLE[code] : undefined
  if (known) return known(file)
  return `${file} can’t be read: ${error instanceof Error ? error.message : String(error)}`
}
