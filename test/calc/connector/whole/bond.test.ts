import { describe, expect, it } from 'vitest'
import { type Bond, type BondRow, bondOf } from '../../../../src/calc/connector/whole/bond.ts'
import { bondFindings, bondVerdict } from '../../../../src/calc/connector/whole/bond-findings.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import { connectorOf, contactOf } from '../../../support/decided-contact.ts'
import { loadVolts } from '../../../support/plate-nodes.ts'
import { anyPoint, randomPlate } from '../../../support/random-plate.ts'
import { random } from '../../../support/seeded.ts'

const decibels = (bare: number, volts: number) => 20 * Math.log10(bare / volts)

describe('the shared bond over the tolerances, beside a nodal solver', () => {
  it('promises no loss that any point of the tolerances undercuts, and finds one that is really there', () => {
    const rand = random(Number(process.env['SEED'] ?? 41))
    const verdicts = { ok: 0, marginal: 0, fails: 0, unknown: 0 }
    let apart = 0
    let rows = 0
    for (let round = 0; round < 60; round++) {
      const plate = randomPlate(rand, 2 + Math.floor(8 * rand()))
      const bond = atOnce(bondOf(plate.connector, plate.decided))
      expect(bond.uncounted).toEqual([])
      const least = new Map<string, number>()
      const received = new Map<string, number>()
      for (let k = 0; k < 60; k++) {
        const quiet = k % 4 === 3 ? Math.floor(rand() * plate.drawn.length) : -1
        const point = anyPoint(plate, rand, k % 2 === 0, quiet)
        const bare = loadVolts(
          point.map((one) => ({ ...one, volts: 1 })),
          undefined,
          plate.hz,
        )
        const volts = loadVolts(point, plate.bond, plate.hz)
        plate.decided.forEach(({ id }, i) => {
          const db = decibels(bare[i] as number, volts[i] as number)
          if (i === quiet) received.set(id, Math.max(received.get(id) ?? -400, -db))
          else if (quiet < 0) least.set(id, Math.min(least.get(id) ?? 400, db))
        })
      }
      for (const row of bond.rows) {
        const seen = least.get(row.id) ?? 400
        expect(row.certainDb, JSON.stringify(row)).toBeLessThanOrEqual(seen + 1e-6)
        expect(row.certainDb).toBeLessThanOrEqual(Math.min(row.markedDb, row.foundDb ?? 400) + 1e-9)
        expect(row.receivedDb).toBeGreaterThanOrEqual((received.get(row.id) ?? -400) - 1e-6)
        if (!row.isBare) verdicts[bondVerdict(row)]++
        if (row.foundDb !== undefined) apart += row.foundDb - row.certainDb
        if (row.foundDb !== undefined) rows++
      }
    }
    // enough of every answer, and a bound close to what is there
    expect(verdicts.ok).toBeGreaterThan(50)
    expect(verdicts.fails).toBeGreaterThan(50)
    expect(verdicts.marginal).toBe(0)
    expect(verdicts.unknown).toBeLessThan(0.15 * rows)
    expect(apart / rows).toBeLessThan(2)
  })

  it('is exact where nothing has a tolerance', () => {
    const rand = random(5)
    for (let round = 0; round < 20; round++) {
      const drawn = randomPlate(rand, 6)
      const plate = {
        ...drawn,
        drawn: drawn.drawn.map((one) => ({
          ...one,
          topology: one.topology && ('C' as const),
          leastFrac: 1,
          mostFrac: 1,
          sources: [one.sources[0] as number],
        })),
      }
      const decided = plate.drawn.map((one, i) =>
        contactOf(
          `${i + 1}`,
          {
            lineKind: 'not-listed',
            noiseHz: String(plate.hz),
            neededDb: '10',
            noiseSourceOhm: String(one.sources[0]),
            noiseLoadOhm: String(one.loadOhm),
            esrOhm: '0.03',
            eslH: '0.1n',
            toleranceFrac: '0',
          },
          one.topology && { capacitanceF: one.capacitanceF, leastFrac: 1, mostFrac: 1 },
        ),
      )
      const bond = atOnce(bondOf(connectorOf(decided, { shared: plate.connector.shared }), decided))
      const point = anyPoint(plate, rand, false)
      const bare = loadVolts(point, undefined, plate.hz)
      const volts = loadVolts(point, plate.bond, plate.hz)
      bond.rows.forEach((row, i) => {
        const db = decibels(bare[i] as number, volts[i] as number)
        expect(row.markedDb).toBeCloseTo(db, 6)
        expect(row.certainDb).toBeCloseTo(db, 6)
      })
    }
  })
})

