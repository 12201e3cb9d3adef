// Takes the pictures of the README from the real, built app: desktop, phone, evening, print. Run by `npm run pictures`.
import { spawn } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { findChromium } from './find-chromium.mjs'

const PORT = 4174
const url = `http://127.0.0.1:${PORT}/`
const folder = 'public/pictures'
mkdirSync(folder, { recursive: true })

const server = spawn(
  process.execPath,
  ['node_modules/vite/bin/vite.js', 'preview', '--host', '127.0.0.1', '--port', String(PORT), '--strictPort'],
  { stdio: 'ignore' },
)

async function waitForServer() {
  for (let attempt = 0; attempt < 100; attempt++) {
    const answer = await fetch(url).catch(() => undefined)
    if (answer?.ok) return
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  throw new Error('The preview server did not start')
}

const executablePath = findChromium()

/** @param {import('@playwright/test').Page} page */
async function solidIsDrawn(page) {
  await page.getByRole('application', { name: 'The basin as a solid' }).waitFor()
  await page.getByText('Setting up the solid').waitFor({ state: 'detached' })
}

/** @param {import('@playwright/test').Browser} browser @param {{ name: string, width: number, height: number, dark?: boolean, chapter: string, touch?: boolean }} shot */
async function take(browser, { name, width, height, dark = false, chapter, touch = false }) {
  const page = await browser.newPage({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    deviceScaleFactor: touch ? 2 : 1,
    hasTouch: touch,
    isMobile: touch,
  })
  await page.goto(url)
  await page.getByRole('tab', { name: chapter }).click()
  await solidIsDrawn(page)
  await page.evaluate(() => window.scrollTo(0, 0))
  await page.screenshot({ path: `${folder}/${name}.png` })
  await page.close()
}

/** @param {import('@playwright/test').Browser} browser */
async function print(browser) {
  const page = await browser.newPage({ viewport: { width: 794, height: 1123 } })
  await page.goto(url)
  await solidIsDrawn(page)
  // Chapters that are not open are put on the page when printing begins.
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')))
  await page.emulateMedia({ media: 'print' })
  await page.getByRole('heading', { name: 'Logbook' }).waitFor()
  await page.screenshot({ path: `${folder}/print.png`, fullPage: false })
  await page.close()
}

try {
  await waitForServer()
  const browser = await chromium.launch({
    args: [
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
      '--disable-quic',
      '--disable-background-networking',
    ],
    ...(executablePath ? { executablePath } : {}),
  })
  await take(browser, { name: 'desktop', width: 1440, height: 900, chapter: 'Opening' })
  await take(browser, { name: 'evening', width: 1440, height: 900, chapter: 'Season', dark: true })
  await take(browser, { name: 'phone', width: 390, height: 844, chapter: 'Opening', touch: true })
  await print(browser)
  await browser.close()
} finally {
  server.kill()
}
