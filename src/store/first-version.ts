/** The upgrade from the first version of the database, whose complaints held their lines. */
import type { Upgrade } from './db.ts'
import { isRecord } from './plain.ts'
import { splitLines } from './split-lines.ts'

/** Version 2: a line is a record of its own. */
export async function makeLinesRecords(tx: Upgrade): Promise<void> {
  const complaints = tx.objectStore('complaints')
  for (let cursor = await complaints.openCursor(); cursor !== null; cursor = await cursor.continue()) {
    if (!isRecord(cursor.value)) continue
    const { complaint, lines } = splitLines(cursor.value)
    if (complaint['id'] === cursor.primaryKey) await cursor.update({ ...complaint, schemaVersion: 2 })
    else {
      await cursor.delete()
      await complaints.put({ ...complaint, schemaVersion: 2 })
    }
    for (const line of lines) await tx.objectStore('lines').put({ ...line, schemaVersion: 1 })
  }
}
