/** Whether something read back has the shape of a guide, field by field, before anything walks through it. */
import type { Guide } from './types.ts'

type Test = (value: unknown) => boolean
type Fields = Readonly<Record<string, Test>>

const isText: Test = (value) => typeof value === 'string'
const isTrue: Test = (value) => value === true
const isWhole: Test = (value) => Number.isSafeInteger(value)
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

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

const condition = record({
  answered: maybe(record({ node: isText, options: list(isText) })),
  kindFamily: maybe(list(isText)),
})
const next = either(isText, some(record({ when: maybe(condition), go: isText })))
const sets = list(record({ fact: isText, text: isText, why: maybe(isText), assumed: maybe(isTrue) }))
const sources = some(record({ id: isText, clause: maybe(isText), standing: isText }))

const option = record({
  id: isText,
  label: isText,
  hint: maybe(isText),
  sets: maybe(sets),
  gate: maybe(word('clear', 'barred')),
  next,
})

const question = record({
  is: word('question'),
  id: isText,
  chapter: isText,
  text: isText,
  why: isText,
  findOut: isText,
  options: list(option),
  picker: maybe(record({ fact: word('lineKind'), next, barredNext: isText })),
  cautions: maybe(list(isText)),
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

const guide = record({ version: isWhole, edition: isText, start: isText, nodes: list(either(question, outcome)) })

/** True when every field is there and is what its type says; what the fields say is the linter's business. */
export function isGuide(raw: unknown): raw is Guide {
  return guide(raw)
}
