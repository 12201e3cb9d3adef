import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { Ports } from '../state/index.ts'

interface Shelves extends DBSchema {
  kept: { key: 'spec' | 'settings' | 'previous'; value: unknown }
}

/** Keeps the document and the settings in this browser's IndexedDB. */
export function browserStorage(name = 'shoalbook'): Ports['storage'] {
  let opened: Promise<IDBPDatabase<Shelves>> | undefined
  const database = () => {
    opened ??= openDB<Shelves>(name, 1, { upgrade: (db) => void db.createObjectStore('kept') })
    return opened
  }
  return {
    load: async () => {
      const db = await database()
      const [spec, settings, previous] = await Promise.all([
        db.get('kept', 'spec'),
        db.get('kept', 'settings'),
        db.get('kept', 'previous'),
      ])
      return { spec, settings, previous }
    },
    saveSpec: async (spec) => {
      await (await database()).put('kept', spec, 'spec')
    },
    savePrevious: async (spec) => {
      await (await database()).put('kept', spec, 'previous')
    },
    saveSettings: async (settings) => {
      await (await database()).put('kept', settings, 'settings')
    },
  }
}
