/** Whole connectors in one bond: what the rounds change, and that no proposal called a yes fails at a point of all boxes. */
import { describe, expect, it } from 'vitest'
import type { DecidedContact } from '../../../src/calc/connector/decided.ts'
import { scheduleOf } from '../../../src/calc/connector/schedule.ts'
import type { FactKey, Topology } from '../../../src/calc/types.ts'
import { type PlateContact, type Stage, sharedLosses } from '../../support/exact-plate.ts'
import { randomFrom } from './random.ts'
import { connectorOf, contactOf, DISCRETE, finished, lineOf } from './some-connector.ts'

const scheduleWith = (
  facts: readonly Partial<Record<FactKey, string>>[],
  shared: { bondOhm?: string; bondH?: string },
  texts: Parameters<typeof contactOf>[2] = {},
) => {
  const lines = facts.map((one, i) => lineOf(`l${i}`, one))
  return finished(
    scheduleOf(
      connectorOf(
        lines.map(({ id }, i) => contactOf(String(i + 1), id, texts)),
        { shared },
      ),
      lines,
    ),
  )
}

/** A contact at one point of its box: C and L parts without lead, as the lines below are entered. */
function pointOf({ part, sourceOhm, loadOhm = 1e9 }: DecidedContact, hz: number, pick: () => number): PlateContact {
  const w = 2 * Math.PI * hz
  const shunt = (): Stage => {
    const { capacitanceF = 0, leastFrac = 1, mostFrac = 1 } = part ?? {}
    return { shuntSie: [0, w * capacitanceF * (leastFrac + pick() * (mostFrac - leastFrac))] }
  }
  // ±10 %: the inductance entered is the least
  const coil = (): Stage => ({ seriesOhm: [0, w * (part?.inductanceH ?? 0) * (1 + pick() * (1.1 / 0.9 - 1))] })
  const stages: Readonly<Record<Topology, () => readonly Stage[]>> = {
    C: () => [shunt()],
    L: () => [coil()],
    LC: () => [coil(), shunt()],
    CL: () => [shunt(), coil()],
    PI: () => [shunt(), coil(), shunt()],
    T: () => [coil(), shunt(), coil()],
  }
  const source = sourceOhm[Math.floor(pick() * sourceOhm.length * 0.999)] ?? 0
  return { stages: part ? stages[part.topology]() : [], sourceOhm: [source, 0], loadSie: [1 / loadOhm, 0] }
}

const picker = (next: () => number) => () => (next() < 0.6 ? Math.round(next()) : next())

