/**
 * Speed of a whole connector, of contacts that all differ: every check but the surge on their lines, the schedule each
 * by itself, and then all of them in the shared bond; in units of work timed beside them. And how it grows with the number of contacts, and how long the longest step is.
 */
import { expect, test } from 'vitest'
import { lineInConnector } from '../../src/calc/connector/contact-line.ts'
import { scheduleOf } from '../../src/calc/connector/schedule.ts'
import type { Connector } from '../../src/calc/connector/types.ts'
import { lineFigures } from '../../src/calc/line/line-figures.ts'
import { CHECKS } from '../../src/calc/registry.ts'
import type { Fact, FactKey, Line } from '../../src/calc/types.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import { cpuMs, spentMs, UNIT_WARM_UP, unitOfWork } from './unit.ts'

const ROUNDS = 9
const WARM_UP = 2
const COUNTS = [32, 64, 128, 256] as const

const checks = CHECKS.filter(({ id }) => id !== 'surge')
const kinds = LINE_KINDS.filter(({ barredWhy }) => barredWhy === undefined)

/** No two alike, and none like one of another round: nothing that was worked out before can be found again. */
function lineOf(i: number, round: number): Line {
  const spread = 1 + i / 97 + round / 7919
  const texts: Partial<Record<FactKey, string>> = {
    lineKind: kinds[i % kinds.length]?.id ?? '',
    bitRateHz: '110k',
    // the bands a connector is asked about are few, what each contact needs there differs
    noiseHz: i % 3 === 0 ? '118M;137M' : '118M',
    neededDb: (9 + (i % 17) * spread).toPrecision(4),
    noiseSourceOhm: i % 2 === 0 ? '1;10;50;150' : String(20 * spread),
    noiseLoadOhm: String(70 * spread),
    measuredDb: '61',
    limitDb: '40',
    eslH: '0.05n',
    toleranceFrac: '10 %',
    dielectric: 'c0g',
    existingF: '0',
    suppressorF: '0',
  }
  const facts = Object.fromEntries(
    Object.entries(texts).map(([key, text]) => [key, { text, origin: { by: 'user' } } satisfies Fact]),
  )
  return { id: `l${i}`, name: `J1-${i}`, gate: 'clear', trials: [], facts }
}

function connectorOf(lines: readonly Line[]): Connector {
  return {
    id: 'j1',
    name: 'J1',
    shape: 'ring',
    contacts: lines.map(({ id }, i) => ({ id: String(i + 1), type: 'line', lineId: id, texts: {} })),
    shared: { bondOhm: '1m', bondH: '20p' },
    texts: {},
    suppressors: [],
    adjacent: [],
  }
}

type Timed = { readonly aloneMs: number; readonly wholeMs: number }

/** No two questions alike, whatever their round and number. */
function questionOf(count: number, round: number) {
  const lines = Array.from({ length: count }, (_, i) => lineOf(i, round * COUNTS.length + COUNTS.indexOf(count as 32)))
  return { lines, connector: connectorOf(lines) }
}

/** Time of the processor this job took: what other programs did meanwhile does not count. */
function timed(count: number, round: number): Timed {
  const { lines, connector } = questionOf(count, round)
  const from = process.cpuUsage()
  const running = scheduleOf(connector, lines)
  let aloneMs = 0
  for (;;) {
    const step = running.next()
    if (step.done) break
    if (step.value.alone === undefined) continue
    // what the list is painted from; the other checks of every line belong to it
    for (const line of lines) lineFigures(lineInConnector(line, connector.shared), undefined, checks)
    aloneMs = spentMs(from)
  }
  return { aloneMs, wholeMs: spentMs(from) }
}

/** The longest step. By itself: to ask for the time at every step takes time, too. */
function longestStepMs(count: number, round: number): number {
  const { lines, connector } = questionOf(count, round)
  const running = scheduleOf(connector, lines)
  let longestMs = 0
  for (;;) {
    const at = process.cpuUsage()
    const step = running.next()
    longestMs = Math.max(longestMs, spentMs(at))
    if (step.done) return longestMs
  }
}

const unit = (): number => cpuMs(() => unitOfWork())

for (let i = 0; i < UNIT_WARM_UP; i++) unitOfWork()
const results = new Map(COUNTS.map((count) => [count, [] as Timed[]]))
const units: number[] = []
const steps: number[] = []
for (let round = 0; round < ROUNDS; round++) {
  for (const count of COUNTS) {
    units.push(unit())
    results.get(count)?.push(timed(count, round))
  }
  units.push(unit())
  steps.push(longestStepMs(128, ROUNDS + round))
}

// What disturbs a round only adds to it, be it to the unit or to the work: the least of each is the nearest to the truth.
const unitMs = Math.min(...units)
const least = (count: (typeof COUNTS)[number], of: (one: Timed) => number): number =>
  Math.min(...(results.get(count) ?? []).slice(WARM_UP).map(of)) / unitMs
const alone = (count: (typeof COUNTS)[number]) => least(count, ({ aloneMs }) => aloneMs)
const whole = (count: (typeof COUNTS)[number]) => least(count, ({ wholeMs }) => wholeMs)
const longest = Math.min(...steps.slice(WARM_UP)) / unitMs

console.log(
  [
    `bench, in units of work: contacts that all differ, all checks but the surge`,
    ...COUNTS.map(
      (count) =>
        `${count} contacts: ${alone(count).toPrecision(3)} until every contact is known by itself, ${whole(count).toPrecision(3)} with all in one bond`,
    ),
    `longest step with 128 contacts ${longest.toPrecision(3)}; least unit ${unitMs.toPrecision(3)} ms`,
  ].join('\n'),
)

test('128 different contacts, all checks but the surge, are known by themselves within 120 units of work', () => {
  expect(alone(128)).toBeLessThan(120)
})

test('twice the contacts cost no more than four times as much', () => {
  expect(whole(256) / whole(128)).toBeLessThan(4)
  expect(alone(256) / alone(128)).toBeLessThan(4)
})
