import { prove } from './random-waters.ts'

/** `npm run prove:water -- [waters] [seed]`: the solver's proof on a million random waters, or as many as asked. */
const waters = Number(process.argv[2] ?? 1_000_000)
const seed = Number(process.argv[3] ?? 20_261_125)
const start = performance.now()
const proof = prove(seed, waters)
const seconds = (performance.now() - start) / 1000
process.stdout.write(
  `${JSON.stringify({ ...proof, seconds: Number(seconds.toFixed(1)), checkedPerS: Math.round(waters / seconds) })}\n`,
)
process.exitCode = proof.failed > 0 ? 1 : 0
