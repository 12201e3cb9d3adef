import { Label, Radio, RadioGroup, Text } from 'react-aria-components'
import { useCanEdit } from '../context.tsx'
import type { ChoiceFieldProps } from './ChoiceField.tsx'
import choice from './choice.module.css'
import { classes } from './classes.ts'
import styles from './fields.module.css'

/** One of a few, all of them in sight. */
export function SegmentedField<Id extends string>(props: ChoiceFieldProps<Id>) {
  const { label, value, options, onChange, description, isCompact, hideLabel } = props
  const canEdit = useCanEdit()
  return (
    <RadioGroup
      className={classes(styles['field'], styles['wide'], isCompact && styles['compact'], hideLabel && styles['bare'])}
      value={value ?? null}
      onChange={(id) => {
        const picked = options.find((option) => option.id === id)
        if (picked) onChange(picked.id)
      }}
      orientation="horizontal"
      isDisabled={props.isDisabled ?? !canEdit}
      {...(hideLabel ? { 'aria-label': label } : {})}
    >
      {hideLabel ? null : <Label className={classes(styles['label'])}>{label}</Label>}
      <div className={choice['segments']}>
        {options.map((option) => (
          <Radio key={option.id} value={option.id} className={classes(choice['segment'])}>
            {option.label}
          </Radio>
        ))}
      </div>
      {description ? (
        <Text slot="description" className={classes(styles['description'])}>
          {description}
        </Text>
      ) : null}
    </RadioGroup>
  )
}
