import type { Page } from '@playwright/test'
import { announcedVolume, type ChapterName, chapter, openApp, sheet } from './support/app.ts'
import { cutText, overflowing, smallTargets } from './support/look.ts'
import { axeFor, expectFits, onEveryScreen, PHONE, type Screen } from './support/screens.ts'
import { expect, test } from './support/test.ts'

const CHAPTERS: readonly ChapterName[] = ['Basin', 'Water', 'Opening', 'Season', 'Logbook']
/** Serious and critical violations that axe sees on the whole page, as lines to read. */
async function violations(
  page: Page,
  screen: Pick<Screen, 'colorScheme'> = { colorScheme: 'light' },
): Promise<string[]> {
  const { violations: found } = await axeFor(page, screen).analyze()
  return found
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.html.slice(0, 120)}`))
}

onEveryScreen(
  (screen) => {
    test('every chapter fits, is readable and can be used by all', async ({ page }) => {
      await openApp(page)
      for (const title of CHAPTERS) {
        await test.step(title, async () => {
          const panel = await chapter(page, title)
          await expect(panel.getByRole('heading', { level: 2 }).first()).toBeVisible()
          await expectFits(page, screen, title)
          expect.soft(await violations(page, screen), `${title}: axe`).toEqual([])
        })
      }
    })
  },
  ['light', 'dark'],
)

test.describe('phone', () => {
  test.use(PHONE)

  test('a blank sheet, its tools and its menus fit too', async ({ page }) => {
    await openApp(page)
    await page.getByRole('button', { name: 'Plan', exact: true }).click()
    await expect(page.getByRole('menu', { name: 'Plan' })).toBeVisible()
    expect.soft(await overflowing(page), 'the menu fits').toEqual([])
    expect.soft(await smallTargets(page), 'the menu can be pressed').toEqual([])
    await page.getByRole('menuitem', { name: 'Blank sheet' }).click()
    await expect(page.getByRole('heading', { name: 'A blank sheet' })).toBeVisible()
    expect.soft(await overflowing(page)).toEqual([])
    expect.soft(await cutText(page)).toEqual([])
    expect.soft(await smallTargets(page)).toEqual([])
    expect.soft(await violations(page)).toEqual([])
  })
})

onEveryScreen(
  (screen) => {
    test('every kind of floor, a leaning wall and what is unsure fit and can be used by all', async ({ page }) => {
      await openApp(page)
      await chapter(page, 'Basin')
      await page.getByText('leaning', { exact: true }).click()
      await page.getByRole('button', { name: /^How sure the volume is/ }).click()
      await page.getByRole('button', { name: /^Set the volume/ }).click()
      await page.getByRole('button', { name: /^Errors that all measurements share/ }).click()
      for (const kind of [/^depth lines/, /^soundings/, /^dished/, /^flat/]) {
        await page.getByRole('button', { name: /Floor$/ }).click()
        if (screen.isPhone) expect.soft(await smallTargets(page), 'the kinds can be pressed').toEqual([])
        await page.getByRole('option', { name: kind }).click()
        await expect(page.getByRole('button', { name: /Floor$/ })).toHaveText(kind)
        await expectFits(page, screen, `${kind}`)
        expect.soft(await violations(page), `${kind}: axe`).toEqual([])
      }
    })
  },
  ['light'],
)

for (const [width, height, least] of [
  [1024, 768, 0.35],
  [640, 400, 0.5],
] as const)
  test(`${width} × ${height}, as a small window or a page at twice its size: the drawing keeps its share of it`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height })
    await openApp(page)
    expect.soft(await overflowing(page), 'nothing is wider than the page').toEqual([])
    expect.soft(await cutText(page), 'no text is cut').toEqual([])
    const [drawing, bar, header] = await Promise.all(
      [sheet(page), page.getByRole('tablist'), page.getByRole('banner')].map((each) => each.boundingBox()),
    )
    if (!drawing || !bar || !header) throw new Error('something is not on the screen')
    // Beside the ledger the bar is above it; else it stands at the foot of the screen, over what lies below.
    const foot = bar.x > drawing.x ? height : bar.y
    const seen = Math.min(drawing.y + drawing.height, foot) - Math.max(drawing.y, header.y + header.height)
    expect(seen / height).toBeGreaterThan(least)
  })

test('on paper are the drawing, the title block and every chapter with its cautions', async ({ page }) => {
  await openApp(page)
  const volume = (await announcedVolume(page)).replace(' US gallons', ' gal')
  await page.emulateMedia({ media: 'print' })
  // What the browser says before it lays a page out on paper; looking at it as paper alone doesn't say it.
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')))
  await expect(sheet(page)).toBeVisible()
  await expect(page.getByText('SECTION A–A′', { exact: true })).toBeVisible()
  await expect(page.getByTestId('volume')).toHaveText(volume)
  await expect(page.getByTestId('volume')).toBeVisible()
  // Chapters that are not open can't be worked in, so a screen reader is kept out of them; on paper they are all alike.
  const paper = page.getByRole('region', { name: 'Ledger' })
  for (const heading of [
    /^A basin of /,
    'Cautions of the site',
    /^The water, measured/,
    'Targets',
    /^Opening loads for/,
    'To buy',
    /^Upkeep/,
    /^Chlorine floor/,
    'Logbook',
  ])
    await expect(
      paper.getByRole('heading', { name: heading, includeHidden: true }).first(),
      `${heading} is printed`,
    ).toBeVisible()
  for (const words of [
    'No depth in this plan says that diving is safe.',
    'Never mix it with any other product',
    'Never let two of these meet',
    'None of them lowers the chlorine floor',
  ])
    await expect(paper.getByText(words).first(), `“${words}” is printed`).toBeVisible()
  for (const button of ['Add a station', 'Enter new readings', 'Write a note'])
    await expect(page.getByText(button, { exact: true }), `“${button}” can’t be pressed on paper`).toBeHidden()
  await expect(page.getByRole('button', { name: /^Copy (spec )?link$/ })).toBeHidden()
  const pdf = await page.pdf({ preferCSSPageSize: true })
  const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0
  expect(pages, 'a few pages, not dozens').toBeGreaterThan(1)
  expect(pages).toBeLessThan(12)
})
