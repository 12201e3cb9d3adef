import type { Locator, Page } from '@playwright/test'
import { deriveBody } from '../../src/derive/index.ts'
import { specFromLink } from '../../src/document/index.ts'
import { formatQuantity } from '../../src/units/index.ts'
import {
  announcedVolume,
  blankSheet,
  chapter,
  chooseUnits,
  copyLink,
  newVolume,
  notice,
  numberIn,
  openApp,
  saved,
  sheet,
  strip,
  typeInto,
} from './support/app.ts'
import { centreOf, dragAlong, dragBy, dragFromWall, outlinePoints, wobblyLoop } from './support/hand.ts'
import { expect, test } from './support/test.ts'

/** Of one US gallon, exactly: 231 cubic inches [m³]. */
const US_GALLON_M3 = 0.003785411784

test('a newcomer draws a pool, gets its opening loads, and another browser finds the same by the link', async ({
  page,
  context,
  otherBrowser,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await openApp(page)
  await blankSheet(page)

  await test.step('draws a loop and types the two lengths that it knows', async () => {
    await page.getByRole('button', { name: /Draw a loop/ }).click()
    await dragAlong(page, await wobblyLoop(page))
    await expect(strip(page).getByText('How big is it?')).toBeVisible()
    await expect(page.getByText('Volume, sketch')).toBeVisible()
    const points = await outlinePoints(page)
    expect(points.length, 'a fit has few points').toBeLessThanOrEqual(14)
    expect(points.length).toBeGreaterThanOrEqual(4)
    const sketched = await announcedVolume(page)
    await typeInto(strip(page).getByRole('textbox', { name: 'From end to end' }), "34'6")
    await typeInto(strip(page).getByRole('textbox', { name: 'How wide' }), '19 ft')
    await expect(strip(page).getByText('How big is it?')).toBeHidden()
    await expect(page.getByText('Volume, sketch')).toBeHidden()
    await expect(sheet(page).getByRole('button', { name: /^Overall length 34 ft 6 in/ })).toBeVisible()
    await expect(sheet(page).getByRole('button', { name: /^Overall width 19 ft 0 in/ })).toBeVisible()
    expect(await announcedVolume(page)).not.toBe(sketched)
  })

  await test.step('sets four stations, typed and dragged', () => setStations(page))

  await test.step('adds steps by dragging on the plan', async () => {
    const before = await announcedVolume(page)
    const points = await outlinePoints(page)
    const leftmost = points.reduce((a, b) => (a.x < b.x ? a : b))
    await page.getByRole('radio', { name: /^Drag steps out/ }).click()
    await dragFromWall(page, leftmost, centreOf(points), 60)
    await expect(sheet(page).getByRole('button', { name: /^Steps 1 of 1, treads \d/ })).toBeVisible()
    await expect(strip(page).getByRole('textbox', { name: 'Treads' })).toBeVisible()
    const after = await newVolume(page, before)
    expect(numberIn(after), 'steps take room from the water').toBeLessThan(numberIn(before))
  })

  await test.step('types one exact dimension', async () => {
    const before = await announcedVolume(page)
    await sheet(page)
      .getByRole('button', { name: /^Overall length/ })
      .click()
    const length = strip(page).getByRole('textbox', { name: 'Length' })
    await expect(length).toBeFocused()
    await typeInto(length, "36'")
    await expect(sheet(page).getByRole('button', { name: /^Overall length 36 ft 0 in/ })).toBeVisible()
    const after = await newVolume(page, before)
    expect(numberIn(after) / numberIn(before), 'a longer pool holds more').toBeGreaterThan(1.01)
    expect(numberIn(after) / numberIn(before)).toBeLessThan(1.1)
  })

  await test.step('looks at it in metric units and back', async () => {
    const us = await announcedVolume(page)
    await chooseUnits(page, 'Metric')
    await expect.poll(() => announcedVolume(page)).toMatch(/m³$/)
    const metric = await announcedVolume(page)
    const ratio = (numberIn(us) * US_GALLON_M3) / numberIn(metric)
    expect(Math.abs(ratio - 1), `${us} and ${metric} are one volume`).toBeLessThan(0.004)
    await expect(sheet(page).getByRole('button', { name: /^Overall length 10\.97 m/ })).toBeVisible()
    await chooseUnits(page, 'US')
    await expect.poll(() => announcedVolume(page)).toBe(us)
  })

  await test.step('enters the fill water, and that the pool was filled with it', () => enterFillWater(page))
  const lines = await test.step('reads the opening plan', () => readOpening(page))
  const volume = await announcedVolume(page)

  const link = await test.step('copies the link', async () => {
    const shown = await copyLink(page)
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(shown)
    await expect(notice(page, 'Link copied')).toBeVisible()
    return shown
  })

  await test.step('another browser finds the same pool and the same plan, to look at only', async () => {
    const context = await otherBrowser()
    const guest = await context.newPage()
    await openApp(guest, link)
    await expect(guest.getByText('You are looking at a plan that came by a link.')).toBeVisible()
    expect(await announcedVolume(guest)).toBe(volume)
    // The link holds the document itself: the same link again means every number to its last digit.
    expect(await copyLink(guest)).toBe(link)
    expect(volumeInLink(link), 'what the core makes of the link by itself').toBe(volume)
    const panel = await chapter(guest, 'Opening')
    expect(await lineTexts(panel)).toEqual(lines)
    await expectViewOnly(guest)
    await guest.getByRole('button', { name: 'Make it mine' }).click()
    await expect(notice(guest, 'This is your own copy now')).toBeVisible()
    const basin = await chapter(guest, 'Basin')
    await typeInto(basin.getByRole('textbox', { name: 'Station 1, depth' }), "3'")
    await newVolume(guest, volume)
    await saved(guest)
  })

  await test.step('writes down a dose, and the log has it', () => tickFirstDose(page))

  await test.step('a reload loses nothing', async () => {
    await saved(page)
    const before = await copyLink(page)
    await page.reload()
    await expect(sheet(page)).toBeVisible()
    expect(await announcedVolume(page)).toBe(volume)
    expect(await copyLink(page)).toBe(before)
    const log = await chapter(page, 'Logbook')
    await expect(log.getByRole('listitem').filter({ hasText: 'Fill water, as the pool was filled' })).toBeVisible()
  })
})

/** The volume of the plan in a link, computed here from the link alone, in the words of the screen. */
function volumeInLink(link: string): string {
  const spec = specFromLink(link)
  const body = spec.ok ? spec.value.bodies[0] : undefined
  if (!body) throw new Error('the link holds a basin')
  const { measures, sigmaM3 } = deriveBody(body)
  if (!measures.ok) throw new Error(measures.problem.what)
  const { volumeM3 } = measures.value
  return formatQuantity('volume', volumeM3, 'us', { sigma: sigmaM3, style: 'long' }).replace(/\s+/g, ' ')
}

async function setStations(page: Page): Promise<void> {
  const basin = await chapter(page, 'Basin')
  const depths = basin.getByRole('region', { name: 'Depths' })
  await expect(depths.getByText('Nobody has said a depth yet')).toBeVisible()
  await depths.getByRole('button', { name: 'Add a station' }).click()
  await depths.getByRole('button', { name: 'Add a station' }).click()
  const typed = [
    ['Station 1, depth', "3'6"],
    ['Station 2, distance from A', '11 ft'],
    ['Station 2, depth', '4 ft'],
    ['Station 3, distance from A', '20 ft 6 in'],
    ['Station 3, depth', '66 in'],
  ] as const
  for (const [name, text] of typed) await typeInto(depths.getByRole('textbox', { name }), text)
  await expect(depths.getByText('Nobody has said a depth yet')).toBeHidden()
  await expect(
    sheet(page).getByRole('button', { name: /^Station 3 of 4, 20 ft 6 in from A, 5 ft 6 in deep/ }),
  ).toBeVisible()
  const before = await announcedVolume(page)
  const deepest = sheet(page).getByRole('button', { name: /^Station 4 of 4/ })
  const was = await deepest.getAttribute('aria-label')
  await dragBy(page, deepest, 0, 30)
  await expect(deepest).not.toHaveAttribute('aria-label', was ?? '')
  const after = await newVolume(page, before)
  expect(numberIn(after), 'a deeper end holds more').toBeGreaterThan(numberIn(before))
  // The section, the strip below it and the table in the ledger are one number.
  const inTable = await depths.getByRole('textbox', { name: 'Station 4, depth' }).inputValue()
  await expect(strip(page).getByRole('textbox', { name: 'Depth' })).toHaveValue(inTable)
}

const FILL_WATER = [
  ['pH', '7.9', '7.9'],
  ['Total alkalinity', '48', '48 mg/L'],
  ['Calcium hardness', '60', '60 mg/L'],
  ['Stabiliser', '0', '0 mg/L'],
  ['Borate, as boron', '0', '0 mg/L'],
  ['Free chlorine', '0.2', '0.2 mg/L'],
  ['Salt', '60', '60 mg/L'],
  ['Water temperature', '66', '66 °F'],
] as const

async function enterFillWater(page: Page): Promise<void> {
  const water = await chapter(page, 'Water')
  const fill = water.getByRole('region', { name: 'Fill water' })
  await fill.getByRole('button', { name: 'Enter the fill water' }).click()
  for (const [name, text] of FILL_WATER) await fill.getByRole('textbox', { name, exact: true }).fill(text)
  await fill.getByRole('button', { name: 'Save fill water' }).click()
  for (const [name, , shown] of FILL_WATER)
    await expect(fill.getByRole('row', { name: `${name} ${shown}` })).toBeVisible()
  await fill.getByRole('button', { name: 'The pool is filled with this water now' }).click()
  const readings = water.getByRole('region', { name: 'Readings' })
  await expect(readings.getByRole('row', { name: 'Total alkalinity 48 mg/L' })).toBeVisible()
  const kept = water.getByRole('region', { name: 'How it is kept' })
  await kept.getByRole('button', { name: /Way of chlorinating/ }).click()
  await page.getByRole('option', { name: /^Low chlorine without stabiliser/ }).click()
}

/** The numbered lines of the plan, whole: what, how much, when, how, the readings expected after each; not the buttons. */
async function lineTexts(panel: Locator): Promise<string[]> {
  const list = panel.getByRole('region', { name: 'The lines' })
  const heading = panel.page().getByRole('heading', { level: 3 })
  await expect(list.getByRole('heading', { level: 3 }).first()).toBeVisible()
  const lines = list.getByRole('listitem').filter({ has: heading })
  return lines.evaluateAll((items) =>
    items.map((item) => {
      const words: string[] = []
      const walker = document.createTreeWalker(item, NodeFilter.SHOW_TEXT)
      while (walker.nextNode())
        if (!walker.currentNode.parentElement?.closest('button')) words.push(walker.currentNode.nodeValue ?? '')
      const scales = [...item.querySelectorAll('[role="img"]')].map((scale) => scale.getAttribute('aria-label'))
      // Numbers and units are held together by spaces that don't break: as text they are spaces.
      return [words.join(' '), ...scales].join(' | ').replace(/\s+/g, ' ')
    }),
  )
}

async function readOpening(page: Page): Promise<string[]> {
  const panel = await chapter(page, 'Opening')
  const lines = await lineTexts(panel)
  const find = (what: RegExp) => lines.find((line) => what.test(line)) ?? ''
  const alkalinity = find(/bicarbonate/i)
  expect(alkalinity, 'weighed in pounds').toMatch(/\d+ lb/)
  expect(alkalinity, 'what it leaves behind').toMatch(/Total alkalinity: .*4\d mg\/L, expected \d+ mg\/L, inside/)
  expect(find(/Liquid chlorine 12\.5 %/), 'poured by fluid ounces that say whose').toMatch(/fl oz \(US\)/)
  expect(find(/^\d+ Calcium chloride/)).toMatch(/Calcium hardness: .* expected \d+ mg\/L, inside/)
  const order = [
    /Circulate and measure/,
    // below its floor: before the night
    /Liquid chlorine/,
    /bicarbonate/i,
    /Calcium chloride/,
    /Boric acid/,
    /Measure again/,
  ]
  const places = order.map((what) => lines.findIndex((line) => what.test(line)))
  expect(places, 'the order of adding').toEqual([...places].sort((a, b) => a - b))
  expect(places).not.toContain(-1)
  return lines
}

async function expectViewOnly(guest: Page): Promise<void> {
  await expect(guest.getByRole('button', { name: /^Undo/ })).toBeDisabled()
  await expect(guest.getByRole('radiogroup', { name: 'Drawing tools' })).toHaveCount(0)
  await expect(sheet(guest).getByRole('button', { name: /^(Point|Station) / })).toHaveCount(0)
  const basin = await chapter(guest, 'Basin')
  const boxes = basin.getByRole('textbox')
  expect(await boxes.count()).toBeGreaterThan(5)
  for (const box of await boxes.all()) await expect(box).toBeDisabled()
}

async function tickFirstDose(page: Page): Promise<void> {
  const panel = await chapter(page, 'Opening')
  const box = panel.getByRole('button', { name: /: write down what was given$/ }).first()
  const product = /^Line \d+, (.*): write down/.exec((await box.getAttribute('aria-label')) ?? '')?.[1] ?? ''
  await box.click()
  const form = panel.getByRole('region', { name: 'What was given' })
  const amount = form.getByRole('textbox', { name: /in$/ })
  const given = await amount.inputValue()
  expect(given).not.toBe('')
  await form.getByRole('button', { name: 'Write it down' }).click()
  await expect(panel.getByRole('button', { name: /^Line \d+ is done$/ })).toBeVisible()
  const log = await chapter(page, 'Logbook')
  await expect(log.getByRole('listitem').filter({ hasText: product }).filter({ hasText: /\d/ })).toBeVisible()
}
