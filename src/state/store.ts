import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Problem } from '../base/index.ts'
import {
  applyCommand,
  blankSpec,
  type Command,
  commandLabel,
  demoSpecAt,
  fitsInLink,
  fromJson,
  type History,
  linkOf,
  record,
  redo,
  redoLabel,
  type Spec,
  specFromLink,
  startHistory,
  toJson,
  undo,
  undoLabel,
  validateSpec,
} from '../document/index.ts'
import { createAutosave } from './autosave.ts'
import { fileNameOf, noticeOf, refusalOf, WORDS } from './messages.ts'
import { DEFAULT_SETTINGS, settingsFrom } from './settings.ts'
import type { AppState, AppStoreState, Ports, Settings } from './types.ts'

export type AppStore = StoreApi<AppStoreState>

/** The example's readings are a couple of hours old, so that its plan speaks of today. */
const EXAMPLE_AGE_MS = 2 * 3_600_000

/** The app's one store: a document with its history, and what the screen is looking at. Holds nothing derived. */
export function createAppStore(ports: Ports): AppStore {
  const example = () => demoSpecAt(ports.clock.nowMs() - EXAMPLE_AGE_MS)
  let history: History = startHistory(example())
  // The own plan's history while a linked plan is looked at, and the plan that was replaced last.
  let ownHistory: History | undefined
  let previous: Spec | undefined
  let booted = false

  return createStore<AppStoreState>()((set, get) => {
    const autosave = createAutosave<Spec>(ports.storage.saveSpec, (saveState) => set({ saveState }))
    const storageFailed = () => set({ saveState: 'failed', notice: WORDS.storageFailed })

    const shown = (): Partial<AppState> => ({
      spec: history.present,
      canUndo: history.past.length > 0,
      canRedo: history.future.length > 0,
      undoLabel: undoLabel(history),
      redoLabel: redoLabel(history),
      nowMs: ports.clock.nowMs(),
    })
    const show = () => {
      set(shown())
      if (booted && get().standing === 'own') autosave.save(history.present)
    }
    /** A replacement of the whole plan is one undoable edit, and the plan it replaces is kept. */
    const replace = (spec: Spec, label: string) => {
      const base = ownHistory ?? history
      ownHistory = undefined
      previous = base.present
      ports.storage.savePrevious(previous).catch(storageFailed)
      history = record(base, spec, label)
      set({
        selection: undefined,
        previewLevelM: undefined,
        tool: 'select',
        notice: undefined,
        standing: 'own',
        previousName: previous.name,
        drafts: {},
      })
      show()
    }
    const openOwn = () => {
      if (ownHistory) history = ownHistory
      ownHistory = undefined
      set({ standing: 'own', selection: undefined, previewLevelM: undefined })
      show()
    }
    const step = (move: (from: History) => History) => {
      if (get().standing !== 'own') return
      const next = move(history)
      if (next === history) return
      history = next
      set({ selection: undefined })
      show()
    }
    const saveSettings = (settings: Settings) => {
      set({ settings })
      ports.storage.saveSettings(settings).catch(storageFailed)
    }

    return {
      spec: history.present,
      standing: 'own',
      loading: true,
      canUndo: false,
      canRedo: false,
      undoLabel: undefined,
      redoLabel: undefined,
      settings: DEFAULT_SETTINGS,
      chapter: 'basin',
      tool: 'select',
      selection: undefined,
      previewLevelM: undefined,
      saveState: 'idle',
      notice: undefined,
      sharedLink: undefined,
      previousName: undefined,
      drafts: {},
      nowMs: ports.clock.nowMs(),

      dispatch: (command: Command, options) => {
        if (get().standing !== 'own') {
          set({ notice: WORDS.viewOnly })
          return viewOnlyProblem()
        }
        const result = applyCommand(history.present, command)
        if (!result.ok) {
          set({ notice: refusalOf(result.problem) })
          return result.problem
        }
        if (result.value === history.present) return undefined
        history = record(history, result.value, commandLabel(command), options?.mergeKey)
        if (get().notice?.tone === 'problem') set({ notice: undefined })
        show()
        return undefined
      },
      undo: () => step((from) => (from.past.length > 0 ? undo(from) : from)),
      redo: () => step((from) => (from.future.length > 0 ? redo(from) : from)),
      setUnits: (units) => saveSettings({ ...get().settings, units }),
      setTheme: (theme) => saveSettings({ ...get().settings, theme }),
      openChapter: (chapter) => set({ chapter }),
      setTool: (tool) => set(get().standing === 'own' ? { tool, selection: undefined } : { tool: 'select' }),
      select: (selection) => set({ selection }),
      previewLevel: (previewLevelM) => set({ previewLevelM }),
      notify: (notice) => set({ notice }),
      keepDraft: (form, draft) => {
        const { [form]: _, ...rest } = get().drafts
        set({ drafts: draft ? { ...rest, [form]: draft } : rest })
      },

      copyLink: async () => {
        if (!fitsInLink(history.present)) {
          set({ notice: WORDS.tooLongForLink })
          return
        }
        const url = linkOf(history.present, ports.link.baseUrl())
        set({ sharedLink: url })
        try {
          await ports.link.copy(url)
          set({ notice: WORDS.linkCopied })
        } catch {
          set({ notice: WORDS.linkNotCopied }) // the link itself is shown beside, to be copied by hand
        }
      },
      closeLink: () => set({ sharedLink: undefined }),
      openLink: () => {
        const opened = ports.link.opened()
        if (opened === undefined) return
        const linked = specFromLink(opened)
        if (!linked.ok) {
          ports.link.forget()
          set({ notice: noticeOf(WORDS.badLink, linked.problem) })
          return
        }
        ownHistory ??= history
        history = startHistory(linked.value)
        set({
          ...shown(),
          standing: 'link',
          selection: undefined,
          previewLevelM: undefined,
          tool: 'select',
          notice: undefined,
        })
      },
      makeMine: () => {
        if (get().standing !== 'link') return
        ports.link.forget()
        replace(history.present, 'Make the linked plan mine')
        set({ notice: WORDS.madeMine })
      },
      openPrevious: () => {
        if (get().standing === 'link') {
          ports.link.forget()
          openOwn()
        } else if (previous) replace(previous, 'Back to the earlier plan')
      },
      startBlank: () => replace(blankSpec(get().settings.units === 'us' ? 'us' : 'metric'), 'New blank sheet'),
      startDemo: () => replace(example(), 'Open the example'),
      importFile: async () => {
        const text = await ports.files.pick('.json,application/json').catch(() => {
          set({ notice: WORDS.fileUnreadable })
          return undefined
        })
        if (text === undefined) return
        const spec = fromJson(text)
        if (spec.ok) replace(spec.value, 'Open a file')
        else set({ notice: noticeOf(WORDS.badFile, spec.problem) })
      },
      exportFile: () => ports.files.download(fileNameOf(history.present), toJson(history.present), 'application/json'),
      print: () => ports.print(),

      boot: async () => {
        const saved = await ports.storage.load().catch(() => {
          storageFailed()
          return undefined
        })
        const own = saved?.spec === undefined ? undefined : validateSpec(saved.spec)
        const kept = saved?.previous === undefined ? undefined : validateSpec(saved.previous)
        previous = kept?.ok ? kept.value : undefined
        history = startHistory(own?.ok ? own.value : example())
        set({ ...shown(), settings: settingsFrom(saved?.settings), previousName: previous?.name })
        // An unreadable plan is put aside, not written over by the example.
        if (own && !own.ok) set({ notice: noticeOf(WORDS.badSaved, own.problem) })
        booted = !own || own.ok
        get().openLink()
        booted = true
        set({ loading: false })
      },
      tick: () => set({ nowMs: ports.clock.nowMs() }),
    }
  })
}

function viewOnlyProblem(): Problem {
  return {
    code: 'view-only',
    path: '',
    what: WORDS.viewOnly.text,
    why: 'Changing it here would not change it for whoever sent it.',
    hint: WORDS.viewOnly.hint ?? '',
  }
}
