import type { HazardGroup, Product } from './types.ts'

/** Which products a rule is about: any of the groups, and in one of the forms where forms are named. */
export interface Match {
  readonly groups?: readonly HazardGroup[] | undefined
  readonly forms?: readonly Product['form'][] | undefined
  readonly ids?: readonly string[] | undefined
}

/** True where every condition that is stated holds; an own product counts as the generic one it is like. */
export function matches(product: Product, match: Match): boolean {
  const { groups, forms, ids } = match
  if (product.isAccounting) return false
  if (groups && !groups.some((group) => product.groups.includes(group))) return false
  if (forms && !forms.includes(product.form)) return false
  return !ids || ids.includes(product.likeId ?? product.id)
}
