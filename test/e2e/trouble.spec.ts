import type { Page } from '@playwright/test'
import type { Path } from '../../src/basin/index.ts'
import { linkOf, specFromLink } from '../../src/document/index.ts'
import {
  announcedVolume,
  blankSheet,
  chapter,
  copyLink,
  newVolume,
  notice,
  numberIn,
  openApp,
  planMenu,
  saved,
  sheet,
  strip,
  typeInto,
} from './support/app.ts'
import { dragAlong, dragBy, middleOf, outlinePoints } from './support/hand.ts'
import { expect, test } from './support/test.ts'

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ })
const redo = (page: Page) => page.getByRole('button', { name: /^Redo/ })

test('an outline that crosses itself says where and how to mend it, and no dose comes of it', async ({ page }) => {
  await openApp(page)
  const before = await announcedVolume(page)
  const points = await outlinePoints(page)
  // The top of the deep end is pulled down through the opposite wall.
  const top = sheet(page).getByRole('button', { name: /^Point 6 of 8/ })
  const below = Math.max(...points.map((p) => p.y))
  await dragBy(page, top, 0, below - (await middleOf(top)).y + 60)

  const problem = page.getByRole('alert').filter({ hasText: 'The line crosses or touches itself.' })
  await expect(problem).toContainText('not known')
  await expect(problem).toContainText('Move a point or a handle until the line is free of itself')
  expect(await announcedVolume(page), 'no number where there is none').toBe('')
  const basin = await chapter(page, 'Basin')
  await expect(basin.getByRole('note', { name: 'Needs attention' }).first()).toContainText('The line crosses')
  await expect(basin.getByText('There is no volume until the drawing is mended')).toBeVisible()

  for (const name of ['Opening', 'Season'] as const) {
    const panel = await chapter(page, name)
    await expect(panel, `${name} gives no dose`).not.toContainText(/\d\s(lb|oz|fl oz|gal|kg|g|L)\b/)
    await expect(panel.getByText(/The drawing can’t be measured as it is/)).toBeVisible()
  }
  await undo(page).click()
  await expect.poll(() => announcedVolume(page)).toBe(before)
  await expect(problem).toBeHidden()
})

/** Pulls the top of the deep end down through the opposite wall. */
async function tangle(page: Page): Promise<void> {
  const points = await outlinePoints(page)
  const top = sheet(page).getByRole('button', { name: /^Point 6 of 8/ })
  await dragBy(page, top, 0, Math.max(...points.map((p) => p.y)) - (await middleOf(top)).y + 60)
}

test('a line that crosses itself may be had untangled, and that is one step of undo', async ({ page }) => {
  await openApp(page)
  const before = await announcedVolume(page)
  await tangle(page)
  const proposal = page.locator('[data-shape="untangled"]')
  await expect(proposal, 'it is shown before it is taken').toBeVisible()
  const offered = await proposal.getAttribute('d')
  const take = strip(page).getByRole('button', { name: 'Use the untangled line' })
  await take.click()
  const mended = await newVolume(page, '')
  expect(numberIn(mended)).toBeGreaterThan(1000)
  await expect(proposal).toBeHidden()
  await expect(take).toBeHidden()
  await expect(page.getByRole('alert').filter({ hasText: 'The line crosses' })).toBeHidden()
  await expect(page.locator('[data-shape="outline"]'), 'the line is the one that was shown').toHaveAttribute(
    'd',
    offered ?? '',
  )
  const focus = () => page.evaluate(() => document.activeElement === document.body)
  expect(await focus(), 'the focus stays with the work').toBe(false)

  await page.getByRole('button', { name: /^Undo: / }).click()
  await expect.poll(() => announcedVolume(page), 'the tangled line is back').toBe('')
  await expect(proposal).toBeVisible()
  const basin = await chapter(page, 'Basin')
  const note = basin.getByRole('note', { name: 'Needs attention' }).filter({ hasText: 'The line crosses' })
  await note.getByRole('button', { name: 'Use the untangled line' }).click()
  await expect.poll(() => announcedVolume(page), 'the ledger offers the same line').toBe(mended)
  await undo(page).click()
  await undo(page).click()
  await expect.poll(() => announcedVolume(page)).toBe(before)
})

