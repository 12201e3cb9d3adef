import type { CDPSession, Page } from '@playwright/test'
import { announcedVolume, blankSheet, newVolume, numberIn, openApp, sheet, strip, typeInto } from './support/app.ts'
import { centreOf, middleOf, outlinePoints, type Place, wobblyLoop } from './support/hand.ts'
import { PHONE } from './support/screens.ts'
import { expect, test } from './support/test.ts'

test.use(PHONE)

/** Fingers on the glass, as the browser has them from a touch screen. */
function fingersOn(session: CDPSession) {
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', places: readonly Place[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: places.map(({ x, y }, id) => ({ x, y, id })) })
  return {
    /** Each step has a place for every finger. */
    drag: async (steps: readonly (readonly Place[])[]) => {
      const [first = [], ...rest] = steps
      // Fingers come down one after the other, never in the same instant.
      for (let count = 1; count <= first.length; count++) await send('touchStart', first.slice(0, count))
      for (const places of rest) await send('touchMove', places)
      await send('touchEnd', [])
    },
  }
}

async function touch(page: Page) {
  return fingersOn(await page.context().newCDPSession(page))
}

const between = (from: Place, to: Place, steps = 10): Place[] =>
  Array.from({ length: steps + 1 }, (_, i) => ({
    x: from.x + ((to.x - from.x) * i) / steps,
    y: from.y + ((to.y - from.y) * i) / steps,
  }))

/** How far two stations are apart along the drawing, on the glass [px]: plan and section have one scale. */
async function apart(page: Page): Promise<number> {
  const [from, to] = await Promise.all(
    [2, 3].map((n) => middleOf(sheet(page).getByRole('button', { name: new RegExp(`^Station ${n} of`) }))),
  )
  return Math.abs((to?.x ?? 0) - (from?.x ?? 0))
}

test('the volume is on the first screen, over the whole of the drawing', async ({ page }) => {
  await openApp(page)
  const line = page.getByRole('region', { name: 'Drawing sheet' }).getByText(/^Volume\s[\d,]+\sgal\s±\s/)
  await expect(line).toBeInViewport({ ratio: 1 })
  const volume = await announcedVolume(page)
  await expect(line).toContainText(volume.replace(' US gallons', '\u00a0gal'))
  const [said, drawing, bar] = await Promise.all(
    [line, sheet(page), page.getByRole('tablist')].map((each) => each.boundingBox()),
  )
  if (!said || !drawing || !bar) throw new Error('something is not on the screen')
  expect(said.y + said.height).toBeLessThanOrEqual(drawing.y)
  expect(drawing.y + drawing.height, 'all of the drawing stays in sight').toBeLessThanOrEqual(bar.y)
  await typeInto(page.getByRole('textbox', { name: 'Station 5, depth' }), '8 ft')
  const deeper = await newVolume(page, volume)
  await expect(line, 'it goes along with the drawing').toContainText(deeper.replace(' US gallons', '\u00a0gal'))
})

test('a finger draws a loop and types its size', async ({ page }) => {
  await openApp(page)
  await blankSheet(page)
  await page.getByRole('button', { name: /Draw a loop/ }).tap()
  await expect(strip(page)).toContainText('Draw a loop')
  const scrolled = await page.evaluate(() => window.scrollY)
  const hand = await touch(page)
  await hand.drag((await wobblyLoop(page, 40)).map((place) => [place]))
  await expect(strip(page).getByText('How big is it?')).toBeVisible()
  expect(await page.evaluate(() => window.scrollY), 'drawing does not scroll the page').toBe(scrolled)
  await typeInto(strip(page).getByRole('textbox', { name: 'From end to end' }), '9.5 m')
  await typeInto(strip(page).getByRole('textbox', { name: 'How wide' }), '16 ft')
  await expect(sheet(page).getByRole('button', { name: /^Overall (length|width) 31 ft 2 in/ })).toBeVisible()
  expect(numberIn(await announcedVolume(page))).toBeGreaterThan(3000)
})

