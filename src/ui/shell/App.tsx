import '../theme/base.css'
import '../theme/print.css'
import { useEffect, useState } from 'react'
import { useApp, useAppStore } from '../context.tsx'
import { Ledger } from '../ledger/Ledger.tsx'
import { Sheet } from '../sheet/index.ts'
import { LevelSlider, SolidView } from '../solid/index.ts'
import styles from './App.module.css'
import { ErrorBoundary } from './ErrorBoundary.tsx'
import { Header } from './Header.tsx'
import { LinkDialog } from './LinkDialog.tsx'
import { LinkedBanner, NoticeBar } from './Notices.tsx'
import { PrintedHead } from './PrintedHead.tsx'
import { TitleBlock } from './TitleBlock.tsx'
import { useMedia } from './useMedia.ts'
import { useShortcuts } from './useShortcuts.ts'
import { useTheme } from './useTheme.ts'
import { VolumeLine } from './VolumeLine.tsx'

/** The whole screen: the drawing sheet and the ledger beside it (below it on a phone). */
export function App() {
  const loading = useApp((state) => state.loading)
  const name = useApp((state) => state.spec.name)
  const bodyId = useApp((state) => state.spec.bodies[0]?.id)
  const store = useAppStore()
  const isWide = useMedia('(min-width: 1101px)')
  const isPhone = useMedia('(max-width: 560px)')
  const [slot, setSlot] = useState<HTMLDivElement | null>(null)
  const save = () => store.getState().exportFile()
  useTheme()
  useShortcuts()
  useEffect(() => {
    document.title = name === '' ? 'Shoalbook' : `${name} · Shoalbook`
  }, [name])

  if (loading) return <p className={styles['loading']}>Opening the sheet…</p>
  return (
    <div className={styles['app']}>
      <Header />
      <PrintedHead />
      <LinkedBanner />
      <NoticeBar />
      <main className={styles['main']}>
        <section className={styles['sheet']} aria-label="Drawing sheet">
          {isPhone ? <VolumeLine /> : null}
          <div className={styles['drawing']}>
            <ErrorBoundary what="The drawing" onSave={save}>
              <Sheet stripSlot={isWide ? slot : undefined} />
            </ErrorBoundary>
          </div>
          <div className={styles['foot']}>
            {bodyId === undefined ? null : (
              <div className={styles['solid']}>
                <ErrorBoundary what="The solid" onSave={save}>
                  <SolidView bodyId={bodyId} />
                  <LevelSlider bodyId={bodyId} />
                </ErrorBoundary>
              </div>
            )}
            <div className={styles['block']}>
              {isWide ? <div ref={setSlot} className={styles['slot']} /> : null}
              <ErrorBoundary what="The title block" onSave={save}>
                <TitleBlock />
              </ErrorBoundary>
            </div>
          </div>
        </section>
        <section className={styles['ledger']} aria-label="Ledger">
          <ErrorBoundary what="The ledger" onSave={save}>
            <Ledger />
          </ErrorBoundary>
        </section>
      </main>
      <LinkDialog />
    </div>
  )
}