test('a loop drawn as a figure of eight is offered untangled, and taking it is one step of undo', async ({ page }) => {
  await openApp(page)
  await blankSheet(page)
  await page.getByRole('button', { name: /Draw a loop/ }).click()
  const box = await sheet(page).boundingBox()
  if (!box) throw new Error('the sheet has no place on the screen')
  const eight = Array.from({ length: 61 }, (_, i) => {
    const a = 0.7 + (2 * Math.PI * i) / 60
    return {
      x: box.x + box.width * (0.5 + 0.3 * Math.cos(a)),
      y: box.y + box.height * (0.4 + 0.2 * Math.sin(2 * a)),
    }
  })
  await dragAlong(page, eight)
  await expect(strip(page)).toContainText('The line crosses itself')
  const proposal = page.locator('[data-shape="untangled"]')
  await expect(proposal, 'it is shown before it is taken').toBeVisible()
  await expect(undo(page), 'nothing is done yet').toHaveAccessibleName('Undo: New blank sheet')

  await test.step('the offer goes with the next press', async () => {
    await page.mouse.move(eight[0]?.x ?? 0, eight[0]?.y ?? 0)
    await page.mouse.down()
    await expect(proposal).toBeHidden()
    await page.mouse.up()
    await dragAlong(page, eight)
    await expect(proposal).toBeVisible()
  })

  await strip(page).getByRole('button', { name: 'Use the untangled line' }).click()
  await expect(proposal).toBeHidden()
  expect(numberIn(await newVolume(page, ''))).toBeGreaterThan(1000)
  await expect(strip(page).getByText('How big is it?')).toBeVisible()
  await undo(page).click()
  await expect.poll(() => announcedVolume(page)).toBe('')
  await expect(undo(page)).toHaveAccessibleName('Undo: New blank sheet')
})

test('measures typed for a form outlast another form, another chapter and undo', async ({ page }) => {
  await openApp(page)
  await blankSheet(page)
  const basin = await chapter(page, 'Basin')
  const measureOf = (name: string) => basin.getByRole('textbox', { name, exact: true })
  const choose = async (form: string) => {
    await basin.getByRole('button', { name: /Form/ }).click()
    await page.getByRole('option', { name: form, exact: true }).click()
  }
  await measureOf('Width').fill('17 ft')
  await choose('Circle')
  await expect(measureOf('Width')).toBeHidden()
  await choose('Rectangle')
  await expect(measureOf('Width'), 'also what was typed without Enter').toHaveValue(/^17′\s0″$/)
  await chapter(page, 'Water')
  await chapter(page, 'Basin')
  await expect(measureOf('Width')).toHaveValue(/^17′\s0″$/)
  await basin.getByRole('button', { name: 'Put on the sheet' }).click()
  await newVolume(page, '')
  await undo(page).click()
  await expect(measureOf('Width')).toHaveValue(/^17′\s0″$/)
  await basin.getByRole('button', { name: 'Usual measures' }).click()
  await expect(measureOf('Width')).toHaveValue(/^13′\s0″$/)
})

test('a body that lies on another is drawn, pointed out, and said how much it counts twice', async ({ page }) => {
  await openApp(page)
  const spec = specFromLink(await copyLink(page))
  if (!spec.ok) throw new Error('not a link')
  const [main] = spec.value.bodies
  if (!main) throw new Error('nothing is drawn')
  const round: Path = {
    start: [8.4, 4.2],
    segments: [[11.6, 4.2] as const, [8.4, 4.2] as const].map((to) => ({ to, bulge: 1 })),
  }
  const second = {
    ...main,
    id: 'round',
    name: 'Round end',
    outline: round,
    features: [],
    floor: { kind: 'flat', depthM: 1 } as const,
  }
  const both = linkOf({ ...spec.value, bodies: [main, second] }, './')
  await page.goto('about:blank')
  await openApp(page, both)
  const note = (await chapter(page, 'Basin')).getByRole('note').filter({ hasText: 'Round end lies on' })
  await expect(note).toContainText(/Counted twice: about [\d,]+\sgal\./)
  await expect(page.locator('[data-shape="neighbour"]')).toBeVisible()
  await expect.poll(() => announcedVolume(page), 'nothing is withheld for it').toMatch(/\d/)
})

