export { type AppStore, createAppStore } from './store.ts'
export type {
  AppActions,
  AppState,
  AppStoreState,
  Notice,
  Ports,
  SaveState,
  Selection,
  Settings,
  Standing,
  Theme,
  Tool,
} from './types.ts'
