/** Puts a complaint with a connector into the storage of a page, as it is stored, without typing it. */
import type { Page } from 'playwright-core'
import type { Connector } from '../../../src/calc/connector/types.ts'
import type { Line } from '../../../src/calc/types.ts'
import { type Complaint, recordOf } from '../../../src/store/complaint.ts'
import { keptConnector } from '../../../src/store/connector.ts'
import { DB_NAME } from '../../../src/store/db.ts'
import { keptLine } from '../../../src/store/line.ts'

export type Put = { readonly complaint: Complaint; readonly connector: Connector; readonly lines: readonly Line[] }

/** Gives the hash of the connector; the page is reloaded with it. */
export async function putConnector(page: Page, { complaint, connector, lines }: Put): Promise<string> {
  const records = {
    complaints: [recordOf(complaint)],
    lines: lines.map((line, order) => keptLine(line, complaint.id, order)),
    connectors: [keptConnector(connector, complaint.id, 0)],
  }
  await page.evaluate(
    async ({ name, stores }) => {
      const opened = indexedDB.open(name)
      const db = await new Promise<IDBDatabase>((done, failed) => {
        opened.onsuccess = () => done(opened.result)
        opened.onerror = () => failed(opened.error)
      })
      const writing = db.transaction(Object.keys(stores), 'readwrite')
      for (const [store, all] of Object.entries(stores)) for (const one of all) writing.objectStore(store).put(one)
      await new Promise((done) => {
        writing.oncomplete = done
      })
      db.close()
    },
    { name: DB_NAME, stores: records },
  )
  return `#/log/${complaint.id}/connector/${connector.id}`
}
