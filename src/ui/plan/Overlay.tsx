import type { Point } from '../../basin/index.ts'
import { useLocal } from '../sheet/local.ts'
import { type Panes, svgMatrix, toScreen, type View } from '../sheet/view.ts'
import { loopThrough } from './loop-through.ts'
import { pathFrom } from './PlanGround.tsx'
import { Proposal } from './Proposal.tsx'
import styles from './plan.module.css'

interface Props {
  readonly view: View
  readonly panes: Panes
  readonly origin: Point
}

const CROSS_PX = 14
/** A letter of a remark takes about this much, and the remark stands so far over its place, or under one near the top. */
const LETTER_PX = 7.4
const [ABOVE_PX, BELOW_PX, TOP_PX] = [16, 30, 36]

/** What is drawn only while a hand is at work: guides, lengths, the loop or points being placed, the cross hairs. */
export function Overlay({ view, panes, origin }: Props) {
  const on = (p: Point) => toScreen(view, panes, p)
  return (
    <g>
      <Ghost view={view} panes={panes} origin={origin} />
      <Draft view={view} panes={panes} origin={origin} />
      <Stroke on={on} />
      <Untangled view={view} panes={panes} origin={origin} />
      <Guides on={on} width={panes.width} />
      <Cross on={on} />
      <Sounded on={on} />
    </g>
  )
}

interface OnProps {
  readonly on: (p: Point) => Point
}

function Stroke({ on }: OnProps) {
  const stroke = useLocal((state) => state.stroke)
  if (stroke.length < 2) return null
  const d = stroke.map(on).map((p, i) => `${i === 0 ? 'M' : 'L'}${p[0]} ${p[1]}`)
  return <path className={styles['stroke']} d={d.join('')} />
}

function Untangled({ view, panes, origin }: Props) {
  const path = useLocal((state) => state.untangled)
  if (!path) return null
  return (
    <g transform={svgMatrix(view, panes, origin)}>
      <Proposal path={path} origin={origin} />
    </g>
  )
}

function Guides({ on, width }: OnProps & { readonly width: number }) {
  const guides = useLocal((state) => state.guides)
  const remarks = useLocal((state) => state.remarks)
  return (
    <>
      {guides.map((guide) => {
        const [x1, y1] = on(guide.from)
        const [x2, y2] = on(guide.to)
        const length = Math.hypot(x2 - x1, y2 - y1) || 1
        const [ex, ey] = [((x2 - x1) / length) * 26, ((y2 - y1) / length) * 26]
        return (
          <g key={`${guide.what}-${x1}-${y1}`}>
            <line className={styles['guide']} x1={x1} y1={y1} x2={x2 + ex} y2={y2 + ey} />
            <text className={styles['guideName']} x={x2 + ex * 1.9} y={y2 + ey * 1.9 - 2}>
              {guide.what}
            </text>
          </g>
        )
      })}
      {remarks.map((remark) => {
        const [x, y] = on(remark.at)
        // All of it stays on the paper.
        const half = Math.min(width / 2, (remark.text.length * LETTER_PX) / 2)
        return (
          <text
            key={`${x}-${y}`}
            className={styles['remark']}
            x={Math.min(width - half, Math.max(half, x))}
            y={y < TOP_PX ? y + BELOW_PX : y - ABOVE_PX}
          >
            {remark.text}
          </text>
        )
      })}
    </>
  )
}

function Ghost({ view, panes, origin }: Props) {
  const ghost = useLocal((state) => state.ghost)
  if (ghost.length === 0) return null
  return (
    <g transform={svgMatrix(view, panes, origin)}>
      <path className={styles['ghost']} data-shape="ghost" d={ghost.map((path) => pathFrom(path, origin)).join('')} />
    </g>
  )
}

function Draft({ view, panes, origin }: Props) {
  const { points } = useLocal((state) => state.draft)
  const cursor = useLocal((state) => state.cursor)
  const hover = useLocal((state) => state.hover)
  if (points.length === 0) return null
  const last = points.at(-1)?.at
  const pointed = cursor ?? hover
  const next = pointed && last && (pointed[0] !== last[0] || pointed[1] !== last[1]) ? pointed : undefined
  const withNext = next ? [...points, { at: next, isSmooth: true }] : points
  const loop = loopThrough(points)
  const trial = loopThrough(withNext)
  const on = (p: Point) => toScreen(view, panes, p)
  return (
    <>
      <g transform={svgMatrix(view, panes, origin)}>
        {trial ? <path className={styles['draftClosing']} d={pathFrom(trial, origin)} /> : null}
        {loop ? <path className={styles['draftLine']} d={pathFrom(loop, origin)} /> : null}
      </g>
      {points.length === 2 || (points.length === 1 && next) ? (
        <path
          className={styles['draftLine']}
          d={withNext
            .slice(0, 2)
            .map((p) => on(p.at))
            .map((p, i) => `${i === 0 ? 'M' : 'L'}${p[0]} ${p[1]}`)
            .join('')}
        />
      ) : null}
      {points.map((point, i) => {
        const [x, y] = on(point.at)
        const key = `${i}-${x}-${y}`
        return point.isSmooth ? (
          <circle key={key} className={styles['handle']} cx={x} cy={y} r={i === 0 ? 7 : 4.5} />
        ) : (
          <rect key={key} className={styles['handle']} x={x - 4.5} y={y - 4.5} width={9} height={9} />
        )
      })}
    </>
  )
}

/** The place that is being sounded, until its depth is typed. */
function Sounded({ on }: OnProps) {
  const sounded = useLocal((state) => state.sounded)
  if (!sounded) return null
  const [x, y] = on(sounded)
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle className={styles['soundedRing']} r={13} />
      <path className={styles['soundingCross']} d="M-6 0H6M0 -6V6" />
      <text className={styles['remark']} y={-24}>
        depth?
      </text>
    </g>
  )
}

function Cross({ on }: OnProps) {
  const cursor = useLocal((state) => state.cursor)
  if (!cursor) return null
  const [x, y] = on(cursor)
  return (
    <path
      className={styles['cross']}
      data-shape="cross-hairs"
      d={`M${x - CROSS_PX} ${y}H${x - 4}M${x + 4} ${y}H${x + CROSS_PX}M${x} ${y - CROSS_PX}V${y - 4}M${x} ${y + 4}V${y + CROSS_PX}`}
    />
  )
}
