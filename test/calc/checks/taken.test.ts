/** The strip of a ceiling: what the line itself stands, what is taken of it, and what is left. Loading and window say the same. */
import { describe, expect, test } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import type { StripRow, Success } from '../../../src/calc/types.ts'
import { run, si } from '../../support/run-check.ts'

const NOISE = { frequencyHz: '30M', neededDb: '6', sourceOhm: '50', loadOhm: '100', topology: 'C' }
const EXACT = { toleranceFrac: '0', temperatureFrac: '0', biasFrac: '0', ageingDecades: '0', ageingFracPerDecade: '0' }

/** Sentences keep a number and its unit together. */
const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ')

function rowOf(result: Success): StripRow {
  const strip = result.pictures.find((picture) => picture.is === 'strip')
  const row = strip?.rows.find(({ topology }) => topology === 'C')
  if (!row) throw new Error('no strip')
  return row
}

describe.each([
  ['loading', (more: Record<string, string>) => run(loadingCheck, { lineKind: 'ethernet-100base-tx', ...more })],
  [
    'window',
    (more: Record<string, string>) =>
      run(windowCheck, { lineKind: 'ethernet-100base-tx', ...NOISE, ...EXACT, ...more }),
  ],
] as const)('%s, Ethernet with a 40 pF suppressor', (_check, answer) => {
  const own = () => si(answer({}), 'mostCapacitanceF') ?? Number.NaN

  test('draws the port’s own ceiling, not the suppressor’s 40 pF, and nothing left below it', () => {
    const row = rowOf(answer({ suppressorF: '40p' }))
    expect(own()).toBeLessThan(30e-12)
    expect(row.takenToF).toBeCloseTo(own(), 18)
    expect(row.mostF).toBe(0)
  })

  test('says who takes what', () => {
    const { takenWhy } = rowOf(answer({ suppressorF: '40p' }))
    const pF = (own() * 1e12).toFixed(1)
    expect(plain(takenWhy)).toContain(`stands ${pF} pF on each leg: the suppressor takes 40 pF, nothing is left`)
  })

  test('counts what lies between the wires twice on each leg, and says nothing where nothing is taken', () => {
    const row = rowOf(answer({ suppressorF: '3p', existingF: '4p' }))
    expect(row.takenToF).toBeCloseTo(own(), 18)
    expect(row.mostF).toBeCloseTo(own() - 3e-12 - 8e-12, 18)
    expect(plain(row.takenWhy)).toContain('what is already on the line 8 pF (twice what lies between the wires)')
    expect(rowOf(answer({})).takenToF).toBeUndefined()
  })
})

test('ARINC 429: both figures of the receiver by name, as the document counts them and as they fall on one marked part', () => {
  const facts = { lineKind: 'arinc-429-high', ...NOISE, frequencyHz: '12M' }
  const result = run(windowCheck, facts)
  const said = Object.fromEntries(result.bounds.map(({ id, markedF, why }) => [id, { markedF, why }]))
  const across = said['permitted-arinc-429-receiver-differential']
  const leg = said['permitted-arinc-429-receiver-leg']
  // k_high = 1.2 · 1.15; between the lines one leg sees 2 · 50 pF
  expect(across?.markedF).toBeCloseTo(100e-12 / 1.38, 18)
  expect(leg?.markedF).toBeCloseTo(50e-12 / 1.38, 18)
  expect(plain(across?.why)).toContain('50 pF between the lines')
  expect(plain(across?.why)).toContain('100 pF')
  expect(plain(leg?.why)).toContain('50 pF from each line to ground')
  expect(si(result, 'permittedF')).toBe(leg?.markedF)
  // the loading check says the same two, before tolerance
  const loaded = run(loadingCheck, { lineKind: 'arinc-429-high', capacitanceF: '70p' })
  expect(loaded.bounds.map(({ id }) => id)).toEqual([
    'loading-works',
    ...Object.keys(said).filter((id) => id.startsWith('permitted')),
  ])
  expect(loaded.verdict).toBe('marginal')
})
