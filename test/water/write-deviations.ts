import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { deviationsDocument } from './deviations.ts'

writeFileSync(join(import.meta.dirname, '../../src/water/DEVIATIONS.md'), deviationsDocument())
