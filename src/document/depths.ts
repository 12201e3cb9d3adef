import type { Body } from './types.ts'

/** Height above the datum of what depths are typed from [m]. */
function referenceM(body: Body): number {
  switch (body.depthsMeasuredFrom ?? 'waterline') {
    case 'rim':
      return body.freeboardM
    case 'tile-line':
      return body.tileLineM ?? 0
    case 'water-now':
      return body.levelM
    case 'waterline':
      return 0
  }
}

/** The depth below the datum of one that was measured from the body's reference [m]. */
export function depthFromReference(body: Body, typedM: number): number {
  return typedM - referenceM(body)
}

/** A depth below the datum as it would be measured from the body's reference [m]. */
export function depthToReference(body: Body, depthM: number): number {
  return depthM + referenceM(body)
}
