import type { Locator, Page } from '@playwright/test'
import { sheet } from './app.ts'
import { expect } from './test.ts'

export interface Place {
  readonly x: number
  readonly y: number
}

/** The middle of something on the screen. */
export async function middleOf(thing: Locator): Promise<Place> {
  const box = await thing.boundingBox()
  expect(box, 'it is on the screen').not.toBeNull()
  return { x: (box?.x ?? 0) + (box?.width ?? 0) / 2, y: (box?.y ?? 0) + (box?.height ?? 0) / 2 }
}

/** A wobbly closed curve such as a hand draws, inside the plan's part of the sheet. */
export async function wobblyLoop(page: Page, count = 56): Promise<Place[]> {
  const box = await sheet(page).boundingBox()
  if (!box) throw new Error('the sheet has no place on the screen')
  const middle = { x: box.x + box.width * 0.5, y: box.y + box.height * 0.36 }
  const [across, up] = [box.width * 0.3, box.height * 0.22]
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / count
    const waist = 1 - 0.16 * Math.cos(2 * angle - 0.4) ** 2 + 0.1 * Math.sin(3 * angle)
    // The tremor of a hand, the same in every run.
    const tremor = 1 + 0.008 * Math.sin(17 * angle) + 0.006 * Math.cos(29 * angle)
    return {
      x: middle.x + across * waist * tremor * Math.cos(angle),
      y: middle.y + up * waist * tremor * Math.sin(angle),
    }
  })
}

/** Presses at the first place, goes along the others, lets go at the last. */
export async function dragAlong(page: Page, places: readonly Place[]): Promise<void> {
  const [first, ...rest] = places
  if (!first) throw new Error('a drag needs places')
  await page.mouse.move(first.x, first.y)
  await page.mouse.down()
  for (const place of rest) await page.mouse.move(place.x, place.y)
  await page.mouse.up()
}

/** Takes hold of something by its middle and moves it by pixels. */
export async function dragBy(page: Page, thing: Locator, dx: number, dy: number): Promise<void> {
  const from = await middleOf(thing)
  const steps = 8
  await dragAlong(
    page,
    Array.from({ length: steps + 1 }, (_, i) => ({ x: from.x + (dx * i) / steps, y: from.y + (dy * i) / steps })),
  )
}

/** The points of the outline, in their order. */
export async function outlinePoints(page: Page): Promise<Place[]> {
  const points = sheet(page).getByRole('button', { name: /^Point \d+ of \d+/ })
  await expect(points.first()).toBeVisible()
  return Promise.all((await points.all()).map(middleOf))
}

/** A short drag from the wall at one of the outline's points into the water. */
export async function dragFromWall(page: Page, from: Place, towards: Place, px: number): Promise<void> {
  const length = Math.hypot(towards.x - from.x, towards.y - from.y)
  const steps = 10
  await dragAlong(
    page,
    Array.from({ length: steps + 1 }, (_, i) => {
      const share = (px * i) / steps / length
      return { x: from.x + (towards.x - from.x) * share, y: from.y + (towards.y - from.y) * share }
    }),
  )
}

export function centreOf(places: readonly Place[]): Place {
  const sum = places.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 })
  return { x: sum.x / places.length, y: sum.y / places.length }
}
