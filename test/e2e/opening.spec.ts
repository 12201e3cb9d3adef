import type { Locator, Page } from '@playwright/test'
import { chapter, chooseUnits, numberIn, openApp, planMenu, saved, typeInto } from './support/app.ts'
import { chapterViolations, expectFits, onEveryScreen, openAll } from './support/screens.ts'
import { expect, test } from './support/test.ts'

/** Chooses how the pool starts; answers that part of the chapter. */
async function startAs(page: Page, name: RegExp): Promise<Locator> {
  const opening = await chapter(page, 'Opening')
  const start = opening.getByRole('region', { name: 'How it starts', exact: true })
  await start.getByRole('button', { name: /Start$/ }).click()
  await page.getByRole('option', { name }).click()
  return start
}

async function addLabel(page: Page, opening: Locator): Promise<Locator> {
  const own = opening.getByRole('region', { name: 'Your own products' })
  await own.getByRole('button', { name: 'Add a product from its label' }).click()
  const form = own.getByRole('region', { name: 'A product from its label' })
  await form.getByRole('textbox', { name: 'What you call it' }).fill('Green jug')
  await form.getByRole('button', { name: /Made of the same as/ }).click()
  await page
    .getByRole('option', { name: /^Liquid chlorine/ })
    .first()
    .click()
  await form.getByRole('textbox', { name: 'Strength' }).fill('11')
  await form.getByRole('button', { name: 'Add it' }).click()
  await expect(form).toBeHidden()
  await own.getByRole('button', { name: /^Green jug/ }).click()
  return own
}

/** Puts the plan in the place of one that has many more products in stock, as a file of its own. */
async function fullShed(page: Page): Promise<void> {
  const saving = page.waitForEvent('download')
  await planMenu(page, 'Save a file')
  const chunks: Buffer[] = []
  for await (const chunk of await (await saving).createReadStream()) chunks.push(Buffer.from(chunk))
  const spec = JSON.parse(Buffer.concat(chunks).toString('utf8'))
  spec.systems[0].stock = SHED.map((product) => ({ product, amountG: 5000 }))
  spec.systems[0].regime.id = 'salt'
  const choosing = page.waitForEvent('filechooser')
  await planMenu(page, /^Open a file/)
  const buffer = Buffer.from(JSON.stringify(spec))
  await (await choosing).setFiles({ name: 'shed.json', mimeType: 'application/json', buffer })
}
const SHED = ['dry-acid', 'soda-ash', 'liquid-chlorine-12', 'cal-hypo-65', 'cyanuric-acid', 'salt', 'borax-10']

