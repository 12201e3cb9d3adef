import type { Page } from '@playwright/test'
import { type Body, specFromLink } from '../../src/document/index.ts'
import {
  announcedVolume,
  chapter,
  chooseUnits,
  copyLink,
  newVolume,
  numberIn,
  openApp,
  sheet,
  strip,
  typeInto,
} from './support/app.ts'
import { centreOf, dragAlong, dragBy, middleOf, outlinePoints, type Place } from './support/hand.ts'
import { expect, test } from './support/test.ts'

/** Chooses a kind of floor by its words in the ledger. */
async function chooseFloor(page: Page, name: RegExp): Promise<void> {
  // Another kind holds as much water: only the field tells that it has come.
  const field = page.getByRole('button', { name: /Floor$/ })
  await field.click()
  await page.getByRole('option', { name }).click()
  await expect(field).toHaveText(name)
}

/** The plan that is on the screen, as its link carries it. */
async function bodyOf(page: Page) {
  const spec = specFromLink(await copyLink(page))
  if (!spec.ok) throw new Error(spec.problem[0]?.what ?? 'not a link')
  const body = spec.value.bodies[0]
  if (!body) throw new Error('nothing is drawn')
  return body
}

/** An oval around a place, as a hand draws it. */
function oval({ x, y }: Place, across: number, up: number, count = 40): Place[] {
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / count
    const tremor = 1 + 0.006 * Math.sin(13 * angle)
    return { x: x + across * tremor * Math.cos(angle), y: y + up * tremor * Math.sin(angle) }
  })
}

test('a hopper: a depth line is drawn by hand, pulled about, typed, and taken back', async ({ page }) => {
  await openApp(page)
  await chapter(page, 'Basin')
  await chooseFloor(page, /^flat/)
  await chooseFloor(page, /^depth lines/)
  const table = page.getByRole('table', { name: 'Depth lines' })

  await test.step('the line that came with the kind goes, the floor is flat at the walls’ depth', async () => {
    const before = await announcedVolume(page)
    await page.getByRole('button', { name: 'Remove depth line 1' }).click()
    await newVolume(page, before)
    await expect(page.getByText('No line yet, so the floor is flat at that depth.')).toBeVisible()
  })

  await test.step('draws a line around the deep end', async () => {
    const before = await announcedVolume(page)
    const deep = centreOf(await outlinePoints(page))
    await page.getByRole('radio', { name: 'Draw a line of equal depth' }).click()
    await dragAlong(page, oval({ x: deep.x + 90, y: deep.y + 10 }, 90, 55))
    await expect(strip(page)).toContainText('Depth line 1 of 1')
    const drawn = await newVolume(page, before)
    await typeInto(strip(page).getByRole('textbox', { name: 'Depth' }), "8'")
    await expect(table.getByRole('textbox', { name: 'Depth line 1, depth' })).toHaveValue(/^8′/)
    expect(numberIn(await newVolume(page, drawn)), 'deeper is more water').toBeGreaterThan(numberIn(drawn))
  })

  await test.step('drags one of its points, then all of it', async () => {
    const points = sheet(page).getByRole('button', { name: /^Depth line 1, point \d+ of \d+/ })
    await expect(points.first()).toBeVisible()
    const before = await announcedVolume(page)
    await dragBy(page, points.first(), 25, 10)
    const dragged = await newVolume(page, before)
    await expect(strip(page)).toContainText('of depth line 1')
    const whole = sheet(page).getByRole('button', { name: /^Depth line 1 of 1/ })
    const start = await middleOf(whole)
    await dragBy(page, whole, -40, 0)
    await expect.poll(async () => (await middleOf(whole)).x).toBeLessThan(start.x - 25)
    await page.getByRole('button', { name: /^Undo: Move depth line/ }).click()
    await page.getByRole('button', { name: /^Undo: Move point/ }).click()
    await expect.poll(() => announcedVolume(page)).toBe(before)
    expect(dragged).not.toBe(before)
  })

  await test.step('a second one is placed by keyboard alone, inside the first', async () => {
    const middle = await middleOf(page.locator('[data-shape="depth-line"]'))
    await page.getByRole('button', { name: 'Draw a line' }).click()
    await expect(sheet(page)).toBeFocused()
    // The cross hairs begin in the middle of the paper; they are brought into the first line.
    await page.keyboard.press('ArrowRight')
    const box = await sheet(page).boundingBox()
    if (!box) throw new Error('the sheet has no place on the screen')
    const presses = Math.round((middle.x - (box.x + box.width / 2)) / 16)
    for (let i = 0; i < presses; i++) await page.keyboard.press('Control+Shift+ArrowRight')
    for (const keys of [[], ['ArrowRight'], ['ArrowUp'], ['ArrowLeft']]) {
      for (const key of keys) await page.keyboard.press(`Control+Shift+${key}`)
      await page.keyboard.press('Enter')
    }
    await page.keyboard.press('Enter')
    await expect(strip(page)).toContainText('Depth line 2 of 2')
    await page.getByRole('button', { name: /^Undo: Add depth line/ }).click()
  })

  await test.step('the link carries it', async () => {
    const { floor } = await bodyOf(page)
    expect(floor).toMatchObject({ kind: 'contours', rings: [{ depthM: 8 * 0.3048 }] })
  })
})

