import type { ReactNode } from 'react'
import { Button as RacButton } from 'react-aria-components'
import styles from './button.module.css'
import { classes } from './classes.ts'
import { keepFocus } from './useFormFocus.ts'

export interface ButtonProps {
  /** main: the one thing to do here; plain: another; quiet: in passing. */
  readonly tone?: 'main' | 'plain' | 'quiet' | undefined
  readonly onPress: () => unknown
  readonly children: ReactNode
  readonly isDisabled?: boolean | undefined
  /** What is read out where the words on the button are too few. */
  readonly label?: string | undefined
}

/** Something to press. */
export function Button({ tone = 'plain', onPress, children, isDisabled = false, label }: ButtonProps) {
  return (
    <RacButton
      className={classes(styles['button'], styles[tone])}
      onPress={() => {
        keepFocus()
        onPress()
      }}
      isDisabled={isDisabled}
      {...(label ? { 'aria-label': label } : {})}
    >
      {children}
    </RacButton>
  )
}
