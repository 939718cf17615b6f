import { describe, expect, it } from 'vitest'
import type { ContactRow } from '../../../src/calc/connector/contact-row.ts'
import { scheduleOf } from '../../../src/calc/connector/schedule.ts'
import { connectorOf, contactOf, DISCRETE, finished, lineOf } from './some-connector.ts'

const lines = [
  lineOf('clear', DISCRETE),
  lineOf('open', DISCRETE, 'unknown'),
  lineOf('stopped', DISCRETE, 'barred'),
  lineOf('tank', { lineKind: 'fuel-quantity' }),
  lineOf('bonded', { ...DISCRETE, bondH: '5n' }),
]
const rowsOf = (...contacts: ReturnType<typeof contactOf>[]) =>
  finished(scheduleOf(connectorOf(contacts, { shared: { bondH: '1n', bondOhm: '0' } }), lines)).rows

/** Shunt C between 50 Ω and 50 Ω: |1 + jωCRp| = 10 at 10 MHz, Rp = 25 Ω. */
const LEAST_F = Math.sqrt(99) / (2 * Math.PI * 10e6 * 25)
/** Class 1 of ±10 % over its temperatures. */
const LEAST_SHARE = 0.9 * 0.997

describe('the schedule of a connector, each contact by itself', () => {
  it('proposes the part its bounds allow, with the limits it lies between', () => {
    const [row] = finished(scheduleOf(connectorOf([contactOf('1', 'clear')]), lines)).rows
    expect(row?.decided.by).toBe('proposed')
    expect(row?.verdict).toBe('ok')
    expect(row?.proposal?.leastF).toBeCloseTo(LEAST_F / LEAST_SHARE, 15)
    expect(row?.decided.part).toMatchObject({ topology: 'C', capacitanceF: 15e-9 })
    expect(row?.decided.part?.leastFrac).toBeCloseTo(LEAST_SHARE, 12)
    expect(row?.headline).toContain('15\u00a0nF: yes')
  })

  it('lets the user’s own value win, keeps the proposal beside it and judges the value itself', () => {
    const [small, fine] = rowsOf(
      contactOf('1', 'clear', { chosenF: '6.8n' }),
      contactOf('2', 'clear', { chosenF: '10n' }),
    )
    expect(small?.decided).toMatchObject({ by: 'user', part: { capacitanceF: 6.8e-9 } })
    // 6.8 nF less 10 % and temperature is 6.10 nF: 19.7 dB
    expect(small?.verdict).toBe('fails')
    expect(small?.proposal?.part.valueF).toBe(15e-9)
    expect(fine?.verdict).toBe('ok')
    expect(fine?.headline).toContain('your choice: yes')
  })

  it('says of a proposal and of a choice what it lifts the noise by elsewhere', () => {
    const ringing = lineOf('ringing', { ...DISCRETE, noiseSourceOhm: '1', noiseLoadOhm: '10k' })
    const [proposed, chosen] = finished(
      scheduleOf(
        connectorOf([
          contactOf('1', 'ringing', { chosenTopology: 'LC', chosenH: '1u' }),
          contactOf('2', 'ringing', { chosenTopology: 'LC', chosenH: '1u', chosenF: '10n' }),
        ]),
        [ringing],
      ),
    ).rows
    expect(proposed?.headline).toMatch(/^LC with .*: yes\..*; but it lifts the noise by .*dB near /u)
    expect(chosen?.headline).toMatch(/your choice: yes\..* It lifts the noise by .*dB near /u)
  })

  it('proposes within a topology that was chosen', () => {
    const [row] = rowsOf(contactOf('1', 'clear', { chosenTopology: 'T', chosenH: '1u' }))
    expect(row?.decided).toMatchObject({ by: 'user', part: { topology: 'T', inductanceH: 1e-6 } })
  })

  it('gives barred contacts nothing and says so', () => {
    const [kind, gate] = rowsOf(contactOf('1', 'tank'), contactOf('2', 'stopped'))
    expect(kind?.decided.by).toBe('barred')
    expect(kind?.decided.part).toBeUndefined()
    expect(kind?.headline).toContain('No field trial on fuel-tank wiring')
    expect(gate?.decided.by).toBe('barred')
    expect(gate?.headline).toContain('no part is advised')
  })

  it('shows figures before the safety questions are answered, and lets advice wait', () => {
    const [row, clear] = rowsOf(contactOf('1', 'open'), contactOf('2', 'clear'))
    expect(row?.decided.part?.capacitanceF).toBe(15e-9)
    expect(row?.waits).toContain('waits')
    expect(clear?.waits).toBeUndefined()
  })

  it('says what a choice that cannot be read would have to be, and goes on with the proposal', () => {
    const [row] = rowsOf(contactOf('1', 'clear', { chosenF: 'small', chosenTopology: 'Q' }))
    expect(row?.findings.map(({ sentence }) => sentence)).toEqual([
      '“Q” is no topology; choose one of C, L, LC, CL, PI, T, or none for a bare contact.',
      '“small” is no capacitance of one part; write it as 4.7n.',
    ])
    expect(row?.decided.by).toBe('proposed')
  })

  it('says no yes to a choice of which a part cannot be read, or has no place in it', () => {
    const rows = rowsOf(
      contactOf('1', 'clear', { chosenF: '10n', chosenTopology: 'Pii' }),
      contactOf('2', 'clear', { chosenF: 'small' }),
      contactOf('3', 'clear', { chosenF: '10n', chosenTopology: 'L', chosenH: '100u' }),
      contactOf('4', 'clear', { chosenF: '10n', chosenTopology: 'C', chosenH: '1u' }),
    )
    expect(rows.map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown', 'unknown', 'unknown'])
    expect(rows[0]?.headline).toMatch(/^Not known: “Pii” is no topology;.* As it stands: 10.nF, your choice: yes/u)
    expect(rows[2]?.headline).toContain('“10n” has no place in the topology L')
    expect(rows[3]?.headline).toContain('“1u” has no place in the topology C')
  })

  it('counts the connector’s bond and shows where a line states another', () => {
    const [row] = rowsOf(contactOf('1', 'bonded'))
    expect(row?.findings[0]?.sentence).toBe(
      'The line states 5n as its bond inductance; the connector’s own counts: 1n.',
    )
    const [same] = finished(
      scheduleOf(connectorOf([contactOf('1', 'bonded')], { shared: { bondH: '5 nH' } }), lines),
    ).rows
    expect(same?.findings).toEqual([])
  })

  it('asks for the line of a contact without one, and for nothing on ground, spare and feed-through', () => {
    const rows = rowsOf(
      contactOf('1', undefined),
      contactOf('2', undefined, {}, { type: 'ground' }),
      contactOf('3', undefined, {}, { type: 'spare' }),
      contactOf('4', undefined, {}, { type: 'feed-through' }),
    )
    expect(rows.map(({ verdict }) => verdict)).toEqual(['unknown', undefined, undefined, undefined])
    expect(rows[0]?.needs).toBe('lineKind')
  })

  it('counts alike parts once', () => {
    const { parts } = finished(
      scheduleOf(connectorOf([contactOf('1', 'clear'), contactOf('2', 'clear'), contactOf('3', 'tank')]), lines),
    )
    expect(parts).toEqual([{ topology: 'C', valueF: 15e-9, contacts: ['1', '2'] }])
  })
})

describe('the legs of a pair in the schedule', () => {
  const audio = { ...DISCRETE, lineKind: 'audio', neededDb: '1' }
  const legs = (first: string, second: string, facts: Parameters<typeof lineOf>[1] = {}) => {
    const of = (chosen: string) => (chosen === 'bare' ? { chosenTopology: 'none' } : { chosenF: chosen })
    const contacts = [contactOf('1', 'pair', of(first), { leg: 'a' }), contactOf('2', 'pair', of(second), { leg: 'b' })]
    return finished(scheduleOf(connectorOf(contacts), [lineOf('pair', { ...audio, ...facts })])).rows
  }
  const balanceOf = (row: ContactRow | undefined) => row?.findings.find(({ id }) => id === 'balance-1-2')

  it('are named on both where their parts differ, and neither is more than with care', () => {
    const alike = legs('470p', '470p')
    expect(alike.map(({ verdict }) => verdict)).toEqual(['ok', 'ok'])
    expect(alike.map(balanceOf)).toEqual([undefined, undefined])
    const unlike = legs('470p', '680p')
    expect(unlike.map(({ verdict }) => verdict)).toEqual(['marginal', 'marginal'])
    expect(unlike[0]?.headline).toMatch(
      /^With care: its other leg, contact 2, does not have the same\. By itself: 470/u,
    )
    // (680 − 470)/(680 + 470): −14.77 dB
    for (const row of unlike) expect(balanceOf(row)?.sentence).toMatch(/unlike parts \(.*\): up to −14\.7.dB/u)
  })

  it('are named where one of them is bare, and fail where the balance of the pair has a limit', () => {
    expect(legs('470p', 'bare').map(({ verdict }) => verdict)).toEqual(['marginal', 'marginal'])
    const limited = legs('470p', 'bare', { lineKind: 'arinc-429-high', mostConversionDb: '-40' })
    expect(limited.map(({ verdict }) => verdict)).toEqual(['fails', 'fails'])
    expect(balanceOf(limited[1])?.sentence).toContain('Contact 1 has a part and its other leg 2 has none')
  })

  it('earn no yes while only one of them is named', () => {
    const bus = lineOf('pair', { ...audio, lineKind: 'arinc-429-high', signalOhm: '' })
    const contact = contactOf('1', 'pair', { chosenF: '470p' })
    expect(finished(scheduleOf(connectorOf([contact]), [lineOf('pair', audio)])).rows[0]?.verdict).toBe('ok')
    for (const [line, leg] of [
      [lineOf('pair', audio), 'a'],
      [bus, 'a'],
      [bus, undefined],
    ] as const) {
      const contact = contactOf('1', 'pair', { chosenF: '470p' }, leg === undefined ? {} : { leg })
      const [row] = finished(scheduleOf(connectorOf([contact]), [line])).rows
      expect(row?.verdict).toBe('unknown')
      expect(row?.headline).toMatch(/^Not known: needs the contact of its other leg\. By itself: 470/u)
    }
    const [same] = finished(
      scheduleOf(
        connectorOf([
          contactOf('1', 'pair', { chosenF: '470p' }, { leg: 'a' }),
          contactOf('2', 'pair', { chosenF: '470p' }, { leg: 'a' }),
        ]),
        [bus],
      ),
    ).rows
    expect(same?.verdict).toBe('unknown')
  })
})
