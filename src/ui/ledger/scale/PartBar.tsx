import { useId } from 'react'
import { formatQuantity, type Quantity } from '../../../units/index.ts'
import { useUnits } from '../../context.tsx'
import { classes } from '../../fields/index.ts'
import bar from './bar.module.css'
import { rulerMarks } from './ruler.ts'

/** How a part is drawn: told apart without colour. */
export type PartInk = 'solid' | 'hatched' | 'dotted' | 'plain' | 'lined'

/** One part of a whole. */
export interface BarPart {
  readonly id: string
  readonly label: string
  readonly value: number
  readonly ink: PartInk
}

const LENGTH = 360
const TOP = 1
const THICK = 18

interface PartBarProps {
  readonly parts: readonly BarPart[]
  readonly quantity: Quantity
  /** What the whole bar is, for a screen reader; the table beneath says its parts. */
  readonly words: string
}

/** A whole and its parts as a ruled bar, with a ruler under it in the whole's unit. */
export function PartBar({ parts, quantity, words }: PartBarProps) {
  const id = useId()
  const units = useUnits()
  const total = parts.reduce((sum, { value }) => sum + Math.max(0, value), 0)
  if (!(total > 0)) return null
  const place = (value: number) => 1 + (value / total) * (LENGTH - 2)
  let start = 0
  const pieces = parts.flatMap((part) => {
    const value = Math.max(0, part.value)
    const x = place(start)
    start += value
    return value > 0 ? [{ ...part, x, width: place(start) - x }] : []
  })
  const marks = rulerMarks(total)
  const step = (marks.find(({ isLabelled, value }) => isLabelled && value > 0)?.value ?? total) * 1.0001
  const digits = Math.max(0, Math.ceil(-Math.log10(step)))
  return (
    <svg className={bar['bar']} viewBox={`0 0 ${LENGTH} 42`} role="img" aria-label={words}>
      <Inks id={id} />
      {pieces.map((piece) => (
        <rect
          key={piece.id}
          x={piece.x}
          y={TOP}
          width={piece.width}
          height={THICK}
          className={bar['part']}
          fill={fillOf(id, piece.ink)}
        />
      ))}
      <g>
        {marks.map(({ value, isLabelled }) => (
          <line
            key={value}
            x1={place(value)}
            x2={place(value)}
            y1={TOP + THICK}
            y2={TOP + THICK + (isLabelled ? 7 : 4)}
            className={bar['mark']}
          />
        ))}
        {marks
          .filter(({ isLabelled }) => isLabelled)
          .map(({ value }) => (
            <text
              key={value}
              x={place(value)}
              y={TOP + THICK + 18}
              textAnchor={value === 0 ? 'start' : place(value) > LENGTH - 12 ? 'end' : 'middle'}
              className={bar['figure']}
            >
              {value === 0
                ? formatQuantity(quantity, 0, units, { digits: 0 })
                : formatQuantity('number', value, units, { digits })}
            </text>
          ))}
      </g>
    </svg>
  )
}

/** The sample of a part's ink, before its name in a table. */
export function PartSample({ ink }: { readonly ink: PartInk }) {
  const id = useId()
  return (
    <svg className={classes(bar['sample'])} viewBox="0 0 14 12" width="14" height="12" aria-hidden="true">
      <Inks id={id} />
      <rect x="1" y="1" width="12" height="10" className={bar['part']} fill={fillOf(id, ink)} />
    </svg>
  )
}

const fillOf = (id: string, ink: PartInk) =>
  ink === 'plain' ? 'var(--page)' : ink === 'solid' ? 'var(--ink)' : `url(#${id}${ink})`

function Inks({ id }: { readonly id: string }) {
  const pattern = (ink: PartInk, size: number, turn: number, children: React.ReactNode) => (
    <pattern
      id={`${id}${ink}`}
      width={size}
      height={size}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turn})`}
    >
      {children}
    </pattern>
  )
  return (
    <defs>
      {pattern('hatched', 4, 45, <line x1="0" y1="0" x2="0" y2="4" className={bar['ink']} />)}
      {pattern('lined', 3, 0, <line x1="0" y1="1.5" x2="3" y2="1.5" className={bar['ink']} />)}
      {pattern('dotted', 4, 45, <circle cx="2" cy="2" r="0.9" className={bar['dot']} />)}
    </defs>
  )
}
