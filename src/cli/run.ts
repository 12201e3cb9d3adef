import { fail, type Problem } from '../base/index.ts'
import { LIMITS } from '../document/index.ts'
import { METHODS } from '../water/index.ts'
import { cannotRead, misuseText, noSuchOption, noSuchVerb } from './misuse.ts'
import { PEOPLE_KEYS } from './people-input.ts'
import { asLevel, constantsById, type Options, type Verb } from './verb.ts'
import { VERBS } from './verbs/index.ts'

export interface Outcome {
  readonly stdout: string
  readonly stderr: string
  readonly exitCode: 0 | 1 | 2
}

interface World {
  readonly readInput: (file: string) => string
  readonly nowMs: number
}

const HELP = `npm run -s cli -- VERB FILE|- [--constants default|oracle|wahman] [--level METRES] [--base URL] [--now ISO]

Reads one JSON value, an array of them, or JSON lines; prints one line of JSON for each. Exit status 2 where any line was a problem.

--constants  the set of constants; without it the program's own, and for a SPEC the owner's choice of chlorine constants
--level      a level of the water beside the current one, for measure and inspect [m above the nominal waterline]
--base       what links start with
--now        the moment that plans, ages and seasons count from; the clock's without it

${VERBS.map((verb) => `  ${verb.id.padEnd(9)} ${verb.summary}`).join('\n')}

WATER   pH, ta_mg_per_L_as_CaCO3, and any of: ch_mg_per_L_as_CaCO3, mg_hardness_mg_per_L_as_CaCO3, sulfate_mg_per_L, cya_mg_per_L,
        borate_mg_per_L_as_B, fc_mg_per_L_as_Cl2, salt_mg_per_L_as_NaCl, temperature_C (25 where absent; others 0);
        null counts as absent; a key that is none of these is not read, and "notices" in the answer names it,
        as it names keys of a SPEC's bodies that are not read
METHOD  ${METHODS.rows.map(({ id }) => id).join(', ')}: how speciate’s readings were taken, for the scatter of "told" and "combined"
PEOPLE  speciate's input may also hold: ${PEOPLE_KEYS.join(', ')}
OWN     dose and target may also hold "ownProducts": [{"id", "label", "like", "strength", "basis", …}]; they are then used by id
`

const misuse = (message: string): Outcome => ({ stdout: '', stderr: misuseText(message), exitCode: 1 })

/** Runs the command line on given arguments and input; touches nothing but what `world` gives it. */
export function runCommandLine(args: readonly string[], world: World): Outcome {
  const flags = new Map<string, string>()
  const words: string[] = []
  for (let i = 0; i < args.length; i++) {
    const word = args[i] ?? ''
    if (word === '--help' || word === '-h') return { stdout: '', stderr: HELP, exitCode: 0 }
    if (!word.startsWith('--')) words.push(word)
    else if (word.includes('=')) flags.set(word.slice(2, word.indexOf('=')), word.slice(word.indexOf('=') + 1))
    else flags.set(word.slice(2), args[++i] ?? '')
  }
  const [verbId, file = '-', ...rest] = words
  const verb = VERBS.find(({ id }) => id === verbId)
  if (!verb) {
    return misuse(
      noSuchVerb(
        verbId,
        VERBS.map(({ id }) => id),
      ),
    )
  }
  if (rest.length > 0) return misuse(`Too many arguments: ${rest.join(' ')}. Give one verb and one file.`)
  const options = optionsFrom(flags, world.nowMs)
  if (typeof options === 'string') return misuse(options)
  let text: string
  try {
    text = world.readInput(file)
  } catch (error) {
    return misuse(cannotRead(file, error))
  }
  const answers = valuesIn(text).map((value) => answerOf(verb, value, options))
  return {
    stdout: answers.map(({ line }) => `${JSON.stringify(line)}\n`).join(''),
    stderr: '',
    exitCode: answers.some(({ isProblem }) => isProblem) ? 2 : 0,
  }
}

const KNOWN_FLAGS = ['constants', 'level', 'base', 'now']

function optionsFrom(flags: ReadonlyMap<string, string>, nowMs: number): Options | string {
  const unknown = [...flags.keys()].find((flag) => !KNOWN_FLAGS.includes(flag))
  if (unknown !== undefined) return noSuchOption(unknown, KNOWN_FLAGS)
  const id = flags.get('constants')
  const constants = constantsById(id ?? 'default')
  if (!constants.ok) return `${constants.problem.what} ${constants.problem.hint}`
  const level = flags.get('level')
  const levelM = level === undefined ? undefined : Number(level)
  if (levelM !== undefined && (level === '' || !asLevel(levelM, '--level').ok))
    return `--level must be a number of metres from −${LIMITS.depthM} to ${LIMITS.depthM}, not “${level}”.`
  const now = flags.get('now')
  const at = now === undefined ? nowMs : Date.parse(now)
  if (!Number.isFinite(at)) return `--now must be a date like 2026-05-02T09:00Z, not “${now}”.`
  return {
    constants: constants.value,
    constantsId: id === 'oracle' || id === 'wahman' || id === 'default' ? id : undefined,
    levelM,
    baseUrl: flags.get('base') ?? 'http://127.0.0.1:5173/',
    nowMs: at,
  }
}

type Value = { readonly json: unknown } | { readonly problem: Problem }

const NOTHING: Problem = {
  code: 'nothing-given',
  path: '',
  what: 'There is nothing to read.',
  why: 'The command line answers what it is given.',
  hint: 'Give a JSON value, one a line, or an array of them.',
}

/** One JSON value that may span lines, an array of values, or a JSON value a line. */
function valuesIn(text: string): readonly Value[] {
  if (text.trim() === '') return [{ problem: NOTHING }]
  const whole = parse(text, '')
  if ('json' in whole) return Array.isArray(whole.json) ? whole.json.map((json: unknown) => ({ json })) : [whole]
  const lines = text.split('\n').filter((line) => line.trim() !== '')
  return lines.length <= 1 ? [whole] : lines.map((line, i) => parse(line, `line ${i + 1}`))
}

function parse(text: string, path: string): Value {
  try {
    return { json: JSON.parse(text) }
  } catch (error) {
    return {
      problem: {
        code: 'not-json',
        path,
        what: `This is not JSON: ${error instanceof Error ? error.message : String(error)}`,
        why: 'The command line reads one JSON value, or one a line.',
        hint: 'Check quotes, commas and brackets.',
      },
    }
  }
}

function answerOf(verb: Verb, value: Value, options: Options): { readonly line: unknown; readonly isProblem: boolean } {
  if ('problem' in value) return { line: { problem: value.problem }, isProblem: true }
  const result = attempt(verb, value.json, options)
  if (result.ok) return { line: result.value, isProblem: false }
  const problem = result.problem
  if (!Array.isArray(problem)) return { line: { problem }, isProblem: true }
  const [first, ...others] = problem as readonly Problem[]
  return { line: others.length > 0 ? { problem: first, others } : { problem: first }, isProblem: true }
}

/** A fault of the program's own at one line must not lose the answers of the others: it is told in that line's place. */
function attempt(verb: Verb, json: unknown, options: Options): ReturnType<Verb['run']> {
  try {
    return verb.run(json, options)
  } catch (error) {
    return fail({
      code: 'program-fault',
      path: '',
      what: `The program failed at this line: ${error instanceof Error ? error.message : String(error)}`,
      why: 'That is a fault of the program, whatever the line says. The other lines are answered.',
      hint: 'Check the line’s numbers; please report the line that brought it about.',
    })
  }
}
