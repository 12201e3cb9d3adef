import type { Locator, Page } from '@playwright/test'
import { chapter, openApp, saved, typeInto } from './support/app.ts'
import { chapterViolations, expectFits, onEveryScreen, openAll } from './support/screens.ts'
import { expect, test } from './support/test.ts'

/** Readings as people have them, each in the unit that they have it in. */
const STABILISED = [
  ['pH', '7.6'],
  ['Total alkalinity', '134 mg/L HCO3'],
  ['Stabiliser', '45'],
  ['Free chlorine', '3.2'],
  ['Water temperature', '27 C'],
] as const
const FEW_TAKE = [
  ['Total chlorine', '4.6'],
  ['Total hardness', '14 °dH'],
  ['Conductivity', '1.45 mS/cm'],
] as const

const fields = async (form: Locator, rows: readonly (readonly [string, string])[]) => {
  for (const [name, text] of rows) await typeInto(form.getByRole('textbox', { name, exact: true }), text)
}

/** Opens the form for newer readings; answers its part of the chapter. */
async function newReadings(page: Page): Promise<{ readonly water: Locator; readonly readings: Locator }> {
  const water = await chapter(page, 'Water')
  const readings = water.getByRole('region', { name: 'Readings', exact: true })
  await readings.getByRole('button', { name: 'Enter new readings' }).click()
  return { water, readings }
}

async function measuredBy(page: Page, form: Locator, method: string): Promise<void> {
  await form.getByRole('button', { name: /Measured with/ }).click()
  await page.getByRole('option', { name: method, exact: true }).click()
}

/** A stabilised pool after a photometer and a meter. */
async function stabilised(page: Page): Promise<Locator> {
  const { water, readings } = await newReadings(page)
  await fields(readings, STABILISED)
  await readings.getByRole('button', { name: /^More readings/ }).click()
  await fields(readings, FEW_TAKE)
  await measuredBy(page, readings, 'Photometer')
  await readings.getByRole('button', { name: 'Save readings' }).click()
  await expect(readings.getByRole('button', { name: 'Enter new readings' })).toBeVisible()
  return water
}

test('readings as people have them: other units, what they tell of others, and where a test misleads', async ({
  page,
}) => {
  await openApp(page)
  const water = await stabilised(page)
  const readings = water.getByRole('region', { name: 'Readings', exact: true })
  await test.step('bicarbonate, degrees and millisiemens are understood', async () => {
    await expect(readings.getByRole('row', { name: /^Total alkalinity 110 mg\/L/ })).toBeVisible()
    await expect(readings.getByRole('row', { name: /^Total hardness 250 mg\/L/ })).toBeVisible()
    await expect(readings.getByRole('row', { name: /^Conductivity 1,450 µS\/cm/ })).toBeVisible()
  })
  await test.step('calcium, salt and combined chlorine are reckoned, with their range', async () => {
    await expect(readings.getByText(/Calcium hardness is reckoned from total hardness: 125 to 250 mg\/L/)).toBeVisible()
    await expect(readings.getByText(/Salt is reckoned from conductivity/)).toBeVisible()
    await expect(readings.getByRole('row', { name: /^Combined chlorine 1\.4 mg\/L/ })).toBeVisible()
    await expect(readings.getByText('Total less free chlorine.')).toBeVisible()
  })
  await test.step('each reading says how far it may be off and where it lies by its band', async () => {
    await expect(readings.getByRole('row', { name: /^pH 7\.6 ± 0\.2 inside the band 7\.2 to 7\.8/ })).toBeVisible()
  })
  await test.step('what misleads is said of the reading that it spoils', async () => {
    await readings.getByRole('button', { name: 'What to mind with these tests' }).click()
    const notes = readings.getByRole('list', { name: 'What to mind with these tests' })
    await expect(notes.getByText(/counts the chlorine held on stabiliser as free/)).toBeVisible()
    const figure = readings
      .getByRole('row', { name: /^Free chlorine/ })
      .getByRole('cell')
      .filter({ hasText: '3.2' })
    await expect(figure).toHaveAccessibleDescription(/counts the chlorine held on stabiliser as free/)
  })
  await test.step('they are kept', async () => {
    await saved(page)
    await page.reload()
    await chapter(page, 'Water')
    await expect(readings.getByRole('row', { name: /^Total chlorine 4\.6 mg\/L/ })).toBeVisible()
  })
})

