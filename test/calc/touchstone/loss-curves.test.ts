import { describe, expect, it } from 'vitest'
import { logGrid, lossDb } from '../../../src/calc/network/chain.ts'
import { BENCH_LOAD, BENCH_SOURCE } from '../../../src/calc/network/circuit.ts'
import { circuitOfParts } from '../../../src/calc/touchstone/fit.ts'
import { lossCurves } from '../../../src/calc/touchstone/loss-curves.ts'
import { networkOf } from '../../../src/calc/touchstone/model.ts'

const circuit = circuitOfParts({ topology: 'LC', capacitanceF: 1e-6, inductanceH: 10e-6, dcrOhm: 0.005, esrOhm: 0.005 })
const hz = logGrid(1e3, 1e7, 21)

describe('the loss of a measured filter', () => {
  it('on the bench and between other ends is that of the circuit it was written from', () => {
    const { benchDb, ownDb } = lossCurves(networkOf(circuit, hz, 50), [0.1, 5], 100)
    hz.forEach((f, k) => {
      expect(benchDb[k]).toBeCloseTo(lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, f), 8)
      const each = [0.1, 5].map((ohm) => lossDb(circuit, { ohm, seriesH: 0 }, { ...BENCH_LOAD, ohm: 100 }, f))
      expect(ownDb?.[k]).toBeCloseTo(Math.min(...each), 7)
    })
  })

  it('shows a gain that the bench hides', () => {
    // −23.56 dB at 50.329 kHz between 0.1 Ω and 100 Ω: circuit F11 of ngspice
    const { benchDb, ownDb } = lossCurves(networkOf(circuit, Float64Array.of(50_329), 50), [0.1], 100)
    expect(ownDb?.[0]).toBeCloseTo(-23.562858, 3)
    expect(benchDb[0]).toBeGreaterThan(0)
  })

  it('is the bench alone while an end is not known, and leaves 0 Hz out', () => {
    const network = networkOf(circuit, Float64Array.of(1e3, 1e4), 50)
    const withDc = { ...network, hz: Float64Array.of(0, 1e4) }
    const { hz: shown, ownDb } = lossCurves(withDc, [50], undefined)
    expect([...shown]).toEqual([1e4])
    expect(ownDb).toBeUndefined()
  })
})
