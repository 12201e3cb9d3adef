export { Logbook } from './Logbook.tsx'
