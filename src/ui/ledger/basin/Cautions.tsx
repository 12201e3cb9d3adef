import { memo } from 'react'
import styles from './basin.module.css'
import { SITE_CAUTIONS } from './cautions.ts'
import { Section } from './Section.tsx'

/** What the place can do to people, whoever measured it. */
export const Cautions = memo(function Cautions({ number }: { readonly number: number }) {
  return (
    <Section number={number} title="Cautions of the site">
      <dl className={styles['cautions']}>
        {SITE_CAUTIONS.map(({ title, text, source }) => (
          <div key={title}>
            <dt>{title}</dt>
            <dd>
              {text}
              {source ? <span className={styles['source']}>{source}</span> : null}
            </dd>
          </div>
        ))}
      </dl>
    </Section>
  )
})
