import type { ReactNode } from 'react'
import { Button, Label, ListBox, ListBoxItem, Popover, Select, SelectValue, Text } from 'react-aria-components'
import { useCanEdit } from '../context.tsx'
import choice from './choice.module.css'
import { classes } from './classes.ts'
import styles from './fields.module.css'
import type { FieldLook } from './TypedField.tsx'

export interface ChoiceOption<Id extends string = string> {
  readonly id: Id
  readonly label: string
  readonly note?: string | undefined
  /** A small drawing before the words. */
  readonly mark?: ReactNode
}

export interface ChoiceFieldProps<Id extends string> extends FieldLook {
  readonly value: Id | undefined
  readonly options: readonly ChoiceOption<Id>[]
  readonly onChange: (id: Id) => unknown
}

/** One of a list, opened on demand. */
export function ChoiceField<Id extends string>(props: ChoiceFieldProps<Id>) {
  const { label, value, options, onChange, description, isCompact, hideLabel } = props
  const canEdit = useCanEdit()
  return (
    <Select
      className={classes(styles['field'], styles['wide'], isCompact && styles['compact'], hideLabel && styles['bare'])}
      value={value ?? null}
      onChange={(key) => {
        const picked = options.find((option) => option.id === key)
        if (picked && picked.id !== value) onChange(picked.id)
      }}
      placeholder={props.placeholder ?? 'not chosen'}
      isDisabled={props.isDisabled ?? !canEdit}
      {...(hideLabel ? { 'aria-label': label } : {})}
    >
      {hideLabel ? null : <Label className={classes(styles['label'])}>{label}</Label>}
      <Button className={classes(styles['line'], choice['trigger'])}>
        <SelectValue className={classes(choice['value'])}>
          {({ isPlaceholder, defaultChildren }) =>
            isPlaceholder ? defaultChildren : (options.find((option) => option.id === value)?.label ?? defaultChildren)
          }
        </SelectValue>
        <svg className={choice['caret']} viewBox="0 0 10 6" width="10" height="6" aria-hidden="true">
          <path d="M1 1l4 4 4-4" fill="none" stroke="currentColor" strokeWidth="1.4" />
        </svg>
      </Button>
      {description ? (
        <Text slot="description" className={classes(styles['description'])}>
          {description}
        </Text>
      ) : null}
      <Popover className={classes(choice['popover'])} offset={2}>
        <ListBox className={classes(choice['list'])} items={options}>
          {(option) => (
            <ListBoxItem
              id={option.id}
              textValue={option.label}
              className={classes(choice['item'], option.mark !== undefined && choice['marked'])}
            >
              {option.mark}
              <Text slot="label">{option.label}</Text>
              {option.note ? (
                <Text slot="description" className={classes(choice['note'])}>
                  {option.note}
                </Text>
              ) : null}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </Select>
  )
}
