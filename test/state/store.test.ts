import { describe, expect, test, vi } from 'vitest'
import { demoSpec, toJson } from '../../src/document/index.ts'
import { createAppStore } from '../../src/state/index.ts'
import { fakeWorld } from '../support/fake-ports.ts'

async function booted(world = fakeWorld()) {
  const store = createAppStore(world.ports)
  await store.getState().boot()
  return { world, store, get: store.getState }
}

const rename = (name: string) => ({ id: 'setName', args: { name } }) as const

describe('the store', () => {
  test('shows the example on a first visit and saves nothing until something is changed', async () => {
    const { world, get } = await booted()
    expect(get().loading).toBe(false)
    expect({ ...get().spec, systems: [] }).toEqual({ ...demoSpec, systems: [] })
    const newest = get().spec.systems[0]?.water.readings.at(-1)?.at ?? ''
    expect(get().nowMs - Date.parse(newest)).toBe(2 * 3_600_000)
    expect(world.kept.spec).toBeUndefined()
  })

  test('saves every edit, and a reload finds it', async () => {
    const { world, get } = await booted()
    expect(get().dispatch(rename('Alder Nook'))).toBeUndefined()
    await vi.waitFor(() => expect(get().saveState).toBe('saved'))
    const again = await booted(world)
    expect(again.get().spec.name).toBe('Alder Nook')
  })

  test('keeps readings that are being typed until they are given up or another plan takes the place', async () => {
    const { get } = await booted()
    const typed = { at: '2026-05-02T09:30:00Z', method: 'strip', values: { pH: 7.4 } } as const
    get().keepDraft('readings', typed)
    get().keepDraft('fill', typed)
    get().openChapter('season')
    get().dispatch(rename('Alder Nook'))
    expect(get().drafts).toEqual({ readings: typed, fill: typed })
    get().keepDraft('fill', undefined)
    expect(get().drafts).toEqual({ readings: typed })
    get().startBlank()
    expect(get().drafts).toEqual({})
  })

  test('undoes to the very bytes and redoes', async () => {
    const { get } = await booted()
    const before = toJson(get().spec)
    get().dispatch(rename('Alder Nook'))
    const after = toJson(get().spec)
    get().undo()
    expect(toJson(get().spec)).toBe(before)
    expect(get().canRedo).toBe(true)
    get().redo()
    expect(toJson(get().spec)).toBe(after)
  })

  test('refuses a bad edit, says why, and changes nothing', async () => {
    const { get } = await booted()
    const before = get().spec
    const problem = get().dispatch({ id: 'setLevel', args: { bodyId: 'nobody', levelM: 0 } })
    expect(problem?.hint).not.toBe('')
    expect(get().spec).toBe(before)
    expect(get().notice?.tone).toBe('problem')
    expect(get().canUndo).toBe(false)
  })

  test('opens a link to look at only, and makes it one’s own with the earlier plan kept', async () => {
    const sender = await booted()
    sender.get().dispatch(rename('Sent pool'))
    await sender.get().copyLink()
    const receiver = fakeWorld()
    receiver.kept.spec = { ...demoSpec, name: 'My own' }
    receiver.address = sender.world.copied[0]
    const { world, get } = await booted(receiver)
    expect(get().standing).toBe('link')
    expect(get().spec.name).toBe('Sent pool')
    expect(get().dispatch(rename('x'))?.code).toBe('view-only')
    expect(get().spec.name).toBe('Sent pool')
    get().makeMine()
    expect(get().standing).toBe('own')
    expect(world.address).toBeUndefined()
    await vi.waitFor(() => expect(get().saveState).toBe('saved'))
    expect(get().previousName).toBe('My own')
    get().undo()
    expect(get().spec.name).toBe('My own')
  })

  test('goes back from a link to the own plan without touching it', async () => {
    const sender = await booted()
    await sender.get().copyLink()
    const receiver = fakeWorld()
    receiver.kept.spec = { ...demoSpec, name: 'My own' }
    receiver.address = sender.world.copied[0]
    const { get } = await booted(receiver)
    get().openPrevious()
    expect(get().standing).toBe('own')
    expect(get().spec.name).toBe('My own')
  })

  test('says what is wrong with a broken link and shows the own plan', async () => {
    const world = fakeWorld()
    world.address = 'https://example.test/#sb1.not-a-plan'
    const { get } = await booted(world)
    expect(get().standing).toBe('own')
    expect(get().notice?.tone).toBe('problem')
  })

  test('does not write over a saved plan that it cannot read', async () => {
    const world = fakeWorld()
    world.kept.spec = { format: 'shoalbook-spec', version: 99 }
    const { get } = await booted(world)
    expect(get().notice?.tone).toBe('problem')
    expect(world.kept.spec).toEqual({ format: 'shoalbook-spec', version: 99 })
  })

  test('an edit that is refused says what is wrong, and no name of the program’s own', async () => {
    const { get } = await booted()
    const bodyId = get().spec.bodies[0]?.id ?? ''
    get().dispatch({ id: 'setFloorKind', args: { bodyId, kind: 'soundings' } })
    const sound = { id: 'addSounding', args: { bodyId, at: [3.25, 2.25], depthM: 1.5 } } as const
    get().dispatch(sound)
    expect(get().notice).toBeUndefined()
    get().dispatch(sound)
    expect(get().notice?.text).toBe('There is a sounding at this very place.')
    expect(get().notice?.hint).toMatch(/^Change that one/)
  })

  test('goes on without storage and says so', async () => {
    const world = fakeWorld()
    world.broken = { load: true, saveSpec: true }
    const { get } = await booted(world)
    expect(get().saveState).toBe('failed')
    get().dispatch(rename('Kept in memory'))
    await vi.waitFor(() => expect(get().saveState).toBe('failed'))
    expect(get().spec.name).toBe('Kept in memory')
  })

  test('shows the link for copying by hand where the browser refuses to copy', async () => {
    const world = fakeWorld()
    world.broken = { copy: true }
    const { get } = await booted(world)
    await get().copyLink()
    expect(get().sharedLink).toContain('https://example.test/#')
    expect(get().notice?.tone).toBe('problem')
  })

  test('opens a file, refuses a bad one, and loses nothing', async () => {
    const { world, get } = await booted()
    world.file = '{"format":"shoalbook-spec","version":1,"bodies":7}'
    const before = get().spec
    await get().importFile()
    expect(get().spec).toBe(before)
    expect(get().notice?.tone).toBe('problem')
    world.file = toJson({ ...demoSpec, name: 'From a file' })
    await get().importFile()
    expect(get().spec.name).toBe('From a file')
    get().exportFile()
    expect(world.downloads[0]?.name).toBe('from-a-file.shoalbook.json')
    expect(world.downloads[0]?.text).toBe(world.file)
  })
})
