import type { ReadingKey, ReadingValues } from '../../../document/index.ts'
import type { Band } from '../../../plan/index.ts'
import { leastSeen, METALS, methodSigma, type TakenReading, type TrapHere } from '../../../water/index.ts'
import { READING_ROWS, type ReadingRow, type Tolerance, toleranceOf } from '../scale/index.ts'

/** A line of the readings: what was measured or reckoned, how far it may be off, and where it should be. */
export interface ReadingLine {
  readonly row: ReadingRow
  readonly value: number
  readonly isReckoned: boolean
  /** One standard deviation, in the row's canonical unit; absent where the method's scatter is not known. */
  readonly sigma: number | undefined
  readonly tolerance: Tolerance | undefined
  readonly band: Band | undefined
  /** From what it was reckoned, with its range. */
  readonly words?: string | undefined
}

export type Bands = { readonly [K in ReadingKey]?: Band | undefined }

/** The lines of a set in the order of the rows; what was reckoned stands where it would have been measured. */
export function readingLines(
  values: ReadingValues,
  methodId: string,
  taken: Pick<TakenReading, 'told' | 'combined'> | undefined,
  bands: Bands,
): readonly ReadingLine[] {
  return READING_ROWS.flatMap((row): ReadingLine[] => {
    const value = values[row.key]
    const band = bands[row.key]
    if (value === undefined) {
      const line = taken && reckoned(row, taken, values)
      return line ? [{ ...line, band }] : []
    }
    const scatter = methodSigma(methodId, row.key, value)
    const openAt = scatter?.isInRange === false ? endOf(methodId, row, value) : undefined
    const seenFrom = openAt === 'low' ? leastSeen(methodId, row.key) : undefined
    return [
      {
        row,
        value,
        isReckoned: false,
        sigma: scatter?.sigma,
        tolerance: scatter && toleranceOf(row, value, scatter.sigma, openAt, seenFrom),
        band,
      },
    ]
  })
}

/** At which end of its range a method gave up: just inside the reading it would see, or not. */
function endOf(methodId: string, row: ReadingRow, value: number): 'low' | 'high' {
  return methodSigma(methodId, row.key, value / 2)?.isInRange === true ? 'high' : 'low'
}

function reckoned(
  row: ReadingRow,
  taken: Pick<TakenReading, 'told' | 'combined'>,
  values: ReadingValues,
): Omit<ReadingLine, 'band'> | undefined {
  const told = taken.told.find(({ key }) => key === row.key)
  if (told) {
    const { low, best, high } = told.likely
    const { words } = told
    return { row, value: best, isReckoned: true, sigma: undefined, tolerance: { low, high }, words }
  }
  if (row.key !== 'cc_mg_per_L_as_Cl2' || !taken.combined || values.tc_mg_per_L_as_Cl2 === undefined) return undefined
  const { combinedMgPerL: value, sigmaMgPerL: sigma, isWithinScatter } = taken.combined
  const words = `Total less free chlorine.${isWithinScatter ? ' It is less than the two tests scatter: it may as well be none.' : ''}`
  return { row, value, isReckoned: true, sigma, tolerance: toleranceOf(row, value, sigma), words }
}

/** Where metals and combined chlorine should stay: from none to the limit. */
export function limitBands(combinedHighMgPerL: number | undefined): Bands {
  const upTo = (limit: number): Band => ({ low: 0, aim: 0, high: limit })
  return {
    ...Object.fromEntries(METALS.rows.map((metal) => [metal.key, upTo(metal.limitMgPerL)])),
    ...(combinedHighMgPerL === undefined ? {} : { cc_mg_per_L_as_Cl2: upTo(combinedHighMgPerL) }),
  }
}

/** A trap of a test with the letter that marks the readings it spoils. */
export interface TestNote extends TrapHere {
  readonly mark: string
}

/** Traps lettered in their order. */
export function lettered(traps: readonly TrapHere[]): readonly TestNote[] {
  return traps.map((here, i) => ({ ...here, mark: String.fromCharCode(97 + i) }))
}
