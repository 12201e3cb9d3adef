import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { build } from 'vite'

type Kernel = typeof import('./shipped-kernel.ts')

/**
 * The kernel bundled as the page has it. The loader that runs these files gives every function that is made a name, which a
 * browser never does and which costs a sixth of the time.
 */
export async function shippedKernel(): Promise<Kernel> {
  const outDir = await mkdtemp(join(tmpdir(), 'bench-'))
  try {
    await build({
      configFile: false,
      logLevel: 'error',
      ssr: { noExternal: true },
      build: {
        ssr: fileURLToPath(new URL('./shipped-kernel.ts', import.meta.url)),
        outDir,
        target: 'es2022',
        minify: true,
        rolldownOptions: { output: { entryFileNames: 'kernel.mjs' } },
      },
    })
    return (await import(pathToFileURL(join(outDir, 'kernel.mjs')).href)) as Kernel
  } finally {
    await rm(outDir, { recursive: true })
  }
}
