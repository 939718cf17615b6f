import { describe, expect, it } from 'vitest'
import type { Surroundings } from '../../../../src/calc/bounds/surroundings.ts'
import type { DecidedContact } from '../../../../src/calc/connector/decided.ts'
import type { ConnectorFinding } from '../../../../src/calc/connector/finding.ts'
import { scheduleOf } from '../../../../src/calc/connector/schedule.ts'
import type { Connector, Contact } from '../../../../src/calc/connector/types.ts'
import { crossDb } from '../../../../src/calc/connector/whole/adjacent.ts'
import { loudBesideFast } from '../../../../src/calc/connector/whole/neighbours.ts'
import { peaksOf, zoneOf } from '../../../../src/calc/connector/whole/ratings.ts'
import { wholeOf, wholeOfRows } from '../../../../src/calc/connector/whole/whole.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import type { Verdict } from '../../../../src/calc/types.ts'
import { worse } from '../../../../src/calc/verdict.ts'
import { connectorOf, contactOf } from '../../../support/decided-contact.ts'
import { DISCRETE, finished, lineOf, contactOf as onLine, connectorOf as someConnector } from '../some-connector.ts'

const noise = { noiseHz: '30M', neededDb: '20', noiseSourceOhm: '50', noiseLoadOhm: '50', toleranceFrac: '20 %' }
const part = { capacitanceF: 1e-9 }

const findings = (
  decided: readonly DecidedContact[],
  more: Partial<Connector> = {},
  texts: Parameters<typeof connectorOf>[2] = {},
) => atOnce(wholeOf(connectorOf(decided, more, texts), decided)).findings
const plain = (text = '') => text.replaceAll('\u00a0', ' ')
const named = (said: readonly ConnectorFinding[], id: string) => said.find((one) => one.id === id)

describe('how far it is decided', () => {
  it('counts what is open, and flags a bare contact among filtered ones', () => {
    const said = findings([
      contactOf('1', { lineKind: 'not-listed', ...noise }, part),
      contactOf('2', { lineKind: 'not-listed' }),
      contactOf('3', { lineKind: 'not-listed' }, undefined, { by: 'nobody' }),
      contactOf('4', { lineKind: 'pyrotechnic' }, undefined, { by: 'barred' }),
      { ...contactOf('5', {}), type: 'ground' },
    ])
    expect(named(said, 'undecided')).toMatchObject({ verdict: 'unknown', contacts: ['3'] })
    expect(named(said, 'bare-among-filtered')).toMatchObject({ verdict: 'marginal', contacts: ['2'] })
    expect(named(said, 'barred')?.contacts).toEqual(['4'])
    expect(named(said, 'contact-counts')?.sentence).toBe(
      '5 contacts: 1 filtered, 1 bare, 1 undecided, 1 barred, 1 ground.',
    )
    // a count is of all of them: it points at none; every other finding names contacts of the connector
    expect(named(said, 'contact-counts')?.contacts).toEqual([])
    for (const { contacts } of said) expect(['1', '2', '3', '4', '5']).toEqual(expect.arrayContaining([...contacts]))
  })

  it('is no better than its contacts by themselves', () => {
    const noise = lineOf('l0', DISCRETE)
    // 1 µF on a line that stands 412 nF; a suppressor that conducts at 5.8 V where 28 V are; a bond beside which no part does
    const conducting = lineOf('l1', { ...DISCRETE, standoffV: '5', breakdownV: '6', ratedPulseW: '600' })
    const shared = { bondOhm: '1m', bondH: '10p' }
    const verdicts = (contacts: readonly Contact[], more: Partial<Connector> = {}) => {
      const connector = someConnector(contacts, { shared, ...more })
      const { rows } = finished(scheduleOf(connector, [noise, conducting]))
      const said = finished(wholeOfRows(connector, rows)).findings
      const judged = said.flatMap(({ verdict }) => (verdict === undefined ? [] : [verdict]))
      return { said, rows: rows.map(({ verdict }) => verdict), whole: judged.reduce<Verdict>(worse, 'ok') }
    }
    const fine = verdicts([onLine('1', 'l0'), onLine('2', 'l0')])
    expect([fine.rows, fine.whole]).toEqual([['ok', 'ok'], 'ok'])
    const large = verdicts([onLine('1', 'l0'), onLine('2', 'l0', { chosenTopology: 'C', chosenF: '1u' })])
    expect([large.rows, large.whole]).toEqual([['ok', 'fails'], 'fails'])
    expect(plain(named(large.said, 'contacts-fails')?.sentence)).toBe(
      'Contact 2 by itself: no. 1 µF, your choice: no. The noise needs 7.06 nF, at most 412 nF.',
    )
    const clamped = verdicts([onLine('1', 'l0'), onLine('2', 'l1')])
    expect([clamped.rows, clamped.whole]).toEqual([['ok', 'fails'], 'fails'])
    // an inductance of 0 H is no bond that is anywhere
    const perfect = verdicts([onLine('1', 'l0'), onLine('2', 'l0')], { shared: { bondOhm: '1m', bondH: '0' } })
    expect([perfect.rows, perfect.whole]).toEqual([['ok', 'ok'], 'unknown'])
    expect(plain(named(perfect.said, 'bond-together')?.sentence)).toContain(
      'No bond is without inductance: enter what it has.',
    )
    // what Decide calls a no is not undecided here
    const none = verdicts([onLine('1', 'l0'), onLine('2', 'l0')], { shared: { bondOhm: '0', bondH: '1' } })
    expect([none.rows, none.whole]).toEqual([['fails', 'fails'], 'fails'])
    expect(named(none.said, 'undecided')).toBeUndefined()
    expect(named(none.said, 'contact-counts')?.sentence).toBe(
      '2 contacts: 0 filtered, 0 bare, 0 undecided, 2 for which no part would do, 0 barred.',
    )
  })

  it('puts the worst first and what decides nothing last', () => {
    const said = findings([
      contactOf('1', { lineKind: 'not-listed', ...noise }, part),
      contactOf('2', { lineKind: 'not-listed' }, undefined, { by: 'nobody' }),
    ])
    const ranks = said.map(({ verdict }) => ['fails', 'unknown', 'marginal', 'ok', undefined].indexOf(verdict))
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
  })
})