test('a finger takes soundings: place, depth, next place; and draws a depth line', async ({ page }) => {
  await openApp(page)
  await chooseFloor(page, /^flat/)
  // One depth that is said has no place: the soundings that it is made into are guesses.
  await typeInto(page.getByRole('textbox', { name: 'Depth', exact: true }), '5 ft')
  await chooseFloor(page, /^soundings/)
  await page.getByRole('button', { name: 'Sound on the plan' }).tap()
  const middle = centreOf(await outlineCorners(page))
  const depth = strip(page).getByRole('textbox', { name: 'Depth here' })
  for (const [dx, text, taken] of [
    [-50, "4'3", '1 taken'],
    [40, "6'6", '2 taken'],
  ] as const) {
    await page.touchscreen.tap(middle.x + dx, middle.y - 10)
    // The finger's press must leave the focus where the depth is typed.
    await expect(depth).toBeFocused()
    await page.keyboard.type(text)
    await page.keyboard.press('Enter')
    await expect(strip(page)).toContainText(taken)
  }
  await strip(page).getByRole('button', { name: 'Done' }).tap()
  await expect(sheet(page).getByRole('button', { name: /^Sounding \d of \d, 6 ft 6 in deep/ })).toBeVisible()

  await chooseFloor(page, /^depth lines/)
  await page.getByRole('button', { name: 'Remove depth line 1' }).tap()
  await page.getByRole('button', { name: 'Draw a line' }).tap()
  const hand = await touch(page)
  const at = centreOf(await outlineCorners(page))
  await hand.drag(
    Array.from({ length: 41 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 40
      return [{ x: at.x + 60 * Math.cos(angle), y: at.y + 26 * Math.sin(angle) }]
    }),
  )
  await expect(strip(page)).toContainText('Depth line 1 of 1')
})

/** Where the overall dimensions' drawing lies: the box of the plan, while its points can't be taken hold of. */
async function outlineCorners(page: Page): Promise<Place[]> {
  const box = await page.locator('[data-shape="outline"]').boundingBox()
  if (!box) throw new Error('nothing is drawn')
  return [
    { x: box.x, y: box.y },
    { x: box.x + box.width, y: box.y + box.height },
  ]
}

async function chooseFloor(page: Page, kind: RegExp): Promise<void> {
  await page.getByRole('button', { name: /Floor$/ }).tap()
  await page.getByRole('option', { name: kind }).tap()
  await expect(page.getByRole('button', { name: /Floor$/ })).toHaveText(kind)
}

test('a finger drags a point, a tap selects, two fingers zoom', async ({ page }) => {
  await openApp(page)
  const hand = await touch(page)

  await test.step('drags a point, and the volume follows', async () => {
    const before = await announcedVolume(page)
    const point = sheet(page).getByRole('button', { name: /^Point 6 of 8/ })
    const was = (await point.getAttribute('aria-label')) ?? ''
    const from = await middleOf(point)
    await hand.drag(between(from, { x: from.x, y: from.y - 24 }).map((place) => [place]))
    await expect(point).not.toHaveAttribute('aria-label', was)
    expect(numberIn(await newVolume(page, before)), 'a wider pool holds more').toBeGreaterThan(numberIn(before))
  })

  await test.step('taps a station and finds its numbers', async () => {
    const at = await middleOf(sheet(page).getByRole('button', { name: /^Station 3 of 5/ }))
    await page.touchscreen.tap(at.x, at.y)
    await expect(strip(page)).toContainText('Station 3 of 5')
    await expect(strip(page).getByRole('textbox', { name: 'Depth' })).toBeVisible()
  })

  await test.step('taps the water and reads its depth', async () => {
    const points = await outlinePoints(page)
    const shallow = points[0]
    const deep = points[4]
    if (!shallow || !deep) throw new Error('the example has eight points')
    // Beside the section line, where nothing can be taken hold of.
    await page.touchscreen.tap(shallow.x + (deep.x - shallow.x) * 0.62, (shallow.y + deep.y) / 2 + 28)
    await expect(strip(page)).toContainText('deep here')
  })

  await test.step('pinches: the plan grows under the fingers, the volume stays', async () => {
    const volume = await announcedVolume(page)
    const before = await apart(page)
    const box = await sheet(page).boundingBox()
    if (!box) throw new Error('the sheet has no place on the screen')
    const middle = { x: box.x + box.width / 2, y: box.y + box.height * 0.3 }
    const spread = (px: number): Place[] => [
      { x: middle.x - px, y: middle.y },
      { x: middle.x + px, y: middle.y },
    ]
    await hand.drag([30, 36, 42, 48, 54, 60].map(spread))
    await expect.poll(async () => (await apart(page)) / before).toBeGreaterThan(1.6)
    expect((await apart(page)) / before).toBeLessThan(2.4)
    expect(await announcedVolume(page)).toBe(volume)
    await page.getByRole('button', { name: 'Fit the drawing to the sheet' }).tap()
    await expect.poll(async () => Math.abs((await apart(page)) / before - 1)).toBeLessThan(0.12)
    expect(await page.evaluate(() => window.visualViewport?.scale), 'the page itself is not zoomed').toBe(1)
  })
})
