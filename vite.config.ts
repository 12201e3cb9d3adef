import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vitest/config'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

/** What works by being loaded: styles, the page and what it starts with. */
const STARTS = /\.css(\?|$)|\/src\/app\//

export default defineConfig({
  root: here('src/app'),
  publicDir: here('public'),
  base: './',
  plugins: [react()],
  build: {
    outDir: here('dist'),
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 800,
    // Our modules do nothing when they are merely loaded, so a layer's index draws in only what is used of it: that is what
    // keeps the chapters that open later out of the first load. Styles and the page's own start are the exceptions.
    rolldownOptions: { treeshake: { moduleSideEffects: (id) => !id.startsWith(here('src/')) || STARTS.test(id) } },
  },
  server: { port: 5173, fs: { allow: [here('.')] } },
  preview: { port: 4173 },
  test: {
    root: here('.'),
    // Else one core is left idle.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          root: here('.'),
          environment: 'node',
          include: ['test/**/*.test.ts'],
          exclude: ['test/e2e/**', 'node_modules/**'],
          testTimeout: 60_000,
        },
      },
    ],
  },
})