describe('neighbours', () => {
  // of a 9-way shell 5 and 4 stand above each other's gaps: 1 is next to 2 and 6, 2 next to 6 and 7
  const nine = (kinds: Readonly<Record<string, string>>) =>
    Array.from({ length: 9 }, (_, i) => contactOf(`${i + 1}`, { lineKind: kinds[i + 1] ?? 'not-listed' }))

  it('are power beside fast data, by the pattern of the shell', () => {
    const beside = nine({ 1: 'power-28-vdc', 6: 'ethernet-100base-tx' })
    expect(loudBesideFast(connectorOf(beside), beside)).toMatchObject([{ loud: '1', fast: '6' }])
    const apart = nine({ 1: 'power-28-vdc', 5: 'ethernet-100base-tx', 9: 'can' })
    expect(loudBesideFast(connectorOf(apart), apart)).toEqual([])
  })

  it('of slow lines are left in peace', () => {
    const slow = nine({ 1: 'power-28-vdc', 2: 'arinc-429-low', 6: 'thermocouple' })
    expect(loudBesideFast(connectorOf(slow), slow)).toEqual([])
    expect(named(findings(slow), 'power-beside-data')).toBeUndefined()
  })
})

describe('ratings', () => {
  const kinds = ['power-115-vac-400', 'rs-422', 'power-270-vdc']
  const decided = kinds.map((lineKind, i) => contactOf(`${i + 1}`, { lineKind }, part))

  it('that are mixed name the highest and who sets it', () => {
    expect(named(findings(decided.slice(0, 2)), 'mixed-ratings')?.sentence).toMatch(/178.2.V.*contact 1\.$/u)
  })

  it('near the least at which air breaks down ask for the zone, and are with care where it is thin', () => {
    const zoned = (zone: string) => findings(decided, {}, { 3: { zone } })
    expect(named(findings(decided), 'zone-missing')).toMatchObject({ verdict: 'unknown', contacts: ['3'] })
    expect(named(zoned('unpressurised'), 'unpressurised')).toMatchObject({ verdict: 'marginal', contacts: ['3'] })
    expect(named(zoned('pressurised'), 'unpressurised')).toBeUndefined()
    expect(named(zoned('pressurised'), 'zone-missing')).toBeUndefined()
  })

  // 230 V rms at its crest: 325 V; 330 V is above the 327 V of thin air
  it('count what was entered of a line above what its kind says, and are not known where that cannot be read', () => {
    const peakOf = (texts: Parameters<typeof contactOf>[1]) => peaksOf([contactOf('1', texts, part)])[0]
    expect(peakOf({ lineKind: 'discrete-28v', busMaxV: '330' })?.transientV).toBe(330)
    expect(peakOf({ lineKind: 'discrete-28v', busMinV: '-400' })?.transientV).toBe(400)
    expect(peakOf({ lineKind: 'power-28-vdc', busMaxV: '20' })?.transientV).toBe(50)
    expect(peakOf({ lineKind: 'not-listed', workingRmsV: '230' })?.steadyV).toBeCloseTo(325.27, 2)
    expect(peakOf({ lineKind: 'power-270-vdc', workingRmsV: '300' })?.steadyV).toBe(300)
    // 300 V at a frequency that cannot be read may be AC: its crest, 424 V
    expect(peakOf({ lineKind: 'power-270-vdc', workingRmsV: '300', supplyHz: 'mains' })?.steadyV).toBeCloseTo(424.26, 2)
    expect(peakOf({ lineKind: 'not-listed', busMaxV: '60' })).toEqual({ id: '1', steadyV: 60, transientV: 60 })
    expect(peakOf({ lineKind: 'not-listed' })).toBeUndefined()
    const said = (busMaxV: string) => findings([contactOf('1', { lineKind: 'discrete-28v', busMaxV }, part)])
    expect(named(said('330'), 'zone-missing')?.verdict).toBe('unknown')
    expect(named(said('high'), 'volts-missing')?.verdict).toBe('unknown')
  })

  it('read a zone as people write it', () => {
    expect(['pressurised', 'unpressurized', 'Not pressurised', 'no', 'bay'].map(zoneOf)).toEqual([
      'pressurised',
      'unpressurised',
      'unpressurised',
      'unpressurised',
      undefined,
    ])
  })
})

