import { type ReactNode, useState } from 'react'
import { Button, DisclosurePanel, Heading, Disclosure as RacDisclosure } from 'react-aria-components'
import { classes } from './classes.ts'
import styles from './disclosure.module.css'
import { usePrinting } from './usePrinting.ts'

export interface DisclosureProps {
  readonly title: string
  /** Said at the right of the title, open or closed. */
  readonly aside?: string | undefined
  readonly isOpenAtFirst?: boolean | undefined
  readonly level?: 3 | 4 | undefined
  /** Left out on paper, where nothing can be done with it. */
  readonly isScreenOnly?: boolean | undefined
  /** Built only when it is opened or printed, for long tables. */
  readonly isLazy?: boolean | undefined
  readonly children: ReactNode
}

/** Something that most readers may skip, opened by its title. Printed open. */
export function Disclosure({
  title,
  aside,
  isOpenAtFirst = false,
  level = 4,
  isScreenOnly,
  isLazy,
  children,
}: DisclosureProps) {
  const [isOpen, setOpen] = useState(isOpenAtFirst)
  const isPrinting = usePrinting()
  return (
    <RacDisclosure
      className={classes(styles['disclosure'], isScreenOnly && styles['screenOnly'])}
      isExpanded={isOpen}
      onExpandedChange={setOpen}
    >
      <Heading level={level} className={classes(styles['heading'])}>
        <Button slot="trigger" className={classes(styles['trigger'])}>
          <svg className={styles['mark']} viewBox="0 0 8 10" width="8" height="10" aria-hidden="true">
            <path d="M1.5 1l5 4-5 4" fill="none" stroke="currentColor" strokeWidth="1.4" />
          </svg>
          <span className={styles['title']}>{title}</span>
          {aside ? <span className={styles['aside']}>{aside}</span> : null}
        </Button>
      </Heading>
      <DisclosurePanel className={classes(styles['panel'])}>
        <div className={styles['inside']}>{!isLazy || isOpen || isPrinting ? children : null}</div>
      </DisclosurePanel>
    </RacDisclosure>
  )
}
