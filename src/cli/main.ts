import { readFileSync } from 'node:fs'
import { runCommandLine } from './run.ts'

const outcome = runCommandLine(process.argv.slice(2), {
  readInput: (file) => readFileSync(file === '-' ? 0 : file, 'utf8'),
  nowMs: Date.now(),
})
process.stdout.write(outcome.stdout)
process.stderr.write(outcome.stderr)
process.exitCode = outcome.exitCode
