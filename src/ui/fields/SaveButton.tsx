import type { ReactNode } from 'react'
import { Button } from 'react-aria-components'
import styles from './button.module.css'
import { classes } from './classes.ts'

interface SaveButtonProps {
  readonly onPress: () => void
  readonly children: ReactNode
  readonly isDisabled?: boolean | undefined
}

/**
 * Saves a form of typed fields. It leaves the focus in the field that is being typed until the press is over: else that
 * field's hint would move the button away under the pointer, and the press would be lost. The focus must not even go and
 * come back: a date field that gets it back scrolls itself into sight, whatever it is told, and the button is gone too.
 */
export function SaveButton({ onPress, children, isDisabled = false }: SaveButtonProps) {
  return (
    <Button
      className={classes(styles['button'], styles['main'])}
      onPress={onPress}
      isDisabled={isDisabled}
      onMouseDownCapture={(event) => event.preventDefault()}
    >
      {children}
    </Button>
  )
}
