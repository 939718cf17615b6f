/** Reads back what was typed into long texts and is not in their records yet. */
import { keepSmallText, smallNames, smallText } from './browser-storage.ts'
import { changeComplaint } from './complaints.ts'
import { type Desk, inOneGo, readKeys, readOne } from './db.ts'
import { isMarked, type ReadJournal, readJournal, TEXT } from './long-text.ts'
import { openNames } from './open-windows.ts'
import { isRecord } from './plain.ts'
import { restoreRecord } from './restore.ts'
import { performStep, type Step, type Write } from './steps.ts'

/** What one window typed, and how it is written for good. */
export type TypedSteps = {
  /** its steps as they were read back */
  readonly raw: readonly unknown[]
  /** writes these steps, and with the last one takes the journal away */
  readonly writeOf: (steps: readonly Step[]) => Write
  /** takes away what is left of it */
  readonly remove: () => Promise<void>
}

/** What was typed into long texts by windows that have ended. Fails with a `StoreError`. */
export async function takeTyped(prefix: string): Promise<readonly TypedSteps[]> {
  const open = (await openNames()).map((name) => prefix + name)
  const stored = (await readKeys('meta')).filter((key) => typeof key === 'string')
  const names = [...new Set([...stored, ...smallNames()])].filter(
    (name) => name.startsWith(prefix) && !name.endsWith(TEXT) && !open.includes(name),
  )
  const found: TypedSteps[] = []
  for (const name of names) found.push(...(await typedBy(name)))
  return found
}

const countIn = (raw: unknown): number => (isRecord(raw) ? Number(raw['count']) : 0)

/** What one window left; nothing where the text it was typed on is not to be found, so that it stays where it is. */
async function typedBy(name: string): Promise<readonly TypedSteps[]> {
  const disk = await readOne('meta', name)
  // what was written since stands on the disk alone: a small storage may come back as it was seconds before
  const local = readJournal(smallText(name) ?? '')
  const isLocal = local !== undefined && local.count > countIn(disk)
  const journal = isLocal ? local : readJournal(isRecord(disk) ? String(disk['lines']) : '')
  const text = journal && (await beganWith(name, journal))
  if (journal !== undefined && text === undefined) return []
  const removeAt = async (desk: Desk) => {
    await desk.remove('meta', name)
    await desk.remove('meta', name + TEXT)
  }
  const remove = () => {
    keepSmallText(name, undefined)
    return inOneGo(['meta'], removeAt)
  }
  // Written and taken away in one go: what was written once must not come again, beside what was typed since.
  const writeOf = (steps: readonly Step[]): Write => {
    return async (step, late) => {
      const also = async (desk: Desk) => {
        if (countIn(await desk.get('meta', name)) !== countIn(disk)) return false
        if (step === steps.at(-1)) await removeAt(desk)
        return true
      }
      return (step.do === 'change' && (await changeComplaint(step, late, also))) || performStep(step, late)
    }
  }
  return [{ raw: text === undefined ? [] : (journal?.stepsOn(text) ?? []), writeOf, remove }]
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
