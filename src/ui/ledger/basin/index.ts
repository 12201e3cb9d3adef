export { Basin } from './Basin.tsx'
export { SITE_CAUTIONS } from './cautions.ts'