/** Pages of a PDF that the browser has made. */
const pagesOf = (pdf: Buffer): number => (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length

test('an amount that can hardly have gone in is asked after, and far too much chlorine leads the plan', async ({
  page,
}) => {
  await openApp(page)
  const opening = await chapter(page, 'Opening')
  const excess = page.getByRole('alert').filter({ hasText: 'Keep everyone out' })
  await expect(excess).toBeHidden()
  await test.step('at a line of the plan: the press that takes the amount up only asks', async () => {
    await opening
      .getByRole('button', { name: /write down what was given$/ })
      .or(opening.getByRole('checkbox', { name: /write down what was given$/ }))
      .first()
      .click()
    const form = opening.getByRole('region', { name: 'What was given' })
    const amount = form.getByRole('textbox', { name: /^(Poured|Weighed) in/ })
    await amount.fill(
      `${numberIn(await amount.inputValue()) * 70} ${(await amount.inputValue()).replace(/^[\d.,½¼¾ ]+/, '')}`,
    )
    await form.getByRole('button', { name: 'Write it down' }).click()
    await expect(
      form.getByRole('alert').filter({ hasText: /^This is \d+ times the .* Is it really what went in\?$/ }),
    ).toBeVisible()
    await form.getByRole('button', { name: 'Not yet' }).click()
  })
  await test.step('in the logbook by what it would do; once it is said to be so, it counts', async () => {
    const log = await chapter(page, 'Logbook')
    await log.getByRole('button', { name: 'Enter a dose given' }).click()
    await log.getByRole('button', { name: /Product$/ }).click()
    await page
      .getByRole('option', { name: /^Liquid chlorine/ })
      .first()
      .click()
    await log.getByRole('textbox', { name: 'Amount' }).fill('99 L')
    await log.getByRole('button', { name: 'Write it down' }).click()
    await expect(log.getByRole('alert').filter({ hasText: /raise free chlorine by \d+/ })).toBeVisible()
    await log.getByRole('button', { name: 'Yes, that much went in' }).click()
    await expect(log.getByRole('textbox', { name: 'Amount' })).toBeHidden()
  })
  for (const name of ['Water', 'Season', 'Opening'] as const) {
    await chapter(page, name)
    await expect(excess, name).toBeVisible()
  }
  await expect(excess).toContainText('licensed pool trade')
})

test('of a line of several pours one can be written down, and the rest stays to be given', async ({ page }) => {
  await openApp(page)
  const water = await chapter(page, 'Water')
  await water.getByRole('button', { name: 'Enter new readings' }).click()
  const rows = [
    ['pH', '8.3'],
    ['Total alkalinity', '200'],
    ['Calcium hardness', '250'],
    ['Stabiliser', '30'],
    ['Free chlorine', '3'],
    ['Salt', '500'],
    ['Water temperature', '27 C'],
  ] as const
  for (const [name, text] of rows) await typeInto(water.getByRole('textbox', { name, exact: true }), text)
  await water.getByRole('button', { name: 'Save readings' }).click()
  const opening = await chapter(page, 'Opening')
  const line = opening
    .getByRole('listitem')
    .filter({ has: page.getByRole('list', { name: 'Pours' }) })
    .first()
  await line.getByRole('button', { name: /write down what was given$/ }).click()
  const form = opening.getByRole('region', { name: 'What was given' })
  const amount = form.getByRole('textbox', { name: /in$/ })
  const one = await amount.inputValue()
  await form.getByRole('radio', { name: /^all \d+$/ }).press('Space')
  await expect(amount).not.toHaveValue(one)
  await form.getByRole('radio', { name: /^pour 1 of \d+$/ }).press('Space')
  await expect(amount).toHaveValue(one)
  await form.getByRole('button', { name: 'Write it down' }).click()
  await expect(opening.getByRole('button', { name: /^Line \d+ is done$/ })).toHaveCount(1)
  await expect(opening.getByRole('button', { name: /acid.*: write down what was given$/i }).first()).toBeVisible()
})

test('a start: its inputs, today’s steps, what it reckons and withholds, and a tick that stays', async ({ page }) => {
  await openApp(page)
  const start = await startAs(page, /^Spring opening/)
  await expect(start.getByRole('heading', { name: 'Day 1 of 7' })).toBeVisible()
  await expect(start.getByText(/^The figures of this start need: let down at closing/)).toBeVisible()
  await typeInto(start.getByRole('textbox', { name: 'Let down at closing' }), '0.5 m')
  await typeInto(start.getByRole('textbox', { name: /^Level in spring/ }), '0.2 m')
  await typeInto(start.getByRole('textbox', { name: /^Rain and melt/ }), '0.4 m')
  await test.step('figures and expected readings come with their range', async () => {
    await expect(start.getByRole('row', { name: /^Exchanged over winter [\d.]+ % ?[\d.]+ to [\d.]+ %$/ })).toBeVisible()
    await expect(start.getByRole('row', { name: /^Calcium hardness 90 mg\/L \d+ mg\/L/ })).toBeVisible()
  })
  await test.step('what the start waits with is said, and the plan keeps to it', async () => {
    await expect(start.getByRole('note').filter({ hasText: /^Targets of today/ })).toContainText(
      'Free chlorine: nothing is dosed for it on day 1.',
    )
    await expect(start.getByRole('note').filter({ hasText: /^Bathing\./ })).toContainText(
      'Nobody bathes until readings of the pool itself',
    )
  })
  const today = start.getByRole('list', { name: 'Today' })
  await test.step('a step is ticked by keyboard, kept, and taken back', async () => {
    await today.getByRole('button', { name: 'Uncover: done', exact: true }).press('Space')
    await expect(today.getByRole('button', { name: 'Uncover: done, take it back' })).toBeVisible()
    await saved(page)
    await page.reload()
    await chapter(page, 'Opening')
    await today.getByRole('button', { name: 'Uncover: done, take it back' }).press('Enter')
    await expect(today.getByRole('button', { name: 'Uncover: done', exact: true })).toBeVisible()
  })
  await test.step('all days are there, and an impossible figure is refused where it is typed', async () => {
    await start.getByRole('button', { name: /^All days/ }).click()
    await expect(start.getByText(/^days? \d/).first()).toBeVisible()
    await start.getByRole('textbox', { name: 'Let down at closing' }).fill('9 m')
    await start.getByRole('textbox', { name: 'Let down at closing' }).press('Enter')
    await expect(start.getByRole('alert').first()).toBeVisible()
  })
})

test('lines: how sure, what to wear, all readings after, ticks, and readings after a line plan anew', async ({
  page,
}) => {
  await openApp(page)
  const opening = await chapter(page, 'Opening')
  const lines = opening.getByRole('region', { name: 'The lines' })
  await expect(lines.getByText(/as sure as the volume is and the readings are/).first()).toBeVisible()
  await expect(lines.getByText(/^Wear: Goggles/).first()).toBeVisible()
  await lines
    .getByRole('button', { name: /^All readings after line/ })
    .first()
    .click()
  await expect(lines.getByRole('row', { name: /^Active chlorine [\d.]+ mg\/L$/ })).toBeVisible()
  await test.step('a line that doses nothing is ticked and taken back', async () => {
    await lines.getByRole('button', { name: /^Line 2, Metals: tick it off/ }).click()
    await lines.getByRole('button', { name: /^Line 2, Metals: done, take it back/ }).click()
    await expect(lines.getByRole('button', { name: /^Line 2, Metals: tick it off/ })).toBeVisible()
  })
  await test.step('what was given is written down by keyboard, and the focus stays at its line', async () => {
    const box = lines.getByRole('button', { name: /: write down what was given$/ }).first()
    const name = ((await box.getAttribute('aria-label')) ?? '').replace(/^Line \d+, (.*): write.*$/, '$1')
    await box.press('Space')
    await lines
      .getByRole('region', { name: 'What was given' })
      .getByRole('button', { name: 'Write it down' })
      .press('Enter')
    await expect(lines.getByRole('heading', { name })).toBeFocused()
  })
  await test.step('what was measured makes the plan anew', async () => {
    await lines
      .getByRole('button', { name: /^Enter what you measured after line/ })
      .last()
      .click()
    const form = lines.getByRole('region', { name: /^Measured after line/ })
    await typeInto(form.getByRole('textbox', { name: 'pH', exact: true }), '7.5')
    await typeInto(form.getByRole('textbox', { name: 'Total alkalinity', exact: true }), '80')
    await typeInto(form.getByRole('textbox', { name: 'Free chlorine', exact: true }), '2')
    await form.getByRole('button', { name: 'Save and plan on from here' }).click()
    await expect(opening.getByText('Not measured, so nothing is dosed for it:')).toBeVisible()
  })
})

test('what to buy: prices, a sum, what is left over, and an objective', async ({ page }) => {
  await openApp(page)
  await chooseUnits(page, 'Metric')
  const opening = await chapter(page, 'Opening')
  const shop = opening.getByRole('region', { name: 'To buy' })
  await shop.getByRole('button', { name: /^Prices of packages/ }).click()
  await typeInto(shop.getByRole('textbox', { name: 'Currency' }), 'Cr')
  const prices = shop.locator('div').getByRole('textbox', { name: /, \d/ })
  await expect(prices.first()).toBeVisible()
  const count = await prices.count()
  for (let i = 0; i < count; i++) await typeInto(prices.nth(i), '10')
  await expect(shop.getByRole('row', { name: /^Together \d+\.00\sCr$/ })).toBeVisible()
  await expect(shop.getByText(/left over$/).first()).toBeVisible()
  const plan = opening.getByRole('region', { name: 'The plan', exact: true })
  await plan.getByRole('radio', { name: 'whole packages' }).check({ force: true })
  await expect(plan.getByText('Only where the result stays inside its band; else as reckoned.')).toBeVisible()
  await plan.getByRole('button', { name: /If there is more than one way/ }).click()
  await page.getByRole('option', { name: /^the least money/ }).click()
  await expect(plan.getByText(/^By your prices below/)).toBeVisible()
})

test('a label of one’s own is dosed by, and a device that held tablets takes no liquid chlorine', async ({ page }) => {
  await openApp(page)
  const opening = await chapter(page, 'Opening')
  const own = await addLabel(page, opening)
  await own.getByText('The plan takes it for: first chlorine').click()
  const lines = opening.getByRole('region', { name: 'The lines' })
  await expect(lines.getByRole('heading', { name: 'Green jug' })).toBeVisible()
  await test.step('stronger than its substance can be: nothing is dosed, with the reason', async () => {
    await typeInto(own.getByRole('textbox', { name: 'Strength' }), '60')
    await expect(own.getByRole('note', { name: 'Needs attention' })).toBeVisible()
    await expect(lines).toHaveCount(0)
    await typeInto(own.getByRole('textbox', { name: 'Strength' }), '11')
    await expect(lines.getByRole('heading', { name: 'Green jug' })).toBeVisible()
  })
  const devices = opening.getByRole('region', { name: 'What chemicals go through' })
  await devices.getByRole('button', { name: 'Add a device' }).click()
  await devices.getByRole('button', { name: /^Feeder/ }).click()
  const choose = async (name: RegExp) => {
    await devices.getByRole('button', { name: /Product$/ }).click()
    await page.getByRole('option', { name }).first().click()
  }
  await choose(/^Green jug/)
  await expect(devices.getByRole('note')).toContainText('Green jug: not yet.')
  await choose(/^Trichlor tablet/)
  await devices.getByRole('button', { name: 'It has been in there before' }).click()
  await choose(/^Green jug/)
  await expect(devices.getByRole('note')).toContainText('Green jug must never go in.')
  await expect(devices.getByRole('note')).toContainText('Take a new one')
  await expect(devices.getByRole('button', { name: 'Put it in' })).toHaveCount(0)
})

for (const format of ['A4', 'Letter'] as const) {
  test(`the deck card is one page of ${format}, and alone on it`, async ({ page }) => {
    await page.addInitScript(() => {
      window.print = () => undefined
    })
    await openApp(page)
    await fullShed(page)
    const opening = await chapter(page, 'Opening')
    const card = opening.getByRole('region', { name: 'The deck card' })
    await card.getByRole('button', { name: 'Print the deck card' }).click()
    await page.emulateMedia({ media: 'print' })
    const printed = page.getByRole('article', { name: 'Deck card' })
    await expect(printed).toBeVisible()
    await expect(printed.getByRole('row', { name: /^Muriatic acid/ })).toContainText('pours')
    await expect(printed.getByRole('row', { name: /^Dry acid/ })).toContainText('pours')
    await expect(printed.getByText(/^This card is no leave to bathe/)).toBeVisible()
    await expect(page.getByRole('region', { name: 'Ledger' })).toBeHidden()
    expect(pagesOf(await page.pdf({ format }))).toBe(1)
    await test.step('afterwards the page is itself again', async () => {
      await page.emulateMedia({ media: 'screen' })
      await page.evaluate(() => window.dispatchEvent(new Event('afterprint')))
      await expect(page.getByRole('article', { name: 'Deck card' })).toHaveCount(0)
      await page.emulateMedia({ media: 'print' })
      await expect(page.getByRole('region', { name: 'Ledger' })).toBeVisible()
    })
  })
}

onEveryScreen(
  (screen) => {
    test('the whole chapter, opened, fits, is readable and can be used by all', async ({ page }) => {
      await openApp(page)
      const opening = await chapter(page, 'Opening')
      await addLabel(page, opening)
      await opening.getByRole('button', { name: 'Add a device' }).click()
      await startAs(page, /^New plaster/)
      await openAll(opening)
      await expectFits(page, screen, 'opened')
      expect.soft(await chapterViolations(page, screen), 'axe').toEqual([])
    })
  },
  ['light', 'dark'],
)
