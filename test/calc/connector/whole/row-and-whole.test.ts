/** The schedule and the whole connector ask the same piece: what a row says of the shared bond, the whole screen says. */
import { describe, expect, it } from 'vitest'
import { scheduleOf } from '../../../../src/calc/connector/schedule.ts'
import { bondOf } from '../../../../src/calc/connector/whole/bond.ts'
import { bondVerdict } from '../../../../src/calc/connector/whole/bond-findings.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import type { FactKey } from '../../../../src/calc/types.ts'
import { worse } from '../../../../src/calc/verdict.ts'
import { randomFrom } from '../random.ts'
import { connectorOf, contactOf, DISCRETE, finished, lineOf } from '../some-connector.ts'

const KINDS = ['discrete-ground', 'arinc-429-high', 'audio', 'can', 'power-28-vdc', 'lvdt', 'rs-422', 'analog-dc']
const SAYS = { met: 'ok', short: 'fails', open: 'unknown' } as const

function drawn(next: () => number) {
  const pick = <T>(of: readonly T[]): T => of[Math.floor(next() * of.length)] as T
  const hz = pick(['3M', '10M', '30M', '118M'])
  const facts = Array.from(
    { length: 4 + Math.floor(next() * 7) },
    (): Partial<Record<FactKey, string>> => ({
      ...DISCRETE,
      lineKind: pick(KINDS),
      bitRateHz: '100k',
      noiseHz: next() < 0.2 ? `${hz};137M` : hz,
      neededDb: String(Math.round(6 + 34 * next())),
      noiseSourceOhm: next() < 0.3 ? '10;50;150' : String(Math.round(10 ** (1 + 2 * next()))),
      noiseLoadOhm: String(Math.round(10 ** (1 + 2 * next()))),
      inductanceH: pick(['0.5u', '2u', '10u']),
      dcrOhm: '0.05',
      toleranceFrac: pick(['5 %', '10 %', '20 %']),
      esrOhm: pick(['0', '0.02']),
      eslH: '0.1n',
      ...(next() < 0.2 ? { suppressorF: '400p' } : {}),
      ...(next() < 0.2 ? { existingF: '150p' } : {}),
      ...(next() < 0.15 ? { mode: 'differential' } : {}),
    }),
  )
  const lines = facts.map((one, i) => lineOf(`l${i}`, one))
  const contacts = lines.flatMap(({ id, facts: { lineKind } }, i) => {
    const texts =
      next() < 0.4
        ? {
            chosenTopology: pick(['C', 'LC', 'CL', 'PI', 'T', 'L']),
            chosenF: pick(['1n', '10n', '47n']),
            ...(next() < 0.5 ? { chosenH: '4.7u' } : {}),
          }
        : {}
    const isPair = lineKind?.text === 'rs-422' || lineKind?.text === 'can'
    return isPair
      ? [contactOf(`${i}a`, id, texts, { leg: 'a' }), contactOf(`${i}b`, id, texts, { leg: 'b' })]
      : [contactOf(String(i), id, texts)]
  })
  const shared = { bondOhm: pick(['0', '1m', '10m']), bondH: String(10 ** (-10.7 + 2 * next())) }
  return { connector: connectorOf(contacts, { shared }), lines }
}

/** More of them: RUNS=… */
const RUNS = Number(process.env['RUNS'] ?? 12)

describe('a row and the whole screen', () => {
  it('say the same of every need in the shared bond, to the last decibel', { timeout: 120_000 }, () => {
    const next = randomFrom(Number(process.env['SEED'] ?? 77))
    const said = { ok: 0, marginal: 0, fails: 0, unknown: 0 }
    for (let run = 0; run < RUNS; run++) {
      const { connector, lines } = drawn(next)
      const { rows } = finished(scheduleOf(connector, lines))
      const bond = atOnce(
        bondOf(
          connector,
          rows.map(({ decided }) => decided),
        ),
      )
      for (const { together, decided } of rows) {
        const own = bond.rows.filter(
          ({ id, isDifferential, isBare }) => id === decided.id && !isDifferential && !isBare,
        )
        const where = `run ${run}, contact ${decided.id}, ${JSON.stringify(decided.part)}`
        expect(own.length > 0, where).toBe(together !== undefined)
        if (together === undefined) continue
        const worst = own.reduce((a, b) => (b.certainDb - b.neededDb < a.certainDb - a.neededDb ? b : a))
        expect(worst.hz, where).toBe(together.need.hz)
        expect(worst.certainDb, where).toBeCloseTo(together.leastDb, 9)
        expect(worst.aloneDb, where).toBeCloseTo(together.aloneDb, 9)
        expect(bondVerdict(worst), where).toBe(SAYS[together.is])
        // no need of the contact is worse off on the whole screen than the row says
        const all = own.map(bondVerdict).reduce(worse)
        if (together.is === 'met') expect(all, where).toBe('ok')
        said[bondVerdict(worst)] += 1
      }
    }
    expect(said.ok).toBeGreaterThan(RUNS)
    expect(said.fails).toBeGreaterThan(RUNS)
    expect(said.unknown).toBeLessThan(RUNS / 4)
  })
})
