import { threadId } from 'node:worker_threads'

/** Test files run side by side in threads of one process, which a channel reaches across; windows of one file only meet here. */
const Shared = globalThis.BroadcastChannel
globalThis.BroadcastChannel = class extends Shared {
  constructor(name: string) {
    super(`${name} of test thread ${threadId}`)
  }
}
