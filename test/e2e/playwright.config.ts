import { fileURLToPath } from 'node:url'
import { defineConfig, devices } from '@playwright/test'
import { findChromium } from '../../scripts/find-chromium.mjs'

const executablePath = findChromium()
// A server that is up already, another port or another build: for trying a build beside the usual one.
const port = process.env['E2E_PORT'] ?? '4173'
const dist = process.env['E2E_DIST']
const running = process.env['E2E_BASE_URL']

export default defineConfig({
  testDir: '.',
  testMatch: '**/*.spec.ts',
  outputDir: process.env['E2E_OUTPUT'] ?? '../../test-results',
  fullyParallel: true,
  forbidOnly: !!process.env['CI'],
  retries: 0,
  workers: 2,
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: [['list']],
  use: {
    ...devices['Desktop Chrome'],
    baseURL: running ?? `http://127.0.0.1:${port}`,
    viewport: { width: 1440, height: 900 },
    // Tracing takes about a third of the time: only where it is asked for.
    trace: process.env['E2E_TRACE'] ? 'retain-on-failure' : 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      args: [
        '--use-angle=swiftshader',
        '--enable-unsafe-swiftshader',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
      ...(executablePath ? { executablePath } : {}),
    },
  },
  ...(running
    ? {}
    : {
        webServer: {
          command: `node node_modules/vite/bin/vite.js preview --host 127.0.0.1 --port ${port} --strictPort${dist ? ` --outDir ${dist}` : ''}`,
          cwd: fileURLToPath(new URL('../..', import.meta.url)),
          url: `http://127.0.0.1:${port}`,
          reuseExistingServer: false,
        },
      }),
})