test('soundings: taken by pressing places, by keyboard on the sheet, and in the ledger', async ({ page }) => {
  await openApp(page)
  await chapter(page, 'Basin')
  await chooseUnits(page, 'Metric')
  await chooseFloor(page, /^flat/)
  await typeInto(page.getByRole('textbox', { name: 'Depth', exact: true }), '1.6')
  await chooseFloor(page, /^soundings/)
  const table = page.getByRole('table', { name: 'Soundings' })
  await expect(table).toBeVisible()

  await test.step('by pressing: place, depth, next place', async () => {
    const middle = centreOf(await outlinePoints(page))
    await page.getByRole('button', { name: 'Sound on the plan' }).click()
    const depth = strip(page).getByRole('textbox', { name: 'Depth here' })
    for (const [dx, text, taken] of [
      [-120, '1.25', '1 taken'],
      [0, '1.6', '2 taken'],
      [120, '2.1', '3 taken'],
    ] as const) {
      await page.mouse.click(middle.x + dx, middle.y + 20)
      await expect(depth).toBeFocused()
      await page.keyboard.type(text)
      await page.keyboard.press('Enter')
      await expect(strip(page)).toContainText(taken)
    }
  })

  await test.step('on dry land none is taken', async () => {
    const box = await sheet(page).boundingBox()
    if (!box) throw new Error('the sheet has no place on the screen')
    await page.mouse.click(box.x + 40, box.y + 60)
    await expect(page.getByText('That is dry land')).toBeVisible()
    await expect(strip(page).getByRole('textbox', { name: 'Depth here' })).toBeDisabled()
  })

  await test.step('by keyboard on the sheet', async () => {
    await sheet(page).focus()
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('Control+Shift+ArrowUp')
    await page.keyboard.press('Enter')
    await expect(strip(page).getByRole('textbox', { name: 'Depth here' })).toBeFocused()
    await page.keyboard.type('1.5')
    await page.keyboard.press('Enter')
    await expect(strip(page)).toContainText('4 taken')
    await expect(sheet(page)).toBeFocused()
    await strip(page).getByRole('button', { name: 'Done' }).click()
  })

  await test.step('in the ledger: a new one, a depth changed, one removed', async () => {
    const { outline } = await bodyOf(page)
    await typeInto(table.getByRole('textbox', { name: 'New sounding 5, x' }), `${(outline.start[0] + 2).toFixed(2)}`)
    await typeInto(table.getByRole('textbox', { name: 'New sounding 5, y' }), `${outline.start[1].toFixed(2)}`)
    await typeInto(table.getByRole('textbox', { name: 'New sounding 5, depth' }), '1.15')
    await expect(table.getByRole('textbox', { name: 'Sounding 5, depth' })).toHaveValue(/^1\.15/)
    const before = await announcedVolume(page)
    await typeInto(table.getByRole('textbox', { name: 'Sounding 3, depth' }), '2.4')
    await newVolume(page, before)
    await table.getByRole('button', { name: 'Remove sounding 5' }).click()
    await expect(table.getByRole('textbox', { name: 'Sounding 5, depth', exact: true })).toBeHidden()
  })

  await test.step('one is dragged, and the keyboard moves and deletes it', async () => {
    const third = sheet(page).getByRole('button', { name: /^Sounding 3 of 4/ })
    const start = await middleOf(third)
    await dragBy(page, third, 30, -20)
    await expect.poll(async () => (await middleOf(third)).x).toBeGreaterThan(start.x + 15)
    await expect(strip(page)).toContainText('Sounding 3 of 4')
    const dragged = (await middleOf(third)).x
    await third.focus()
    await page.keyboard.press('Shift+ArrowLeft')
    await expect.poll(async () => (await middleOf(third)).x).toBeLessThan(dragged)
    await page.keyboard.press('Delete')
    await expect(sheet(page).getByRole('button', { name: /^Sounding 3 of 3/ })).toBeVisible()
    expect((await bodyOf(page)).floor).toMatchObject({
      kind: 'soundings',
      points: [{ 2: 1.25 }, { 2: 1.6 }, { 2: 1.5 }],
    })
  })
})

