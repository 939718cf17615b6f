/**
 * Every id that reaches an address, a stored complaint or a shared link, once and for all.
 * test/ledger.json only grows. To append: UPDATE=1 npx vitest run --project unit test/ledger.test.ts
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { CHECK_IDS, FACT_KEYS } from '../src/calc/ids.ts'
import { evaluateNow } from '../src/calc/line/evaluate.ts'
import { readFields } from '../src/calc/line/fields.ts'
import { CHECKS } from '../src/calc/registry.ts'
import type { Quantity, Result } from '../src/calc/types.ts'
import { GUIDE } from '../src/guide/guide.ts'
import { RETIRED } from '../src/guide/retired.ts'
import { SUPPLY_CATEGORIES } from '../src/reference/bus-surges.ts'
import { LINE_KINDS } from '../src/reference/line-kinds.ts'
import { SAMPLE } from './support/sample-texts.ts'

type Ledger = Readonly<Record<string, readonly string[]>>

const FILE = join(import.meta.dirname, 'ledger.json')

const unique = (ids: readonly string[]): string[] => [...new Set(ids)].sort()

/** Each check on each kind of line, and on DC and AC. */
function results(): readonly Result[] {
  return CHECKS.flatMap((check) =>
    [undefined, ...LINE_KINDS.map(({ id }) => id)].flatMap((lineKind) =>
      lineKind !== undefined && !check.inputs.some(({ key }) => key === 'lineKind')
        ? []
        : ['0', '397'].map((supplyHz) => evaluateNow(check, readFields(check, { ...SAMPLE, supplyHz, lineKind }))),
    ),
  )
}

/** A bit rate is stored and linked as the frequency it was before it had a name: test/calc/quantity/parse.test.ts proves that. */
const meaningOf = (quantity: Quantity): Quantity => (quantity === 'bitRate' ? 'frequency' : quantity)

/** Surges of every category of supply, and of a pair, with everything that has a rung of its own. */
function surges(): readonly Result[] {
  const surge = CHECKS.find(({ id }) => id === 'surge')
  const texts = {
    level: '1',
    standoffV: '40',
    ratedPulseW: '1500',
    topology: 'LC',
    capacitanceF: '13 nF',
    inductanceH: '2.7 µH',
    withstandV: '97',
    capacitorWithstandV: '101',
    suppressorF: '71 pF',
    suppressorLeadH: '0',
    ambientC: '25',
  }
  const lines = [
    ...['power-28-vdc', 'power-270-vdc', 'power-115-vac-400', 'power-115-vac-variable'].flatMap((lineKind) =>
      Object.keys(SUPPLY_CATEGORIES).map((supplyCategory) => ({ lineKind, supplyCategory })),
    ),
    { lineKind: 'arinc-429-high' },
    { busMaxV: '31' },
  ]
  return surge === undefined ? [] : lines.map((line) => evaluateNow(surge, readFields(surge, { ...texts, ...line })))
}

const answered = [...results(), ...surges()].flatMap((result) => (result.ok ? [result] : []))

/** What a key means is part of the key: an input's fact and type, an output's quantity. */
const now: Ledger = {
  checks: unique(CHECK_IDS),
  facts: unique(FACT_KEYS),
  inputs: unique(
    CHECKS.flatMap(({ id, inputs }) =>
      inputs.map(
        ({ key, fact, type }) => `${id}.${key} = ${fact}, ${type.is === 'number' ? meaningOf(type.quantity) : type.is}`,
      ),
    ),
  ),
  choices: unique(
    CHECKS.flatMap(({ id, inputs }) =>
      inputs.flatMap(({ key, fact, type }) =>
        // Line kinds have a list of their own.
        type.is === 'choice' && fact !== 'lineKind' ? type.options.map(({ value }) => `${id}.${key} = ${value}`) : [],
      ),
    ),
  ),
  outputs: unique(
    CHECKS.flatMap(({ id, outputs }) => outputs.map((o) => `${id}.${o.key}, ${'quantity' in o ? o.quantity : o.is}`)),
  ),
  bounds: unique(answered.flatMap(({ bounds }) => bounds.map(({ id, side }) => `${id}, ${side}`))),
  rungs: unique(answered.flatMap(({ rungs }) => rungs.map(({ id, role }) => `${id}, ${role}`))),
  lineKinds: unique(LINE_KINDS.map(({ id }) => id)),
  guideNodes: unique([
    ...[...GUIDE.evidence.map(({ id }) => id), ...Object.keys(RETIRED)].map((id) => `${id}, question`),
    ...GUIDE.outcomes.map(({ id }) => `${id}, outcome`),
  ]),
  guideOptions: unique([
    ...GUIDE.evidence.flatMap(({ id, options }) => options.map((option) => `${id}.${option.id}`)),
    ...Object.entries(RETIRED).flatMap(([id, { options }]) => Object.keys(options).map((option) => `${id}.${option}`)),
  ]),
  guideSuspects: unique(GUIDE.suspects.map(({ id, part }) => `${id}, ${part}`)),
}

const read = (): Ledger => JSON.parse(readFileSync(FILE, 'utf8'))
const missing = (from: Ledger, to: Ledger): string[] =>
  Object.entries(from).flatMap(([kind, ids]) =>
    ids.filter((id) => !to[kind]?.includes(id)).map((id) => `${kind}: ${id}`),
  )

function append(): void {
  const old = read()
  const kinds = unique([...Object.keys(old), ...Object.keys(now)])
  const grown = Object.fromEntries(kinds.map((kind) => [kind, unique([...(old[kind] ?? []), ...(now[kind] ?? [])])]))
  writeFileSync(FILE, `${JSON.stringify(grown, null, 2)}\n`)
}

if (process.env['UPDATE'] === '1') append()

describe('the ledger of permanent ids', () => {
  it('has lost or changed nothing: saved complaints and shared links still mean what they meant', () => {
    expect(missing(read(), now)).toEqual([])
  })

  it('lists everything there is; append new ids with UPDATE=1', () => {
    expect(missing(now, read())).toEqual([])
  })

  it('has no id twice', () => {
    const ids = [
      CHECK_IDS,
      CHECKS.map(({ id }) => id),
      LINE_KINDS.map(({ id }) => id),
      [...GUIDE.evidence, ...GUIDE.outcomes].map(({ id }) => id),
    ]
    for (const list of ids) expect(list).toEqual([...new Set(list)])
  })

  it('uses ids that need no escaping in an address', () => {
    const ids = [
      ...CHECK_IDS,
      ...LINE_KINDS.map(({ id }) => id),
      ...[...GUIDE.evidence, ...GUIDE.outcomes, ...GUIDE.suspects].map(({ id }) => id),
    ]
    expect(ids.filter((id) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))).toEqual([])
  })
})
