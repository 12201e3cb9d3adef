import type { Page } from '@playwright/test'
import { announcedVolume, blankSheet, newVolume, numberIn, openApp, sheet, strip } from './support/app.ts'
import { expect, test } from './support/test.ts'

/** Presses a key until a thing has the focus, as a person does who looks for it. */
async function pressUntil(page: Page, key: string, isThere: () => Promise<boolean>, most = 100): Promise<void> {
  for (let i = 0; i < most; i++) {
    if (await isThere()) return
    await page.keyboard.press(key)
  }
  throw new Error(`${most} presses of ${key} did not reach it; the focus is on ${await focused(page)}`)
}

/** What a screen reader would call the thing in focus. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement
    const labelled = element?.getAttribute('aria-labelledby')?.split(' ') ?? []
    const words = labelled.map((id) => document.getElementById(id)?.textContent ?? '').join(' ')
    const name = element?.getAttribute('aria-label') ?? (words.trim() || (element?.textContent ?? ''))
    return name.replace(/\s+/g, ' ').trim()
  })

/** Whether the focus has fallen back to the page itself, from where a person starts all over. */
const isFocusLost = (page: Page) => page.evaluate(() => document.activeElement === document.body)

const tabTo = (page: Page, name: RegExp, key = 'Tab') =>
  pressUntil(page, key, async () => name.test(await focused(page)))

/** What the sheet has said last to those who can't see it; the title block, after it, says the volume. */
const spoken = (page: Page) =>
  page.getByRole('region', { name: 'Drawing sheet' }).locator('[aria-live="polite"]').first()

const cross = (page: Page) => page.locator('[data-shape="cross-hairs"]')

async function keys(page: Page, key: string, times: number): Promise<void> {
  for (let i = 0; i < times; i++) await page.keyboard.press(key)
}

/** Whether the browser paints what has the focus otherwise than it would without: a ring, a stroke, a plate. */
const focusRing = (page: Page) =>
  page.evaluate(async () => {
    const nextFrame = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
    const element = document.activeElement
    if (!(element instanceof HTMLElement || element instanceof SVGElement)) return false
    const painted = () =>
      [element, ...element.querySelectorAll('*')]
        .map((part) => getComputedStyle(part))
        .map((s) => [s.outlineStyle, s.outlineWidth, s.boxShadow, s.stroke, s.strokeWidth, s.fill, s.opacity].join())
        .join(';')
    await nextFrame()
    const withFocus = painted()
    // The focus goes elsewhere for a moment: let fall, the app would fetch it back.
    const elsewhere = document.body.appendChild(document.createElement('button'))
    elsewhere.focus({ preventScroll: true })
    await nextFrame()
    const without = painted()
    element.focus({ focusVisible: true, preventScroll: true } as FocusOptions)
    await nextFrame()
    elsewhere.remove()
    return withFocus !== without
  })

