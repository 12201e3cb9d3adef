import type { Spec } from '../../src/document/index.ts'
import type { Ports, Settings } from '../../src/state/index.ts'

export interface FakeWorld {
  readonly ports: Ports
  readonly kept: { spec: unknown; settings: unknown; previous: unknown }
  readonly copied: string[]
  readonly downloads: { name: string; text: string }[]
  /** What the address carries, what a file dialog gives, and which doings fail. */
  address: string | undefined
  file: string | undefined
  broken: Partial<Record<'load' | 'saveSpec' | 'copy' | 'pick', boolean>>
}

/** A browser that tests can look into. */
export function fakeWorld(): FakeWorld {
  const kept: FakeWorld['kept'] = { spec: undefined, settings: undefined, previous: undefined }
  const copied: string[] = []
  const downloads: { name: string; text: string }[] = []
  const failIf = (is: boolean | undefined) => (is ? Promise.reject(new Error('broken on purpose')) : Promise.resolve())
  const world: FakeWorld = {
    kept,
    copied,
    downloads,
    address: undefined,
    file: undefined,
    broken: {},
    ports: {
      clock: { nowMs: () => Date.UTC(2026, 5, 1, 12) },
      storage: {
        load: async () => {
          await failIf(world.broken.load)
          return { ...kept }
        },
        saveSpec: async (spec: Spec) => {
          await failIf(world.broken.saveSpec)
          kept.spec = structuredClone(spec)
        },
        savePrevious: async (spec: Spec) => {
          kept.previous = structuredClone(spec)
        },
        saveSettings: async (settings: Settings) => {
          kept.settings = settings
        },
      },
      link: {
        opened: () => world.address,
        baseUrl: () => 'https://example.test/',
        copy: async (text) => {
          await failIf(world.broken.copy)
          copied.push(text)
        },
        forget: () => {
          world.address = undefined
        },
      },
      files: {
        download: (name, text) => downloads.push({ name, text }),
        pick: async () => {
          await failIf(world.broken.pick)
          return world.file
        },
      },
      print: () => undefined,
    },
  }
  return world
}
