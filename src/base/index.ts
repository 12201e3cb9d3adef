export { invariant, never } from './invariant.ts'
export { fail, ok, type Problem, type Result, under } from './result.ts'
export { bracketedRoot, type Root, type RootFailure } from './roots.ts'
export { type Table, table } from './table.ts'
