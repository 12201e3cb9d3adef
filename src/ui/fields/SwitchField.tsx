import { useId } from 'react'
import { Checkbox } from 'react-aria-components'
import { useCanEdit } from '../context.tsx'
import { classes } from './classes.ts'
import styles from './fields.module.css'
import type { FieldLook } from './TypedField.tsx'
import tick from './tick.module.css'

export interface SwitchFieldProps extends Pick<FieldLook, 'label' | 'description' | 'isDisabled' | 'hideLabel'> {
  readonly value: boolean
  readonly onChange: (isOn: boolean) => unknown
}

/** On or off: a box to tick, as on paper. */
export function SwitchField({ label, value, onChange, description, isDisabled, hideLabel }: SwitchFieldProps) {
  const canEdit = useCanEdit()
  const noteId = useId()
  return (
    <div className={tick['row']}>
      <Checkbox
        className={classes(tick['tick'])}
        isSelected={value}
        onChange={onChange}
        isDisabled={isDisabled ?? !canEdit}
        {...(hideLabel ? { 'aria-label': label } : {})}
        {...(description ? { 'aria-describedby': noteId } : {})}
      >
        <svg className={tick['box']} viewBox="0 0 18 18" width="18" height="18" aria-hidden="true">
          <rect x="1.5" y="1.5" width="15" height="15" />
          <path d="M4.5 9.5l3 3 6-7" />
        </svg>
        {hideLabel ? null : <span>{label}</span>}
      </Checkbox>
      {description ? (
        <p id={noteId} className={classes(styles['description'], tick['note'])}>
          {description}
        </p>
      ) : null}
    </div>
  )
}
