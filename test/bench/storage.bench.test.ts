/**
 * What a key costs as the work grows: one fact of one line typed into a complaint of 128 lines, against the same in a
 * complaint of one, within one run. What is written does not grow at all, which is counted; the time may not either. The
 * same beside a connector of 128 contacts; a text of a contact writes the connector, and nothing of its lines.
 */
import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import type { Contact } from '../../src/calc/connector/types.ts'
import { FACT_KEYS } from '../../src/calc/ids.ts'
import type { Fact, Line } from '../../src/calc/types.ts'
import { addLine, complaints, loadComplaints, writeLineFact } from '../../src/state/complaints.ts'
import { addConnector, writeContactText } from '../../src/state/connectors.ts'
import { createFromTriage } from '../../src/state/new-complaint.ts'
import { settled } from '../../src/state/save-queue.ts'
import { newConnector } from '../../src/store/connector.ts'
import { newLine } from '../../src/store/line.ts'
import { tidyLog } from '../../src/store/tidy.ts'

const KEYS = 60
const ROUNDS = 7
const MOST_RATIO = 1.5

const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })

/** A line somebody has worked on: forty facts typed. */
function fullLine(): Line {
  const keys = FACT_KEYS.slice(0, 40)
  return { ...newLine('contact'), facts: Object.fromEntries(keys.map((key) => [key, typed(`${key} 4n7`)])) }
}

function complaintWith(lineCount: number): { readonly id: string; readonly lineId: string } {
  const line = fullLine()
  const { id } = createFromTriage({ title: `${lineCount} lines`, answers: {}, guideVersion: 1, line })
  for (let count = 1; count < lineCount; count++) addLine(id, fullLine())
  return { id, lineId: line.id }
}

let bytesWritten = 0
const storesWritten = new Set<string>()
const put = IDBObjectStore.prototype.put
IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...args: Parameters<IDBObjectStore['put']>) {
  bytesWritten += JSON.stringify(args[0]).length
  storesWritten.add(this.name)
  return put.apply(this, args)
}

/** Milliseconds and bytes of `KEYS` keys, each on disk before the next. */
async function keysCost({ id, lineId }: { readonly id: string; readonly lineId: string }) {
  bytesWritten = 0
  const from = performance.now()
  for (let key = 0; key < KEYS; key++) {
    writeLineFact(id, lineId, 'markedF', typed(`${key % 10}n7`))
    await settled()
  }
  return { ms: performance.now() - from, bytes: bytesWritten / KEYS }
}

/** The same with a connector, each line on a contact of its own. */
async function withConnector(made: { readonly id: string; readonly lineId: string }) {
  const { id } = made
  const lines = complaints.value?.find((one) => one.id === id)?.lines ?? []
  const contacts = lines.map((line, at): Contact => {
    const texts = { function: `signal ${at}`, wire: `W${at}-22`, zone: 'pressurised' }
    return { id: String(at + 1), type: 'line', lineId: line.id, texts }
  })
  const connector = { ...newConnector('J1'), contacts }
  addConnector(id, connector)
  await settled()
  return { ...made, connectorId: connector.id }
}

await loadComplaints()
// the Log is put in order some seconds after a start, which notes the clock once: done now, that is no write of a key
await tidyLog()
const [one, many] = [complaintWith(1), complaintWith(128)]
await settled()
const [small, large] = [await withConnector(one), await withConnector(many)]

/** Milliseconds and bytes of `KEYS` keys in a text of one contact, each on disk before the next. */
async function contactKeysCost({ id, connectorId }: Awaited<ReturnType<typeof withConnector>>) {
  bytesWritten = 0
  storesWritten.clear()
  const from = performance.now()
  for (let key = 0; key < KEYS; key++) {
    writeContactText(id, connectorId, '1', 'remark', `${key % 10}`)
    await settled()
  }
  return { ms: performance.now() - from, bytes: bytesWritten / KEYS, stores: [...storesWritten] }
}

const rounds: { readonly ratio: number; readonly one: number; readonly many: number; readonly bytes: number }[] = []
for (let round = 0; round < ROUNDS; round++) {
  const [few, all] = [await keysCost(one), await keysCost(many)]
  rounds.push({ ratio: all.ms / few.ms, one: few.bytes, many: all.bytes, bytes: all.bytes })
}
const ratios = rounds.map(({ ratio }) => ratio).sort((a, b) => a - b)
const middle = ratios[Math.floor(ROUNDS / 2)] ?? Number.POSITIVE_INFINITY
console.log(
  `bench, a key in a complaint of 128 lines to one in a complaint of 1: ${middle.toPrecision(3)} in time, ` +
    `${(rounds.at(-1)?.many ?? 0).toFixed(0)} to ${(rounds.at(-1)?.one ?? 0).toFixed(0)} bytes written`,
)

const contactRounds: { readonly ratio: number; readonly bytes: number; readonly stores: readonly string[] }[] = []
for (let round = 0; round < ROUNDS; round++) {
  const [few, all] = [await contactKeysCost(small), await contactKeysCost(large)]
  contactRounds.push({ ratio: all.ms / few.ms, bytes: all.bytes, stores: all.stores })
}
const contactRatios = contactRounds.map(({ ratio }) => ratio).sort((a, b) => a - b)
const contactMiddle = contactRatios[Math.floor(ROUNDS / 2)] ?? Number.POSITIVE_INFINITY
const lineKey = rounds.at(-1)?.many ?? 0
const contactKey = contactRounds.at(-1)?.bytes ?? 0
console.log(
  `bench, a key in a contact of 128 to one in a contact of 1: ${contactMiddle.toPrecision(3)} in time; it writes ` +
    `${contactKey.toFixed(0)} bytes, the connector alone; a key in a line beside it ${lineKey.toFixed(0)}`,
)

test('a key in a contact writes its connector and nothing else, however many lines it carries', () => {
  for (const { stores } of contactRounds) expect(stores).toEqual(['connectors'])
})

test('a key in a contact among 128 writes less than a tenth of what its lines would be', () => {
  expect(contactKey).toBeLessThan((128 * lineKey) / 10)
})

test('a key writes the one line, however many there are', () => {
  for (const { one: few, many: all } of rounds) expect(Math.abs(all - few)).toBeLessThan(16)
})

test('a key among 128 lines takes no longer than one in a single line', () => {
  expect(middle).toBeLessThan(MOST_RATIO)
})
