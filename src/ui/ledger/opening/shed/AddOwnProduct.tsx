import { useRef, useState } from 'react'
import type { Problem } from '../../../../base/index.ts'
import { basesOf, LIKE_IDS, ownProduct, PRODUCTS, type StrengthBasis } from '../../../../chemicals/index.ts'
import type { System } from '../../../../document/index.ts'
import { useAppStore } from '../../../context.tsx'
import {
  Button,
  ChoiceField,
  finishTyping,
  NumberField,
  ProblemNote,
  SaveButton,
  TextField,
} from '../../../fields/index.ts'
import styles from '../opening.module.css'
import { BASES, freeId } from './shed-words.ts'

export const LIKE = PRODUCTS.rows
  .filter(({ id }) => LIKE_IDS.includes(id))
  .map(({ id, label, strength }) => ({ id, label, note: strength }))

const UNFINISHED: Problem = {
  code: 'label-unfinished',
  path: '',
  what: 'Name, substance and strength are needed.',
  why: 'A dose is counted from what the label says is in it.',
  hint: 'Copy them from the label.',
}

/** A product copied from its label: what it is called, what is in it and how much. */
export function AddOwnProduct({ system, onClose }: { readonly system: System; readonly onClose: () => void }) {
  const store = useAppStore()
  const form = useRef<HTMLElement>(null)
  const [label, setLabel] = useState('')
  const [like, setLike] = useState<string | undefined>()
  const [basis, setBasis] = useState<StrengthBasis | undefined>()
  // What was put in last: the press takes up the open field in the same breath.
  const strength = useRef<number | undefined>(undefined)
  const [problem, setProblem] = useState<Problem | undefined>()
  const bases = basesOfId(like)
  const save = () => {
    if (!finishTyping(form.current)) return
    const chosen = basis ?? bases[0]
    const name = label.trim()
    if (name === '' || like === undefined || strength.current === undefined || !chosen) return setProblem(UNFINISHED)
    const id = freeId('own', [
      ...(system.ownProducts ?? []).map((own) => own.id),
      ...PRODUCTS.rows.map((row) => row.id),
    ])
    const product = { id, label: name, like, strength: strength.current, basis: chosen }
    // A strength that can't be is found by the substance, which a saved document isn't asked about.
    const made = ownProduct(product)
    if (!made.ok) return setProblem(made.problem)
    const refused = store.getState().dispatch({ id: 'addOwnProduct', args: { systemId: system.id, product } })
    setProblem(refused)
    if (!refused) onClose()
  }
  return (
    <section ref={form} className={styles['measured']} aria-label="A product from its label">
      <div className={styles['fields']}>
        <TextField label="What you call it" value={label} onChange={(text) => void setLabel(text)} isLive />
        <ChoiceField
          label="Made of the same as"
          value={like}
          options={LIKE}
          onChange={(id) => {
            setLike(id)
            setBasis(undefined)
          }}
        />
        {bases.length > 0 && (
          <>
            <ChoiceField
              label="The label states"
              value={basis ?? bases[0]}
              options={bases.map((id) => ({ id, label: BASES[id].label }))}
              onChange={setBasis}
            />
            <NumberField
              label="Strength"
              value={strength.current}
              onChange={(value) => {
                strength.current = value
              }}
              min={0}
              unitLabel={BASES[basis ?? bases[0] ?? 'percent-by-mass'].unit}
            />
          </>
        )}
      </div>
      {problem && <ProblemNote problem={problem} />}
      <div className={styles['buttons']}>
        <SaveButton onPress={save}>Add it</SaveButton>
        <Button tone="quiet" onPress={onClose}>
          Cancel
        </Button>
      </div>
    </section>
  )
}

/** In which ways a label can state the strength of a substance. */
export function basesOfId(like: string | undefined): readonly StrengthBasis[] {
  const product = like === undefined ? undefined : PRODUCTS.get(like)
  return product ? basesOf(product) : []
}