test('text that can’t be read stays as it was typed, with a hint, and changes nothing', async ({ page }) => {
  await openApp(page)
  const before = await announcedVolume(page)
  const basin = await chapter(page, 'Basin')
  const depth = basin.getByRole('textbox', { name: 'Station 2, depth' })
  const was = await depth.inputValue()
  const bad = ['four feet', '3,5,7 ft', '7 ft 5 lb', '1e99 ft', '12 kg']
  for (const text of bad) {
    await typeInto(depth, text)
    await expect(depth, `“${text}” stays`).toHaveValue(text)
    await expect(depth).toHaveAttribute('aria-invalid', 'true')
    await expect(basin.getByRole('alert').first(), `“${text}” has a hint`).toHaveText(/\S+ \S+/)
  }
  await typeInto(depth, '1e9')
  await expect(basin.getByRole('alert').first()).toContainText("can't be read as one number")
  expect(await announcedVolume(page)).toBe(before)
  await depth.press('Escape')
  await expect(depth).toHaveValue(was)
  await expect(depth).not.toHaveAttribute('aria-invalid', 'true')

  const water = await chapter(page, 'Water')
  await water.getByRole('button', { name: 'Enter new readings' }).click()
  const pH = water.getByRole('textbox', { name: 'pH', exact: true })
  await pH.fill('78')
  await water.getByRole('button', { name: 'Save readings' }).click()
  await expect(pH).toHaveValue('78')
  await expect(pH).toBeFocused()
  await expect(water.getByRole('alert').filter({ hasText: 'Between 4' })).toBeVisible()
  await typeInto(pH, '7.8')
  await water.getByRole('button', { name: 'Save readings' }).click()
  await expect(water.getByRole('button', { name: 'Enter new readings' })).toBeVisible()
})

test('readings are saved from the foot of the form with the moment in hand, and a closed part opens for what it holds', async ({
  page,
}) => {
  await openApp(page)
  const water = await chapter(page, 'Water')
  await water.getByRole('button', { name: 'Enter new readings' }).click()
  const more = water.getByRole('button', { name: /^More readings/ })
  const iron = water.getByRole('textbox', { name: 'Iron', exact: true })
  const save = water.getByRole('button', { name: 'Save readings' })
  await more.click()
  await iron.fill('<0.1')
  await more.click()
  await expect(iron).toBeHidden()
  await save.click()
  await expect(iron).toBeFocused()
  await expect(water.getByRole('alert').filter({ hasText: '“<0.1” has no number' })).toBeVisible()
  await iron.fill('0.1')
  // A date field that is given the focus back scrolls itself into sight: the press must leave the focus where it is.
  await water.getByLabel('When').click({ position: { x: 20, y: 10 } })
  await page.keyboard.press('ArrowDown')
  await save.click()
  await expect(water.getByRole('button', { name: 'Enter new readings' })).toBeVisible()
  await water.getByRole('button', { name: /^Older readings/ }).click()
  await expect(water.getByRole('listitem').filter({ hasText: 'iron 0.1' })).toBeVisible()
})

