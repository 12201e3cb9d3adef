import type { ReactNode } from 'react'
import { Button } from 'react-aria-components'
import styles from '../../fields/button.module.css'
import { classes } from '../../fields/index.ts'

interface SaveButtonProps {
  readonly onPress: () => void
  readonly children: ReactNode
}

/**
 * Saves a form of typed fields. It leaves the focus in the field that is being typed until the press is over: else that
 * field's hint would move the button away under the pointer, and the press would be lost.
 */
export function SaveButton({ onPress, children }: SaveButtonProps) {
  return (
    <Button className={classes(styles['button'], styles['main'])} onPress={onPress} preventFocusOnPress>
      {children}
    </Button>
  )
}
