export { Logbook } from './Logbook.tsx'
export { freshLogId } from './log-id.ts'
