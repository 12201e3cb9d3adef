import type { StartFigure, StartInput } from '../../../../plan/index.ts'
import { useUnits } from '../../../context.tsx'
import { Disclosure, inOwnUnits } from '../../../fields/index.ts'
import { andList, inSentence } from '../../water/reading-words.ts'
import { sourceWords } from '../../water/source-words.ts'
import styles from '../opening.module.css'
import { figureWords } from './start-words.ts'

interface StartFiguresProps {
  readonly figures: readonly StartFigure[]
  readonly missing: readonly StartInput[]
  readonly assumed: readonly string[]
}

/** What is reckoned for this start, with its range and how. */
export function StartFigures({ figures, missing, assumed }: StartFiguresProps) {
  const units = useUnits()
  return (
    <>
      {missing.length > 0 && (
        <p className={styles['faint']}>
          The figures of this start need: {andList(missing.map(({ label }) => inSentence(label)))}.
        </p>
      )}
      {figures.length > 0 && (
        <table className={styles['table']}>
          <caption>
            Reckoned for this pool{assumed.length > 0 && `; assumed: ${inOwnUnits(assumed.join('; '), units)}`}
          </caption>
          <tbody>
            {figures.map((figure) => {
              const { best, range } = figureWords(figure, units)
              return (
                <tr key={figure.key}>
                  <th scope="row">{inOwnUnits(figure.label, units)}</th>
                  <td>
                    {best}
                    {range && <span className={styles['needed']}>{range}</span>}
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
      {figures.length > 0 && (
        <Disclosure title="How these are reckoned" isLazy>
          <ul className={styles['pairs']}>
            {figures.map((figure, i) => (
              <li key={figure.key}>
                <strong>{inOwnUnits(figure.label, units)}.</strong> {inOwnUnits(figure.how, units)}{' '}
                {figures.findIndex((each) => sourceWords(each) === sourceWords(figure)) === i && (
                  <span className={styles['faint']}>{sourceWords(figure)}</span>
                )}
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </>
  )
}