/** Where the middle of a side is on the screen, by where its ends are there. */
function onSide({ start, segments }: Body['outline'], points: readonly Place[], side: number): Place {
  const { to, c1, c2 } = { c1: undefined, c2: undefined, ...segments[side] }
  const from = side === 0 ? start : segments[side - 1]?.to
  const [a, b] = [points[side], points[side + 1]]
  if (!from || !to || !c1 || !c2 || !a || !b) throw new Error('the side is no curve between two points')
  const [x, y] = [0, 1].map((k) => (from[k]! + 3 * c1[k]! + 3 * c2[k]! + to[k]!) / 8) as [number, number]
  return {
    x: a.x + ((x - from[0]) / (to[0] - from[0])) * (b.x - a.x),
    y: a.y + ((y - from[1]) / (to[1] - from[1])) * (b.y - a.y),
  }
}

test('walls that lean, a bench along two sides, a ramp, a dished floor, and a volume that is wanted', async ({
  page,
}) => {
  await openApp(page)
  await chapter(page, 'Basin')
  await chooseUnits(page, 'Metric')
  await chooseFloor(page, /^flat/)
  await typeInto(page.getByRole('textbox', { name: 'Depth', exact: true }), '1.6')

  await test.step('walls lean: run and angle are the same thing twice', async () => {
    const before = await announcedVolume(page)
    await page.getByText('leaning', { exact: true }).click()
    const leaning = await newVolume(page, before)
    expect(numberIn(leaning), 'narrower at the floor').toBeLessThan(numberIn(before))
    await typeInto(page.getByRole('textbox', { name: 'Lean for each metre of depth' }), '25')
    await expect(page.getByRole('textbox', { name: 'The same as an angle' })).toHaveValue('14')
    expect((await bodyOf(page)).wall).toEqual({ kind: 'battered', run: 0.25 })
    const steep = await announcedVolume(page)
    await page.getByText('upright', { exact: true }).click()
    await newVolume(page, steep)
  })

  await test.step('a bench: first the side where it begins, then the one where it ends', async () => {
    const before = await announcedVolume(page)
    const points = await outlinePoints(page)
    const between = (i: number) => centreOf([points[i], points[i + 1]].filter((p) => p !== undefined))
    await page.getByRole('radio', { name: 'Press sides of the outline that a bench runs along' }).click()
    await page.mouse.click(between(1).x, between(1).y)
    await expect(strip(page)).toContainText('from side 2')
    await page.mouse.click(between(2).x, between(2).y)
    await expect(strip(page)).toContainText('Bench')
    const benched = await newVolume(page, before)
    expect(numberIn(benched)).toBeLessThan(numberIn(before))
    await typeInto(strip(page).getByRole('textbox', { name: 'Width' }), '0.6')
    await newVolume(page, benched)
    const { features } = await bodyOf(page)
    expect(features.at(-1)).toMatchObject({ kind: 'bench', along: { fromSegment: 1, toSegment: 2 }, widthM: 0.6 })
  })

  await test.step('the same side pressed twice, however quickly, is a bench along it and no new point', async () => {
    const before = await announcedVolume(page)
    const points = await outlinePoints(page)
    const side = onSide((await bodyOf(page)).outline, points, 4)
    await page.getByRole('radio', { name: 'Press sides of the outline that a bench runs along' }).click()
    await page.mouse.click(side.x, side.y)
    await page.mouse.click(side.x, side.y)
    await newVolume(page, before)
    const { features, outline } = await bodyOf(page)
    expect(features.at(-1)).toMatchObject({ kind: 'bench', along: { fromSegment: 4, toSegment: 4 } })
    expect(outline.segments).toHaveLength(points.length)
  })

  await test.step('a ramp is dragged from the wall, its ends typed', async () => {
    const before = await announcedVolume(page)
    const points = await outlinePoints(page)
    const wall = points.reduce((a, b) => (a.x > b.x ? a : b))
    const middle = centreOf(points)
    await page.getByRole('radio', { name: 'Drag a ramp out from the wall' }).click()
    await dragAlong(
      page,
      Array.from({ length: 9 }, (_, i) => ({
        x: wall.x + ((middle.x - wall.x) * i) / 24,
        y: wall.y + ((middle.y - wall.y) * i) / 24,
      })),
    )
    await expect(strip(page)).toContainText('Ramp')
    const ramped = await newVolume(page, before)
    await typeInto(strip(page).getByRole('textbox', { name: 'Ends at' }), '0.5')
    await newVolume(page, ramped)
    expect((await bodyOf(page)).features.at(-1)).toMatchObject({ kind: 'ramp', fromDepthM: 0, toDepthM: 0.5 })
  })

  await test.step('a dished floor: its rim is dragged', async () => {
    await chooseFloor(page, /^dished/)
    await typeInto(page.getByRole('textbox', { name: 'Depth in the middle of the hollow' }), '2.2')
    await page.getByRole('button', { name: 'The depths are right as they stand' }).click()
    const before = await announcedVolume(page)
    const rim = sheet(page).getByRole('button', { name: /^Rim of the hollow/ })
    await dragBy(page, rim, -30, 0)
    const smaller = await newVolume(page, before)
    expect(numberIn(smaller), 'a smaller hollow holds less').toBeLessThan(numberIn(before))
    await page.getByText('straight, a cone', { exact: true }).click()
    expect(numberIn(await newVolume(page, smaller)), 'a cone holds less than a bowl').toBeLessThan(numberIn(smaller))
  })

  await test.step('a wanted volume sets the depths, in one step of undo', async () => {
    const before = await announcedVolume(page)
    await page.getByRole('button', { name: /^Set the volume/ }).click()
    await typeInto(page.getByRole('textbox', { name: 'Wanted volume' }), '75')
    await expect(page.getByRole('status').filter({ hasText: /^Every depth of the floor/ })).toBeVisible()
    await page.getByRole('button', { name: 'Change the drawing' }).click()
    await expect.poll(async () => numberIn(await announcedVolume(page))).toBeCloseTo(75, 0)
    await page.getByRole('button', { name: 'Undo: Lower the floor' }).click()
    await expect.poll(() => announcedVolume(page)).toBe(before)
  })

  await test.step('what makes it unsure is said, with what to measure again', async () => {
    await page.getByRole('button', { name: /^How sure the volume is/ }).click()
    await expect(page.getByText('Measure again first')).toBeVisible()
    await page
      .getByRole('button', { name: /^Point \d+ of the outline$/ })
      .first()
      .click()
    await expect(strip(page)).toContainText(/^Point \d+ of 8/)
  })
})

