import { cautionsOf, type Product, productById } from '../../../chemicals/index.ts'
import { deriveProducts, deriveVolume } from '../../../derive/index.ts'
import type { System } from '../../../document/index.ts'
import { REGIMES } from '../../../plan/index.ts'
import { formatQuantity, type UnitSystem } from '../../../units/index.ts'
import type { Superchlorination } from '../../../water/index.ts'
import { useApp, useUnits } from '../../context.tsx'
import { Disclosure, inOwnUnits } from '../../fields/index.ts'
import { chlorineDoseG, isStabilisedProduct } from './chlorine-dose.ts'
import { rangeWords } from './reading-words.ts'
import { sourceWords } from './source-words.ts'
import styles from './water.module.css'

const ML_PER_M3 = 1_000_000
const G_PER_KG = 1000

interface BreakpointProps {
  readonly system: System
  readonly advice: Superchlorination
}

/** The dose that breaks combined chlorine down, reckoned three ways, and in the product at hand. */
export function Breakpoint({ system, advice }: BreakpointProps) {
  const units = useUnits()
  const mgPerL = (value: number) => formatQuantity('concentration', value, units, { digits: 1 })
  return (
    <>
      <table className={styles['rows']}>
        <caption className={styles['caption']}>Chlorine to add, three ways</caption>
        <tbody>
          {advice.doses.map((dose) => (
            <tr key={dose.id}>
              <th scope="row">
                {dose.label}
                <span className={styles['under']}>{sourceWords(dose)}</span>
              </th>
              <td>{rangeWords(mgPerL(dose.lowMgPerL), mgPerL(dose.highMgPerL))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Begin system={system} doseMgPerL={advice.doseMgPerL} />
      <ul className={styles['list']} aria-label="What to mind when breaking it down">
        {advice.notes.map((note) => (
          <li key={note}>{inOwnUnits(note, units)}</li>
        ))}
      </ul>
    </>
  )
}

/** Where to begin, for this pool and what is used in it. */
function Begin({ system, doseMgPerL }: { readonly system: System; readonly doseMgPerL: number }) {
  const spec = useApp((state) => state.spec)
  const nowMs = useApp((state) => state.nowMs)
  const units = useUnits()
  const volume = deriveVolume(spec, system.id)
  const id = system.regime.products.openingChlorine ?? REGIMES.get(system.regime.id)?.products.openingChlorine
  const found = id === undefined ? undefined : productById(id, deriveProducts(spec, system.id, nowMs))
  const product = found?.ok ? found.value.product : undefined
  const fits = product !== undefined && !isStabilisedProduct(product)
  const amountG = volume && fits ? chlorineDoseG(product, doseMgPerL, volume.m3) : undefined
  return (
    <div className={styles['note']} role="note">
      <p>
        <strong>Begin with {formatQuantity('concentration', doseMgPerL, units, { digits: 1 })} of chlorine</strong>
        {product &&
          amountG !== undefined &&
          `: here ${amountWords(product, amountG, units)} of ${lowerFirst(product.label)}`}
        . Then measure both again, and repeat it if they say so.
      </p>
      {product && !fits && (
        <p>{product.label} brings stabiliser, which holds chlorine back: take a chlorine without it.</p>
      )}
      {product && amountG !== undefined && (
        <Disclosure title={`Handling ${lowerFirst(product.label)}`}>
          <ul className={styles['list']} aria-label="Cautions">
            {cautionsOf([product]).map((caution) => (
              <li key={caution.id}>{caution.text}</li>
            ))}
          </ul>
        </Disclosure>
      )}
    </div>
  )
}

/** Poured or weighed, as its form asks. */
function amountWords(product: Product, amountG: number, units: UnitSystem): string {
  return product.form === 'liquid'
    ? formatQuantity('liquid', amountG / product.densityGPerML / ML_PER_M3, units)
    : formatQuantity('mass', amountG / G_PER_KG, units)
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)