test('a dose in the logbook is written only as it could be read, and no press of the button is lost', async ({
  page,
}) => {
  await openApp(page)
  const log = await chapter(page, 'Logbook')
  await log.getByRole('button', { name: 'Enter a dose given' }).click()
  const write = log.getByRole('button', { name: 'Write it down' })
  await write.click()
  await expect(log.getByRole('alert').filter({ hasText: 'Choose the product first.' })).toBeVisible()
  await log.getByRole('button', { name: /Product$/ }).click()
  await page.getByRole('option', { name: /^Sodium bicarbonate/ }).click()
  const amount = log.getByRole('textbox', { name: 'Amount' })
  for (const text of ['abc', '-2']) {
    await amount.fill(text)
    await write.click()
    await expect(amount, `“${text}” stays, to be mended`).toHaveValue(text)
    await expect(amount).toBeFocused()
    await expect(amount).toHaveAttribute('aria-invalid', 'true')
  }
  await amount.fill('0')
  await write.click()
  await expect(log.getByRole('alert').filter({ hasText: 'Type how much was given.' })).toBeVisible()
  // The complaint goes as the figure is taken up, and the button with it: the press still counts.
  await amount.fill('5')
  await write.click()
  await expect(log.getByText('5 lb', { exact: true })).toBeVisible()
  await test.step('a note without its moment is not written either', async () => {
    await log.getByRole('button', { name: 'Write a note' }).click()
    await log.getByRole('textbox', { name: 'Note' }).fill('Clear to the floor')
    await log.getByLabel('When').fill('')
    await write.click()
    await expect(log.getByLabel('When')).toHaveAttribute('aria-invalid', 'true')
    await expect(write).toBeVisible()
  })
})

test('a broken link says so, and the own plan stays as it was', async ({ page, otherBrowser }) => {
  await openApp(page)
  const basin = await chapter(page, 'Basin')
  await typeInto(basin.getByRole('textbox', { name: 'Name of the pool' }), 'Otter Bend')
  await saved(page)
  const own = await copyLink(page)
  const broken = [own.slice(0, -40), own.replace(/.{9}$/, 'AAAAAAAAA'), './#spec1=', './#spec1=%%%', './#anything']
  for (const link of broken) {
    // Another page first: the same page with another fragment is only turned to, not loaded.
    await page.goto('about:blank')
    await openApp(page, link)
    await expect(notice(page, 'This link could not be read, so your own plan is shown.')).toBeVisible()
    expect(page.url(), 'a reload shows the own plan').not.toContain('#')
    await expect(page.getByRole('banner')).toContainText('Otter Bend')
  }
  expect(await copyLink(page), 'the own plan, to the last digit').toBe(own)
  const guest = await (await otherBrowser()).newPage()
  await openApp(guest, broken[0] ?? '')
  await expect(notice(guest, 'This link could not be read')).toBeVisible()
  await expect(sheet(guest).getByRole('button', { name: /^Point 1 of/ })).toBeVisible()
})

test('undo goes back to the start and redo to the end, and leaving the page keeps the last state', async ({ page }) => {
  await openApp(page)
  await expect(undo(page)).toBeDisabled()
  const start = await copyLink(page)
  const volumes = [await announcedVolume(page)]
  const basin = await chapter(page, 'Basin')
  const edit = async (name: string, text: string) => {
    await typeInto(basin.getByRole('textbox', { name }), text)
    volumes.push(await newVolume(page, volumes.at(-1) ?? ''))
  }
  await edit('Station 3, depth', '5 ft 6 in')
  await edit('Overall, up the sheet', '20 ft')
  await edit('Depth of the shelf', '8 in')
  await dragBy(page, sheet(page).getByRole('button', { name: /^Station 4 of 5/ }), 0, 20)
  volumes.push(await newVolume(page, volumes.at(-1) ?? ''))
  const end = await copyLink(page)

  for (const volume of volumes.slice(0, -1).reverse()) {
    await undo(page).click()
    await expect.poll(() => announcedVolume(page)).toBe(volume)
  }
  await expect(undo(page), 'a drag is one step').toBeDisabled()
  expect(await copyLink(page)).toBe(start)
  for (const volume of volumes.slice(1)) {
    await redo(page).click()
    await expect.poll(() => announcedVolume(page)).toBe(volume)
  }
  await expect(redo(page)).toBeDisabled()
  expect(await copyLink(page)).toBe(end)
  await saved(page)
  await page.reload()
  await expect(sheet(page)).toBeVisible()
  expect(await copyLink(page)).toBe(end)
})

