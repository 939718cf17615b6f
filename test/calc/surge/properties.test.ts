/** What must hold for any surge. Another seed: SEED=… npx vitest run --project unit test/calc/surge/properties */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type FittedFilter, NO_FILTER, type SurgeCircuit } from '../../../src/calc/surge/circuit.ts'
import { fitPulse } from '../../../src/calc/surge/fit.ts'
import { repeatFactor, spreadOfTrain } from '../../../src/calc/surge/rating.ts'
import { shapeOf, shapeTimes } from '../../../src/calc/surge/shape.ts'
import { excessOver, integral, peakOf, powerOf } from '../../../src/calc/surge/trace.ts'
import { waveformById } from '../../../src/reference/waveforms.ts'
import { runSurge } from '../../support/surge-deck.ts'

const SEED = Number(process.env['SEED'] ?? 40_229)
const ROUNDING = 2e-4

const wf4 = shapeOf(waveformById('wf4')?.shape ?? { form: 'lines', points: [] })
const between = (low: number, high: number) =>
  fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map((x) => Math.exp(x))

const filter: fc.Arbitrary<FittedFilter> = fc.record({
  topology: fc.constantFrom('none', 'C', 'L', 'LC', 'CL', 'PI', 'T'),
  capacitanceF: between(0.3e-9, 0.7e-6),
  capacitance2F: between(0.3e-9, 0.7e-6),
  inductanceH: between(0.2e-6, 70e-6),
  inductance2H: between(0.2e-6, 70e-6),
  dcrOhm: between(0.01, 0.7),
})

const circuit: fc.Arbitrary<SurgeCircuit> = fc.record({
  source: fc.record({ form: fc.constant('voltage' as const), peak: between(130, 1700), ohm: between(0.9, 47) }),
  lineOhm: between(0.01, 3),
  lineH: fc.constant(0),
  filter,
  suppressor: fc.record({
    breakdownV: between(7, 90),
    dynamicOhm: between(0.03, 2),
    bidirectional: fc.boolean(),
    capacitanceF: fc.constant(0),
    leadH: fc.constant(0),
  }),
  placement: fc.constantFrom('connector', 'behind'),
  loadOhm: between(20, 11e3),
  loadF: fc.constant(0),
})

function peaks(of: SurgeCircuit) {
  const trace = runSurge(of, wf4)
  return {
    clampV: peakOf(trace.sec, trace.clampV).value,
    loadV: peakOf(trace.sec, trace.loadV).value,
    amps: peakOf(trace.sec, trace.clampA).value,
    energyJ: integral(trace.sec, powerOf(trace)),
  }
}

const withOhm = (of: SurgeCircuit, dynamicOhm: number): SurgeCircuit =>
  of.suppressor ? { ...of, suppressor: { ...of.suppressor, dynamicOhm } } : of

