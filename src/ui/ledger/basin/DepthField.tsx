import { type Body, depthFromReference, depthToReference, LIMITS } from '../../../document/index.ts'
import { type Answer, QuantityField } from '../../fields/index.ts'

interface Props {
  readonly body: Body
  readonly label: string
  readonly depthM: number | undefined
  readonly onChange: (depthM: number) => Answer
  readonly hideLabel?: boolean | undefined
  readonly description?: string | undefined
  /** Nobody has said it: the field says so. */
  readonly isAssumed?: boolean | undefined
}

/** A depth, shown and typed from whatever the body's depths are measured from. */
export function DepthField({ body, depthM, onChange, isAssumed = false, description, ...look }: Props) {
  const said = [isAssumed ? 'assumed' : '', description].filter(Boolean).join('. ')
  return (
    <QuantityField
      {...look}
      description={said}
      quantity="length"
      isRequired
      max={depthToReference(body, LIMITS.depthM)}
      value={depthM === undefined ? undefined : depthToReference(body, depthM)}
      onChange={(typed) => (typed === undefined ? undefined : onChange(depthFromReference(body, typed)))}
    />
  )
}