test('a plan that another took the place of can be had back, after a reload too', async ({ page }) => {
  await openApp(page)
  const before = await announcedVolume(page)
  await blankSheet(page)
  await saved(page)
  await page.reload()
  await expect(page.getByRole('heading', { name: 'A blank sheet' })).toBeVisible()
  await planMenu(page, /^Back to “Heron Lane”/)
  await expect.poll(() => announcedVolume(page)).toBe(before)
})

test('an old plan in a link says so and asks for fresh readings', async ({ page, otherBrowser }) => {
  await openApp(page)
  const water = await chapter(page, 'Water')
  const all = water.getByRole('button', { name: /^Older readings/ })
  await expect(all).toBeHidden()
  // The example's readings are of today; a plan of the spring has those of the spring.
  const log = await chapter(page, 'Logbook')
  await log
    .getByRole('button', { name: /^Delete the readings/ })
    .first()
    .click()
  await chapter(page, 'Water')
  const form = water.getByRole('region', { name: 'First readings' })
  for (const [name, text] of [
    ['pH', '7.7'],
    ['Total alkalinity', '55'],
    ['Calcium hardness', '120'],
    ['Free chlorine', '1'],
  ] as const)
    await form.getByRole('textbox', { name, exact: true }).fill(text)
  const monthsAgo = await page.evaluate(() => {
    const then = new Date(Date.now() - 130 * 24 * 3_600_000)
    return `${then.getFullYear()}-${String(then.getMonth() + 1).padStart(2, '0')}-${String(then.getDate()).padStart(2, '0')}T10:00`
  })
  await form.getByLabel('When').fill(monthsAgo)
  await form.getByRole('button', { name: 'Save readings' }).click()
  await expect(water.getByRole('heading', { name: 'The water, measured 4 months ago' })).toBeVisible()
  const link = await copyLink(page)

  const guest = await (await otherBrowser()).newPage()
  await openApp(guest, link)
  await expect(guest.getByText('take fresh readings before you follow them')).toBeVisible()
  const opening = await chapter(guest, 'Opening')
  await expect(opening.getByRole('note').filter({ hasText: 'Measure again first.' })).toBeVisible()
  const guestWater = await chapter(guest, 'Water')
  await expect(guestWater.getByText('measured 4 months ago').first()).toBeVisible()
  await expect(guestWater.getByText('Measure again first.')).toBeVisible()
})

test('a scrawl that is no loop is refused with a word of help', async ({ page }) => {
  await openApp(page)
  await blankSheet(page)
  await page.getByRole('button', { name: /Draw a loop/ }).click()
  const box = await sheet(page).boundingBox()
  const at = { x: (box?.x ?? 0) + 300, y: (box?.y ?? 0) + 200 }
  await dragAlong(page, [at, { x: at.x + 6, y: at.y + 5 }, { x: at.x + 12, y: at.y + 7 }])
  await expect(notice(page, 'Keep the pointer down and go once around the pool.')).toBeVisible()
  await expect(strip(page)).toContainText('Draw a loop')
  expect(await announcedVolume(page)).toBe('')
})

test('an open dialog stays off paper, and every page of the plan is printed', async ({ page }) => {
  await openApp(page)
  await page.getByRole('button', { name: /^Copy (spec )?link$/ }).click()
  const dialog = page.getByRole('dialog', { name: 'The link to this plan' })
  await expect(dialog).toBeVisible()
  await page.emulateMedia({ media: 'print' })
  await expect(dialog).toBeHidden()
  await expect(page.locator('html'), 'the page is not held to its first sheet').toHaveCSS('overflow', 'visible')
})

test('on a phone a plan that came by a link says so beside its doses, however far down', async ({
  page,
  context,
  otherBrowser,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await openApp(page)
  const link = await copyLink(page)
  const guest = await (await otherBrowser({ viewport: { width: 390, height: 844 } })).newPage()
  await openApp(guest, link)
  const opening = await chapter(guest, 'Opening')
  const marked = opening.getByText('Take fresh readings before you follow any dose.')
  await opening.getByRole('listitem').nth(12).scrollIntoViewIfNeeded()
  await expect(marked).toBeInViewport({ ratio: 0.9 })
})
