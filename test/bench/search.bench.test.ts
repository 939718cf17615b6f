/**
 * What a key costs in the search: over the whole index of the book, and over 5,000 complaints whose words may be misspelt.
 * In time of the processor, which a busy machine does not change.
 */
import { expect, test } from 'vitest'
import { gatherWords, nearlyWithWords } from '../../src/state/log-alike.ts'
import { withWords } from '../../src/state/log-search.ts'
import { searchFor } from '../../src/state/search.ts'
import { COMPLAINT_SCHEMA, type Complaint } from '../../src/store/complaint.ts'
import { QUERIES } from '../guide/book/search-queries.ts'
import { cpuMs } from './unit.ts'

const KEY_MS = 50
const MANY = 5000
const AT = '2026-01-01T00:00:00.000Z'

const share = (values: readonly number[], frac: number): number =>
  values.toSorted((a, b) => a - b)[Math.ceil(frac * values.length) - 1] ?? Number.NaN

/** Every beginning of a text, as it is typed. */
const keysOf = (text: string): readonly string[] => Array.from(text, (_, at) => text.slice(0, at + 1))

const said = (what: string, costs: readonly number[]): string =>
  `bench, ${what}: ${costs.length} keys, half within ${share(costs, 0.5).toFixed(1)} ms, p99 ${share(costs, 0.99).toFixed(1)} ms`

test('a key in the search of the book', { timeout: 120_000 }, () => {
  searchFor('warm up')
  const costs = QUERIES.filter((_, at) => at % 4 === 0).flatMap(([text]) =>
    keysOf(text).map((typed) => cpuMs(() => searchFor(typed))),
  )
  console.log(said('the search over the whole index', costs))
  expect(share(costs, 0.99)).toBeLessThan(KEY_MS)
})

/** Invented words of some syllables: as many different ones as people write in five thousand notes. */
const SYLLABLES =
  'al ter na tor whi ne squel ch ca ble shi eld bus re lay po wer bon ding pan el tran spon der jack'.split(' ')
function wordOf(seed: number): string {
  let [word, left] = ['', seed + 1]
  for (let syllable = 0; syllable < 2 + (seed % 3); syllable++) {
    word += SYLLABLES[left % SYLLABLES.length] ?? ''
    left = Math.floor(left / 3) + 7 * syllable + seed
  }
  return word
}
const storyOf = (i: number): string =>
  Array.from({ length: 60 }, (_, at) => wordOf((i * 31 + at * at * 17) % 9001)).join(' ')

const log: readonly Complaint[] = Array.from({ length: MANY }, (_, i) => ({
  ...{ id: `c${i}`, title: `Whine ${i} in the alternator panel`, note: storyOf(i), answers: {}, checks: [], kept: [] },
  ...{ lines: [], createdAt: AT, updatedAt: AT, schemaVersion: COMPLAINT_SCHEMA, guideVersion: 5, isDemo: false },
}))

test('a key over 5,000 complaints, misspelt', { timeout: 120_000 }, () => {
  const gathering = gatherWords(log)
  const steps: number[] = []
  let isDone = false
  while (!isDone)
    steps.push(
      cpuMs(() => {
        isDone = gathering.next().done === true
      }),
    )
  const costs = ['altrenator', 'squlech shield', 'transpondre panel', 'bonding relayy'].flatMap((text) =>
    keysOf(text).map((typed) => cpuMs(() => [withWords(log, typed), nearlyWithWords(log, typed)])),
  )
  expect(nearlyWithWords(log, 'altrenator').length).toBeGreaterThan(0)
  console.log(
    `${said(`the search over ${MANY} complaints`, costs)}; words gathered in ${steps.length} steps, the longest ${Math.max(...steps).toFixed(1)} ms`,
  )
  expect(share(costs, 0.99)).toBeLessThan(KEY_MS)
  expect(Math.max(...steps)).toBeLessThan(KEY_MS)
})
