import { threadId } from 'node:worker_threads'
import { IDBFactory } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import { closeStore } from '../../src/store/db.ts'

/** Test files run side by side in threads of one process, which a channel reaches across; windows of one file only meet here. */
const Shared = globalThis.BroadcastChannel
globalThis.BroadcastChannel = class extends Shared {
  constructor(name: string) {
    super(`${name} of test thread ${threadId}`)
  }
}

/** A new, empty browser storage; the connection to the old one is dropped. */
export function freshStore(): void {
  closeStore()
  globalThis.indexedDB = new IDBFactory()
}
