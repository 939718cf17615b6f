/** Second opinion for the parts no reference circuit has: hand-written equations stepped by Runge–Kutta, step far below every time constant. */
import { describe, expect, it } from 'vitest'
import type { SurgeCircuit } from '../../../src/calc/surge/circuit.ts'
import { type Shape, shapeOf } from '../../../src/calc/surge/shape.ts'
import { peakOf } from '../../../src/calc/surge/trace.ts'
import { waveformById } from '../../../src/reference/waveforms.ts'
import { runSurge } from '../../support/surge-deck.ts'

const wf6: Shape = shapeOf(waveformById('wf6')?.shape ?? { form: 'lines', points: [] })

/** Forward 1 V and 0.02 Ω, 1e-7 S of leakage. */
function junction(v: number, breakdownV: number, ohm: number): number {
  const leak = 1e-7 * v
  if (v > breakdownV) return leak + (v - breakdownV) / ohm
  return v < -1 ? leak + (v + 1) / 0.02 : leak
}

/** Classic fourth-order steps; `see` is called with every state. */
function rungeKutta(
  slope: (t: number, x: readonly number[]) => number[],
  size: number,
  stepSec: number,
  endSec: number,
  see: (x: readonly number[]) => void,
): void {
  let x: number[] = Array.from({ length: size }, () => 0)
  const plus = (a: readonly number[], b: readonly number[], h: number) => a.map((v, i) => v + h * (b[i] ?? 0))
  for (let t = 0; t < endSec; t += stepSec) {
    const k1 = slope(t, x)
    const k2 = slope(t + stepSec / 2, plus(x, k1, stepSec / 2))
    const k3 = slope(t + stepSec / 2, plus(x, k2, stepSec / 2))
    const k4 = slope(t + stepSec, plus(x, k3, stepSec))
    x = x.map((v, i) => v + (stepSec / 6) * ((k1[i] ?? 0) + 2 * (k2[i] ?? 0) + 2 * (k3[i] ?? 0) + (k4[i] ?? 0)))
    see(x)
  }
}

const close = (got: number, wanted: number) =>
  expect(Math.abs(got / wanted - 1), `${got} against ${wanted}`).toBeLessThan(2e-4)

describe('a second solver', () => {
  it('agrees on an unequal Pi with line, lead and junction capacitance', () => {
    const of: SurgeCircuit = {
      source: { form: 'voltage', peak: 317, ohm: 4.3 },
      lineOhm: 0.2,
      lineH: 1.7e-6,
      filter: {
        topology: 'PI',
        capacitanceF: 61e-9,
        capacitance2F: 23e-9,
        inductanceH: 3.3e-6,
        inductance2H: 0,
        dcrOhm: 0.09,
      },
      suppressor: { breakdownV: 29.3, dynamicOhm: 0.31, bidirectional: false, capacitanceF: 5.1e-9, leadH: 21e-9 },
      placement: 'connector',
      loadOhm: 730,
      loadF: 1.9e-9,
    }
    let [load, connector, amps, least] = [0, 0, 0, 0]
    rungeKutta(
      (t, [line = 0, v1 = 0, coil = 0, v2 = 0, lead = 0, vd = 0]) => {
        return [
          (317 * wf6.at(t) - 4.5 * line - v1) / 1.7e-6,
          (line - coil - lead) / 61e-9,
          (v1 - v2 - 0.09 * coil) / 3.3e-6,
          (coil - v2 / 730) / (23e-9 + 1.9e-9),
          (v1 - vd) / 21e-9,
          (lead - junction(vd, 29.3, 0.31)) / 5.1e-9,
        ]
      },
      6,
      0.1e-9,
      12e-6,
      ([, v1 = 0, , v2 = 0, , vd = 0]) => {
        load = Math.max(load, Math.abs(v2))
        connector = Math.max(connector, Math.abs(v1))
        amps = Math.max(amps, junction(vd, 29.3, 0.31))
        least = Math.min(least, junction(vd, 29.3, 0.31))
      },
    )
    const trace = runSurge(of, wf6)
    close(peakOf(trace.sec, trace.loadV).value, load)
    close(peakOf(trace.sec, trace.connectorV).value, connector)
    close(peakOf(trace.sec, trace.clampA).value, Math.max(amps, -least))
  })

  it('agrees on an unequal T with the suppressor behind it', () => {
    const of: SurgeCircuit = {
      source: { form: 'voltage', peak: 530, ohm: 7.1 },
      lineOhm: 0,
      lineH: 0.6e-6,
      filter: {
        topology: 'T',
        capacitanceF: 37e-9,
        capacitance2F: 0,
        inductanceH: 2.1e-6,
        inductance2H: 5.7e-6,
        dcrOhm: 0.13,
      },
      suppressor: { breakdownV: 17.9, dynamicOhm: 0.42, bidirectional: false, capacitanceF: 2.3e-9, leadH: 0 },
      placement: 'behind',
      loadOhm: 91,
      loadF: 0.7e-9,
    }
    let [load, middle, amps] = [0, 0, 0]
    rungeKutta(
      (t, [first = 0, vm = 0, second = 0, v2 = 0]) => [
        (530 * wf6.at(t) - 7.23 * first - vm) / 2.7e-6,
        (first - second) / 37e-9,
        (vm - v2 - 0.13 * second) / 5.7e-6,
        (second - v2 / 91 - junction(v2, 17.9, 0.42)) / 3e-9,
      ],
      4,
      0.1e-9,
      12e-6,
      ([, vm = 0, , v2 = 0]) => {
        load = Math.max(load, Math.abs(v2))
        middle = Math.max(middle, Math.abs(vm))
        amps = Math.max(amps, junction(v2, 17.9, 0.42))
      },
    )
    const trace = runSurge(of, wf6)
    close(peakOf(trace.sec, trace.loadV).value, load)
    close(peakOf(trace.sec, trace.middleV).value, middle)
    close(peakOf(trace.sec, trace.clampA).value, amps)
  })
})
