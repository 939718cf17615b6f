import { describe, expect, it } from 'vitest'
import { bondOf } from '../../../src/calc/connector/whole/bond.ts'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { connectorOf, contactOf } from '../../support/decided-contact.ts'
import { sharedLosses } from '../../support/exact-plate.ts'
import { magnitudes, type Solved, solveAll } from '../live-ngspice/spice.ts'
import { DCR_OHM, ESL_H, ESR_OHM, netlist, plateContact, TWELVE } from './twelve-contacts.ts'

const BOND = { ohm: 0.0025, henries: 5e-9 }
const [quiet, only] = [3, 6]
const ones = TWELVE.map(() => 1)
const decibels = (bare: number, with_: number) => 20 * Math.log10(bare / with_)

/** The error of today is 1.4e-4 dB, beside a loss of more than 100 dB. */
const TOLERANCE_DB = 2e-4

describe('the bond of a connector with twelve contacts, beside ngspice', () => {
  const alone = [TWELVE[only] as (typeof TWELVE)[number]]
  const [together, hushed, bare, single, singleBare] = solveAll([
    netlist(TWELVE, ones, BOND),
    netlist(
      TWELVE,
      ones.map((volt, i) => (i === quiet ? 0 : volt)),
      BOND,
    ),
    netlist(TWELVE, ones, undefined),
    netlist(alone, [1], BOND),
    netlist(alone, [1], undefined),
  ]) as [Solved, Solved, Solved, Solved, Solved]
  const bondAt = (hz: number) => [BOND.ohm, 2 * Math.PI * hz * BOND.henries] as const

  it('gives the loss of every contact while all are driven', () => {
    let worst = 0
    together.hz.forEach((hz, k) => {
      const found = sharedLosses(
        TWELVE.map((contact) => plateContact(contact, hz)),
        bondAt(hz),
      )
      TWELVE.forEach((_, i) => {
        const spice = decibels(magnitudes(bare, `o${i}`)[k] as number, magnitudes(together, `o${i}`)[k] as number)
        worst = Math.max(worst, Math.abs(spice - (found[i]?.togetherDb ?? Number.NaN)))
      })
    })
    expect(worst).toBeLessThan(TOLERANCE_DB)
  })

  it('gives what a quiet contact receives through the plate, and nothing to a bare one', () => {
    let worst = 0
    together.hz.forEach((hz, k) => {
      const found = sharedLosses(
        TWELVE.map((contact) => plateContact(contact, hz)),
        bondAt(hz),
      )
      const spice = -decibels(magnitudes(bare, `o${quiet}`)[k] as number, magnitudes(hushed, `o${quiet}`)[k] as number)
      worst = Math.max(worst, Math.abs(spice - (found[quiet]?.receivedDb ?? Number.NaN)))
      expect(found[8]?.receivedDb).toBe(-400)
    })
    expect(worst).toBeLessThan(TOLERANCE_DB)
  })

  it('gives the loss of one contact alone', () => {
    let worst = 0
    single.hz.forEach((hz, k) => {
      const found = sharedLosses(
        TWELVE.map((contact) => plateContact(contact, hz)),
        bondAt(hz),
      )
      const spice = decibels(magnitudes(singleBare, 'o0')[k] as number, magnitudes(single, 'o0')[k] as number)
      worst = Math.max(worst, Math.abs(spice - (found[only]?.aloneDb ?? Number.NaN)))
    })
    expect(worst).toBeLessThan(TOLERANCE_DB)
  })
})

/** Source side first: farads and henries of a chain as a topology. */
function partOf(chain: (typeof TWELVE)[number]['chain']) {
  const farads = chain.flatMap((one) => ('farads' in one ? [one.farads] : []))
  const henries = chain.flatMap((one) => ('henries' in one ? [one.henries] : []))
  const topology = chain.map((one) => ('farads' in one ? 'C' : 'L')).join('')
  const named = { C: 'C', L: 'L', LC: 'LC', CL: 'CL', CLC: 'PI', LCL: 'T' } as const
  if (!(topology in named)) return undefined
  return {
    topology: named[topology as keyof typeof named],
    capacitanceF: farads[0] ?? 0,
    inductanceH: henries[0] ?? 0,
    leastFrac: 1,
    mostFrac: 1,
  }
}

