import { fail, ok, type Problem, type Result, under } from '../../base/index.ts'
import {
  type Axis,
  contoursOf,
  depthAt,
  derivativesOf,
  levelBreaks,
  levelForVolume,
  measure,
  type Partition,
  type Point,
  sectionOf,
  uncertaintyOf,
} from '../../basin/index.ts'
import { deriveBody } from '../../derive/index.ts'
import type { Body } from '../../document/index.ts'
import { dryNotices } from '../dry-level.ts'
import { asAxis, asPoint, listOf } from '../list-input.ts'
import { readSpecLine, specNotices } from '../spec-input.ts'
import { asLevel, asNumber, type Verb } from '../verb.ts'

/** What can be told of a body without asking for a place, a depth or a volume. */
const TOLD = ['levelBreaks', 'derivatives', 'errors'] as const
type Told = (typeof TOLD)[number]

export const inspect: Verb = {
  id: 'inspect',
  summary:
    'SPEC or {"spec": SPEC, "body"?: id, "levelM"?, "volumesM3"?: […], "places"?: [[x, y], …], "sections"?: [{"from", "to"}, …], "depthsM"?: […], "want"?: ["levelBreaks", "derivatives", "errors"]} → {"bodies": […], "notices"?: […]}; a volume that can’t be has its "problem" beside it',
  run: (input, options) => {
    const line = readSpecLine(input)
    if (!line.ok) return line
    const { spec, asked, prefix } = line.value
    const questions = questionsIn(asked, options.levelM)
    if (!questions.ok) return questions
    const { bodyId } = questions.value
    if (bodyId !== undefined && !spec.bodies.some(({ id }) => id === bodyId)) return fail(noSuchBody(bodyId))
    const levelPath = asked['levelM'] === undefined ? '--level' : 'levelM'
    const bodies: unknown[] = []
    const unmet: Problem[] = []
    const dry: Problem[] = []
    for (const [i, body] of spec.bodies.entries()) {
      if (bodyId !== undefined && body.id !== bodyId) continue
      const derived = deriveBody(body)
      const { partition } = derived
      if (!partition.ok) return fail(under(prefix, under(`bodies[${i}]`, partition.problem)))
      const levels = levelsOf(partition.value, questions.value.volumesM3)
      for (const level of levels ?? []) if ('problem' in level) unmet.push(level.problem)
      bodies.push(tell(partition.value, body, questions.value, levels))
      const { levelM } = questions.value
      if (levelM !== undefined) dry.push(...dryNotices(body, measure(partition.value, levelM), levelPath))
    }
    if (bodies.length > 0 && isNothingElse(questions.value, unmet.length / bodies.length)) {
      return fail(unmet.slice(0, unmet.length / bodies.length))
    }
    return ok({ bodies, ...specNotices(spec, prefix, dry) })
  },
}

interface Questions {
  readonly bodyId: string | undefined
  /** Instead of the body's own [m above the datum]. */
  readonly levelM: number | undefined
  readonly volumesM3: readonly number[] | undefined
  readonly places: readonly Point[] | undefined
  readonly sections: readonly Axis[] | undefined
  readonly depthsM: readonly number[] | undefined
  readonly want: readonly Told[]
}

function questionsIn(asked: Readonly<Record<string, unknown>>, levelAsked: number | undefined): Result<Questions> {
  const level = asked['levelM'] === undefined ? ok(levelAsked) : asLevel(asked['levelM'], 'levelM')
  if (!level.ok) return level
  const volumesM3 = listOf(asked['volumesM3'], 'volumesM3', asNumber)
  if (!volumesM3.ok) return volumesM3
  const places = listOf(asked['places'], 'places', asPoint)
  if (!places.ok) return places
  const sections = listOf(asked['sections'], 'sections', asAxis)
  if (!sections.ok) return sections
  const depthsM = listOf(asked['depthsM'], 'depthsM', asNumber)
  if (!depthsM.ok) return depthsM
  const want = listOf(asked['want'], 'want', asTold)
  if (!want.ok) return want
  const body = asked['body']
  if (body !== undefined && typeof body !== 'string') return fail(noSuchBody(body))
  return ok({
    bodyId: body,
    levelM: level.value,
    volumesM3: volumesM3.value,
    places: places.value,
    sections: sections.value,
    depthsM: depthsM.value,
    want: want.value ?? TOLD,
  })
}

/** One volume that can't be doesn't take other answers away; where no other was asked for, the line has none. */
function isNothingElse({ volumesM3, places, sections, depthsM }: Questions, unmet: number): boolean {
  return unmet > 0 && unmet === volumesM3?.length && !places && !sections && !depthsM
}

type LevelOfVolume =
  | { readonly volumeM3: number; readonly levelM: number }
  | { readonly volumeM3: number; readonly levelM: null; readonly problem: Problem }

/** The level of each volume, or in its place why it has none. */
function levelsOf(parts: Partition, volumesM3: readonly number[] | undefined): readonly LevelOfVolume[] | undefined {
  return volumesM3?.map((volumeM3, i) => {
    const level = levelForVolume(parts, volumeM3)
    if (level.ok) return { volumeM3, levelM: level.value }
    return { volumeM3, levelM: null, problem: { ...level.problem, path: `volumesM3[${i}]` } }
  })
}

/** The answers for one body; depths are below the datum, levels above it [m]. */
function tell(
  parts: Partition,
  body: Body,
  questions: Questions,
  levels: readonly LevelOfVolume[] | undefined,
): Readonly<Record<string, unknown>> {
  const { places, sections, depthsM, want } = questions
  const levelM = questions.levelM ?? body.levelM
  return {
    id: body.id,
    levelM,
    ...(want.includes('errors') && errorsAt(parts, levelM)),
    ...(want.includes('levelBreaks') && { levelBreaksM: levelBreaks(parts) }),
    ...(want.includes('derivatives') && { derivatives: derivativesOf(parts, levelM) }),
    ...(levels && { levels }),
    ...(places && {
      places: places.map((at) => ({ at, ...(depthAt(parts, at[0], at[1]) ?? { depthM: null, part: null }) })),
    }),
    ...(sections && { sections: sections.map((axis) => ({ ...axis, ...sectionOf(parts, axis) })) }),
    ...(depthsM && { contours: contoursOf(parts, depthsM) }),
  }
}

/** The three errors of a volume apart, and what makes the measured one. */
function errorsAt(parts: Partition, levelM: number) {
  const { volumeM3, errors } = measure(parts, levelM)
  const { contributions, largest } = uncertaintyOf(parts, levelM)
  return { volumeM3, errors, measurement: { contributions, largest } }
}

function asTold(value: unknown, path: string): Result<Told> {
  const told = TOLD.find((name) => name === value)
  if (told) return ok(told)
  return fail({
    code: 'not-one-of',
    path,
    what: `${path} is ${JSON.stringify(value)}, which isn’t told.`,
    why: 'It would be left aside without a word.',
    hint: `Use some of ${TOLD.join(', ')}; without “want” all are told.`,
  })
}

function noSuchBody(id: unknown): Problem {
  return {
    code: 'no-such-body',
    path: 'body',
    what: `There is no body of water ${JSON.stringify(id)}.`,
    why: 'It is what the questions are about.',
    hint: 'Give the id of one of the spec’s bodies, or leave “body” out to ask of all.',
  }
}