describe('both legs of a pair', () => {
  const pair = (first: Parameters<typeof contactOf>[2], second: Parameters<typeof contactOf>[2], texts = {}) => {
    const a = contactOf('1', { lineKind: 'rs-422', ...noise, ...texts }, first, { leg: 'a' })
    const b = contactOf('2', {}, second, { leg: 'b', kind: 'rs-422' })
    return [a, { ...b, line: a.line as NonNullable<typeof a.line> }]
  }

  // ±20 %: 1.2 beside 0.8 nF, −13.979 dB at the worst frequency
  it('of the same mark convert by their tolerance', () => {
    const said = named(findings(pair(part, part)), 'balance-1-2')
    expect(said?.basis?.steps[0]?.si).toBeCloseTo(-13.9794, 4)
    expect(said?.verdict).toBeUndefined()
  })

  it('are held against what was required', () => {
    const judged = (mostConversionDb: string) => named(findings(pair(part, part, { mostConversionDb })), 'balance-1-2')
    expect(judged('-60')?.verdict).toBe('fails')
    expect(judged('-5')?.verdict).toBe('ok')
  })

  it('that are unlike, or of which one is bare, are never left unsaid', () => {
    expect(named(findings(pair(part, { capacitanceF: 2.2e-9 })), 'balance-1-2')?.verdict).toBe('marginal')
    expect(named(findings(pair(part, undefined)), 'balance-1-2')?.verdict).toBe('marginal')
    expect(named(findings(pair(part, undefined, { mostConversionDb: '-40' })), 'balance-1-2')?.verdict).toBe('fails')
  })
})

describe('capacitance between two contacts', () => {
  it('couples as the divider it is', () => {
    const w = 2 * Math.PI * 1e6
    const [g, b] = [1 / 50 + 1 / 1000, w * 1e-9]
    const around: Surroundings = {
      topology: 'C',
      needs: [],
      sources: [{ ohm: 50, seriesH: 0 }],
      load: { ohm: 1000, parallelF: 0, parallelH: Number.POSITIVE_INFINITY },
      esrOhm: 0,
      eslH: 0,
      bondOhm: 0,
      bondH: 0,
      inductancesH: [1e-6],
    }
    // the least capacitor lets most across; a cell is known to a hundredth of a decibel
    const db = crossDb({ placed: [around], shares: { least: 0.8, most: 1.2 }, marked: 1e-9 }, 2e-12, 1e6) as number
    const leastDb = 20 * Math.log10((w * 2e-12) / Math.hypot(g, 0.8 * b + w * 2e-12))
    expect(db).toBeGreaterThanOrEqual(leastDb - 1e-9)
    expect(db).toBeLessThan(leastDb + 0.011)
    const bare = crossDb({ placed: [around], shares: { least: 1, most: 1 }, marked: 1e-9, isBare: true }, 2e-12, 1e6)
    expect(bare).toBeCloseTo(20 * Math.log10((w * 2e-12) / Math.hypot(g, w * 2e-12)), 9)
  })

  it('is told for the pair that was given, and refused where it cannot be read', () => {
    const decided = [
      contactOf('1', { lineKind: 'power-28-vdc' }),
      contactOf('2', { lineKind: 'not-listed', ...noise }, part),
    ]
    const adjacent = (text: string) => ({ adjacent: [{ a: '1', b: '2', text }] })
    expect(named(findings(decided, adjacent('2p')), 'adjacent-1-2')?.sentence).toMatch(/^2.pF between 1 and 2 puts −/u)
    expect(named(findings(decided, adjacent('near')), 'adjacent-1-2')).toMatchObject({ verdict: 'unknown' })
    // a contact without a line has no other leg
    const { line: _line, ...spare } = contactOf('1', {})
    const beside = findings([{ ...spare, type: 'spare' }, ...decided.slice(1)], adjacent('2p'))
    expect(named(beside, 'adjacent-1-2')?.sentence).toMatch(/between 1 and 2/u)
  })
})
