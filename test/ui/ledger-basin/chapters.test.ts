import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { deriveBody } from '../../../src/derive/index.ts'
import { command, demoSpec } from '../../../src/document/index.ts'
import { type AppStore, createAppStore, type Ports } from '../../../src/state/index.ts'
import { StoreProvider } from '../../../src/ui/context.tsx'
import { Basin, SITE_CAUTIONS } from '../../../src/ui/ledger/basin/index.ts'
import { CHAPTERS } from '../../../src/ui/ledger/chapters.ts'
import { Ledger } from '../../../src/ui/ledger/Ledger.tsx'
import { Logbook } from '../../../src/ui/ledger/logbook/index.ts'
import { formatQuantity } from '../../../src/units/index.ts'

const nothing = async () => {}
const ports: Ports = {
  clock: { nowMs: () => Date.UTC(2026, 4, 2, 12) },
  storage: {
    load: async () => undefined,
    saveSpec: nothing,
    saveSettings: nothing,
    savePrevious: nothing,
  } as unknown as Ports['storage'],
  link: { opened: () => undefined, baseUrl: () => 'https://example.invalid/', copy: nothing, forget: () => {} },
  files: { download: () => {}, pick: async () => undefined },
  print: () => {},
}

function page(component: typeof Basin, prepare: (store: AppStore) => void = () => {}): string {
  const store = createAppStore(ports)
  store.getState().setUnits('metric')
  prepare(store)
  // A static page is drawn from the initial state: here that is the state as prepared.
  const value: AppStore = { ...store, getInitialState: store.getState }
  const html = renderToStaticMarkup(createElement(StoreProvider, { value }, createElement(component)))
  return html.replaceAll('&#x27;', "'").replaceAll('&amp;', '&').replace(/\s/g, ' ')
}
const inputsOf = (html: string) => html.match(/<(input|textarea)\b[^>]*>/g) ?? []

describe('the Basin chapter', () => {
  test('every caution of the site stands there as text, drawn pool or blank sheet', () => {
    for (const html of [page(Basin), page(Basin, (store) => store.getState().startBlank())]) {
      expect(SITE_CAUTIONS.length).toBeGreaterThan(0)
      for (const { title, text } of SITE_CAUTIONS) {
        expect(html.includes(title)).toBe(true)
        expect(html.includes(text)).toBe(true)
      }
    }
  })

  test('the volume shown is the drawing’s, to the digits that its uncertainty allows', () => {
    const [body] = demoSpec.bodies
    const { measures, sigmaM3 } = deriveBody(body!)
    expect(measures.ok).toBe(true)
    if (!measures.ok) return
    const shown = formatQuantity('volume', measures.value.volumeM3, 'metric', { sigma: sigmaM3 })
    expect(page(Basin).includes(shown.replace(/\s/g, ' '))).toBe(true)
  })

  test('a blank sheet asks for a volume, and a stated one heads the chapter', () => {
    const blank = page(Basin, (store) => store.getState().startBlank())
    expect(blank.includes('Or don’t draw')).toBe(true)
    const stated = page(Basin, (store) => {
      store.getState().startBlank()
      const systemId = store.getState().spec.systems[0]!.id
      store
        .getState()
        .dispatch(command('setVolumeEstimate', { systemId, estimate: { from: 'stated', m3: 60, sigmaM3: 3 } }))
    })
    expect(/<h2>A basin of about 60/.test(stated)).toBe(true)
  })

  test('a plan that came by a link is only looked at: no field can be typed in, nothing can be added or removed', () => {
    const linked = page(Basin, (store) => store.setState({ standing: 'link' }))
    expect(inputsOf(linked).length).toBeGreaterThan(10)
    for (const input of inputsOf(linked)) expect(input).toContain('disabled')
    for (const word of ['Remove the drawing', 'steps, a bench, a ramp', 'Add a station', 'Put on the sheet']) {
      expect(page(Basin).includes(word)).toBe(true)
      expect(linked.includes(word)).toBe(false)
    }
  })

  test('one’s own plan can be typed in everywhere', () => {
    for (const input of inputsOf(page(Basin))) expect(input).not.toContain('disabled=""')
  })

  test('an outline that can’t be measured says why at the head and shows no volume', () => {
    const html = page(Basin, (store) => {
      const bowtie = { start: [0, 0], segments: [{ to: [4, 4] }, { to: [4, 0] }, { to: [0, 4] }] } as const
      store
        .getState()
        .dispatch(command('setOutline', { bodyId: store.getState().spec.bodies[0]!.id, outline: bowtie as never }))
    })
    expect(html.includes('Needs attention')).toBe(true)
    expect(html.includes('There is no volume until the drawing is mended')).toBe(true)
    expect(/<h2>The basin<\/h2>/.test(html)).toBe(true)
  })
})

describe('the Logbook chapter', () => {
  test('an empty log says what will come here and where all is kept', () => {
    const html = page(Logbook, (store) => store.getState().startBlank())
    expect(html.includes('Nothing is written here yet')).toBe(true)
    expect(html.includes('In this browser on this device, and nowhere else')).toBe(true)
  })

  test('a note that was added is shown', () => {
    const html = page(Logbook, (store) => {
      const systemId = store.getState().spec.systems[0]!.id
      store
        .getState()
        .dispatch(command('addNote', { systemId, at: '2026-05-02T10:00:00Z', text: 'Heron on the cover' }))
    })
    expect(html.includes('Heron on the cover')).toBe(true)
  })
})

describe('the ledger', () => {
  test('has its chapters in order and shows the one that is open', async () => {
    await Promise.all(CHAPTERS.map(({ part }) => part.load()))
    const html = page(Ledger, (store) => store.getState().openChapter('logbook'))
    const places = CHAPTERS.map(({ label }) => html.indexOf(`>${label}<`))
    expect(places.every((at) => at > 0)).toBe(true)
    expect([...places].sort((a, b) => a - b)).toEqual(places)
    expect(html.includes('<h2>Logbook</h2>')).toBe(true)
  })
})
