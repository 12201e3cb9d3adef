import { Suspense, useEffect } from 'react'
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components'
import { useApp, useAppStore } from '../context.tsx'
import { classes, usePrinting } from '../fields/index.ts'
import { CHAPTERS } from './chapters.ts'
import { Deferred } from './Deferred.tsx'
import styles from './Ledger.module.css'

/** By then the first picture is on the screen [ms]. */
const SETTLED_MS = 600

/** Where the ledger stands under the sheet its bar is pressed from afar: the page is brought into sight once it is there. */
function showPage() {
  requestAnimationFrame(() => document.querySelector('[role="tabpanel"]')?.scrollIntoView({ block: 'start' }))
}

/** The ledger beside the drawing: one chapter at a time on the screen, all of them in order on paper. */
export function Ledger() {
  const store = useAppStore()
  const wanted = useApp((state) => state.chapter)
  const isPrinting = usePrinting()
  const isLinked = useApp((state) => state.standing === 'link')
  const open = CHAPTERS.find((chapter) => chapter.id === wanted) ?? CHAPTERS[0]
  // Once the sheet stands the other chapters are fetched, so that they open at once and print.
  useEffect(() => {
    const timer = setTimeout(() => {
      for (const chapter of CHAPTERS) void chapter.part.load()
    }, SETTLED_MS)
    return () => clearTimeout(timer)
  }, [])
  return (
    <Tabs
      className={classes(styles['ledger'])}
      selectedKey={open.id}
      onSelectionChange={(key) => store.getState().openChapter(String(key))}
    >
      <TabList aria-label="Chapters of the ledger" className={classes(styles['bar'])} items={CHAPTERS}>
        {(chapter) => (
          <Tab id={chapter.id} className={classes(styles['tab'])} onPress={showPage}>
            {chapter.label}
          </Tab>
        )}
      </TabList>
      {CHAPTERS.map(({ id, part }) => (
        <TabPanel key={id} id={id} shouldForceMount={isPrinting} className={classes(styles['page'])}>
          {isLinked && id !== 'basin' && (
            <p className={styles['linked']} data-screen-only>
              <strong>From a link.</strong> Take fresh readings before you follow any dose.
            </p>
          )}
          <Suspense fallback={<p className={styles['coming']}>Opening the chapter…</p>}>
            <Deferred part={part} />
          </Suspense>
        </TabPanel>
      ))}
    </Tabs>
  )
}
