import AxeBuilder from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { cutText, overflowing, smallTargets } from './look.ts'
import { expect, test } from './test.ts'

const DESKTOP = { viewport: { width: 1440, height: 900 } } as const
export const PHONE = {
  viewport: { width: 390, height: 844 },
  isMobile: true,
  hasTouch: true,
  deviceScaleFactor: 2,
} as const
const SCREENS = [
  { name: 'desktop', options: DESKTOP },
  { name: 'phone', options: PHONE },
] as const

export interface Screen {
  readonly isPhone: boolean
  readonly colorScheme: 'light' | 'dark'
}

/** Declares tests on a desk's screen and on a phone's, in the light alone or also in the dark. */
export function onEveryScreen(declare: (screen: Screen) => void, schemes: readonly Screen['colorScheme'][]): void {
  for (const { name, options } of SCREENS)
    for (const colorScheme of schemes)
      test.describe(schemes.length > 1 ? `${name}, ${colorScheme}` : name, () => {
        test.use({ ...options, colorScheme })
        declare({ isPhone: name === 'phone', colorScheme })
      })
}

/** Nothing sticks out, no text is cut, and on a phone a finger can press what is to be pressed; by light the same as by dark. */
export async function expectFits(page: Page, { isPhone, colorScheme }: Screen, what: string): Promise<void> {
  if (colorScheme === 'dark') return
  expect.soft(await overflowing(page), `${what}: nothing is wider than the page`).toEqual([])
  expect.soft(await cutText(page), `${what}: no text is cut`).toEqual([])
  if (isPhone) expect.soft(await smallTargets(page), `${what}: what is pressed is 44 px or more`).toEqual([])
}

/** In the other light only colours can differ: there nothing else is looked for again. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block']

/** Axe, with the rules that are worth a look in this light. */
export function axeFor(page: Page, { colorScheme }: Pick<Screen, 'colorScheme'>): AxeBuilder {
  const axe = new AxeBuilder({ page })
  return colorScheme === 'dark' ? axe.withRules(COLOUR_RULES) : axe
}

/** All that axe finds wrong in the open chapter, as lines to read. */
export async function chapterViolations(page: Page, screen: Screen): Promise<string[]> {
  const { violations } = await axeFor(page, screen).include('[role="tabpanel"]').analyze()
  return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html.slice(0, 140)}`))
}

/** Opens whatever is behind a title in a chapter. */
export async function openAll(panel: Locator): Promise<void> {
  const closed = panel.locator('button[slot="trigger"][aria-expanded="false"], h4 button[aria-expanded="false"]')
  while ((await closed.count()) > 0) await closed.first().click()
}
