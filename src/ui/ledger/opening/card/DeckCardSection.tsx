import { deriveDeckCard, deriveTargetsAt } from '../../../../derive/index.ts'
import { useApp } from '../../../context.tsx'
import { Button, Disclosure, ProblemNote } from '../../../fields/index.ts'
import { readingRow } from '../../scale/index.ts'
import { inSentence } from '../../water/reading-words.ts'
import styles from '../opening.module.css'
import { Card } from './Card.tsx'
import { CardSheet } from './CardSheet.tsx'
import { usePrintCard } from './usePrintCard.ts'

/** The deck card: looked at here, printed by itself. */
export function DeckCardSection({ systemId }: { readonly systemId: string }) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const { isPrinting, print } = usePrintCard()
  const card = deriveDeckCard(spec, systemId, nowMs)
  const withheld = deriveTargetsAt(spec, systemId, nowMs)
    .phases.filter(({ change }) => change.kind === 'withheld')
    .map(({ key }) => inSentence(readingRow(key)?.label ?? key))
  return (
    <section className={styles['section']} aria-label="The deck card" data-screen-only>
      <h2>Deck card</h2>
      <p className={styles['faint']}>
        One page for the pool’s edge: what a reading asks for in this pool’s own volume, with the products that you use
        or have in stock, and their cautions.
      </p>
      {card.ok ? (
        <>
          <div className={styles['buttons']}>
            <Button onPress={print}>Print the deck card</Button>
          </div>
          <Disclosure title="The card as it is printed" level={3} isScreenOnly isLazy>
            <Card card={card.value} withheld={withheld} />
          </Disclosure>
          {isPrinting && <CardSheet card={card.value} withheld={withheld} />}
        </>
      ) : (
        <ProblemNote problem={card.problem} />
      )}
    </section>
  )
}
