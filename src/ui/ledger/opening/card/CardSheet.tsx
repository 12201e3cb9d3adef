import { type ComponentProps, useLayoutEffect, useRef } from 'react'
import { createPortal } from 'react-dom'
import { Card } from './Card.tsx'
import styles from './card.module.css'

/** What both A4 and Letter leave inside the margins, less a line for what printers lay out otherwise [mm]. */
const PAGE_MM = 243
const PX_PER_MM = 96 / 25.4
const [MOST_SCALE, LEAST_SCALE, STEP] = [1.2, 0.4, 0.02]

/** The card on paper, beside the page: as large as one sheet lets it be. */
export function CardSheet(props: ComponentProps<typeof Card>) {
  const sheet = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    if (sheet.current) fitToPage(sheet.current)
  })
  return createPortal(
    <div ref={sheet} className={styles['sheet']}>
      <Card {...props} />
    </div>,
    document.body,
  )
}

/** Sets the type smaller until all of it stands on one page; measured, since lines break as they will. */
function fitToPage(sheet: HTMLElement): void {
  for (let scale = MOST_SCALE; scale >= LEAST_SCALE; scale -= STEP) {
    sheet.style.setProperty('--card-scale', scale.toFixed(2))
    if (sheet.scrollHeight <= PAGE_MM * PX_PER_MM) return
  }
}
