import { createContext, useContext } from 'react'
import { useStore } from 'zustand'
import { invariant } from '../base/index.ts'
import type { AppStore, AppStoreState } from '../state/index.ts'
import type { UnitSystem } from '../units/index.ts'

const StoreContext = createContext<AppStore | undefined>(undefined)

/** Gives the screen its one store. */
export const StoreProvider = StoreContext.Provider

/** The store itself, for handlers that read the newest state without rendering on it. */
export function useAppStore(): AppStore {
  const store = useContext(StoreContext)
  invariant(store, 'the screen is rendered inside a StoreProvider')
  return store
}

/** Subscribes to a slice of the app's state. The selector must return a stable value. */
export function useApp<T>(selector: (state: AppStoreState) => T): T {
  return useStore(useAppStore(), selector)
}

/** The units that numbers are shown and typed in. */
export function useUnits(): UnitSystem {
  return useApp((state) => state.settings.units)
}

/** Whether the document may be edited: a spec that was opened by its link is only looked at. */
export function useCanEdit(): boolean {
  return useApp((state) => state.standing === 'own')
}
