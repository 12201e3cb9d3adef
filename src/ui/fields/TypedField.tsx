import type { KeyboardEvent } from 'react'
import { FieldError, Input, Label, TextField as RacTextField, Text } from 'react-aria-components'
import { useCanEdit } from '../context.tsx'
import { classes } from './classes.ts'
import styles from './fields.module.css'
import type { Draft } from './useDraft.ts'

/** What every typed field can be given. */
export interface FieldLook {
  readonly label: string
  readonly description?: string | undefined
  readonly placeholder?: string | undefined
  /** Without it a field follows whether the document may be edited. */
  readonly isDisabled?: boolean | undefined
  /** The label stands above the box, for fields that stand side by side. */
  readonly isCompact?: boolean | undefined
  /** What is wrong with the value that stands there, where the trouble comes of it. */
  readonly trouble?: string | undefined
  /** The label is only read out, as in the cells of a table. */
  readonly hideLabel?: boolean | undefined
}

interface Props extends FieldLook {
  readonly draft: Draft
  readonly inputMode?: 'text' | 'decimal' | 'numeric' | undefined
  readonly suffix?: string | undefined
  readonly type?: 'text' | 'datetime-local' | undefined
  readonly width?: 'figure' | 'wide' | undefined
  readonly onKeyDown?: ((event: KeyboardEvent) => void) | undefined
}

/** The box that quantity, number, text and time fields share: a label, a ruled line to write on, a hint. */
export function TypedField(props: Props) {
  const { draft, label, description, isCompact, hideLabel, suffix, type = 'text', width = 'figure' } = props
  const canEdit = useCanEdit()
  const isDisabled = props.isDisabled ?? !canEdit
  const trouble = draft.isPending ? undefined : props.trouble
  return (
    <RacTextField
      className={classes(
        styles['field'],
        isCompact && styles['compact'],
        hideLabel && styles['bare'],
        width === 'wide' && styles['wide'],
      )}
      value={draft.text}
      onChange={draft.type}
      onBlur={draft.commit}
      onKeyDown={(event) => {
        draft.onKeyDown(event)
        props.onKeyDown?.(event)
      }}
      type={type}
      isDisabled={isDisabled}
      isInvalid={draft.complaint !== undefined || trouble !== undefined}
      validationBehavior="aria"
      autoComplete="off"
      {...(hideLabel ? { 'aria-label': label } : {})}
    >
      {hideLabel ? null : <Label className={classes(styles['label'])}>{label}</Label>}
      <span className={styles['line']}>
        <Input
          className={classes(styles['input'])}
          inputMode={props.inputMode ?? 'text'}
          placeholder={props.placeholder ?? ''}
          spellCheck={false}
          onFocus={(event) => {
            if (type === 'text' && width === 'figure') event.currentTarget.select()
          }}
        />
        {suffix ? <span className={styles['suffix']}>{suffix}</span> : null}
      </span>
      {description !== undefined ? (
        // Also while it is empty: a description that comes later is only read out where its place was there at first.
        <Text slot="description" className={classes(styles['description'])}>
          {description}
        </Text>
      ) : null}
      <FieldError className={classes(styles['error'])}>
        {trouble === undefined ? <span role="alert">{draft.complaint}</span> : trouble}
      </FieldError>
    </RacTextField>
  )
}
