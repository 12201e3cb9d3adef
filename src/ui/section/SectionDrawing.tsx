import { memo, useId, useMemo } from 'react'
import type { Axis, Partition, Point } from '../../basin/index.ts'
import { classes } from '../fields/index.ts'
import { rampColour, rampPlace } from '../plan/depth-steps.ts'
import { type Panes, sectionToScreen, type View } from '../sheet/view.ts'
import { type DrawnCut, drawnCut, wetStretches } from './cut.ts'
import styles from './section.module.css'

interface Props {
  readonly parts: Partition
  readonly axis: Axis
  readonly view: View
  readonly panes: Panes
  readonly levelM: number
  readonly freeboardM: number
  readonly maxDepthM: number
  /** Text beside the water's mark. */
  readonly levelText: string
}

const STOPS = 7

/** The section A–A′: the bed as cut, the water over it, and the level with its mark. */
export const SectionDrawing = memo(function SectionDrawing(props: Props) {
  const { parts, axis, view, panes, levelM, freeboardM, maxDepthM, levelText } = props
  const cut = useMemo(() => drawnCut(parts, axis), [parts, axis])
  const id = useId()
  const at = (p: Point) => sectionToScreen(view, panes, axis.from, p)
  const surfaceY = at([0, -levelM])[1]
  const bottomY = at([0, Math.max(maxDepthM, 0.1)])[1]
  const datumY = at([0, 0])[1]
  return (
    <g>
      <defs>
        <linearGradient id={`${id}-depth`} gradientUnits="userSpaceOnUse" x1={0} x2={0} y1={datumY} y2={bottomY}>
          {Array.from({ length: STOPS }, (_, i) => {
            const share = i / (STOPS - 1)
            const colour = rampColour(rampPlace(share * maxDepthM, maxDepthM))
            return <stop key={share} offset={share} style={{ stopColor: colour }} />
          })}
        </linearGradient>
        <clipPath id={`${id}-wet`}>
          <rect x={-1e5} y={surfaceY} width={2e5} height={1e5} />
        </clipPath>
      </defs>
      {cut.beds.map((bed) => (
        <path
          key={bed[0]?.[0]}
          className={styles['water']}
          d={bedArea(bed, Math.max(freeboardM, levelM), at)}
          fill={`url(#${id}-depth)`}
          clipPath={`url(#${id}-wet)`}
        />
      ))}
      <Ground cut={cut} at={at} />
      {cut.beds.map((bed) => (
        <Surface key={bed[0]?.[0]} bed={bed} levelM={levelM} at={at} />
      ))}
      {levelM === 0 ? null : <Datum beds={cut.beds} at={at} />}
      <LevelMark beds={cut.beds} at={at} y={surfaceY} text={levelText} />
    </g>
  )
})

type Draw = (p: Point) => Point
const line = (points: readonly Point[]) => points.map((p, i) => `${i === 0 ? 'M' : 'L'}${p[0]} ${p[1]}`).join('')

/** The bed closed along a height above the datum. */
function bedArea(bed: readonly Point[], topM: number, at: Draw): string {
  const first = bed[0]
  const last = bed.at(-1)
  if (!first || !last) return ''
  return `${line([[first[0], -topM] as Point, ...bed, [last[0], -topM] as Point].map(at))}Z`
}

interface GroundProps {
  readonly cut: DrawnCut
  readonly at: Draw
}

/** Everything that the cut goes through, in ink; a short line at the rim says that ground begins. */
function Ground({ cut, at }: GroundProps) {
  return (
    <>
      {cut.pieces.map((piece) => (
        <path
          key={`${piece.part}-${piece.points[0]?.join()}-${piece.points.at(-1)?.join()}`}
          className={classes(
            styles['ground'],
            (piece.part === 'riser' || piece.part === 'feature') && styles['feature'],
          )}
          d={line(piece.points.map(at)) + rimMark(piece, at)}
        />
      ))}
    </>
  )
}

function rimMark(piece: DrawnCut['pieces'][number], at: Draw): string {
  const first = piece.points[0]
  const last = piece.points.at(-1)
  if (piece.part !== 'rim' || !first || !last) return ''
  const isEntry = first[1] < last[1]
  const [x, y] = at(isEntry ? first : last)
  return `M${x} ${y}h${isEntry ? -12 : 12}`
}

/** The water's line between the places where it meets the bed. */
function Surface({ bed, levelM, at }: { readonly bed: readonly Point[]; readonly levelM: number; readonly at: Draw }) {
  const d = wetStretches(bed, levelM)
    .map(([from, to]) => line([at([from, -levelM]), at([to, -levelM])]))
    .join('')
  return <path className={styles['surface']} d={d} />
}

function Datum({ beds, at }: { readonly beds: readonly (readonly Point[])[]; readonly at: Draw }) {
  const d = beds.map((bed) => line([at([bed[0]?.[0] ?? 0, 0]), at([bed.at(-1)?.[0] ?? 0, 0])])).join('')
  return <path className={styles['datum']} d={d} />
}

interface MarkProps {
  readonly beds: readonly (readonly Point[])[]
  readonly at: Draw
  readonly y: number
  readonly text: string
}

/** What a level's text takes before its mark, with feet and eighths of an inch [px]. */
const ROOM_PX = 64

/** ▽ over a short level line, at the left of the section. */
function LevelMark({ beds, at, y, text }: MarkProps) {
  const start = beds[0]?.[0]
  if (!start) return null
  const x = Math.max(20, at([start[0], 0])[0] - 30)
  // Where the sheet ends close by, the text stands over the mark instead of before it.
  const isCramped = x < ROOM_PX
  return (
    <>
      <path
        className={styles['levelMark']}
        d={`M${x - 6} ${y - 10}H${x + 6}L${x} ${y - 1}ZM${x - 9} ${y}H${x + 9}M${x - 5} ${y + 3}H${x + 5}`}
      />
      <text
        className={styles['levelText']}
        x={isCramped ? 4 : x - 12}
        y={isCramped ? y - 15 : y - 4}
        textAnchor={isCramped ? 'start' : 'end'}
      >
        {text}
      </text>
    </>
  )
}
