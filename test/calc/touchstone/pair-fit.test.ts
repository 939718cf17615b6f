/** A pair fitted mode by mode: what each leg is in it, from a four-port written down here by its modes. */
import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { logGrid } from '../../../src/calc/network/chain.ts'
import { fitFilter } from '../../../src/calc/touchstone/fit.ts'
import { oneLeg, pairModes } from '../../../src/calc/touchstone/mixed-mode.ts'
import { readTouchstone } from '../../../src/calc/touchstone/read.ts'

const OHM = 50
type Complex = readonly [number, number]

/** S11 and S21 of an admittance across a line of 50 Ω: −y/(2 + y) and 2/(2 + y), y = 50·Y. */
function across([g, b]: Complex): readonly [Complex, Complex] {
  const [re, im] = [2 + OHM * g, OHM * b]
  const size = re * re + im * im
  const through: Complex = [(2 * re) / size, (-2 * im) / size]
  return [[through[0] - 1, through[1]], through]
}

const ofPart = (farads: number, ohm: number, henries: number, w: number): Complex => {
  const x = w * henries - 1 / (w * farads)
  const size = ohm * ohm + x * x
  return [ohm / size, -x / size]
}

/**
 * Ports 1 and 2 in, 3 and 4 out; 4.7 nF, 40 mΩ and 1 nH from each wire to chassis, 22 nF, 20 mΩ and 0.5 nH between the
 * wires. A leg sees the capacitor between the wires twice (half the impedance to the middle) in differential mode only.
 */
function pairFile(): string {
  const rows = [...logGrid(1e5, 3e8, 61)].map((hz) => {
    const w = 2 * Math.PI * hz
    const common = ofPart(4.7e-9, 0.04, 1e-9, w)
    const between = ofPart(22e-9, 0.02, 0.5e-9, w)
    const differential: Complex = [common[0] + 2 * between[0], common[1] + 2 * between[1]]
    const [c, d] = [across(common), across(differential)]
    const entry = (i: number, j: number): Complex => {
      const isThrough = i < 2 !== j < 2 ? 1 : 0
      const sign = i % 2 === j % 2 ? 1 : -1
      const [one, other] = [c[isThrough], d[isThrough]]
      return [(one[0] + sign * other[0]) / 2, (one[1] + sign * other[1]) / 2]
    }
    return [0, 1, 2, 3]
      .map((i) => `${i === 0 ? hz : ' '} ${[0, 1, 2, 3].map((j) => entry(i, j).join(' ')).join(' ')}`)
      .join('\n')
  })
  return `# Hz S RI R 50\n${rows.join('\n')}\n`
}

describe('a pair by its four ports', () => {
  const reading = atOnce(readTouchstone(pairFile(), { fileName: 'pair.s4p' }))
  if (!reading.ok) throw new Error(reading.message)
  const modes = pairModes(reading.network, { near: [1, 2], far: [3, 4] })
  if (!modes.ok) throw new Error(modes.message)

  it.each([
    // what each wire has to chassis
    ['common', 4.7e-9],
    // that, and twice what stands between them
    ['differential', 4.7e-9 + 2 * 22e-9],
  ] as const)('in %s mode one leg is a capacitor of %d F', (mode, farads) => {
    const [best] = atOnce(fitFilter(oneLeg(modes[mode], mode), ['C', 'L']))
    expect(best?.parts.topology).toBe('C')
    // two parts with leads of their own are no one capacitor: 5 %
    expect(Math.abs((best?.parts.capacitanceF ?? 0) / farads - 1)).toBeLessThan(mode === 'common' ? 1e-4 : 0.05)
  })

  it('keeps S and turns the reference of the pair into that of a leg', () => {
    for (const mode of ['common', 'differential'] as const) {
      const leg = oneLeg(modes[mode], mode)
      expect(leg.referenceOhm).toEqual([OHM, OHM])
      expect(leg.re).toBe(modes[mode].re)
    }
  })
})
