import { fileURLToPath } from 'node:url'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vitest/config'

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url))

export default defineConfig({
  root: here('src/app'),
  publicDir: here('public'),
  base: './',
  plugins: [react()],
  build: { outDir: here('dist'), emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 800 },
  server: { port: 5173, fs: { allow: [here('.')] } },
  preview: { port: 4173 },
  test: {
    root: here('.'),
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