test('the drawing is done again by keyboard alone', async ({ page }) => {
  await openApp(page)

  await test.step('opens a blank sheet from the menu', async () => {
    await tabTo(page, /^Plan$/)
    expect(await focusRing(page), 'a button in focus shows it').toBe(true)
    await page.keyboard.press('Enter')
    await pressUntil(page, 'ArrowDown', async () => /^Blank sheet/.test(await focused(page)))
    await page.keyboard.press('Enter')
    await expect(page.getByRole('heading', { name: 'A blank sheet' })).toBeVisible()
  })

  await test.step('places four points with the arrow keys and closes', async () => {
    await tabTo(page, /Place points/)
    await page.keyboard.press('Enter')
    await expect(sheet(page)).toBeFocused()
    expect(await focusRing(page), 'the sheet in focus shows it').toBe(true)
    await expect(spoken(page), 'where Enter will act is shown with the tool').toHaveText(
      /^Cross hairs at .*(right|left), .* (up|down)\. Arrows move them, Enter places a point\.$/,
    )
    await expect(cross(page)).toBeVisible()
    await page.keyboard.press('Enter')
    await expect(spoken(page), 'the first Enter places').toHaveText(/^Point 1 placed: .*(right|left), .* (up|down)\.$/)
    await expect(strip(page)).toContainText('1 placed')
    await page.keyboard.press('Backspace')
    await expect(strip(page)).not.toContainText('1 placed')
    await keys(page, 'ArrowLeft', 4)
    await keys(page, 'ArrowUp', 2)
    await expect(spoken(page), 'the place is said as it moves').toHaveText(/^\d.*\sin (right|left), .* (up|down)$/)
    await page.keyboard.press('Enter')
    await expect(spoken(page)).toHaveText(/^Point 1 placed: /)
    await keys(page, 'ArrowRight', 8)
    await expect(spoken(page)).toHaveText(/ from point 1$/)
    await page.keyboard.press('Enter')
    await keys(page, 'ArrowDown', 4)
    await page.keyboard.press('Enter')
    await expect(spoken(page)).toHaveText(/^Point 3 placed: .*\. Enter again closes/)
    await keys(page, 'ArrowLeft', 8)
    await page.keyboard.press('Enter')
    await page.keyboard.press('Enter')
    await expect(spoken(page)).toHaveText('Outline closed with 4 points. It is a sketch until its size is said.')
    await expect(sheet(page).getByRole('button', { name: /^Point \d of 4/ })).toHaveCount(4)
    expect(numberIn(await announcedVolume(page))).toBeGreaterThan(1000)
    await expect(page.getByText('Volume, sketch'), 'what was placed by eye is no measured drawing').toBeVisible()
    await expect(strip(page).getByRole('textbox', { name: 'From end to end' })).toBeFocused()
    await tabTo(page, /^Drawn to scale$/)
    await page.keyboard.press('Enter')
    await expect(page.getByText('Volume, sketch')).toBeHidden()
    await expect(sheet(page), 'the focus stays with the work').toBeFocused()
  })

  await test.step('sets four stations', async () => {
    const station = (number: number, of: number) =>
      sheet(page).getByRole('button', { name: new RegExp(`^Station ${number} of ${of},`) })
    await tabTo(page, /^Station 1 of 2/)
    expect(await focusRing(page), 'a station in focus shows it').toBe(true)
    await page.keyboard.press('i')
    await expect(station(1, 3)).toBeVisible()
    await tabTo(page, /^Station 3 of 3/)
    await page.keyboard.press('i')
    await expect(station(4, 4)).toBeVisible()
    await tabTo(page, /^Station 4 of 4/)
    const before = await announcedVolume(page)
    const was = await focused(page)
    await keys(page, 'ArrowDown', 4)
    expect(numberIn(await newVolume(page, before)), 'a deeper end holds more').toBeGreaterThan(numberIn(before))
    expect(await focused(page)).not.toBe(was)
    await page.keyboard.press('Enter')
    await expect(strip(page).getByRole('textbox', { name: 'From A' })).toBeFocused()
    await page.keyboard.press('Tab')
    await expect(strip(page).getByRole('textbox', { name: 'Depth' })).toBeFocused()
    await page.keyboard.press('Control+A')
    await page.keyboard.type('8 ft')
    await page.keyboard.press('Enter')
    await expect(station(4, 4)).toHaveAccessibleName(/8\sft\s0\sin deep$/)
    // With depths that are only assumed, the volume is too unsure to show what steps take.
    await page.getByRole('button', { name: 'The depths are right as they stand' }).focus()
    await page.keyboard.press('Enter')
    await station(4, 4).focus()
  })

  await test.step('adds steps against the wall', async () => {
    const before = await announcedVolume(page)
    await tabTo(page, /^Point 1 of 4/, 'Shift+Tab')
    await page.keyboard.press('Enter')
    await expect(strip(page).getByRole('textbox', { name: 'Right of 0' })).toBeFocused()
    await tabTo(page, /^Place here/)
    await page.keyboard.press('Enter')
    await pressUntil(page, 'ArrowDown', async () => /^Steps/.test(await focused(page)))
    await page.keyboard.press('Enter')
    await expect(sheet(page).getByRole('button', { name: /^Steps 1 of 1, treads \d/ })).toBeVisible()
    await expect(spoken(page)).toHaveText(/^Steps placed: \d treads/)
    await expect.poll(() => isFocusLost(page), 'the focus stays with the work').toBe(false)
    expect(numberIn(await newVolume(page, before)), 'steps take room from the water').toBeLessThan(numberIn(before))
  })

  await test.step('types the overall length', async () => {
    const before = await announcedVolume(page)
    await tabTo(page, /^Overall length/, 'Shift+Tab')
    expect(await focusRing(page), 'a dimension in focus shows it').toBe(true)
    await page.keyboard.press('Enter')
    const length = strip(page).getByRole('textbox', { name: 'Length' })
    await expect(length).toBeFocused()
    await page.keyboard.press('Control+A')
    await page.keyboard.type('31 ft 6 in')
    await page.keyboard.press('Enter')
    await expect(sheet(page).getByRole('button', { name: /^Overall length 31 ft 6 in/ })).toBeVisible()
    const after = await newVolume(page, before)

    await test.step('and takes it back, and does it again', async () => {
      await tabTo(page, /^Overall length/, 'Shift+Tab')
      await page.keyboard.press('Control+Z')
      await expect.poll(() => announcedVolume(page)).toBe(before)
      await page.keyboard.press('Control+Shift+Z')
      await expect.poll(() => announcedVolume(page)).toBe(after)
      await tabTo(page, /^Undo/, 'Shift+Tab')
      expect(await focused(page), 'undo says what it undoes').toMatch(/^Undo: ./)
      await page.keyboard.press('Enter')
      await expect.poll(() => announcedVolume(page)).toBe(before)
    })
  })
})

