/** Reads back what was typed into long texts and is not in their records yet. */
import { keepSmallText, smallNames, smallText } from './browser-storage.ts'
import { openNames } from './browser-storage-facts.ts'
import { inOneGo, readKeys, readOne } from './db.ts'
import { isMarked, type ReadJournal, readJournal, TEXT } from './long-text.ts'
import { isRecord } from './plain.ts'
import { restoreRecord } from './restore.ts'

/** Steps as they were read back, and the way to be rid of them once they are written. */
export type TypedSteps = { readonly steps: readonly unknown[]; readonly remove: () => Promise<void> }

/** What was typed into long texts by windows that have ended. Fails with a `StoreError`. */
export async function takeTyped(prefix: string): Promise<TypedSteps> {
  const open = (await openNames()).map((name) => prefix + name)
  const stored = (await readKeys('meta')).filter((key) => typeof key === 'string')
  const names = [...new Set([...stored, ...smallNames()])].filter(
    (name) => name.startsWith(prefix) && !name.endsWith(TEXT) && !open.includes(name),
  )
  const steps: unknown[] = []
  const done: string[] = []
  for (const name of names) {
    const found = await typedBy(name)
    if (found === undefined) continue
    steps.push(...found)
    done.push(name)
  }
  const remove = async () => {
    for (const name of done) keepSmallText(name, undefined)
    await inOneGo(['meta'], async (desk) => {
      for (const name of done) {
        await desk.remove('meta', name)
        await desk.remove('meta', name + TEXT)
      }
    })
  }
  return { steps, remove }
}

/** What one window left; undefined where the text it was typed on is not to be found, so that it stays where it is. */
async function typedBy(name: string): Promise<readonly unknown[] | undefined> {
  const raw = await readOne('meta', name)
  const disk = isRecord(raw) ? { count: Number(raw['count']), lines: String(raw['lines']) } : { count: 0, lines: '' }
  // what was written since stands on the disk alone: a small storage may come back as it was seconds before
  const local = readJournal(smallText(name) ?? '')
  const journal = local !== undefined && local.count > disk.count ? local : readJournal(disk.lines)
  if (journal === undefined) return []
  const text = await beganWith(name, journal)
  return text === undefined ? undefined : journal.stepsOn(text)
}

async function beganWith(name: string, { run, began, complaintId }: ReadJournal): Promise<string | undefined> {
  const raw = await readOne('meta', name + TEXT)
  const own = isRecord(raw) && raw['run'] === run ? raw['text'] : undefined
  if (typeof own === 'string') return own
  // Its very first keys: what was typed on stands in the record still.
  const record = await readOne('complaints', complaintId)
  const { note } = restoreRecord(record)
  return isMarked(note, began) ? note : undefined
}
