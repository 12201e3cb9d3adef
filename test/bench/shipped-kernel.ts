/** What the basin suite times, as one module to bundle. */
export * from '../../src/basin/index.ts'
export { demoSpec } from '../../src/document/index.ts'
export { patchesOf } from '../../src/features/index.ts'
