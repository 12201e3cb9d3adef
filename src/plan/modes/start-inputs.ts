import type { Quantity } from '../../units/index.ts'
import type { StartInput, StartModeId } from './types.ts'

/**
 * What each way of starting asks for. It stands apart from the ways themselves so that a document can be checked without
 * loading their schedules; every way has its entry here and takes its inputs from it.
 */
export const START_INPUTS: { readonly [M in StartModeId]: readonly StartInput[] } = {
  'filled-pool': [],
  'new-plaster': [],
  'liner-or-shell': [],
  'spring-opening': [
    input(
      'loweredM',
      'Let down at closing',
      'length',
      [0, 3],
      'How far the level was lowered at closing, below the usual one.',
      { isNeeded: true },
    ),
    input(
      'springBelowM',
      'Level in spring, below the usual',
      'length',
      [-0.5, 3],
      'Measured before anything is filled up; negative where it stands higher.',
      { isNeeded: true },
    ),
    input(
      'rainM',
      'Rain and melt over winter, less what dried up',
      'length',
      [0, 3],
      'From the weather service, as a height of water. Leave it out under a closed cover that was pumped to the outside.',
    ),
    input(
      'pumpedOffM',
      'Pumped off over winter',
      'length',
      [0, 3],
      'All lowerings during winter together, water of the pool itself.',
      { usual: 0 },
    ),
    input('waterC', 'Water temperature now', 'temperature', [0, 35], 'In the pool, not in the shade beside it.', {
      usual: 8,
    }),
    input(
      'bucketMgPerL',
      'Chlorine the bucket used up',
      'concentration',
      [0, 1000],
      'All that went into the bucket of the ammonia test until it held, less what it still held.',
    ),
  ],
  'unknown-pool': [],
  'mid-season': [],
  'heavy-rain': [
    input('rainM', 'Rain', 'length', [0, 1], 'As a height of water, as a rain gauge shows it.', { isNeeded: true }),
    input(
      'catchmentM2',
      'Ground and roofs that drain into the pool',
      'area',
      [0, 2000],
      'Zero where the deck falls away from the pool, as it should.',
      { usual: 0 },
    ),
    input(
      'runoffPercent',
      'Of it runs off',
      'percent',
      [0, 100],
      'Stone and roofs nearly all, lawn a third or less (from memory).',
      { usual: 90 },
    ),
    input(
      'roomM',
      'Room up to the overflow',
      'length',
      [0, 1],
      'How far below the overflow the water stood before the rain.',
      { usual: 0.05 },
    ),
  ],
  'partial-drain': [
    input(
      'drainedM',
      'Level lowered by',
      'length',
      [0, 5],
      'From the usual level down to where it stood, before refilling. Holds while walls are upright; else give the share.',
    ),
    input(
      'drainedPercent',
      'Or share of the water taken out',
      'percent',
      [0, 100],
      'From a meter or a drawn level curve.',
    ),
  ],
  party: [
    input('bathers', 'People who bathed', 'number', [0, 1000], 'Counted or guessed; small children count in full.', {
      isNeeded: true,
    }),
    input('hours', 'Hours each was in', 'duration', [0, 24], 'On average.', { isNeeded: true }),
  ],
  'winter-closing': [
    input('coldC', 'Coldest water over winter', 'temperature', [0, 15], 'Under ice about 2 to 4 °C near the floor.', {
      usual: 4,
    }),
    input(
      'loweredM',
      'Level let down by',
      'length',
      [0, 1.5],
      'As the cover’s and the shell’s makers say; zero where it stays.',
      { usual: 0 },
    ),
  ],
}

function input(
  key: string,
  label: string,
  quantity: Quantity,
  range: readonly [low: number, high: number],
  help: string,
  more: { readonly usual?: number; readonly isNeeded?: boolean } = {},
): StartInput {
  const [low, high] = range
  return { key, label, quantity, low, high, help, isNeeded: false, ...more }
}