describe('a connector in its one bond', () => {
  it('leaves what alone does where the bond is perfect, and says alone where it is not known', () => {
    const perfect = scheduleWith([DISCRETE, DISCRETE], { bondOhm: '0', bondH: '0' })
    expect(perfect.findings.map(({ id }) => id)).toEqual(['bond-perfect'])
    const unknown = scheduleWith([DISCRETE, DISCRETE], {})
    expect(unknown.findings.map(({ id, contacts }) => [id, contacts])).toEqual([['bond-alone', ['1', '2']]])
    expect(unknown.rounds).toBeUndefined()
  })

  it('takes another value where 22 contacts in 1 nH lose what one of them keeps', () => {
    // alone 47 nF; together the plate is 22 · 0.063 Ω inductive at 10 MHz, and only |22·ωL − 1/ωC| ≤ 25 Ω/31.6 keeps 30 dB
    const schedule = scheduleWith(
      Array.from({ length: 22 }, () => ({ ...DISCRETE, neededDb: '30' })),
      { bondOhm: '0', bondH: '1n' },
    )
    for (const { decided, verdict, aloneF, together } of schedule.rows) {
      expect(aloneF).toBe(47e-9)
      expect(decided.part?.capacitanceF).toBe(22e-9)
      // 22 nF less 10 % and the cold are 0.806 Ω, which without the bond keep 20·log10(25/0.806) = 29.8 of 30 dB
      expect(verdict).toBe('marginal')
      expect(together?.is).toBe('met')
    }
    expect(schedule.rounds).toBe(2)
    expect(schedule.rows[0]?.headline).toContain('alone 47\u00a0nF would do')
    expect(schedule.rows[0]?.headline).toContain('less of that would lose it')
  })

  it('is not known by half a bond: what is taken for the other half is named', () => {
    const ids = (shared: Parameters<typeof scheduleWith>[1]) => scheduleWith([DISCRETE, DISCRETE], shared).findings
    expect(ids({ bondOhm: '1m' })[0]).toMatchObject({
      id: 'bond-half-entered',
      verdict: 'unknown',
      contacts: ['1', '2'],
    })
    expect(ids({ bondOhm: '1m' })[0]?.sentence).toContain('500\u00a0pH is taken')
    expect(ids({ bondH: '1n' })[0]?.sentence).toContain('2.5\u00a0mΩ is taken')
    expect(ids({ bondOhm: '1m', bondH: '1n' }).map(({ id }) => id)).not.toContain('bond-half-entered')
  })

  it('earns no yes with another value where the one that was chosen cannot be read', () => {
    const { rows } = scheduleWith(
      Array.from({ length: 22 }, () => ({ ...DISCRETE, neededDb: '30' })),
      { bondOhm: '0', bondH: '1n' },
      { chosenF: 'small' },
    )
    expect(rows[0]?.decided.part?.capacitanceF).toBe(22e-9)
    expect(rows[0]?.verdict).toBe('unknown')
  })

  it('takes no yes from readings of source and load side by side into a bond that meets them apart', () => {
    const {
      noiseSourceOhm: _source,
      noiseLoadOhm: _load,
      ...read
    } = {
      ...DISCRETE,
      trialSideReOhm: '25',
      trialSideImOhm: '0',
    } as Partial<Record<FactKey, string>>
    const alone = scheduleWith([read, DISCRETE], {})
    expect(alone.rows[0]?.verdict).toBe('ok')
    const together = scheduleWith([read, DISCRETE], { bondOhm: '0', bondH: '1n' })
    expect(together.rows.map(({ verdict }) => verdict)).toEqual(['unknown', 'ok'])
    expect(together.rows[0]?.headline).toMatch(/^Not known: needs noise source and load apart\./u)
  })

  it('names the bead that is not known at the frequency, and no decibel', () => {
    const bead = { beadHz: '1M;3M;10M', beadOhm: '30;30;30', beadReactanceOhm: '20;20;20', noiseHz: '5M' }
    const texts = [
      { ...DISCRETE, noiseHz: '118M' },
      { ...DISCRETE, ...bead },
    ]
    const { rows } = scheduleWith(texts, { bondOhm: '1m', bondH: '1n' }, { chosenTopology: 'LC', chosenF: '10n' })
    expect(rows.map(({ verdict }) => verdict)).toEqual(['unknown', 'ok'])
    expect(rows[0]?.headline.replaceAll('\u00a0', ' ')).toBe(
      'Not known: needs the impedance of every bead in the bond at 118 MHz. While one is missing, what LC with 10 nF and 1 µH keeps there is not known.',
    )
  })

  it('says no where one need is short, though a bead is not known at another', () => {
    const bead = { beadHz: '1M;3M;10M', beadOhm: '30;30;30', beadReactanceOhm: '20;20;20', noiseHz: '5M' }
    const weak = { ...DISCRETE, noiseHz: '10M;118M', neededDb: '30' }
    const texts = [...Array.from({ length: 22 }, () => weak), { ...DISCRETE, ...bead }]
    const { rows } = scheduleWith(texts, { bondOhm: '0', bondH: '10n' }, { chosenTopology: 'LC', chosenF: '47n' })
    expect(rows[0]?.verdict).toBe('fails')
    expect(rows[0]?.headline).toContain('With all contacts in the bond')
  })

  it('fails a value of the user’s own that the shared bond defeats, and keeps it', () => {
    const schedule = scheduleWith(
      Array.from({ length: 22 }, () => ({ ...DISCRETE, neededDb: '30' })),
      { bondOhm: '0', bondH: '1n' },
      { chosenF: '47n' },
    )
    const [row] = schedule.rows
    expect(row?.decided).toMatchObject({ by: 'user', part: { capacitanceF: 47e-9 } })
    expect(row?.verdict).toBe('fails')
    expect(row?.headline).toContain('With all contacts in the bond')
    const [loss] = sharedLosses(
      schedule.rows.map(({ decided }) => pointOf(decided, 10e6, () => 1)),
      [0, 2 * Math.PI * 10e6 * 1e-9],
    )
    expect(loss?.togetherDb).toBeLessThan(30)
  })

  it('says what a choice fails by alone, where that is why', () => {
    const { rows } = scheduleWith([DISCRETE, DISCRETE], { bondOhm: '0', bondH: '1n' }, { chosenF: '1n' })
    expect(rows[0]?.verdict).toBe('fails')
    expect(rows[0]?.headline).toContain('your choice: no. The noise needs')
  })

  it('never calls a proposal a yes that fails at a point of all boxes, all contacts driven', () => {
    const next = randomFrom(51)
    let [yes, moved] = [0, 0]
    for (let run = 0; run < 6; run++) {
      const hz = 10 ** (6.7 + 1.3 * next())
      const facts = Array.from({ length: 8 + Math.floor(next() * 16) }, (): Partial<Record<FactKey, string>> => {
        const kind = ['discrete-ground', 'arinc-429-high', 'audio'][Math.floor(next() * 3)] as string
        return {
          ...DISCRETE,
          lineKind: kind,
          neededDb: String(Math.round(10 + 20 * next())),
          noiseHz: String(Math.round(hz)),
          noiseSourceOhm: next() < 0.3 ? '10;50;150' : String(Math.round(10 ** (1 + 2 * next()))),
          noiseLoadOhm: String(Math.round(10 ** (1 + 2 * next()))),
          inductanceH: '2u',
        }
      })
      const bondH = 10 ** (-10 + next())
      const { rows } = scheduleWith(facts, { bondOhm: '1m', bondH: String(bondH) })
      moved += rows.filter(({ aloneF }) => aloneF !== undefined).length
      for (let k = 0; k < 40; k++) {
        const pick = picker(next)
        const losses = sharedLosses(
          rows.map(({ decided }) => pointOf(decided, Math.round(hz), pick)),
          [1e-3, 2 * Math.PI * Math.round(hz) * bondH],
        )
        rows.forEach(({ verdict, decided }, i) => {
          if (verdict !== 'ok' || decided.part === undefined) return
          yes += 1
          expect(losses[i]?.togetherDb, `run ${run}, contact ${i + 1}`).toBeGreaterThanOrEqual(decided.neededDb ?? 0)
        })
      }
    }
    expect(yes).toBeGreaterThan(300)
    expect(moved).toBeGreaterThan(3)
  })
})