test('active chlorine by both sets of constants, and which one counts', async ({ page }) => {
  await openApp(page)
  const water = await stabilised(page)
  const chlorine = water.getByRole('region', { name: 'Chlorine', exact: true })
  await expect(chlorine.getByText(/they lie 1\.\d times apart/)).toBeVisible()
  const chosen = chlorine.getByRole('term').first()
  await expect(chosen).toHaveText('Active chlorine, O’Brien 1974')
  await expect(chlorine.getByRole('row', { name: /^Here, with its stabiliser \d+ h/ })).toBeVisible()
  await expect(chlorine.getByRole('row', { name: /^The same water without \d+ min/ })).toBeVisible()
  await test.step('the arrow keys choose the other set', async () => {
    await chlorine.getByRole('radio', { name: 'O’Brien 1974' }).focus()
    await page.keyboard.press('ArrowRight')
    await expect(chosen).toHaveText('Active chlorine, Wahman 2018')
    await expect(chlorine.getByRole('radio', { name: 'Wahman 2018' })).toBeChecked()
  })
  await test.step('combined chlorine above the limit gets a dose in the product at hand', async () => {
    await expect(chlorine.getByText(/the rules allow 0\.4\smg\/L\. It is too much\./)).toBeVisible()
    await expect(chlorine.getByRole('note').filter({ hasText: /^Begin with/ })).toContainText('liquid chlorine')
  })
  await test.step('no times for germs where stabiliser holds the chlorine', async () => {
    await chlorine.getByRole('button', { name: /^How long it needs for named germs/ }).press('Enter')
    await expect(chlorine.getByText(/Contact times do not apply/)).toBeVisible()
  })
})

test('the balance says why the two indices differ, and alkalinity is taken apart', async ({ page }) => {
  await openApp(page)
  const water = await chapter(page, 'Water')
  const balance = water.getByRole('region', { name: 'Balance', exact: true })
  await expect(balance.getByText(/^The table index reads .* act on calcite SI\.$/)).toBeVisible()
  await balance.getByRole('button', { name: /^The difference, term by term/ }).click()
  await expect(balance.getByRole('row', { name: /^Table index less calcite SI −/ })).toBeVisible()
  await expect(balance.getByRole('img', { name: /^Total alkalinity: Carbonate \d+ %/ })).toBeVisible()
  await expect(balance.getByRole('row', { name: /^Carbonate [\d.]+ mg\/L, \d+ %/ })).toBeVisible()
})

test('rules for bathing: another set, an own floor, and an accident that stabiliser leaves without treatment', async ({
  page,
}) => {
  await openApp(page)
  const water = await stabilised(page)
  const rules = water.getByRole('region', { name: 'Rules for bathing', exact: true })
  await expect(rules.getByText('Your local code comes first.')).toBeVisible()
  await expect(rules.getByRole('row', { name: /^Free chlorine .* 2 to 4 mg\/L 3\.2 mg\/L$/ })).toBeVisible()
  await test.step('a stricter set', async () => {
    await rules
      .getByRole('button', { name: /^.*Rules$|Rules/ })
      .first()
      .click()
    await page.getByRole('option', { name: /^Wisconsin/ }).click()
    await expect(rules.getByRole('row', { name: /^Stabiliser seen ≤ 30 mg\/L 45 mg\/L ?above$/ })).toBeVisible()
  })
  await test.step('an own floor raises it', async () => {
    await typeInto(rules.getByRole('textbox', { name: 'Your own chlorine floor' }), '3.5')
    await expect(rules.getByRole('row', { name: /^Free chlorine .* 3\.5 to 4 mg\/L 3\.2 mg\/L ?below$/ })).toBeVisible()
  })
  await test.step('no treatment is named above 15 mg/L of stabiliser', async () => {
    await rules.getByRole('button', { name: /^After faeces in the water/ }).click()
    await expect(rules.getByRole('note').filter({ hasText: /cannot be treated with chlorine as it is/ })).toBeVisible()
    await expect(rules.getByText(/hold it for/)).toHaveCount(0)
  })
})

test('readings that no water has are named as they are typed, and after; metals come before chlorine', async ({
  page,
}) => {
  await openApp(page)
  const { water, readings } = await newReadings(page)
  await fields(readings, [
    ['pH', '7.2'],
    ['Total alkalinity', '20'],
    ['Calcium hardness', '300'],
    ['Salt', '10'],
    ['Stabiliser', '0'],
    ['Free chlorine', '12'],
  ])
  await expect(readings.getByText(/Every water is electrically neutral/)).toBeVisible()
  await expect(readings.getByRole('textbox', { name: 'pH', exact: true })).toHaveAccessibleDescription(/phenol red/)
  await readings.getByRole('button', { name: /^More readings/ }).click()
  await fields(readings, [
    ['Total chlorine', '6'],
    ['Iron', '0.6'],
  ])
  await expect(readings.getByText(/These readings clash: total chlorine, free chlorine/)).toBeVisible()
  await readings.getByRole('button', { name: 'Save readings' }).click()
  await expect(water.getByRole('region', { name: 'Balance' }).getByText(/These readings clash/)).toBeVisible()
  await expect(readings.getByText(/These readings clash: total chlorine, free chlorine/)).toBeVisible()
  const metals = water.getByRole('region', { name: 'Metals first' })
  await expect(metals.getByRole('list', { name: 'What to do about metals' })).toContainText('Don’t shock')
})

