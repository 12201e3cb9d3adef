import { Button } from 'react-aria-components'
import { classes, keepFocus } from '../../fields/index.ts'
import styles from './basin.module.css'

const STROKES = { plus: 'M6 2v8M2 6h8', cross: 'M2.5 2.5l7 7M9.5 2.5l-7 7' }

interface Props {
  readonly sign: keyof typeof STROKES
  readonly label: string
  readonly onPress: () => unknown
  readonly isDisabled?: boolean | undefined
}

/** A small sign at the end of a row: one more, or away with it. */
export function RowButton({ sign, label, onPress, isDisabled = false }: Props) {
  return (
    <Button
      className={classes(styles['rowButton'])}
      aria-label={label}
      isDisabled={isDisabled}
      onPress={() => {
        keepFocus()
        onPress()
      }}
    >
      <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
        <path d={STROKES[sign]} fill="none" stroke="currentColor" strokeWidth="1.4" />
      </svg>
    </Button>
  )
}
