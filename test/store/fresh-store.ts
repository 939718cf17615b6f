import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { closeStore } from '../../src/store/db.ts'
import '../support/own-channels.ts'

/** A new, empty browser storage; the connection to the old one is dropped. */
export function freshStore(): void {
  closeStore()
  globalThis.indexedDB = new IDBFactory()
}
