import type { Problem } from '../base/index.ts'
import type { Point } from './types.ts'

/** All complaints of the basin, worded in one place. */
const WORDS = {
  'not-a-number': [
    'A number here is missing or infinite.',
    'Nothing can be measured from it.',
    'Type the number again.',
  ],
  'out-of-range': [
    'A number here is far beyond any pool.',
    'All lengths and depths are in metres.',
    'Check the number, and the unit in which it was measured.',
  ],
  'too-few-points': [
    'The line has fewer than three different points.',
    'It bounds no area.',
    'Add points until it goes round a region.',
  ],
  'no-area': [
    'The line bounds no area.',
    'A region without area holds no water.',
    'Move a point off the others’ line.',
  ],
  'too-small': [
    'The outline is smaller than 1 mm.',
    'It is below what a drawing can mean.',
    'Check the unit in which it was measured.',
  ],
  'too-large': [
    'The outline is more than 10 km across.',
    'No pool is so large.',
    'Check the unit in which it was measured.',
  ],
  'crosses-itself': [
    'The line crosses or touches itself.',
    'Inside and outside cannot be told apart there.',
    'Move a point or a handle until the line is free of itself at the marked places.',
  ],
  'doubles-back': [
    'The line goes out and comes back on itself.',
    'It makes a spike without width.',
    'Take the point at the tip of the spike away.',
  ],
  'island-meets-outline': [
    'The island crosses or touches the outline.',
    'Then it is a part of the shore and not an island.',
    'Move the island off the outline, or draw the outline round it.',
  ],
  'islands-meet': [
    'Two islands cross or touch each other.',
    'The water between them cannot be told.',
    'Move them apart, or draw them as one.',
  ],
  'island-outside': [
    'The island lies outside the outline.',
    'It takes no water away.',
    'Move it inside, or delete it.',
  ],
  'island-in-island': [
    'The island lies inside another island.',
    'There is no water between them to measure.',
    'Delete the inner one.',
  ],
  'feature-outside': [
    'No part of this lies inside the water’s outline.',
    'It changes nothing.',
    'Move it inside, or delete it.',
  ],
  'stations-too-few': [
    'The floor’s profile has no station.',
    'It needs at least one depth.',
    'Add a station: its distance along the axis and the depth there.',
  ],
  'stations-not-rising': [
    'This station doesn’t lie beyond the one before it.',
    'Between two stations at one place the depth is not defined.',
    'Order the stations along the axis and keep them apart.',
  ],
  'axis-too-short': [
    'The two ends of the axis are the same place.',
    'It gives no direction.',
    'Draw it from the shallow end to the deep end.',
  ],
  'radius-not-positive': [
    'The radius of the cove isn’t above zero.',
    'A wall without a cove is upright.',
    'Give a radius, or choose the upright wall.',
  ],
  'ring-meets-shore': [
    'The depth line crosses or touches the outline or an island.',
    'A depth can’t be told between two lines that meet.',
    'Move it inside; the depth along the shore is given by itself.',
  ],
  'rings-meet': [
    'Two depth lines cross or touch each other.',
    'One place can’t have two depths.',
    'Keep them apart, one inside or beside the other.',
  ],
  'ring-outside': [
    'The depth line lies where there is no water.',
    'It changes nothing.',
    'Move it inside the outline and off the islands, or delete it.',
  ],
  'sounding-outside': [
    'This sounding lies outside the outline or on an island.',
    'There is no water to be deep there.',
    'Correct its place or the outline. On the line itself is fine.',
  ],
  'soundings-too-few': [
    'The floor has no sounding and no depth along the shore.',
    'It needs at least one depth.',
    'Add a sounding, or give the depth along the shore.',
  ],
  'soundings-coincide': [
    'This sounding lies at the place of another one with another depth.',
    'One place can’t have two depths.',
    'Keep the better one.',
  ],
  'dish-radius-not-positive': [
    'The radius of the hollow isn’t above zero.',
    'A floor without a hollow is called flat.',
    'Give a radius, or choose the flat floor.',
  ],
  'dish-beyond-half-sphere': [
    'The hollow is deeper below its rim, or higher above it, than it is wide from centre to rim.',
    'The cap of a sphere is at most half of it.',
    'Bring the two depths nearer together, give a larger radius, or choose the cone.',
  ],
  'run-negative': [
    'The run of the battered wall is less than zero.',
    'A wall that leans out over the water isn’t known here.',
    'Give the horizontal metres for each metre of depth, 0 for an upright wall.',
  ],
  'treads-too-few': ['The flight has no tread.', 'There is nothing to stand on.', 'Add a tread.'],
  'treads-not-ordered': [
    'This tread doesn’t lie beyond the one before it.',
    'Treads follow each other from the first outward.',
    'Order the treads and keep them apart.',
  ],
  'volume-out-of-reach': [
    'No level of the water gives this volume.',
    'A volume must be zero or more, and finite.',
    'Ask for another volume.',
  ],
  'volume-not-met': [
    'Nothing between the two limits gives this volume.',
    'What is moved changes the volume too little, or the shape makes no sense before it is met.',
    'Ask for another volume, or move something else.',
  ],
  'cannot-divide': [
    'The lines of this plan lie too close together to be told apart.',
    'The volume would not be certain.',
    'Move the features or islands a little apart, or exactly onto each other.',
  ],
  arithmetic: [
    'A figure of this plan came out as no number.',
    'A sum went wrong inside the program, so no figure is given.',
    'Move a point a little; if it stays, please report the plan.',
  ],
  'mesh-disagrees': [
    'The picture’s solid doesn’t have the volume that was computed.',
    'One of the two is wrong, so no picture is shown.',
    'Move a point a little; if it stays, please report the plan.',
  ],
  'loop-too-short': ['The stroke is too short to be a loop.', 'It bounds no area.', 'Draw all the way round.'],
  'loop-crosses-itself': [
    'The stroke crosses itself.',
    'Inside and outside cannot be told apart.',
    'Draw it again without a crossing; the ends are joined for you.',
  ],
  'tolerance-not-positive': [
    'The tolerance of the fit isn’t above zero.',
    'A curve cannot pass nearer than that.',
    'Give a distance above zero.',
  ],
  'parameter-out-of-range': [
    'A measure of this outline is out of its range.',
    'The outline would not close or would cross itself.',
    'Keep each measure within the range that is shown.',
  ],
} as const satisfies Record<string, readonly [string, string, string]>

