import { useMemo, useRef } from 'react'
import { fail } from '../../../base/index.ts'
import { areaOf, boundsOf, type Path, pathLength, STARTING_OUTLINES, svgPathOf } from '../../../basin/index.ts'
import { formatQuantity } from '../../../units/index.ts'
import { useCanEdit, useUnits } from '../../context.tsx'
import { Button, ChoiceField, ProblemNote, QuantityField } from '../../fields/index.ts'
import styles from './basin.module.css'
import { measureProblem } from './measure-range.ts'
import { typedIn, useStartDraft, withForm, withMeasure, withUsual } from './start-draft.ts'
import { startValues } from './start-values.ts'

interface Props {
  readonly label: string
  readonly onPut: (path: Path) => void
}

/** One outline that morphs by its numbers, previewed as it will be drawn. */
export function StartOutline({ label, onPut }: Props) {
  const canEdit = useCanEdit()
  const [draft, change] = useStartDraft()
  const form = useRef<HTMLDivElement>(null)
  const typed = typedIn(draft)
  const kind = STARTING_OUTLINES.get(draft.kindId)
  const units = useUnits()
  const start = useMemo(() => (kind ? startValues(kind, units) : {}), [kind, units])
  const made = useMemo(() => {
    const values = { ...start, ...typed }
    const path = kind?.make(values)
    if (!kind || !path || path.ok) return path
    return fail(measureProblem(kind, values, Object.keys(typed), path.problem, units))
  }, [kind, start, typed, units])
  if (!kind || !made) return null
  const put = (path: Path) => {
    // A measure that isn't understood is mended first: the outline is still drawn with the one before it.
    const wrong = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')
    if (wrong) wrong.focus()
    else onPut(path)
  }
  return (
    <div ref={form} className={styles['start']}>
      <ChoiceField
        label="Form"
        value={draft.kindId}
        options={STARTING_OUTLINES.rows.map(({ id, label: name }) => ({ id, label: name }))}
        onChange={(id) => change((now) => withForm(now, id, units))}
      />
      {kind.parameters.map((parameter) => (
        <QuantityField
          key={parameter.id}
          label={parameter.label}
          quantity="length"
          value={typed[parameter.id] ?? start[parameter.id] ?? parameter.defaultM}
          min={parameter.minM}
          max={parameter.maxM}
          isRequired
          onChange={(m) => {
            if (m !== undefined) change((now) => withMeasure(now, parameter.id, m))
          }}
        />
      ))}
      {made.ok ? <Preview path={made.value} name={kind.label} /> : <ProblemNote problem={made.problem} />}
      {canEdit ? (
        <div className={styles['buttons']}>
          {made.ok ? (
            <Button tone="main" onPress={() => put(made.value)}>
              {label}
            </Button>
          ) : null}
          {Object.keys(typed).length > 0 ? (
            <Button tone="quiet" onPress={() => change(withUsual)}>
              Usual measures
            </Button>
          ) : null}
        </div>
      ) : null}
    </div>
  )
}

/** Share of the box that is left free around the drawing. */
const MARGIN = 0.06

function Preview({ path, name }: { readonly path: Path; readonly name: string }) {
  const units = useUnits()
  const box = boundsOf(path)
  const width = box.maxX - box.minX
  const height = box.maxY - box.minY
  const margin = MARGIN * Math.max(width, height)
  const view = [box.minX - margin, -box.maxY - margin, width + 2 * margin, height + 2 * margin].join(' ')
  return (
    <figure className={styles['preview']}>
      <svg viewBox={view} role="img" aria-label={`${name}, as it will be drawn`} preserveAspectRatio="xMidYMid meet">
        <path d={svgPathOf(path)} transform="scale(1 -1)" vectorEffect="non-scaling-stroke" />
      </svg>
      <figcaption>
        {formatQuantity('length', width, units)} × {formatQuantity('length', height, units)} ·{' '}
        {formatQuantity('area', Math.abs(areaOf(path)), units)} · around{' '}
        {formatQuantity('length', pathLength(path), units)}
      </figcaption>
    </figure>
  )
}
