import { Button } from 'react-aria-components'
import styles from './opening.module.css'

interface TickBoxProps {
  readonly isTicked: boolean
  /** Whether its form is open, where it has one. */
  readonly isOpen?: boolean
  readonly isDisabled: boolean
  readonly label: string
  readonly onPress: () => void
}

/** The box at the line's margin: ticked where the line is done. On paper it stays for a pencil. */
export function TickBox({ isTicked, isOpen, isDisabled, label, onPress }: TickBoxProps) {
  return (
    <Button
      className={styles['box'] ?? ''}
      onPress={onPress}
      isDisabled={isDisabled}
      aria-label={label}
      aria-pressed={isTicked}
      {...(isOpen === undefined ? {} : { 'aria-expanded': isOpen })}
    >
      <svg viewBox="0 0 18 18" aria-hidden="true">
        <rect x="1.5" y="1.5" width="15" height="15" />
        {isTicked && <path d="M4.5 9.5l3 3 6-7" />}
      </svg>
    </Button>
  )
}