test('readings of tomorrow are refused, and what is typed outlasts a look at another chapter', async ({ page }) => {
  await openApp(page)
  const { water, readings } = await newReadings(page)
  await fields(readings, STABILISED)
  await chapter(page, 'Basin')
  await chapter(page, 'Water')
  await expect(readings.getByRole('textbox', { name: 'Total alkalinity', exact: true })).toHaveValue(/^109\.9/)
  const when = readings.getByLabel('When')
  const now = await when.inputValue()
  const tomorrow = new Date(Date.parse(`${now}Z`) + 26 * 3_600_000).toISOString().slice(0, 16)
  await when.fill(tomorrow)
  await readings.getByRole('button', { name: 'Save readings' }).click()
  await expect(when).toBeFocused()
  await expect(readings.getByRole('alert').filter({ hasText: /^This moment is still to come\. It is / })).toBeVisible()
  await when.fill(now)
  await readings.getByRole('button', { name: 'Save readings' }).click()
  await expect(readings.getByRole('row', { name: /^Stabiliser 45 mg\/L/ })).toBeVisible()
  await test.step('once saved they are new no more', async () => {
    await readings.getByRole('button', { name: 'Enter new readings' }).click()
    await expect(readings.getByRole('textbox', { name: 'pH', exact: true })).toHaveValue('')
  })
  await test.step('given up they are gone', async () => {
    await typeInto(readings.getByRole('textbox', { name: 'pH', exact: true }), '8.9')
    await readings.getByRole('button', { name: 'Cancel' }).click()
    await chapter(page, 'Basin')
    await chapter(page, 'Water')
    await expect(water.getByRole('button', { name: 'Enter new readings' })).toBeVisible()
  })
  await test.step('a slip is mended in the logbook', async () => {
    const log = await chapter(page, 'Logbook')
    await log
      .getByRole('button', { name: /^Edit the readings of/ })
      .first()
      .click()
    const pH = log.getByRole('textbox', { name: 'pH', exact: true })
    await expect(pH).toHaveValue('7.6')
    await typeInto(pH, '7.4')
    await log.getByRole('button', { name: 'Keep' }).click()
    await expect(log.getByRole('button', { name: 'Keep' })).toBeHidden()
    await chapter(page, 'Water')
    await expect(readings.getByRole('row', { name: /^pH 7\.4/ })).toBeVisible()
    await expect(readings.getByRole('row', { name: /^Stabiliser 45 mg\/L/ })).toBeVisible()
  })
})

onEveryScreen(
  (screen) => {
    test('the whole chapter, opened, fits, is readable and can be used by all', async ({ page }) => {
      await openApp(page)
      const water = await stabilised(page)
      await openAll(water)
      await expectFits(page, screen, 'opened')
      expect.soft(await chapterViolations(page, screen), 'axe').toEqual([])
      await water.getByRole('button', { name: 'Enter new readings' }).click()
      await water.getByRole('button', { name: /^More readings/ }).click()
      await expectFits(page, screen, 'the form')
      expect.soft(await chapterViolations(page, screen), 'axe, with the form').toEqual([])
    })
  },
  ['light', 'dark'],
)

test('fill water once saved is what the chapter shows, with the focus on it', async ({ page }) => {
  await openApp(page)
  const water = await chapter(page, 'Water')
  const fill = water.getByRole('region', { name: 'Fill water', exact: true })
  await fill.getByRole('button', { name: 'Change the fill water' }).press('Enter')
  await expect(fill.getByRole('textbox', { name: 'pH', exact: true }), 'the form takes the focus').toBeFocused()
  await fill.getByRole('button', { name: /^More readings/ }).click()
  await typeInto(fill.getByRole('textbox', { name: 'Iron', exact: true }), '0.1')
  await fill.getByRole('button', { name: 'Save fill water' }).click()
  await expect(fill.getByRole('row', { name: /^Iron 0\.10 mg\/L/ })).toBeVisible()
  const heading = fill.getByRole('heading', { name: 'Fill water' })
  await expect(heading).toBeFocused()
  await expect(heading).toBeInViewport()
})

test('on paper both kinds of accident stand, and nothing hides behind a title', async ({ page }) => {
  await openApp(page)
  await chapter(page, 'Water')
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')))
  await page.emulateMedia({ media: 'print' })
  // What is behind a title is hidden from a screen reader until it is opened; on paper it can be seen.
  for (const words of ['After formed stool', 'After diarrhoea', 'Table index less calcite SI'])
    await expect(page.getByText(words, { exact: true }), `“${words}” is printed`).toBeVisible()
  await expect(page.getByText(/^Contact times hold at pH 7\.5 or below/), 'why no times are given').toBeVisible()
})
