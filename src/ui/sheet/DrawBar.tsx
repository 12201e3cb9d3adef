import { type KeyboardEvent, type ReactNode, type RefObject, useLayoutEffect, useRef, useState } from 'react'
import { Button, ToggleButton, ToggleButtonGroup } from 'react-aria-components'
import type { FloorKindId } from '../../document/index.ts'
import type { Tool } from '../../state/index.ts'
import { useApp, useAppStore } from '../context.tsx'
import { stepAcross } from './bar-keys.ts'
import styles from './DrawBar.module.css'
import type { SheetView } from './useSheetView.ts'

interface ToolRow {
  readonly id: Tool
  readonly label: string
  readonly help: string
  readonly needsBody: boolean
  /** Only over a floor of this kind. */
  readonly floor?: FloorKindId
  readonly mark: ReactNode
}

// Small pen marks of what the hand does, each drawn in a box of 18.
const TOOLS: readonly ToolRow[] = [
  {
    id: 'select',
    label: 'Select',
    help: 'Select, move and look',
    needsBody: false,
    mark: <path d="M5 2.5v12l3.2-3 2 4.3 1.7-.8-2-4.2h4.4z" />,
  },
  {
    id: 'freehand',
    label: 'Loop',
    help: 'Draw the outline in one loop',
    needsBody: false,
    mark: (
      <path d="M6.5 3.5c-4 1-4.500 8-1 10.200 2.500 1.600 4-1.200 6.500-.7 3 .6 4.500-3 3-6.500-1.300-3-4.500-4-8.500-3z" />
    ),
  },
  {
    id: 'points',
    label: 'Points',
    help: 'Place the outline point by point',
    needsBody: false,
    mark: <path d="M3.500 13.500L7 4.500l8 5zM2 12h3v3H2zM5.500 3h3v3h-3zM13.500 8h3v3h-3z" />,
  },
  {
    id: 'steps',
    label: 'Steps',
    help: 'Drag steps out from the wall',
    needsBody: true,
    mark: <path d="M2.500 4h4v3.500h4V11h4v4" />,
  },
  {
    id: 'round-steps',
    label: 'Round steps',
    help: 'Drag round steps out from a corner or wall',
    needsBody: true,
    mark: <path d="M3 3v12h12M7 15a4 4 0 0 0-4-4M11 15a8 8 0 0 0-8-8" />,
  },
  {
    id: 'shelf',
    label: 'Shelf',
    help: 'Drag a shelf out from the wall',
    needsBody: true,
    mark: <path d="M2.500 3v3.500h7.500V15h5.500" />,
  },
  {
    id: 'bench',
    label: 'Bench',
    help: 'Press sides of the outline that a bench runs along',
    needsBody: true,
    mark: <path d="M2.500 15.500v-13h13M6.500 15.500v-9h9" />,
  },
  {
    id: 'ramp',
    label: 'Ramp',
    help: 'Drag a ramp out from the wall',
    needsBody: true,
    mark: <path d="M2.500 4.500h2L15.500 14M2.500 4.500V14h13" />,
  },
  {
    id: 'contour',
    label: 'Depth line',
    help: 'Draw a line of equal depth',
    needsBody: true,
    floor: 'contours',
    mark: (
      <path d="M2.500 9c0-4 3-6.500 6.500-6.500S15.500 5 15.500 9s-3 6.500-6.500 6.500S2.500 13 2.500 9zM6 9c0-2 1.300-3 3-3s3 1 3 3-1.300 3-3 3-3-1-3-3z" />
    ),
  },
  {
    id: 'sounding',
    label: 'Sounding',
    help: 'Take soundings: press a place, type its depth',
    needsBody: true,
    floor: 'soundings',
    mark: <path d="M3.500 6.500h6M6.500 3.500v6M12.500 8v7M10.500 13l2 2 2-2" />,
  },
]

/** The tools of the sheet and its zoom. */
export function DrawBar({ view }: { readonly view: SheetView }) {
  const store = useAppStore()
  const tool = useApp((state) => state.tool)
  const canEdit = useApp((state) => state.standing === 'own')
  const hasBody = useApp((state) => state.spec.bodies.length > 0)
  const floor = useApp((state) => state.spec.bodies[0]?.floor.kind)
  const bar = useRef<HTMLDivElement>(null)
  const isColumn = useIsColumn(bar)
  // The group itself takes the arrows along it; across it they do the same.
  const onKeyDown = (event: KeyboardEvent) => {
    const by = stepAcross(event.key, isColumn)
    const group = event.target instanceof Element ? event.target.closest('[role="radiogroup"]') : null
    if (by === 0 || !group) return
    event.preventDefault()
    const tools = [...group.querySelectorAll<HTMLElement>('button:not(:disabled)')]
    tools[tools.indexOf(document.activeElement as HTMLElement) + by]?.focus()
  }
  return (
    <div ref={bar} className={styles['bar']} data-screen-only onKeyDownCapture={onKeyDown}>
      {canEdit ? (
        <ToggleButtonGroup
          className={styles['tools'] ?? ''}
          aria-label="Drawing tools"
          orientation={isColumn ? 'vertical' : 'horizontal'}
          selectionMode="single"
          disallowEmptySelection
          selectedKeys={[tool]}
          onSelectionChange={(keys) => {
            const picked = TOOLS.find((row) => keys.has(row.id))
            if (picked) store.getState().setTool(picked.id)
          }}
        >
          {TOOLS.filter((row) => row.floor === undefined || row.floor === floor).map((row) => (
            <ToggleButton
              key={row.id}
              id={row.id}
              className={styles['tool'] ?? ''}
              isDisabled={row.needsBody && !hasBody}
              aria-label={row.help}
            >
              <Mark>{row.mark}</Mark>
              <span>{row.label}</span>
            </ToggleButton>
          ))}
        </ToggleButtonGroup>
      ) : null}
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset is for a form */}
      <div className={styles['zoom']} role="group" aria-label="Zoom">
        <Button className={styles['tool'] ?? ''} aria-label="Zoom in" onPress={() => view.zoom(1.3)}>
          <Mark>
            <path d="M9 3v12M3 9h12" />
          </Mark>
        </Button>
        <Button className={styles['tool'] ?? ''} aria-label="Zoom out" onPress={() => view.zoom(1 / 1.3)}>
          <Mark>
            <path d="M3 9h12" />
          </Mark>
        </Button>
        <Button className={styles['tool'] ?? ''} aria-label="Fit the drawing to the sheet" onPress={view.fit}>
          <Mark>
            <path d="M2.500 6.500v-4h4M15.500 11.500v4h-4M11.500 2.500h4v4M6.500 15.500h-4v-4" />
          </Mark>
          <span>Fit</span>
        </Button>
      </div>
    </div>
  )
}

/** Whether the bar stands, as its style has it for the room that there is. */
function useIsColumn(bar: RefObject<HTMLElement | null>): boolean {
  const [isColumn, setColumn] = useState(true)
  useLayoutEffect(() => {
    const { current } = bar
    if (!current) return undefined
    const observer = new ResizeObserver(() => setColumn(getComputedStyle(current).flexDirection === 'column'))
    observer.observe(current)
    return () => observer.disconnect()
  }, [bar])
  return isColumn
}

function Mark({ children }: { readonly children: ReactNode }) {
  return (
    <svg className={styles['mark']} viewBox="0 0 18 18" width="18" height="18" aria-hidden="true">
      {children}
    </svg>
  )
}
