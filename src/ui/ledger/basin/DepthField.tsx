import { type Body, depthFromReference, depthToReference, LIMITS } from '../../../document/index.ts'
import { useUnits } from '../../context.tsx'
import { type Answer, QuantityField } from '../../fields/index.ts'
import { depthCaution } from './unusual.ts'

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
  const units = useUnits()
  // In a table's cell there is no room for it: a row of its own says it there.
  const caution = look.hideLabel || depthM === undefined ? undefined : depthCaution(depthM, units)
  const said = [isAssumed ? 'assumed' : '', caution ?? description].filter(Boolean).join('. ')
  return (
    <QuantityField
      {...look}
      description={said}
      quantity="length"
      isRequired
      min={depthToReference(body, -LIMITS.depthM)}
      max={depthToReference(body, LIMITS.depthM)}
      value={depthM === undefined ? undefined : depthToReference(body, depthM)}
      onChange={(typed) => (typed === undefined ? undefined : onChange(depthFromReference(body, typed)))}
    />
  )
}
