/** Files of complaints, damaged by chance: read whole, or a sentence that names the place; never a hang, never half of one. */
import { describe, expect, it } from 'vitest'
import { demoComplaint } from '../../src/store/demo.ts'
import { readFile, writeFile } from '../../src/store/exchange/file.ts'
import { restoreWhole } from '../../src/store/exchange/whole.ts'
import v4 from '../store/fixtures/v4.json' with { type: 'json' }
import { type Chance, chance } from './support/random.ts'
import { clocked, HANG_MS, note, turns } from './support/table.ts'

const SEED = Number(process.env['SEED'] ?? 20_261_129)
const COUNT = turns(5_000, 100_000)

const [RECORD] = v4.stores.complaints.records
const WHOLE = restoreWhole(
  { ...RECORD, lines: v4.stores.lines.records, connectors: v4.stores.connectors.records },
  'stored',
)
const GOOD: readonly string[] = [writeFile([WHOLE]), writeFile([{ complaint: demoComplaint(), connectors: [] }, WHOLE])]

const TOKENS = [
  '{',
  '}',
  '[',
  ']',
  '"',
  ':',
  ',',
  'null',
  'true',
  '1e999',
  '-',
  '0',
  '\\',
  '\\u0000',
  '\u0000',
  '\uFEFF',
  '\uD800',
  '\n',
  'NaN',
] as const
const VALUES = [null, true, -1, 1e308, '', 'x', [], {}, [[]], { id: 1 }, '__proto__', '9999-99-99T99:99:99Z'] as const

/** Text of a file with letters changed, cut, doubled or moved. */
function inLetters(text: string, by: Chance): string {
  let damaged = text
  for (let turn = 1 + by.whole(4); turn > 0; turn--) {
    const at = by.whole(damaged.length + 1)
    const to = at + by.whole(by.happens(0.2) ? damaged.length : 12)
    const draw = by.whole(4)
    if (draw === 0) damaged = damaged.slice(0, at) + by.pick(TOKENS) + damaged.slice(at)
    else if (draw === 1) damaged = damaged.slice(0, at) + damaged.slice(to)
    else if (draw === 2) damaged = damaged.slice(0, to) + damaged.slice(at)
    else damaged = damaged.slice(0, at)
  }
  return damaged
}

/** The same content with values of another kind, names doubled, parts taken out or put elsewhere. */
function inContent(text: string, by: Chance): string {
  const content: unknown = JSON.parse(text)
  const places: { readonly holder: Record<string, unknown>; readonly key: string }[] = []
  const walk = (value: unknown) => {
    if (typeof value !== 'object' || value === null) return
    const holder = value as Record<string, unknown>
    for (const key of Object.keys(holder)) {
      places.push({ holder, key })
      walk(holder[key])
    }
  }
  walk(content)
  for (let turn = 1 + by.whole(3); turn > 0; turn--) {
    const { holder, key } = by.pick(places)
    const draw = by.whole(4)
    if (draw === 0) holder[key] = structuredClone(by.pick(VALUES))
    else if (draw === 1) delete holder[key]
    else if (draw === 2)
      holder[by.pick(['constructor', 'toString', 'kept', 'id', 'lines', 'é'])] = structuredClone(holder[key] ?? null)
    else {
      const other = by.pick(places)
      holder[key] = structuredClone(other.holder[other.key] ?? null)
    }
  }
  return JSON.stringify(content)
}

/** Files made to hurt: deep, long, wide. */
const hostile: readonly (readonly [string, () => string])[] = [
  ['a million brackets', () => '['.repeat(1_000_000)],
  ['a million objects in each other', () => '{"a":'.repeat(1_000_000)],
  ['a million names', () => `{${Array.from({ length: 1_000_000 }, (_, i) => `"n${i}":0`).join()}}`],
  ['a million semicolons', () => ';'.repeat(1_000_000)],
  ['a text of ten million letters', () => `"${'a'.repeat(10_000_000)}"`],
  [
    'a million complaints',
    () => `{"format":"stillpin-complaints","version":1,"complaints":[${'{},'.repeat(1_000_000)}{}]}`,
  ],
]

const isSentence = (message: string): boolean => message.length > 12 && message.endsWith('.')

describe(`${COUNT} files, seed ${SEED}`, { timeout: 3_600_000 }, () => {
  it('are read whole, alike the second time, or refused with the place', () => {
    const by = chance(SEED)
    const bad: string[] = []
    let slowestMs = 0
    let readWell = 0
    for (let turn = 0; turn < COUNT; turn++) {
      const good = by.pick(GOOD)
      const text = by.happens(0.5) ? inLetters(good, by) : inContent(good, by)
      const { value: result, ms } = clocked(() => readFile(text))
      slowestMs = Math.max(slowestMs, ms)
      if (!result.ok) {
        if (!isSentence(result.message)) bad.push(`no sentence: ${result.message}`)
        continue
      }
      readWell++
      // what was taken in is a file of ours: it is written and read again as it is
      const written = writeFile(result.complaints)
      const again = readFile(written)
      if (!again.ok) bad.push(`read, and not again: ${again.message}`)
      else if (writeFile(again.complaints) !== written) bad.push('read, and otherwise the second time')
      for (const { complaint } of result.complaints)
        if (complaint.lines.some(({ gate }) => gate !== 'unknown')) bad.push('took over an answer to the safety gate')
    }
    note({ attack: 'files of complaints, damaged', times: COUNT, seed: SEED, bad: bad.length, slowestMs })
    expect(bad.slice(0, 8)).toEqual([])
    expect(slowestMs).toBeLessThan(HANG_MS)
    expect(readWell).toBeGreaterThan(COUNT / 50)
  })

  it.each(hostile)('%s are a sentence within a second', (name, make) => {
    const text = make()
    const { value: result, ms } = clocked(() => readFile(text))
    note({ attack: `a file of ${name}`, times: 1, seed: 0, bad: result.ok ? 1 : 0, slowestMs: ms })
    expect(result.ok).toBe(false)
    expect(ms).toBeLessThan(HANG_MS)
  })
})
