import { Button, Menu, Header as MenuHeader, MenuItem, MenuSection, MenuTrigger, Popover } from 'react-aria-components'
import { useStore } from 'zustand'
import type { Theme } from '../../state/index.ts'
import type { UnitSystem } from '../../units/index.ts'
import { useApp, useAppStore } from '../context.tsx'
import styles from './Header.module.css'
import { stepBack, stepForward, stepsTold } from './steps-told.ts'

const UNITS: readonly {
  readonly id: UnitSystem
  readonly label: string
  readonly short: string
  readonly tiny: string
}[] = [
  { id: 'us', label: 'US: feet, US gallons, lb, °F', short: 'US · ft, gal, °F', tiny: 'US' },
  { id: 'metric', label: 'Metric: metres, m³, kg, °C', short: 'Metric · m, m³, °C', tiny: 'Metric' },
  {
    id: 'imperial',
    label: 'Imperial gallons: feet, imp gal, lb, °C',
    short: 'Imperial · ft, imp gal',
    tiny: 'Imperial',
  },
]
const THEMES: readonly { readonly id: Theme; readonly label: string }[] = [
  { id: 'system', label: 'As the device' },
  { id: 'light', label: 'Paper (light)' },
  { id: 'dark', label: 'Evening (dark)' },
]
const SAVE_WORDS = { idle: '', saving: 'saving…', saved: 'saved here', failed: 'not saved' } as const

/** Brand, the plan's name, undo, units, the plan menu and the link. */
export function Header() {
  const name = useApp((state) => state.spec.name)
  const saveState = useApp((state) => state.saveState)
  const standing = useApp((state) => state.standing)
  return (
    <header className={styles['header']} data-screen-only>
      <h1 className={styles['brand']}>Shoalbook</h1>
      <p className={styles['name']}>
        <span className={styles['plan']}>{name === '' ? 'Unnamed pool' : name}</span>
        <span className={styles['save']} role="status">
          {standing === 'own' ? SAVE_WORDS[saveState] : 'opened from a link'}
        </span>
      </p>
      <UndoButtons />
      <UnitsMenu />
      <PlanMenu />
      <CopyButton />
    </header>
  )
}

function UndoButtons() {
  const store = useAppStore()
  const canUndo = useApp((state) => state.canUndo)
  const canRedo = useApp((state) => state.canRedo)
  const undoLabel = useApp((state) => state.undoLabel)
  const redoLabel = useApp((state) => state.redoLabel)
  const editable = useApp((state) => state.standing === 'own')
  const last = useStore(stepsTold)
  const told = useApp((state) => (state.spec === last.spec ? last.words : ''))
  return (
    <div className={styles['pair']}>
      <Button
        className={styles['button'] ?? ''}
        isDisabled={!canUndo || !editable}
        aria-label={undoLabel === undefined ? 'Undo' : `Undo: ${undoLabel}`}
        onPress={() => stepBack(store)}
      >
        Undo
      </Button>
      <Button
        className={styles['button'] ?? ''}
        isDisabled={!canRedo || !editable}
        aria-label={redoLabel === undefined ? 'Redo' : `Redo: ${redoLabel}`}
        onPress={() => stepForward(store)}
      >
        Redo
      </Button>
      <p className="visually-hidden" aria-live="polite">
        {told}
      </p>
    </div>
  )
}

function UnitsMenu() {
  const store = useAppStore()
  const units = useApp((state) => state.settings.units)
  const shown = UNITS.find((row) => row.id === units)
  return (
    <MenuTrigger>
      <Button className={styles['button'] ?? ''} aria-label={`Units: ${shown?.short ?? ''}`}>
        <span className={styles['wide']}>{shown?.short}</span>
        <span className={styles['narrow']}>{shown?.tiny}</span>
      </Button>
      <Popover className={styles['popover'] ?? ''} placement="bottom end">
        <Menu
          className={styles['menu'] ?? ''}
          aria-label="Units"
          selectionMode="single"
          selectedKeys={[units]}
          disallowEmptySelection
          onAction={(key) => {
            const row = UNITS.find(({ id }) => id === key)
            if (row) store.getState().setUnits(row.id)
          }}
        >
          {UNITS.map(({ id, label }) => (
            <MenuItem key={id} id={id} className={styles['item'] ?? ''}>
              {label}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  )
}

function PlanMenu() {
  const store = useAppStore()
  const previousName = useApp((state) => state.previousName)
  const theme = useApp((state) => state.settings.theme)
  const act: Readonly<Record<string, () => void>> = {
    blank: () => store.getState().startBlank(),
    example: () => store.getState().startDemo(),
    open: () => void store.getState().importFile(),
    save: () => store.getState().exportFile(),
    previous: () => store.getState().openPrevious(),
    print: () => store.getState().print(),
  }
  const items: readonly (readonly [string, string])[] = [
    ['blank', 'Blank sheet'],
    ['example', 'Open the example'],
    ...(previousName === undefined ? [] : ([['previous', `Back to “${previousName || 'Unnamed pool'}”`]] as const)),
    ['open', 'Open a file…'],
    ['save', 'Save a file'],
    ['print', 'Print the spec sheet'],
  ]
  return (
    <MenuTrigger>
      <Button className={styles['button'] ?? ''}>Plan</Button>
      <Popover className={styles['popover'] ?? ''} placement="bottom end">
        <Menu
          className={styles['menu'] ?? ''}
          aria-label="Plan"
          onAction={(key) => {
            const chosen = THEMES.find(({ id }) => `theme-${id}` === key)
            if (chosen) store.getState().setTheme(chosen.id)
            else act[String(key)]?.()
          }}
        >
          <MenuSection>
            {items.map(([id, label]) => (
              <MenuItem key={id} id={id} className={styles['item'] ?? ''}>
                {label}
              </MenuItem>
            ))}
          </MenuSection>
          <MenuSection>
            <MenuHeader className={styles['heading'] ?? ''}>Light</MenuHeader>
            {THEMES.map(({ id, label }) => (
              <MenuItem key={id} id={`theme-${id}`} className={styles['item'] ?? ''} textValue={label}>
                {label}
                {id === theme ? <span aria-hidden> ✓</span> : null}
              </MenuItem>
            ))}
          </MenuSection>
        </Menu>
      </Popover>
    </MenuTrigger>
  )
}

function CopyButton() {
  const store = useAppStore()
  return (
    <Button className={styles['main'] ?? ''} onPress={() => void store.getState().copyLink()}>
      <span className={styles['wide']}>Copy spec link</span>
      <span className={styles['narrow']}>Copy link</span>
    </Button>
  )
}
