import type { Locator, Page } from '@playwright/test'
import { expect } from './test.ts'

export type ChapterName = 'Basin' | 'Water' | 'Opening' | 'Season' | 'Logbook'
export type UnitsName = 'US' | 'Metric' | 'Imperial'

/** Opens an address of the app and waits until the sheet stands. */
export async function openApp(page: Page, address = './'): Promise<void> {
  await page.goto(address)
  await expect(sheet(page)).toBeVisible()
}

/** The drawing, plan over section. */
export const sheet = (page: Page): Locator =>
  page.getByRole('region', { name: 'Drawing sheet' }).getByRole('application', { name: /plan and section|points/i })

/** The fields under the drawing. */
export const strip = (page: Page): Locator => page.getByRole('region', { name: 'Numbers of the selection' })

export const notice = (page: Page, text: string | RegExp): Locator =>
  page.getByRole('status').or(page.getByRole('alert')).filter({ hasText: text })

export async function planMenu(page: Page, item: string | RegExp): Promise<void> {
  await page.getByRole('button', { name: 'Plan', exact: true }).click()
  await page.getByRole('menuitem', { name: item }).click()
}

export async function blankSheet(page: Page): Promise<void> {
  await planMenu(page, 'Blank sheet')
  await expect(page.getByRole('heading', { name: 'A blank sheet' })).toBeVisible()
}

/** Turns the ledger to a chapter; answers its page. */
export async function chapter(page: Page, name: ChapterName): Promise<Locator> {
  await page.getByRole('tab', { name }).click()
  const panel = page.getByRole('tabpanel', { name })
  await expect(panel).toBeVisible()
  return panel
}

export async function chooseUnits(page: Page, name: UnitsName): Promise<void> {
  await page.getByRole('button', { name: /^Units:/ }).click()
  await page.getByRole('menuitemradio', { name: new RegExp(`^${name}`) }).click()
  await expect(page.getByRole('button', { name: new RegExp(`^Units: ${name}`) })).toBeVisible()
}

/** Types into a field as a person does: over what stands there, then Enter. */
export async function typeInto(field: Locator, text: string): Promise<void> {
  await field.fill(text)
  await field.press('Enter')
}

/** The volume as it is announced: "20,720 US gallons". Empty where there is none. */
export async function announcedVolume(page: Page): Promise<string> {
  const said = page.getByRole('status').filter({ hasText: /^Volume \d/ })
  if ((await said.count()) === 0) return ''
  const text = (await said.textContent()) ?? ''
  return text.replace(/\s+/g, ' ').replace('Volume ', '').trim()
}

/** Waits until the announced volume is another than `before`; answers the new one. */
export async function newVolume(page: Page, before: string): Promise<string> {
  await expect.poll(() => announcedVolume(page)).not.toBe(before)
  return announcedVolume(page)
}

export const numberIn = (text: string): number => Number(/[\d][\d,]*(\.\d+)?/.exec(text)?.[0].replaceAll(',', ''))

/** Waits until the present plan is in the browser's storage. */
export async function saved(page: Page): Promise<void> {
  await expect(page.getByRole('status').filter({ hasText: /^saved here$/ })).toBeVisible()
}

/** The link to the plan, read from the dialog that shows it. */
export async function copyLink(page: Page): Promise<string> {
  await page.getByRole('button', { name: /^Copy (spec )?link$/ }).click()
  const dialog = page.getByRole('dialog', { name: 'The link to this plan' })
  const link = await dialog.getByRole('textbox', { name: 'Link' }).inputValue()
  await dialog.getByRole('button', { name: 'Done' }).click()
  await expect(dialog).toBeHidden()
  return link
}