test('a bench and a ramp are placed on the sheet by keyboard alone', async ({ page }) => {
  await openApp(page)
  const toTool = async (name: string) => {
    await page.keyboard.press('Escape')
    await page.getByRole('radio', { name: 'Select, move and look' }).focus()
    await pressUntil(page, 'ArrowRight', async () => (await focused(page)) === name)
    await page.keyboard.press('Enter')
    await expect(sheet(page)).toBeFocused()
  }
  const ghost = page.locator('[data-shape="ghost"]')

  await test.step('the bench: arrows go from side to side, Enter begins and ends it', async () => {
    const before = await announcedVolume(page)
    await toTool('Press sides of the outline that a bench runs along')
    await expect(spoken(page)).toHaveText(/^Side 1 of 8, .* long\. Enter begins the bench here\.$/)
    await expect(ghost).toBeVisible()
    await page.keyboard.press('ArrowLeft')
    await expect(spoken(page)).toHaveText(/^Side 8 of 8/)
    await keys(page, 'ArrowRight', 2)
    await expect(spoken(page)).toHaveText(/^Side 2 of 8/)
    await page.keyboard.press('Enter')
    await expect(strip(page)).toContainText('from side 2')
    const small = await ghost.getAttribute('d')
    await page.keyboard.press('ArrowRight')
    await expect(spoken(page)).toHaveText(/^Side 3 of 8, .* Bench from side 2\. Enter ends it here\.$/)
    await expect.poll(() => ghost.getAttribute('d'), 'the bench is shown before it is placed').not.toBe(small)
    await page.keyboard.press('Enter')
    await expect(spoken(page)).toHaveText(/^Bench placed/)
    await expect.poll(() => focused(page), 'what was placed has the focus').toMatch(/^Bench 3 of 3/)
    await page.keyboard.press('Enter')
    await expect(strip(page).getByRole('textbox', { name: 'From side' })).toHaveValue('2')
    await expect(strip(page).getByRole('textbox', { name: 'To side' })).toHaveValue('3')
    expect(numberIn(await newVolume(page, before)), 'a bench takes room').toBeLessThan(numberIn(before))
  })

  await test.step('Escape takes back a bench that was begun, then leaves the tool', async () => {
    await toTool('Press sides of the outline that a bench runs along')
    await page.keyboard.press('Enter')
    await expect(strip(page)).toContainText('from side 1')
    await page.keyboard.press('Escape')
    await expect(strip(page)).not.toContainText('from side 1')
    await page.keyboard.press('Escape')
    await expect(page.getByRole('radio', { name: 'Select, move and look' })).toBeChecked()
    await expect(ghost).toBeHidden()
  })

  await test.step('the ramp: Enter begins at the wall, arrows draw it out, Enter places it', async () => {
    const before = await announcedVolume(page)
    await toTool('Drag a ramp out from the wall')
    await expect(ghost).toBeVisible()
    await keys(page, 'Shift+ArrowDown', 8)
    await page.keyboard.press('Enter')
    await expect(spoken(page)).toHaveText(/^Begun at the wall/)
    await keys(page, 'Shift+ArrowUp', 8)
    await expect(spoken(page)).toHaveText(/ deep$/)
    await page.keyboard.press('Enter')
    await expect(spoken(page)).toHaveText(/^Ramp placed: .* deep\.$/)
    await expect.poll(() => focused(page)).toMatch(/^Ramp 4 of 4/)
    expect(numberIn(await newVolume(page, before)), 'a ramp takes room').toBeLessThan(numberIn(before))
    await page.keyboard.press('Delete')
    await expect.poll(() => announcedVolume(page)).toBe(before)
  })
})

test('the cross hairs read depths aloud, and Escape leaves nothing behind', async ({ page }) => {
  await openApp(page)
  await tabTo(page, /^Plan and section/)
  await keys(page, 'ArrowRight', 2)
  await expect(spoken(page)).toHaveText(/ deep, (slope\s1\s:\s[\d.]+|level), .* from A$/)
  await expect(strip(page)).toContainText('deep here')
  await page.keyboard.press('Escape')
  await expect(strip(page)).not.toContainText('deep here')
  await expect(sheet(page)).toBeFocused()
})

test('Enter also places where the tool was picked with the mouse, or is one that no key can draw with', async ({
  page,
}) => {
  await openApp(page)
  await blankSheet(page)
  await page.getByRole('radio', { name: 'Place the outline point by point' }).click()
  await expect(cross(page), 'a mouse needs no cross hairs').toBeHidden()
  await page.keyboard.press('Enter')
  await expect(cross(page)).toBeVisible()
  await expect(strip(page)).toContainText('1 placed')
  await page.keyboard.press('Escape')
  await page.getByRole('radio', { name: 'Draw the outline in one loop' }).click()
  await expect(strip(page)).toContainText('Enter places points instead')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('radio', { name: 'Place the outline point by point' })).toBeChecked()
  await expect(strip(page)).toContainText('1 placed')
  await expect(spoken(page)).toHaveText(/^Point 1 placed: /)
})
