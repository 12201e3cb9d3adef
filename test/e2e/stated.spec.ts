import type { Page } from '@playwright/test'
import { announcedVolume, blankSheet, chapter, openApp, saved, sheet, strip, typeInto } from './support/app.ts'
import { dragAlong, wobblyLoop } from './support/hand.ts'
import { expect, test } from './support/test.ts'

const READINGS = [
  ['pH', '7.9'],
  ['Total alkalinity', '40'],
  ['Calcium hardness', '250'],
  ['Free chlorine', '0'],
] as const

test('a stated volume gives the first dose without a drawing, and a drawing takes its place', async ({ page }) => {
  await openApp(page)
  await blankSheet(page)

  await test.step('types a volume and how sure it is', () => stateVolume(page))

  await test.step('types readings', async () => {
    const water = await chapter(page, 'Water')
    const form = water.getByRole('region', { name: 'First readings' })
    for (const [name, text] of READINGS) await form.getByRole('textbox', { name, exact: true }).fill(text)
    await form.getByRole('button', { name: 'Save readings' }).click()
    const readings = water.getByRole('region', { name: 'Readings' })
    await expect(readings.getByRole('row', { name: 'Total alkalinity 40 mg/L' })).toBeVisible()
    await water.getByRole('button', { name: /Way of chlorinating/ }).click()
    await page.getByRole('option', { name: /^Stabilised chlorine/ }).click()
  })

  await test.step('finds the first dose, with the volume’s uncertainty in it', async () => {
    const opening = await chapter(page, 'Opening')
    await expect(opening.getByRole('heading', { name: 'Opening loads for 15,900 gal' })).toBeVisible()
    await expect(opening.getByText('as stated, not drawn yet')).toBeVisible()
    const dose = opening.getByRole('listitem').filter({ has: page.getByRole('heading', { name: /bicarbonate/i }) })
    await expect(dose).toContainText(/\d+\slb/)
    await expect(dose).toContainText(/as sure as the volume is/)
    await expect(opening.getByText('Not measured, so nothing is dosed for it:')).toBeVisible()
  })

  await test.step('draws the pool: the drawing rules, what was stated is compared with it', async () => {
    await chapter(page, 'Basin')
    await page.getByRole('button', { name: /Draw a loop/ }).click()
    await dragAlong(page, await wobblyLoop(page))
    await typeInto(strip(page).getByRole('textbox', { name: 'From end to end' }), '36 ft')
    await typeInto(strip(page).getByRole('textbox', { name: 'How wide' }), '18 ft')
    await expect(sheet(page).getByRole('button', { name: /^Overall length 36 ft 0 in/ })).toBeVisible()
    const opening = await chapter(page, 'Opening')
    await expect(opening.getByText('from the drawing')).toBeVisible()
    const drawn = (await announcedVolume(page)).replace(/ US gallons$/, ' gal')
    await expect(opening.getByRole('heading', { name: `Opening loads for ${drawn}` })).toBeVisible()
    const basin = await chapter(page, 'Basin')
    await basin.getByRole('button', { name: /^Stated volume/ }).click()
    await expect(basin.getByText(/The drawing rules\. What was stated is .* than the drawing/)).toBeVisible()
  })
})

test('a stated volume and its ± survive a reload', async ({ page }) => {
  await openApp(page)
  await blankSheet(page)
  await stateVolume(page)
  await saved(page)
  await page.reload()
  await expect(sheet(page)).toBeVisible()
  const basin = await chapter(page, 'Basin')
  await expect(basin.getByRole('textbox', { name: 'Give or take' })).toHaveValue('10')
  await expect(basin.getByRole('heading', { name: /^A basin of about 15,900 gal/ })).toBeVisible()
})

async function stateVolume(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Type a volume instead/ }).click()
  const basin = page.getByRole('tabpanel', { name: 'Basin' })
  await typeInto(basin.getByRole('textbox', { name: 'About' }), '60 m3')
  await typeInto(basin.getByRole('textbox', { name: 'Give or take' }), '10')
  await expect(basin.getByRole('heading', { name: /^A basin of about 15,900 gal ± 1,600 gal/ })).toBeVisible()
  await expect(page.getByText('about 15,900 gal', { exact: true })).toBeVisible()
}
