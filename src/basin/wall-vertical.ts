import type { VerticalWall } from './types.ts'
import type { WallKind } from './wall-kind.ts'

export const VERTICAL: WallKind<VerticalWall> = { id: 'vertical', check: () => undefined, law: () => undefined }
