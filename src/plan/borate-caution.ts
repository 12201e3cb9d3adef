import { borateIntake } from '../chemicals/index.ts'

/** What a child swallows in a swim, twice an adult's 24 mL (US EPA figure, seen second-hand), and its weight (own choice). */
const CHILD = { mL: 48, kg: 15 } as const
/** A dog that drinks from the pool: own choice. */
const DOG = { mL: 500, kg: 10 } as const

const two = (value: number): string => String(Number(value.toPrecision(2)))

/** What swallowing water with this much borate [mg/L as B] means for children, animals and anyone pregnant. */
export function borateCaution(mgPerL: number): string {
  const child = borateIntake(mgPerL, CHILD.mL, CHILD.kg)
  const dog = borateIntake(mgPerL, DOG.mL, DOG.kg)
  return [
    `At ${two(mgPerL)} mg/L of borate (as boron) a child of ${CHILD.kg} kg that swallows ${CHILD.mL} mL takes in about ${two(child.boronMg)} mg of boron,`,
    `${two(100 * child.shareOfReference)} % of what is held to be without harm in a day; food brings more (${child.source}).`,
    `A dog of ${DOG.kg} kg that drinks half a litre takes in ${two(dog.mgPerKg)} mg per kg: give animals other water.`,
    'Nobody drinks it; anyone pregnant asks a doctor first.',
  ].join(' ')
}
