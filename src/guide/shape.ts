/** Whether something read back has the shape of a guide, field by field, before anything walks through it. */
import type { Progress } from '../calc/types.ts'
import { DRAWING_IDS } from './drawing-ids.ts'

type Test = (value: unknown) => boolean
type Fields = Readonly<Record<string, Test>>

const isText: Test = (value) => typeof value === 'string'
const isTrue: Test = (value) => value === true
const isWhole: Test = (value) => Number.isSafeInteger(value)
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isOne =
  (number: number): Test =>
  (value) =>
    value === number

const maybe =
  (test: Test): Test =>
  (value) =>
    value === undefined || test(value)
const either =
  (...tests: readonly Test[]): Test =>
  (value) =>
    tests.some((test) => test(value))
const word = (...words: readonly string[]): Test =>
  either(
    ...words.map(
      (one): Test =>
        (value) =>
          value === one,
    ),
  )
const list =
  (test: Test): Test =>
  (value) =>
    Array.isArray(value) && value.every(test)
const some =
  (test: Test): Test =>
  (value) =>
    list(test)(value) && Array.isArray(value) && value.length > 0
const record =
  (fields: Fields): Test =>
  (value) =>
    isRecord(value) && Object.entries(fields).every(([key, test]) => test(value[key]))
const dictionary =
  (test: Test): Test =>
  (value) =>
    isRecord(value) && Object.values(value).every(test)

const sets = list(record({ fact: isText, text: isText, why: maybe(isText), assumed: maybe(isTrue) }))
const sources = some(record({ id: isText, clause: maybe(isText), standing: isText }))

const say = word('rules-out', 'against', 'for', 'proves')
const source = record({ id: isText, clause: maybe(isText), standing: isText })
const part = word('source', 'path', 'victim')

const reading = record({
  id: isText,
  label: isText,
  hint: maybe(isText),
  says: dictionary(say),
  cites: maybe(dictionary(source)),
  sets: maybe(sets),
  gate: maybe(word('clear', 'barred')),
  stop: maybe(isText),
  means: isText,
  retired: maybe(isTrue),
})

const when = record({
  symptoms: maybe(list(isText)),
  answered: maybe(list(record({ evidence: isText, options: list(isText) }))),
})

const card = record({
  do: list(isText),
  with: list(record({ instrument: isText, setting: isText })),
  expect: isText,
  unit: maybe(isText),
  reads: maybe(record({ fact: isText, options: list(isText) })),
})

const evidence = record({
  id: isText,
  chapter: isText,
  kind: word('ask', 'look', 'test'),
  about: either(part, word('safety', 'line')),
  text: isText,
  why: isText,
  findOut: isText,
  minutes: isWhole,
  opens: maybe(isTrue),
  needs: maybe(list(isText)),
  when: maybe(when),
  card: maybe(card),
  options: list(reading),
  picker: maybe(word('lineKind')),
  cautions: maybe(list(isText)),
  note: maybe(isText),
  picture: maybe(word(...DRAWING_IDS)),
  fillIn: maybe(word('events', 'breakers')),
})

const suspect = record({
  id: isText,
  part,
  name: isText,
  oneLine: isText,
  usual: word('often', 'sometimes', 'rarely'),
  cure: isText,
  effort: either(isOne(1), isOne(2), isOne(3), isOne(4)),
  outcome: isText,
  proof: isText,
  shows: list(isText),
  paths: maybe(list(isText)),
  alone: maybe(list(isText)),
  sources,
})

const outcome = record({
  is: word('outcome'),
  id: isText,
  class: word('filter', 'not-a-filter', 'suppressor', 'stop', 'measure'),
  headline: isText,
  noiseFrom: maybe(word('box', 'cable')),
  reason: isText,
  sources,
  rules: list(isText),
  steps: list(isText),
  checks: list(record({ check: isText, prefill: dictionary(isText), why: isText })),
  cautions: list(isText),
  nextMeasurement: isText,
})

const isList: Test = (value) => Array.isArray(value)

const outline = record({
  version: isWhole,
  edition: isText,
  start: isText,
  suspects: isList,
  evidence: isList,
  outcomes: isList,
})
const ITEMS = [
  ['suspects', suspect],
  ['evidence', evidence],
  ['outcomes', outcome],
] as const

/**
 * True when every field is there and is what its type says, item by item, for who must not take long at once. What the
 * fields say is the linter's business.
 */
export function* guideShape(raw: unknown): Generator<Progress, boolean> {
  if (!isRecord(raw) || !outline(raw)) return false
  for (const [i, [key, test]] of ITEMS.entries()) {
    const items = raw[key]
    for (const item of Array.isArray(items) ? items : []) {
      if (!test(item)) return false
      yield { doneFrac: i / ITEMS.length }
    }
  }
  return true
}
