export { StoreProvider } from './context.tsx'
export { App } from './shell/App.tsx'