describe(`surges, seed ${SEED}`, () => {
  it('never clamp lower with more dynamic resistance', () => {
    fc.assert(
      fc.property(circuit, between(1.2, 5), (of, times) => {
        const less = of.suppressor?.dynamicOhm ?? 1
        const [a, b] = [peaks(withOhm(of, less)), peaks(withOhm(of, less * times))]
        expect(b.clampV).toBeGreaterThanOrEqual(a.clampV * (1 - ROUNDING))
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  it('never put less current into a suppressor in front of a bare inductor than into one behind it', () => {
    fc.assert(
      fc.property(circuit, (of) => {
        const bare: SurgeCircuit = { ...of, filter: { ...of.filter, topology: 'L' } }
        const [front, behind] = [peaks({ ...bare, placement: 'connector' }), peaks({ ...bare, placement: 'behind' })]
        expect(front.amps).toBeGreaterThanOrEqual(behind.amps * (1 - ROUNDING))
      }),
      { seed: SEED + 1, numRuns: 40 },
    )
  })

  it('can put more current behind an inductor when a capacitor stands ahead of it', () => {
    const of: SurgeCircuit = {
      source: { form: 'voltage', peak: 300, ohm: 5 },
      lineOhm: 0,
      lineH: 0,
      filter: { ...NO_FILTER, topology: 'CL', capacitanceF: 3.3e-6, inductanceH: 1.1e-6, dcrOhm: 0.02 },
      suppressor: { breakdownV: 34.4, dynamicOhm: 0.0333, bidirectional: true, capacitanceF: 0, leadH: 0 },
      placement: 'behind',
      loadOhm: 10e3,
      loadF: 0,
    }
    expect(peaks(of).amps).toBeGreaterThan(peaks({ ...of, placement: 'connector' }).amps)
  })

  it('scale with the generator as long as nothing conducts', () => {
    fc.assert(
      fc.property(circuit, between(0.1, 9), (of, times) => {
        const { suppressor: _, ...bare } = of
        const louder = { ...bare, source: { ...bare.source, peak: bare.source.peak * times } }
        expect(peaks(louder).loadV / peaks(bare).loadV / times).toBeCloseTo(1, 6)
      }),
      { seed: SEED + 2, numRuns: 30 },
    )
  })

  it('mirror in a bidirectional suppressor when the polarity turns', () => {
    fc.assert(
      fc.property(circuit, (of) => {
        const both = of.suppressor ? { ...of, suppressor: { ...of.suppressor, bidirectional: true } } : of
        const [a, b] = [peaks(both), peaks({ ...both, source: { ...both.source, peak: -both.source.peak } })]
        for (const key of ['clampV', 'loadV', 'amps', 'energyJ'] as const) expect(b[key]).toBeCloseTo(a[key], 9)
      }),
      { seed: SEED + 3, numRuns: 20 },
    )
  })

  it('are the same from a current source with its impedance across as from a voltage source', () => {
    fc.assert(
      fc.property(circuit, (of) => {
        const { peak, ohm } = of.source
        const norton = peaks({ ...of, source: { form: 'current', peak: peak / ohm, ohm } })
        expect(norton.loadV).toBeCloseTo(peaks(of).loadV, 6)
      }),
      { seed: SEED + 4, numRuns: 20 },
    )
  })

  it('never put more energy into the suppressor than the source can give', () => {
    fc.assert(
      fc.property(circuit, (of) => {
        // all of it into a short at half the voltage would be V²/4R over the shape squared
        const most = (of.source.peak ** 2 / (4 * (of.source.ohm + of.lineOhm))) * 70e-6
        expect(peaks(of).energyJ).toBeLessThan(most)
      }),
      { seed: SEED + 5, numRuns: 40 },
    )
  })

  it('last a millisecond or a hundred nanoseconds alike: scaling every time scales nothing else', () => {
    const of: SurgeCircuit = {
      source: { form: 'voltage', peak: 317, ohm: 4.3 },
      lineOhm: 0.2,
      lineH: 1.7e-6,
      filter: {
        topology: 'PI',
        capacitanceF: 61e-9,
        capacitance2F: 83e-9,
        inductanceH: 7.3e-6,
        inductance2H: 0,
        dcrOhm: 0.09,
      },
      suppressor: { breakdownV: 29.3, dynamicOhm: 0.31, bidirectional: false, capacitanceF: 3.1e-9, leadH: 21e-9 },
      placement: 'connector',
      loadOhm: 730,
      loadF: 1.9e-9,
    }
    const slower = (n: number): SurgeCircuit => ({
      ...of,
      lineH: of.lineH * n,
      loadF: of.loadF * n,
      filter: {
        ...of.filter,
        capacitanceF: of.filter.capacitanceF * n,
        capacitance2F: of.filter.capacitance2F * n,
        inductanceH: of.filter.inductanceH * n,
      },
      ...(of.suppressor
        ? {
            suppressor: {
              ...of.suppressor,
              capacitanceF: of.suppressor.capacitanceF * n,
              leadH: of.suppressor.leadH * n,
            },
          }
        : {}),
    })
    const at = (n: number) => {
      const shape = shapeOf({ form: 'double-exponential', k: 1.09405, aPerSec: 11354 / n, bPerSec: 647265 / n })
      const trace = runSurge(slower(n), shape)
      return [peakOf(trace.sec, trace.loadV).value, peakOf(trace.sec, trace.clampA).value]
    }
    const one = at(1)
    // a thousand times faster the junction is at 3.1 pF: no node with a lead has less than one
    for (const n of [1e-3, 1e3])
      for (const [i, value] of at(n).entries()) expect(value / (one[i] ?? 1)).toBeCloseTo(1, 4)
  })
})

describe('a pulse of one’s own', () => {
  it('peaks and halves when it was told to', () => {
    fc.assert(
      fc.property(between(1e-9, 1e-3), between(1.15, 3000), (peakSec, ratio) => {
        const times = shapeTimes(shapeOf(fitPulse({ peakSec, halfSec: peakSec * ratio })))
        expect(times.peak).toBeCloseTo(1, 5)
        expect(times.halfSec / (peakSec * ratio)).toBeCloseTo(1, 4)
        expect(times.peakSec / peakSec).toBeCloseTo(1, 3)
      }),
      { seed: SEED + 6, numRuns: 120 },
    )
  })

  it('is refused when half value does not come after the peak', () => {
    expect(() => fitPulse({ peakSec: 2e-6, halfSec: 2e-6 })).toThrow(RangeError)
  })
})

describe('reading a trace', () => {
  it('finds how long and how far a triangle stands above a level', () => {
    const sec = Float64Array.of(0, 2, 6)
    const volts = Float64Array.of(0, -100, 0)
    const over = excessOver(sec, volts, 50)
    expect(over).toEqual({ voltSec: 75, untilSec: 4, forSec: 3, isOpen: false })
    expect(excessOver(sec, Float64Array.of(0, 10, 80), 50).isOpen).toBe(true)
  })

  it('sums heat of later pulses as the roots of their times', () => {
    const repeats = {
      id: 'x',
      words: 'x',
      gaps: [{ count: 3, spacingSec: 0.25 }],
      laterDriveShare: 1,
      of: 'pin',
      source: { id: 'practice', standing: 'practice' },
    } as const
    const one = { heat: 40, energyJ: 2 }
    // 2 J·(1/√0.5 + 1/√0.25) over a peak of 40 W·√s
    expect(repeatFactor(one, one, repeats)).toBeCloseTo(1 + (2 * (Math.SQRT2 + 2)) / 40, 12)
    expect(repeatFactor(one, { heat: 10, energyJ: 0.5 }, repeats)).toBe(1)
  })

  it('nests trains: two bursts of two pulses leave what the times between each pulse and the last say', () => {
    const { first, later } = spreadOfTrain([
      { count: 2, spacingSec: 1 },
      { count: 2, spacingSec: 9 },
    ])
    // pulses at 0, 1, 9 and 10 s: 10, 9 and 1 s before the last
    expect(first).toBeCloseTo(1 / Math.sqrt(10), 12)
    expect(later).toBeCloseTo(1 / 3 + 1, 12)
  })
})