/** Exact: nothing has a tolerance. */
function decidedAs(
  { chain, sourceOhm, loadOhm, loadF }: (typeof TWELVE)[number],
  i: number,
  texts: { readonly noiseHz: string; readonly neededDb: string },
) {
  const part = partOf(chain)
  return contactOf(
    `${i + 1}`,
    {
      lineKind: 'not-listed',
      ...texts,
      noiseSourceOhm: String(sourceOhm),
      noiseLoadOhm: String(loadOhm),
      ...(loadF > 0 ? { noiseLoadF: String(loadF) } : {}),
      esrOhm: String(ESR_OHM),
      eslH: String(ESL_H),
      dcrOhm: String(DCR_OHM),
      toleranceFrac: '0',
      ...(part === undefined ? {} : { inductanceH: String(part.inductanceH || 1e-6) }),
    },
    part,
  )
}

describe('the whole connector, from its decided contacts, beside ngspice', () => {
  const AT = [1e6, 10e6, 30e6, 100e6]
  const decidedFor = (noiseHz: string, neededDb: (i: number) => string) =>
    TWELVE.map((contact, i) => decidedAs(contact, i, { noiseHz, neededDb: neededDb(i) }))
  const decided = decidedFor(AT.join(';'), () => '20')
  const shared = { bondOhm: String(BOND.ohm), bondH: String(BOND.henries) }
  const { rows, uncounted } = atOnce(bondOf(connectorOf(decided, { shared }), decided))

  it('loses what the circuit loses, all driven together, and promises no more', () => {
    expect(uncounted).toEqual([])
    let [worst, compared] = [0, 0]
    const at = (text: string, hz: number) => text.replace(/\.ac.*/, `.ac lin 1 ${hz} ${hz}`)
    const answers = solveAll(
      AT.flatMap((hz) => [at(netlist(TWELVE, ones, BOND), hz), at(netlist(TWELVE, ones, undefined), hz)]),
    )
    AT.forEach((hz, k) => {
      const [with_, without] = [answers[2 * k] as Solved, answers[2 * k + 1] as Solved]
      TWELVE.forEach((_, i) => {
        const spice = decibels(magnitudes(without, `o${i}`)[0] as number, magnitudes(with_, `o${i}`)[0] as number)
        const row = rows.find((one) => one.id === `${i + 1}` && one.hz === hz)
        worst = Math.max(worst, Math.abs(spice - (row?.markedDb ?? Number.NaN)))
        expect(row?.certainDb ?? Number.NaN).toBeLessThan(spice + 1e-3)
        compared++
      })
    })
    expect(compared).toBe(AT.length * TWELVE.length)
    expect(worst).toBeLessThan(TOLERANCE_DB)
  })
  it('says which bond would do, and ngspice agrees on both sides of it', () => {
    const hz = 30e6
    const needing = decidedFor(String(hz), (i) => (i === only ? '24' : '0'))
    const most = { bondOhm: String(BOND.ohm), bondH: '1u' }
    const henries = atOnce(bondOf(connectorOf(needing, { shared: most }), needing)).mostBondH as number
    const at = (text: string) => text.replace(/\.ac.*/, `.ac lin 1 ${hz} ${hz}`)
    const [below, above, without] = solveAll([
      at(netlist(TWELVE, ones, { ohm: BOND.ohm, henries: henries * 0.99 })),
      at(netlist(TWELVE, ones, { ohm: BOND.ohm, henries: henries * 1.01 })),
      at(netlist(TWELVE, ones, undefined)),
    ]) as [Solved, Solved, Solved]
    const volts = (solved: Solved) => magnitudes(solved, `o${only}`)[0] as number
    expect(henries).toBeGreaterThan(0)
    expect(decibels(volts(without), volts(below))).toBeGreaterThan(24)
    expect(decibels(volts(without), volts(above))).toBeLessThan(24)
  })
})