const noisy = {
  lineKind: 'not-listed',
  noiseHz: '30M',
  neededDb: '30',
  noiseSourceOhm: '50',
  noiseLoadOhm: '50',
  toleranceFrac: '20 %',
}

describe('what is said of the bond', () => {
  const needing = (neededDb: string) =>
    Array.from({ length: 6 }, (_, i) => contactOf(`${i + 1}`, { ...noisy, neededDb }, { capacitanceF: 100e-9 }))
  const many = needing('30')
  const found = (shared: { bondOhm?: string; bondH?: string }): Bond =>
    atOnce(bondOf(connectorOf(many, { shared }), many))
  const verdict = (bond: Bond) => bondFindings(bond).find(({ id }) => id === 'bond-together')?.verdict

  it('is no where it is too long, and names one that would do; with that one it is yes', () => {
    const long = found({ bondOhm: '1m', bondH: '5n' })
    expect(verdict(long)).toBe('fails')
    const most = long.mostBondH as number
    expect(most).toBeGreaterThan(0)
    expect(verdict(found({ bondOhm: '1m', bondH: String(0.999 * most) }))).toBe('ok')
    expect(verdict(found({ bondOhm: '1m', bondH: String(1.001 * most) }))).not.toBe('ok')
  })

  it('is not known between proved and refuted, and names what would decide it', () => {
    const bondOfNeed = (neededDb: number): Bond => {
      const decided = needing(String(neededDb))
      return atOnce(bondOf(connectorOf(decided, { shared: { bondOhm: '1m', bondH: '5n' } }), decided))
    }
    const [row] = bondOfNeed(60).rows
    const between = ((row?.certainDb ?? 0) + (row?.foundDb ?? 0)) / 2
    const told = (bond: Bond, id: string) => bondFindings(bond).find((finding) => finding.id === id)
    expect(told(bondOfNeed(between), 'bond-together')).toMatchObject({
      verdict: 'unknown',
      sentence: expect.stringMatching(/neither proved nor refuted .* a narrower tolerance/u),
      contacts: ['1', '2', '3', '4', '5', '6'],
    })
    expect(bondVerdict({ ...(row as BondRow), neededDb: between })).toBe('unknown')
    const heard = -((row?.receivedDb ?? 0) + (row?.receivedAsMarkedDb ?? 0)) / 2
    expect(told(bondOfNeed(heard), 'bond-received')).toMatchObject({
      verdict: 'unknown',
      sentence: expect.stringMatching(/neither proved nor refuted .* a narrower tolerance/u),
    })
  })

  it('tells those that no bond cures from those that one would', () => {
    const weak = contactOf('7', { ...noisy, neededDb: '60' }, { capacitanceF: 100e-9 })
    const seven = [...many, weak]
    const bond = atOnce(bondOf(connectorOf(seven, { shared: { bondOhm: '1m', bondH: '5n' } }), seven))
    expect(bond.shortAnyhow).toEqual(['7'])
    expect(bond.mostBondH).toBeGreaterThan(0)
    const said = bondFindings(bond).find(({ id }) => id === 'bond-together')?.sentence
    expect(said).toMatch(/Contact 7 is short with no bond at all.*would do for the others/u)
  })

  it('tells what is left of the attenuation alone, or that both stand where the bond adds to it', () => {
    const bond = found({ bondOhm: '1m', bondH: '10p' })
    const saidAt = (certainDb: number): string | undefined =>
      bondFindings({ ...bond, rows: bond.rows.map((row) => ({ ...row, aloneDb: 44, certainDb })) })[0]?.sentence
    expect(saidAt(43)).toMatch(/contact 1 keeps 43\s?dB of the 44\s?dB it has alone at 30\s?MHz/u)
    expect(saidAt(45)).toMatch(/contact 1 has 45\s?dB, and 44\s?dB alone, at 30\s?MHz/u)
  })

  it('is not known where nobody entered it, whether a usual one would do or not', () => {
    const deep = needing('50')
    expect(verdict(atOnce(bondOf(connectorOf(deep), deep)))).toBe('unknown')
    for (const shared of [{}, { bondOhm: '1m' }, { bondH: '10p' }]) {
      const said = bondFindings(found(shared))
      expect(said.map(({ verdict: one }) => one)).toEqual(['unknown', 'unknown'])
      for (const { sentence } of said) expect(sentence).toContain('enter the resistance and inductance of the bond')
    }
    expect(verdict(found({ bondOhm: '1m', bondH: '10p' }))).toBe('ok')
    expect(bondFindings(found({ bondH: 'short' }))[0]).toMatchObject({ verdict: 'unknown' })
  })

  it('counts a contact whose noise is not known as not known, and never leaves it out in silence', () => {
    const mute = contactOf('9', { lineKind: 'not-listed' }, { capacitanceF: 1e-9 })
    const bond = atOnce(bondOf(connectorOf([...many, mute], { shared: { bondOhm: '0', bondH: '0' } }), [...many, mute]))
    expect(bond.uncounted).toEqual(['9'])
    expect(bondFindings(bond)[0]).toMatchObject({ id: 'bond-uncounted', verdict: 'unknown', contacts: ['9'] })
  })

  it('says nothing where the bead of one contact is not known: which, and at what frequency', () => {
    const bead = { beadHz: '1M;3M;10M', beadOhm: '30;30;30', beadReactanceOhm: '20;20;20' }
    const asked = (noiseHz: string, neededDb: string) => {
      const noise = { lineKind: 'discrete-28v', noiseHz, neededDb, noiseSourceOhm: '50', noiseLoadOhm: '50' }
      const two = [
        contactOf('1', noise, { capacitanceF: 1e-9 }),
        contactOf('2', { ...noise, ...bead }, { topology: 'LC', capacitanceF: 1e-9 }),
      ]
      return bondFindings(atOnce(bondOf(connectorOf(two, { shared: { bondOhm: '1m', bondH: '1n' } }), two)))
    }
    // 60 dB with the bead left out would be a no, 20 dB a limit of −400 dB
    for (const neededDb of ['20', '60']) {
      const said = asked('118M', neededDb)
      expect(said.map(({ id, verdict: one }) => [id, one])).toEqual([['bond-bead-unknown', 'unknown']])
      expect(said[0]).toMatchObject({ contacts: ['2'], sentence: expect.stringContaining('118\u00a0MHz') })
    }
    const both = asked('5M; 118M', '3')
    expect(both.map(({ id }) => id)).toEqual(['bond-bead-unknown', 'bond-together', 'bond-received'])
    for (const { sentence } of both) expect(sentence).not.toMatch(/400|\s$/u)
    expect(asked('5M', '3').map(({ id }) => id)).not.toContain('bond-bead-unknown')
  })

  it('loses the legs of one pair to each other alone, and everything to all others together', () => {
    const leg = (id: string, which: 'a' | 'b') => ({
      ...contactOf(id, { ...noisy, lineKind: 'rs-422' }, { capacitanceF: 100e-9 }),
      leg: which,
    })
    const a = leg('1', 'a')
    const pair = [a, { ...leg('2', 'b'), line: a.line as NonNullable<typeof a.line> }]
    const bond = atOnce(bondOf(connectorOf(pair, { shared: { bondOhm: '1m', bondH: '5n' } }), pair))
    for (const row of bond.rows) expect(row.aloneDb).toBeCloseTo(row.certainDb, 0)
    const [one] = bond.rows
    const single = atOnce(bondOf(connectorOf([a], { shared: { bondOhm: '1m', bondH: '5n' } }), [a])).rows[0]
    expect((single?.aloneDb ?? 0) - (one?.aloneDb ?? 0)).toBeGreaterThan(3)
  })
})