test('depths read from the rim stay as read when its height is put right; from the water, a press says which is meant', async ({
  page,
}) => {
  await openApp(page)
  const before = await announcedVolume(page)
  const depths = (await chapter(page, 'Basin')).getByRole('region', { name: 'Depths' })
  const station = depths.getByRole('textbox', { name: 'Station 2, depth' })
  const measureFrom = async (name: RegExp) => {
    await depths.getByRole('button', { name: /Measured from/ }).click()
    await page.getByRole('option', { name }).click()
  }
  const undo = page.getByRole('button', { name: /^Undo/ })

  await measureFrom(/^the rim/)
  const read = await station.inputValue()
  await expect(depths.getByText('Depths read from the rim stay as you read them'), 'it says so before').toBeVisible()
  await typeInto(depths.getByRole('textbox', { name: 'Rim above the waterline' }), '9 in')
  const less = await newVolume(page, before)
  expect(numberIn(less), 'a higher rim over the same tape leaves less water').toBeLessThan(numberIn(before))
  await expect(station).toHaveValue(read)
  await undo.click()
  await expect.poll(() => announcedVolume(page), 'one step takes it back').toBe(before)
  await expect(station).toHaveValue(read)

  await measureFrom(/^the water as it stands now/)
  const fromWater = await station.inputValue()
  await typeInto(depths.getByRole('textbox', { name: 'Water level today' }), '-4 in')
  const drained = await newVolume(page, before)
  const note = depths.getByRole('status').filter({ hasText: /read 4\s?(″|in) less/ })
  await expect(note, 'water that fell leaves the floor where it is').toBeVisible()
  await expect(station).not.toHaveValue(fromWater)
  await note.getByRole('button', { name: 'Keep them as they were read' }).click()
  await expect(station).toHaveValue(fromWater)
  expect(numberIn(await newVolume(page, drained)), 'read from lower water, the floor is deeper').toBeGreaterThan(
    numberIn(drained),
  )
  await expect(note).toBeHidden()
  await undo.click()
  await expect.poll(() => announcedVolume(page)).toBe(drained)
})
