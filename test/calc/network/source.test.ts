/** A noise source of resistance, inductance and a capacitance across it: against admittances added, below and above resonance. */
import { expect, test } from 'vitest'
import { sourceImpedance } from '../../../src/calc/network/circuit.ts'

test.each([0.5, 1, 2])('10 Ω and 1 µH beside 1 nF at %s times their resonance', (times) => {
  const [ohm, seriesH, shuntF] = [10, 1e-6, 1e-9]
  const w = times / Math.sqrt(seriesH * shuntF)
  const branch = ohm * ohm + (w * seriesH) ** 2
  // 1/(R + jωL) + jωC
  const [sieRe, sieIm] = [ohm / branch, w * shuntF - (w * seriesH) / branch]
  const sie = sieRe * sieRe + sieIm * sieIm
  const [re, im] = sourceImpedance({ ohm, seriesH, shuntF }, w)
  expect(re * (sie / sieRe)).toBeCloseTo(1, 12)
  expect(im * (sie / -sieIm)).toBeCloseTo(1, 10)
})
