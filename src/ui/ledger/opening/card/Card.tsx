import type { DeckCard } from '../../../../plan/index.ts'
import { formatQuantity } from '../../../../units/index.ts'
import { useApp, useUnits } from '../../../context.tsx'
import { formatReading } from '../../scale/index.ts'
import { andList } from '../../water/reading-words.ts'
import { dateOf } from '../schedule.ts'
import { useProducts } from '../useProducts.ts'
import styles from './card.module.css'
import { CARD_AID, cardCautions, cardGroups } from './card-rows.ts'

interface CardProps {
  readonly card: DeckCard
  /** Readings that a start under way doses nothing for today. */
  readonly withheld: readonly string[]
}

/** The page for the pool's edge: what a reading asks for, in this pool's own volume. */
export function Card({ card, withheld }: CardProps) {
  const units = useUnits()
  const list = useProducts()
  const name = useApp((state) => state.spec.name)
  const nowMs = useApp((state) => state.nowMs)
  const groups = cardGroups(card, units, list)
  const { volumeM3, volumeSigmaM3, waterIs, measuredAtMs, water, assumed, countedAsNone } = card.madeFor
  const isAssumed = (key: string) => assumed.some((each) => each === key)
  const listed = (keys: readonly (typeof KEYS)[number][]) =>
    keys
      .flatMap(({ key, label }) => {
        const value = water[key]
        return value === undefined ? [] : [`${label} ${formatReading(key, value, units)}`]
      })
      .join(', ')
  const isNone = (key: string) => countedAsNone.some((each) => each === key)
  const stands = listed(KEYS.filter(({ key }) => !isAssumed(key) && !isNone(key)))
  const taken = listed(KEYS.filter(({ key }) => isAssumed(key)))
  const none = KEYS.flatMap(({ key, label }) => (isNone(key) ? [label] : []))
  return (
    <article className={styles['card']} aria-label="Deck card">
      <header className={styles['head']}>
        <h2>{name === '' ? 'Unnamed pool' : name}: deck card</h2>
        <p>
          For {formatQuantity('volume', volumeM3, units, { sigma: volumeSigmaM3 })} of this pool’s water,{' '}
          {waterIs === 'measured' && measuredAtMs !== undefined
            ? `as read on ${dateOf(measuredAtMs, nowMs)}`
            : 'as its targets have it'}
          : {stands}.{taken === '' ? '' : ` Not read, taken from the targets: ${taken}.`}
          {none.length === 0
            ? ''
            : ` Not read, counted as none so that no dose is too big: ${andList(none)}. With it pH takes more.`}{' '}
          Made {dateOf(nowMs, nowMs)}: a new one when any of it changes.
        </p>
        {withheld.length > 0 && (
          <p>
            <strong>Left out,</strong> since the start of this pool waits with it: {andList(withheld)}.
          </p>
        )}
      </header>
      <table className={styles['table']}>
        {groups.map((group) => (
          <tbody key={group.key}>
            <tr>
              <th scope="rowgroup" className={styles['label']}>
                {group.label}
              </th>
              {COLUMNS.map((column) => (
                <td key={column} className={styles['reading']}>
                  {group.readings[column]}
                </td>
              ))}
            </tr>
            {group.products.map((product) => (
              <tr key={product.id}>
                <th scope="row">{product.label}</th>
                {COLUMNS.map((column) => (
                  <td key={column}>{product.doses[column]}</td>
                ))}
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      <ul className={styles['cautions']} aria-label="Cautions of the card">
        {cardCautions(card, list).map(({ of, text }) => (
          <li key={text}>
            {of && <strong>{of}: </strong>}
            {text}
          </li>
        ))}
      </ul>
      <dl className={styles['aid']}>
        {CARD_AID.map(({ id, when, act }) => (
          <div key={id}>
            <dt>{when}.</dt> <dd>{act}</dd>
          </div>
        ))}
      </dl>
      <p className={styles['numbers']} aria-hidden="true">
        <span>Emergency number</span>
        <span>Poison centre</span>
      </p>
    </article>
  )
}

/** A reading has three steps at the most. */
const COLUMNS = [0, 1, 2] as const
const KEYS = [
  { key: 'pH', label: 'pH' },
  { key: 'ta_mg_per_L_as_CaCO3', label: 'alkalinity' },
  { key: 'cya_mg_per_L', label: 'stabiliser' },
] as const
