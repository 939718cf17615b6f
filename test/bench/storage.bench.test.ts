/**
 * What a key costs as the work grows: one fact of one line typed into a complaint of 128 lines, against the same in a
 * complaint of one, within one run. What is written does not grow at all, which is counted; the time may not either.
 */
import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import { FACT_KEYS } from '../../src/calc/ids.ts'
import type { Fact, Line } from '../../src/calc/types.ts'
import { addLine, createFromTriage, loadComplaints, writeLineFact } from '../../src/state/complaints.ts'
import { settled } from '../../src/state/save-queue.ts'
import { newLine } from '../../src/store/line.ts'

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
const put = IDBObjectStore.prototype.put
IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...args: Parameters<IDBObjectStore['put']>) {
  bytesWritten += JSON.stringify(args[0]).length
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

await loadComplaints()
const [one, many] = [complaintWith(1), complaintWith(128)]
await settled()
const rounds: { readonly ratio: number; readonly one: number; readonly many: number; readonly bytes: number }[] = []
for (let round = 0; round < ROUNDS; round++) {
  const [small, large] = [await keysCost(one), await keysCost(many)]
  rounds.push({ ratio: large.ms / small.ms, one: small.bytes, many: large.bytes, bytes: large.bytes })
}
const ratios = rounds.map(({ ratio }) => ratio).sort((a, b) => a - b)
const middle = ratios[Math.floor(ROUNDS / 2)] ?? Number.POSITIVE_INFINITY
console.log(
  `bench, a key in a complaint of 128 lines to one in a complaint of 1: ${middle.toPrecision(3)} in time, ` +
    `${(rounds.at(-1)?.many ?? 0).toFixed(0)} to ${(rounds.at(-1)?.one ?? 0).toFixed(0)} bytes written`,
)

test('a key writes the one line, however many there are', () => {
  for (const { one: small, many: large } of rounds) expect(Math.abs(large - small)).toBeLessThan(16)
})

test('a key among 128 lines takes no longer than one in a single line', () => {
  expect(middle).toBeLessThan(MOST_RATIO)
})
