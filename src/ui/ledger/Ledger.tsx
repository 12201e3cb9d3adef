import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components'
import { useApp, useAppStore } from '../context.tsx'
import { classes, usePrinting } from '../fields/index.ts'
import { CHAPTERS } from './chapters.ts'
import styles from './Ledger.module.css'

/** The ledger beside the drawing: one chapter at a time on the screen, all of them in order on paper. */
export function Ledger() {
  const store = useAppStore()
  const wanted = useApp((state) => state.chapter)
  const isPrinting = usePrinting()
  const open = CHAPTERS.find((chapter) => chapter.id === wanted) ?? CHAPTERS[0]
  return (
    <Tabs
      className={classes(styles['ledger'])}
      selectedKey={open.id}
      onSelectionChange={(key) => store.getState().openChapter(String(key))}
    >
      <TabList aria-label="Chapters of the ledger" className={classes(styles['bar'])} items={CHAPTERS}>
        {(chapter) => (
          <Tab id={chapter.id} className={classes(styles['tab'])}>
            {chapter.label}
          </Tab>
        )}
      </TabList>
      {CHAPTERS.map(({ id, Component }) => (
        <TabPanel key={id} id={id} shouldForceMount={isPrinting} className={classes(styles['page'])}>
          <Component />
        </TabPanel>
      ))}
    </Tabs>
  )
}