/** Why a basin holds no water, by what keeps it out. */
const DRY = {
  floor: [
    'The floor is nowhere below the waterline.',
    'The basin holds no water.',
    'Depths are positive downward from the waterline: check their sign.',
  ],
  island: [
    'The island covers the whole outline.',
    'It leaves no water to measure.',
    'Make it smaller and move it inside, or delete it.',
  ],
  level: [
    'The water level lies below every part of the floor.',
    'The basin is empty, so there is no volume to reckon with.',
    'Raise the level to where the water stands, or correct the depths of the floor.',
  ],
} as const satisfies Record<string, readonly [string, string, string]>

export type ProblemCode = keyof typeof WORDS

/** The problem of a code at a path of the body. */
export function problem(code: ProblemCode, path: string, at?: readonly Point[]): Problem {
  const [what, why, hint] = WORDS[code]
  return at && at.length > 0 ? { code, path, what, why, hint, at } : { code, path, what, why, hint }
}

/** The problem of a basin that something at a path leaves without water. */
export function noWater(cause: keyof typeof DRY, path: string, at?: readonly Point[]): Problem {
  const [what, why, hint] = DRY[cause]
  return { code: 'no-water', path, what, why, hint, ...(at && { at }) }
}

/** The problem of a wall that reaches over all of the water: its size, the one that is sure to leave some, and the reach [m]. */
export function wallLeavesNone(
  size: { readonly path: string; readonly name: string; readonly unit: string; readonly value: number },
  most: number,
  reachM: number,
  at: Point,
): Problem {
  return {
    code: 'no-water',
    path: size.path,
    what: `A wall with a ${size.name} of ${size.value}${size.unit} takes all of the water.`,
    why: `No place is further than ${lessOrSame(reachM)} m from the walls, and there the wall still stands above the level.`,
    hint: `Keep the ${size.name} below ${lessOrSame(most)}${size.unit}.`,
    at: [at],
  }
}

/** A number to three digits, rounded down. */
function lessOrSame(value: number): number {
  const unit = 10 ** (Math.floor(Math.log10(value)) - 2)
  return Number((Math.floor(value / unit) * unit).toPrecision(3))
}
