import type { ReactNode } from 'react'
import type { FloorKindId } from '../../../document/index.ts'

interface FloorChoice {
  readonly id: FloorKindId
  readonly label: string
  readonly note: string
  /** A section through such a floor, in a box of 40 by 18. */
  readonly mark: ReactNode
}

const pool = (d: string, more?: ReactNode) => (
  <svg
    viewBox="0 0 40 18"
    width="40"
    height="18"
    aria-hidden="true"
    fill="none"
    stroke="currentColor"
    strokeWidth="1.3"
  >
    <path d={d} strokeLinejoin="round" />
    {more}
  </svg>
)

/** The kinds of floor in the words of whoever stands beside one. */
export const FLOOR_CHOICES: readonly FloorChoice[] = [
  { id: 'flat', label: 'flat', note: 'One depth everywhere', mark: pool('M2 2V13H38V2') },
  {
    id: 'profile',
    label: 'slopes along a line',
    note: 'Depths at stations along the section A–A′, the same all across it',
    mark: pool('M2 2V8H12L26 15H38V2'),
  },
  {
    id: 'contours',
    label: 'depth lines, a hopper',
    note: 'Lines of equal depth drawn on the plan, the floor straight between them; a hopper is one line',
    mark: pool('M2 2V7L14 15H26L38 7V2'),
  },
  {
    id: 'soundings',
    label: 'soundings',
    note: 'Depths measured wherever you can reach; the floor is straight between them',
    mark: pool(
      'M2 2V8L11 11L21 9L30 15L38 12V2',
      <path d="M9.500 11h3M11 9.500v3M19.500 9h3M21 7.500v3M28.500 15h3M30 13.500v3" />,
    ),
  },
  {
    id: 'dish',
    label: 'dished',
    note: 'A round hollow in a level floor: a bowl, or a cone to a drain',
    mark: pool('M2 2V10H7Q20 19 33 10H38V2'),
  },
]
