import { useApp, useAppStore } from '../context.tsx'
import { Button } from '../fields/index.ts'

interface Props {
  /** What stands here once there is a volume. */
  readonly title: string
  /** Why a volume comes first. */
  readonly why: string
  readonly styles: Readonly<Record<string, string>>
}

/** A chapter that waits for the volume: nothing is drawn or stated yet, or the drawing can't be measured as it is. */
export function NoVolume({ title, why, styles }: Props) {
  const store = useAppStore()
  const isDrawn = useApp((state) => state.spec.bodies.length > 0)
  return (
    <div className={styles['chapter']}>
      <header className={styles['section']}>
        <h2>{title}</h2>
        <p className={styles['intro']}>
          {why}{' '}
          {isDrawn
            ? 'The drawing can’t be measured as it is: Basin says where, and how to mend it.'
            : 'Draw the pool or type its volume; a drawing can come later and replace it.'}
        </p>
      </header>
      <div className={styles['buttons']}>
        <Button tone="main" onPress={() => store.getState().openChapter('basin')}>
          {isDrawn ? 'Go to Basin' : 'Draw the pool or type its volume'}
        </Button>
      </div>
    </div>
  )
}
