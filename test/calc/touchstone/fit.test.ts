import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { logGrid, lossDb } from '../../../src/calc/network/chain.ts'
import { BENCH_LOAD, BENCH_SOURCE } from '../../../src/calc/network/circuit.ts'
import { circuitOfParts, type FittedParts, fitFilter, fitImpedance } from '../../../src/calc/touchstone/fit.ts'
import { chainOf, networkOf } from '../../../src/calc/touchstone/model.ts'
import { readTouchstone } from '../../../src/calc/touchstone/read.ts'
import { chainLossDb } from '../../../src/calc/touchstone/two-port.ts'
import type { Network } from '../../../src/calc/touchstone/types.ts'
import { writeTouchstone } from '../../../src/calc/touchstone/write.ts'

const PARTS: FittedParts = {
  topology: 'PI',
  capacitanceF: 4.7e-9,
  capacitance2F: 10e-9,
  esrOhm: 0.05,
  eslH: 0.8e-9,
  inductanceH: 1e-6,
  dcrOhm: 0.05,
  inductorParallelF: 2e-12,
  inductorParallelOhm: 3e3,
}

/** S of one capacitor with its lead across 50 Ω, by hand: S11 = −y/(2 + y), S21 = 2/(2 + y), y = 50/Z. */
function capacitorFile(farads: number, esrOhm: number, eslH: number): Network {
  const hz = logGrid(1e4, 1e9, 81)
  const re = new Float64Array(4 * hz.length)
  const im = new Float64Array(4 * hz.length)
  hz.forEach((f, k) => {
    const x = 2 * Math.PI * f * eslH - 1 / (2 * Math.PI * f * farads)
    const size = esrOhm ** 2 + x ** 2
    const [yRe, yIm] = [(50 * esrOhm) / size, (-50 * x) / size]
    const below = (2 + yRe) ** 2 + yIm ** 2
    const [tRe, tIm] = [(2 * (2 + yRe)) / below, (-2 * yIm) / below]
    for (const place of [0, 1, 2, 3]) {
      const isThrough = place === 1 || place === 2
      re[4 * k + place] = isThrough ? tRe : tRe - 1
      im[4 * k + place] = tIm
    }
  })
  return { parameter: 'S', portCount: 2, hz, re, im, referenceOhm: [50, 50] }
}

describe('a fit', () => {
  it('of a capacitor comes back with its lead, and the residual is nothing', () => {
    const [best] = atOnce(fitFilter(capacitorFile(10e-9, 0.05, 1.2e-9), ['C']))
    expect(best?.parts.capacitanceF).toBeCloseTo(10e-9, 13)
    expect(best?.parts.esrOhm).toBeCloseTo(0.05, 6)
    expect(best?.parts.eslH).toBeCloseTo(1.2e-9, 14)
    expect(best?.residualFrac).toBeLessThan(1e-6)
    expect(best?.worstDb).toBeLessThan(1e-4)
  })

  it('to a part that it is not says so in its residual', () => {
    const [best] = atOnce(fitFilter(capacitorFile(10e-9, 0.05, 1.2e-9), ['L']))
    expect(best?.residualFrac).toBeGreaterThan(0.1)
  })

  it('a capacitor is found from its impedance alone', () => {
    const hz = logGrid(1e4, 1e9, 101)
    const z = [...hz].map((f) => [0.05, 2 * Math.PI * f * 1.2e-9 - 1 / (2 * Math.PI * f * 10e-9)] as const)
    const network: Network = {
      parameter: 'Z',
      portCount: 1,
      hz,
      re: Float64Array.from(z, ([re]) => re),
      im: Float64Array.from(z, ([, im]) => im),
      referenceOhm: [50],
    }
    const [best] = atOnce(fitImpedance(network))
    expect(best?.parts.topology).toBe('C')
    expect(best?.parts.capacitanceF).toBeCloseTo(10e-9, 12)
    expect(best?.parts.eslH).toBeCloseTo(1.2e-9, 13)
  })
})

describe('what a measurement tells', () => {
  /** The same file read with an error of `frac` of full scale, the same at every run. */
  const noisy = (network: Network, frac: number): Network => {
    let seed = 7
    const error = () => {
      seed = (seed * 16807) % 2147483647
      return frac * (2 * (seed / 2147483647) - 1)
    }
    return { ...network, re: network.re.map((x) => x + error()), im: network.im.map((x) => x + error()) }
  }
  const upTo = (network: Network, mostHz: number): Network => {
    const count = network.hz.filter((hz) => hz <= mostHz).length
    return {
      ...network,
      hz: network.hz.slice(0, count),
      re: network.re.slice(0, 4 * count),
      im: network.im.slice(0, 4 * count),
    }
  }
  const fitted = (network: Network) => atOnce(fitFilter(network, ['C']))[0]

  it('is every part where it is exact, and its lead where it shows', () => {
    expect(fitted(capacitorFile(10e-9, 0.05, 1.2e-9))?.untold).toEqual([])
    expect(fitted(noisy(capacitorFile(10e-9, 0.05, 1.2e-9), 1e-4))?.untold).not.toContain('eslH')
  })

  it('is not the lead of a capacitor measured far below its resonance: 0.2 nH at 2 MHz is 2.5 mΩ', () => {
    const low = noisy(upTo(capacitorFile(1e-9, 0.05, 0.2e-9), 2e6), 1e-3)
    expect(fitted(low)?.untold).toContain('eslH')
    expect(fitted(low)?.parts.capacitanceF).toBeCloseTo(1e-9, 11)
    expect(fitted(low)?.untold).not.toContain('capacitanceF')
  })
})

describe('the model written as a file', () => {
  it('reads back as the loss the model has', () => {
    const circuit = { ...circuitOfParts(PARTS), bondOhm: 0.0025, bondH: 5e-9 }
    const hz = logGrid(1e4, 1e9, 31)
    const text = writeTouchstone(networkOf(circuit, hz, 50), { version: '1', unit: 'Hz', format: 'RI', comments: [] })
    const reading = atOnce(readTouchstone(text, { fileName: 'model.s2p' }))
    if (!reading.ok) throw new Error(reading.message)
    const { re, im } = reading.network
    hz.forEach((f, k) => {
      const loss = lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, f)
      expect(-20 * Math.log10(Math.hypot(re[4 * k + 2] as number, im[4 * k + 2] as number))).toBeCloseTo(loss, 9)
      expect(chainLossDb(chainOf(circuit, f), [5, 0], [1000, 0])).toBeCloseTo(
        lossDb(circuit, { ohm: 5, seriesH: 0 }, { ...BENCH_LOAD, ohm: 1000 }, f),
        9,
      )
    })
  })
})
