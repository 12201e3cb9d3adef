import { writeFileSync } from 'node:fs'
import { rulesPage } from './rules-of-thumb.ts'

writeFileSync(new URL('../../src/basin/RULES-OF-THUMB.md', import.meta.url), rulesPage())
