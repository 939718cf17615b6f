/** Nodes on a bus: each other node takes what one is allowed from the room of the whole bus, nothing from its own allowance. */
import { describe, expect, it } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import type { Check } from '../../../src/calc/types.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const siOf = (result: ReturnType<typeof run>, key: string) => si(result, key) ?? Number.NaN

const CAN = { lineKind: 'can', bitRateHz: '500k' }
/** ln 4 · 60 Ω · C = a tenth of 2 µs, between the wires, by hand */
const WHOLE_F = 200e-9 / (Math.log(4) * 60)

describe('the nodes of a bus', () => {
  it.each([1, 2, 11, 30])('are counted: of %d all but this one take 100 pF to chassis from each leg', (count) => {
    const most = siOf(run(loadingCheck, { ...CAN, nodeCount: `${count}` }), 'mostCapacitanceF')
    expect(most / (2 * (WHOLE_F - (count - 1) * 50e-12))).toBeCloseTo(1, 9)
  })

  it('come on top of what is entered as being on the line, as farads between the wires', () => {
    const texts = { ...CAN, capacitanceF: '90p' }
    const counted = run(loadingCheck, { ...texts, existingF: '200p', nodeCount: '11' })
    const entered = run(loadingCheck, { ...texts, existingF: '700p' })
    for (const key of ['mostCapacitanceF', 'differentialF', 'edgeSec'])
      expect(siOf(counted, key)).toBe(siOf(entered, key))
  })

  it('leave the figure of one node as it is: it is no share of the bus', () => {
    // ARINC 429 lets a receiver have 50 pF between the lines and 50 pF from each to ground: 75 pF between them in all
    const texts = { lineKind: 'arinc-429-high', capacitanceF: '40p', suppressorF: '0', existingF: '0' }
    const one = run(loadingCheck, texts)
    const twenty = run(loadingCheck, { ...texts, nodeCount: '20' })
    expect(one.verdict).toBe('ok')
    expect(twenty.verdict).toBe('ok')
    expect((siOf(one, 'mostCapacitanceF') - siOf(twenty, 'mostCapacitanceF')) / (2 * 19 * 75e-12)).toBeCloseTo(1, 9)
    const entered = run(loadingCheck, { ...texts, existingF: `${19 * 75}p` })
    expect(entered.verdict).toBe('marginal')
  })

  it('fail a capacitor that the whole bus does not stand any more', () => {
    const texts = { ...CAN, capacitanceF: '4.5n', existingF: '0', suppressorF: '0' }
    expect(run(loadingCheck, texts).verdict).toBe('marginal')
    expect(run(loadingCheck, { ...texts, nodeCount: '5' }).verdict).toBe('fails')
  })

  it('take the same from the window', () => {
    const texts = { ...CAN, frequencyHz: '30M', neededDb: '12', sourceOhm: '150', loadOhm: '120' }
    const one = run(windowCheck, texts)
    const counted = run(windowCheck, { ...texts, nodeCount: '11' })
    const entered = run(windowCheck, { ...texts, existingF: '500p' })
    expect(siOf(counted, 'mostCapacitanceF')).toBe(siOf(entered, 'mostCapacitanceF'))
    expect(siOf(counted, 'mostCapacitanceF')).toBeLessThan(siOf(one, 'mostCapacitanceF'))
  })

  it('are refused where nobody says what one may have, with what to do instead', () => {
    for (const check of [loadingCheck, windowCheck]) {
      const said = issuesOf(check as Check, { lineKind: 'rs-485', nodeCount: '8', frequencyHz: '30M', neededDb: '12' })
      expect(said).toEqual([expect.stringMatching(/^nodeCount: .*Already on the line/)])
    }
  })
})
