export { browserPorts } from './ports.ts'
