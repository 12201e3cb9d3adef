import { memo } from 'react'
import { formatQuantity, toDisplay, type UnitSystem } from '../../units/index.ts'
import styles from '../plan/plan.module.css'
import { gridLines, gridStep, scaleBarLength } from './grid.ts'
import type { Panes, View } from './view.ts'

interface Props {
  readonly view: View
  readonly panes: Panes
  readonly units: UnitSystem
}

/** The sheet's grid: verticals through plan and section alike, horizontals in the plan. */
export const SheetGrid = memo(function SheetGrid({ view, panes, units }: Props) {
  const step = gridStep(view.scale, units)
  const halfU = panes.width / 2 / view.scale
  const halfV = panes.planHeight / 2 / view.scale
  const x = (u: number) => Math.round(panes.width / 2 + (u - view.u) * view.scale) + 0.5
  const y = (v: number) => Math.round(panes.planHeight / 2 - (v - view.v) * view.scale) + 0.5
  const d = [
    ...gridLines(view.u - halfU, view.u + halfU, step).map((u) => `M${x(u)} 0V${panes.height}`),
    ...gridLines(view.v - halfV, view.v + halfV, step).map((v) => `M0 ${y(v)}H${panes.width}`),
  ]
  return <path className={styles['grid']} d={d.join('')} />
})

/** A round length in the main unit alone: 5 ft, not 5 ft 0 in. */
function roundLength(lengthM: number, units: UnitSystem): string {
  if (units !== 'metric' && toDisplay('length', lengthM, units) >= 1)
    return `${formatQuantity('number', toDisplay('length', lengthM, units), units, { digits: 0 })} ft`
  return formatQuantity('length', lengthM, units, { digits: lengthM < 1 ? 2 : 0 })
}

/** A bar of a round length, so that the drawing can be read with a ruler. */
export const ScaleBar = memo(function ScaleBar({ view, panes, units }: Props) {
  const lengthM = scaleBarLength(view.scale, units)
  const px = lengthM * view.scale
  const x = panes.width - 18 - px
  const y = panes.planHeight + 17
  return (
    <g>
      <path className={styles['scaleBar']} d={`M${x} ${y - 5}V${y}H${x + px}V${y - 5}M${x + px / 2} ${y - 3}V${y}`} />
      <text className={styles['scaleText']} x={x + px / 2} y={y - 8}>
        {roundLength(lengthM, units)}
      </text>
    </g>
  )
})
