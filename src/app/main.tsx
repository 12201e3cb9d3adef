import '@fontsource/ibm-plex-sans/latin-400.css'
import '@fontsource/ibm-plex-sans/latin-600.css'
import '@fontsource/ibm-plex-serif/latin-400-italic.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { invariant } from '../base/index.ts'
import { browserPorts } from '../platform/index.ts'
import { createAppStore } from '../state/index.ts'
import { App, StoreProvider } from '../ui/index.ts'

const MINUTE_MS = 60_000

const store = createAppStore(browserPorts())
const root = document.getElementById('root')
invariant(root, 'index.html has a #root')

createRoot(root).render(
  <StrictMode>
    <StoreProvider value={store}>
      <App />
    </StoreProvider>
  </StrictMode>,
)

void store.getState().boot()
window.addEventListener('hashchange', () => store.getState().openLink())
setInterval(() => store.getState().tick(), MINUTE_MS)
document.addEventListener('visibilitychange', () => {
  if (!document.hidden) store.getState().tick()
})
