import type { Point } from '../../basin/index.ts'
import type { RingRef } from '../../document/index.ts'
import type { Selection } from '../../state/index.ts'

/** A ring whose points can be moved; a feature's own path is edited by the feature's handles. */
export type Ring = Exclude<RingRef, { readonly of: 'feature' }>

export const OUTLINE: Ring = { of: 'outline' }

/** Whatever on the sheet can be taken hold of. */
export type Item =
  | { readonly kind: 'node'; readonly ring: Ring; readonly node: number }
  | { readonly kind: 'control'; readonly ring: Ring; readonly segment: number; readonly which: 'c1' | 'c2' }
  | { readonly kind: 'middle'; readonly ring: Ring; readonly segment: number }
  | { readonly kind: 'axis'; readonly end: 'from' | 'to' }
  | { readonly kind: 'station'; readonly station: number }
  | { readonly kind: 'contour'; readonly contour: number }
  | { readonly kind: 'sounding'; readonly sounding: number }
  | { readonly kind: 'dish'; readonly part: 'centre' | 'radius' }
  | { readonly kind: 'feature'; readonly feature: number }
  | { readonly kind: 'feature-handle'; readonly feature: number; readonly handle: string }
  | { readonly kind: 'dimension'; readonly axis: 'x' | 'y' }

export interface PlacedItem {
  readonly key: string
  readonly item: Item
  /** On the screen [px]. */
  readonly at: Point
  /** The place that moves with a drag, where the mark stands beside it [px]. */
  readonly anchor?: Point
  readonly rank: number
  /** What a screen reader says. */
  readonly label: string
}

const ringKey = (ring: Ring) => (ring.of === 'outline' ? 'o' : `${ring.of === 'island' ? 'i' : 'c'}${ring.index}`)

export function sameRing(a: RingRef, b: RingRef): boolean {
  return a.of === b.of && (a.of === 'outline' || b.of === 'outline' || a.index === b.index)
}

export function keyOf(item: Item): string {
  switch (item.kind) {
    case 'node':
      return `node-${ringKey(item.ring)}-${item.node}`
    case 'control':
      return `control-${ringKey(item.ring)}-${item.segment}-${item.which}`
    case 'middle':
      return `middle-${ringKey(item.ring)}-${item.segment}`
    case 'axis':
      return `axis-${item.end}`
    case 'station':
      return `station-${item.station}`
    case 'contour':
      return `contour-${item.contour}`
    case 'sounding':
      return `sounding-${item.sounding}`
    case 'dish':
      return `dish-${item.part}`
    case 'feature':
      return `feature-${item.feature}`
    case 'feature-handle':
      return `feature-${item.feature}-${item.handle}`
    case 'dimension':
      return `dimension-${item.axis}`
  }
}

/** What the app calls selected when this is taken hold of. */
export function selectionOf(item: Item, bodyId: string): Selection {
  switch (item.kind) {
    case 'node':
      return { kind: 'node', bodyId, ring: item.ring, node: item.node }
    case 'control':
    case 'middle':
      return { kind: 'segment', bodyId, ring: item.ring, segment: item.segment }
    case 'axis':
      return { kind: 'axis', bodyId, end: item.end }
    case 'station':
      return { kind: 'station', bodyId, station: item.station }
    case 'contour':
      return { kind: 'contour', bodyId, contour: item.contour }
    case 'sounding':
      return { kind: 'sounding', bodyId, sounding: item.sounding }
    case 'dish':
      return { kind: 'dish', bodyId, part: item.part }
    case 'feature':
    case 'feature-handle':
      return { kind: 'feature', bodyId, feature: item.feature }
    case 'dimension':
      return { kind: 'dimension', bodyId, axis: item.axis }
  }
}

/** The item that a selection stands for on the sheet. */
export function itemOf(selection: Selection): Item | undefined {
  switch (selection.kind) {
    case 'node':
      return selection.ring.of === 'feature'
        ? { kind: 'feature', feature: selection.ring.index }
        : { kind: 'node', ring: selection.ring, node: selection.node }
    case 'segment':
      return selection.ring.of === 'feature'
        ? { kind: 'feature', feature: selection.ring.index }
        : { kind: 'middle', ring: selection.ring, segment: selection.segment }
    case 'axis':
      return { kind: 'axis', end: selection.end }
    case 'station':
      return { kind: 'station', station: selection.station }
    case 'contour':
      return { kind: 'contour', contour: selection.contour }
    case 'sounding':
      return { kind: 'sounding', sounding: selection.sounding }
    case 'dish':
      return { kind: 'dish', part: selection.part }
    case 'feature':
      return { kind: 'feature', feature: selection.feature }
    case 'dimension':
      return { kind: 'dimension', axis: selection.axis }
  }
}
