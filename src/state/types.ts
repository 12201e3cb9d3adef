import type { Problem } from '../base/index.ts'
import type { Command, ReadingSet, RingRef, Spec } from '../document/index.ts'
import type { UnitSystem } from '../units/index.ts'

export type Selection =
  | { readonly kind: 'node'; readonly bodyId: string; readonly ring: RingRef; readonly node: number }
  | { readonly kind: 'segment'; readonly bodyId: string; readonly ring: RingRef; readonly segment: number }
  | { readonly kind: 'feature'; readonly bodyId: string; readonly feature: number }
  | { readonly kind: 'station'; readonly bodyId: string; readonly station: number }
  | { readonly kind: 'contour'; readonly bodyId: string; readonly contour: number }
  | { readonly kind: 'sounding'; readonly bodyId: string; readonly sounding: number }
  | { readonly kind: 'dish'; readonly bodyId: string; readonly part: 'centre' | 'radius' }
  | { readonly kind: 'axis'; readonly bodyId: string; readonly end: 'from' | 'to' }
  | { readonly kind: 'dimension'; readonly bodyId: string; readonly axis: 'x' | 'y' }

/** What the pointer does in the plan. */
export type Tool =
  | 'select'
  | 'freehand'
  | 'points'
  | 'steps'
  | 'shelf'
  | 'round-steps'
  | 'ramp'
  | 'bench'
  | 'contour'
  | 'sounding'

export type Theme = 'system' | 'light' | 'dark'
export type SaveState = 'idle' | 'saving' | 'saved' | 'failed'

/** `own`: the document on this device. `link`: somebody's, looked at and not saved until it is made one's own. */
export type Standing = 'own' | 'link'

export interface Notice {
  readonly tone: 'info' | 'problem'
  readonly text: string
  readonly hint?: string | undefined
}

export interface Settings {
  readonly units: UnitSystem
  readonly theme: Theme
}

/** What the browser gives the program; tests give their own. */
export interface Ports {
  readonly clock: { readonly nowMs: () => number }
  readonly storage: {
    readonly load: () => Promise<{ readonly spec: unknown; readonly settings: unknown; readonly previous: unknown }>
    readonly saveSpec: (spec: Spec) => Promise<void>
    /** The plan that another one took the place of, so that it can be had back after a reload too. */
    readonly savePrevious: (spec: Spec) => Promise<void>
    readonly saveSettings: (settings: Settings) => Promise<void>
  }
  readonly link: {
    /** The address that the page was opened with, if it carries a spec. */
    readonly opened: () => string | undefined
    readonly baseUrl: () => string
    readonly copy: (text: string) => Promise<void>
    /** Takes the spec out of the address, so that a reload shows the own document. */
    readonly forget: () => void
  }
  readonly files: {
    readonly download: (name: string, text: string, type: string) => void
    /** Undefined where the person chose none; rejects where the file can't be read. */
    readonly pick: (accept: string) => Promise<string | undefined>
  }
  readonly print: () => void
}

export interface AppState {
  readonly spec: Spec
  readonly standing: Standing
  readonly loading: boolean
  readonly canUndo: boolean
  readonly canRedo: boolean
  readonly undoLabel: string | undefined
  readonly redoLabel: string | undefined
  readonly settings: Settings
  readonly chapter: string
  readonly tool: Tool
  readonly selection: Selection | undefined
  /** A level that is only looked at (the slider), not saved [m above the datum]. */
  readonly previewLevelM: number | undefined
  readonly saveState: SaveState
  readonly notice: Notice | undefined
  /** The link that was made last, shown so that it can be copied by hand. */
  readonly sharedLink: string | undefined
  /** Name of the plan that another one took the place of. */
  readonly previousName: string | undefined
  /** Readings that are being typed and not saved yet, by their form: a look at another chapter must not lose them. */
  readonly drafts: { readonly [form: string]: ReadingSet }
  /** Refreshed every minute and at each edit; the only clock of the screen. */
  readonly nowMs: number
}

export interface AppActions {
  /** Applies one edit. A refused edit changes nothing and shows its problem. Same mergeKey in a row makes one undo step. */
  readonly dispatch: (command: Command, options?: { readonly mergeKey?: string }) => Problem | undefined
  readonly undo: () => void
  readonly redo: () => void
  readonly setUnits: (units: UnitSystem) => void
  readonly setTheme: (theme: Theme) => void
  readonly openChapter: (chapter: string) => void
  readonly setTool: (tool: Tool) => void
  readonly select: (selection: Selection | undefined) => void
  readonly previewLevel: (levelM: number | undefined) => void
  readonly notify: (notice: Notice | undefined) => void
  /** Keeps what is typed in a form of readings until it is saved or given up, then undefined. */
  readonly keepDraft: (form: string, draft: ReadingSet | undefined) => void
  readonly copyLink: () => Promise<void>
  readonly closeLink: () => void
  /** Opens the plan that the address carries now, if any. */
  readonly openLink: () => void
  readonly openPrevious: () => void
  readonly makeMine: () => void
  readonly startBlank: () => void
  readonly startDemo: () => void
  readonly importFile: () => Promise<void>
  readonly exportFile: () => void
  readonly print: () => void
  /** Reads storage or the link; once, at the start. */
  readonly boot: () => Promise<void>
  readonly tick: () => void
}

export type AppStoreState = AppState & AppActions
