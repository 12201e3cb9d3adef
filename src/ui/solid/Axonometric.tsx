import { useMemo } from 'react'
import { axonometryOf } from './axonometry.ts'
import type { SolidModel } from './model.ts'
import styles from './solid.module.css'

/** The basin as a line drawing: what is seen while the solid is being set up, and where a browser can't draw it. */
export function Axonometric({ model }: { readonly model: SolidModel }) {
  const drawing = useMemo(() => axonometryOf(model), [model])
  const clip = `rim-${drawing.id}`
  return (
    <svg className={styles['axonometric']} viewBox={drawing.viewBox} role="img" aria-label="Line drawing of the basin">
      <clipPath id={clip}>
        <path d={drawing.rim} clipRule="evenodd" />
      </clipPath>
      <path d={drawing.rim} className={styles['coping']} style={{ strokeWidth: drawing.copingWidth }} />
      <path d={drawing.rim} className={styles['opening']} style={{ fill: drawing.wallColour }} fillRule="evenodd" />
      <g clipPath={`url(#${clip})`}>
        {drawing.tints.map(({ key, d, colour }) => (
          <path key={key} d={d} style={{ fill: colour }} fillRule="evenodd" />
        ))}
        <path d={drawing.contours} className={styles['contour']} />
        <path d={drawing.edges} className={styles['edge']} />
        <path d={drawing.waterline} className={styles['waterline']} />
      </g>
      <path d={drawing.rim} className={styles['rim']} />
    </svg>
  )
}
