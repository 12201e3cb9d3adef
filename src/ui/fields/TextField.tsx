import { FieldError, Label, TextField as RacTextField, Text, TextArea } from 'react-aria-components'
import { ok } from '../../base/index.ts'
import { useCanEdit } from '../context.tsx'
import { classes } from './classes.ts'
import styles from './fields.module.css'
import type { Answer } from './reading.ts'
import { type FieldLook, TypedField } from './TypedField.tsx'
import { useDraft } from './useDraft.ts'

export interface TextFieldProps extends FieldLook {
  readonly value: string
  readonly onChange: (text: string) => Answer
  /** Several lines; Enter then starts a new one. */
  readonly isMultiline?: boolean | undefined
  /** Tells each letter instead of waiting for Enter or leaving, for forms that have their own button. */
  readonly isLive?: boolean | undefined
}

/** Words of the owner. */
export function TextField(props: TextFieldProps) {
  const { value, onChange, isMultiline = false, isLive = false, ...look } = props
  const canEdit = useCanEdit()
  const kept = useDraft<string>({ shown: value, read: (text) => ok(text.trim()), onCommit: onChange, isMultiline })
  const draft = isLive ? { ...kept, text: value, type: (text: string) => void onChange(text) } : kept
  if (!isMultiline) return <TypedField {...look} draft={draft} width="wide" />
  return (
    <RacTextField
      className={classes(styles['field'], styles['compact'])}
      value={draft.text}
      onChange={draft.type}
      onBlur={draft.commit}
      onKeyDown={draft.onKeyDown}
      isDisabled={look.isDisabled ?? !canEdit}
      isInvalid={draft.complaint !== undefined}
      validationBehavior="aria"
      {...(look.hideLabel ? { 'aria-label': look.label } : {})}
    >
      {look.hideLabel ? null : <Label className={classes(styles['label'])}>{look.label}</Label>}
      <TextArea className={classes(styles['area'])} rows={3} placeholder={look.placeholder ?? ''} />
      {look.description ? (
        <Text slot="description" className={classes(styles['description'])}>
          {look.description}
        </Text>
      ) : null}
      <FieldError className={classes(styles['error'])}>
        <span role="alert">{draft.complaint}</span>
      </FieldError>
    </RacTextField>
  )
}
