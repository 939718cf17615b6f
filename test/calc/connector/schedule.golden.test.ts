/** A whole connector against contacts worked by hand from the rules of their lines. */
import { describe, expect, it } from 'vitest'
import { scheduleOf } from '../../../src/calc/connector/schedule.ts'
import golden from '../../golden/schedule.json' with { type: 'json' }
import { connectorOf, contactOf, finished, lineOf } from './some-connector.ts'

const COMMON = {
  existingF: '0',
  suppressorF: '0',
  dielectric: 'c0g',
  toleranceFrac: '10 %',
  esrOhm: '0',
  eslH: '0',
} as const

/** A pair is one line on two contacts. */
const contacts = golden.rows.flatMap(({ id, pair }) =>
  pair ? [contactOf(`${id} a`, id, {}, { leg: 'a' }), contactOf(`${id} b`, id, {}, { leg: 'b' })] : [contactOf(id, id)],
)
const lines = golden.rows.map(({ id, facts }) => lineOf(id, { ...COMMON, ...facts }))
const { rows } = finished(scheduleOf(connectorOf(contacts), lines))

describe('a schedule worked by hand', () => {
  it.each(golden.rows)('$id', ({ id, leastF, mostF, proposedF }) => {
    const found = rows.filter(({ line }) => line?.id === id)
    expect(found.length).toBeGreaterThan(0)
    for (const { proposal, decided, verdict } of found) {
      if (proposedF === null) {
        expect([verdict, proposal, decided.part]).toEqual(['fails', undefined, undefined])
        continue
      }
      expect(Math.abs((proposal?.leastF ?? 0) / leastF - 1)).toBeLessThan(1e-9)
      expect(Math.abs((proposal?.mostF ?? 0) / mostF - 1)).toBeLessThan(1e-9)
      expect(proposal?.part).toMatchObject({ topology: 'C', valueF: proposedF })
      expect(decided.part?.capacitanceF).toBe(proposedF)
    }
  })
})
