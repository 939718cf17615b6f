/** Answers that random windows refuted once, cut down to what shows it. */
import { describe, expect, it } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { run, si } from '../../support/run-check.ts'

/** Parts exactly as marked, without parasitics: what is left is the formula. */
const IDEAL = {
  toleranceFrac: '0',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  ageingFracPerDecade: '0',
  esrOhm: '0',
  eslH: '0',
  dcrOhm: '0',
  inductorParallelF: '0',
  bondOhm: '0',
  bondH: '0',
  suppressorF: '0',
  existingF: '0',
}

describe('what is already on the line', () => {
  const asked = {
    ...IDEAL,
    lineKind: 'power-115-vac-400',
    topology: 'C',
    frequencyHz: '652k',
    neededDb: '3.12',
    sourceOhm: '50',
    loadOhm: '3.5',
    chassisLimitA: '134m',
  }

  it('earns no attenuation: the least is the same with it and without', () => {
    // C ≥ √(10^(A/10) − 1)/(ω·Rs·Rl/(Rs + Rl)), a shunt capacitor by itself
    const leastF = Math.sqrt(10 ** 0.312 - 1) / (2 * Math.PI * 652e3 * ((50 * 3.5) / 53.5))
    expect(si(run(windowCheck, asked), 'leastCapacitanceF')).toBeCloseTo(leastF, 12)
    const beside = si(run(windowCheck, { ...asked, existingF: '22.2n' }), 'leastCapacitanceF') ?? 0
    expect(beside).toBeGreaterThan(leastF * (1 - 1e-6))
  })
})

describe('a stretch of marks between a resonance of the box and the need', () => {
  it('is found though its end closes in slowly', () => {
    const answer = run(windowCheck, {
      ...IDEAL,
      lineKind: 'sensor-low-level',
      topology: 'PI',
      frequencyHz: '78.9M',
      neededDb: '62.2',
      sourceOhm: '50',
      sourceH: '4.27u',
      loadOhm: '50',
      inductanceH: '83.3u',
      eslH: '7.71n',
      suppressorF: '890p',
    })
    expect(answer.verdict).not.toBe('fails')
    expect(si(answer, 'proposedF')).toBeDefined()
  })
})

describe('a limit of the user’s own that lacks a fact', () => {
  const pullUp = { lineKind: 'i2c-fast-plus', signalOhm: '500', ownPhaseDeg: '13.6' }

  it('is not known in the window until the frequency it counts at is entered', () => {
    const asked = {
      ...IDEAL,
      ...pullUp,
      topology: 'C',
      inductanceH: '1u',
      frequencyHz: '151M',
      neededDb: '5',
      sourceOhm: '50',
      loadOhm: '50',
    }
    const answer = run(windowCheck, asked)
    expect(answer.verdict).toBe('unknown')
    expect(answer.findings.map(({ sentence }) => sentence).join(' ')).toContain('the highest useful frequency')
    expect(answer.asks).toEqual(['usefulHz'])
    expect(run(windowCheck, { ...asked, usefulHz: '100k' }).verdict).toBe('ok')
  })

  it('is not known in the loading either', () => {
    const asked = { ...pullUp, capacitanceF: '10p', suppressorF: '0', existingF: '0' }
    expect(run(loadingCheck, asked).verdict).toBe('unknown')
    expect(run(loadingCheck, { ...asked, usefulHz: '100k' }).verdict).toBe('ok')
  })
})

describe('a line over its document’s figure before the filter comes', () => {
  // 50 pF between the lines of a receiver: 3.34 nF across them is over it, whatever else is fitted
  const asked = { ...IDEAL, lineKind: 'arinc-429-low', crossF: '3.34n' }

  it('is no clean yes where nothing needs to come off', () => {
    const answer = run(windowCheck, {
      ...asked,
      topology: 'C',
      inductanceH: '1u',
      frequencyHz: '174M',
      neededDb: '0',
      sourceOhm: '50',
      loadOhm: '50',
    })
    expect(answer.verdict).toBe('marginal')
    expect(answer.findings.map(({ sentence }) => sentence).join(' ')).toContain('50 pF')
  })

  it('is no clean yes in the loading with next to nothing added', () => {
    expect(run(loadingCheck, { ...asked, capacitanceF: '0' }).verdict).toBe('marginal')
  })
})

describe('a coil that takes from the signal what a capacitor gives back', () => {
  it('is answered with that capacitor: in a matched line √(L/C) near the line’s impedance reflects little', () => {
    const asked = {
      ...IDEAL,
      lineKind: 'composite-video',
      topology: 'LC',
      frequencyHz: '271M',
      neededDb: '6.73',
      sourceOhm: '50',
      loadOhm: '50',
      inductanceH: '0.228u',
    }
    // |S11| of L alone in 75 Ω: x/√(x² + 4), x = ωL/Z0: 24.9 dB at 6 MHz, and 26 dB are asked
    const x = (2 * Math.PI * 6e6 * 0.228e-6) / 75
    expect(-20 * Math.log10(x / Math.hypot(x, 2))).toBeLessThan(26)
    const answer = run(windowCheck, asked)
    const valueF = si(answer, 'proposedF') ?? 0
    expect(answer.verdict).not.toBe('fails')
    // input impedance of the coil before the capacitor across 75 Ω
    const b = 2 * Math.PI * 6e6 * valueF
    const y2 = 1 / 75 ** 2 + b ** 2
    const [re, im] = [1 / 75 / y2, 2 * Math.PI * 6e6 * 0.228e-6 - b / y2]
    expect(20 * Math.log10(Math.hypot(re + 75, im) / Math.hypot(re - 75, im))).toBeGreaterThan(26)
  })
})

describe('the winding of a coil', () => {
  it('takes from the signal too', () => {
    // Two windings of R in a 90 Ω pair: 20·log10(1 + 2R/180), 1.0 dB of 11 Ω
    const asked = {
      ...IDEAL,
      lineKind: 'usb-low-speed',
      topology: 'L',
      frequencyHz: '300M',
      neededDb: '3',
      sourceOhm: '50',
      loadOhm: '50',
      inductanceH: '0.2u',
      ownLossDb: '1',
      usefulHz: '10k',
    }
    expect(run(windowCheck, { ...asked, dcrOhm: '10' }).verdict).not.toBe('fails')
    expect(run(windowCheck, { ...asked, dcrOhm: '12' }).verdict).toBe('fails')
  })
})

it('what is taken off the line may move a resonance into the noise: that is no opener', () => {
  // An inductor alone before 3.93 nF holds; before 0.73 nF it is 1.2 dB short at one of the two frequencies.
  const answer = run(windowCheck, {
    lineKind: 'sensor-low-level',
    topology: 'L',
    mode: 'differential',
    frequencyHz: '7290000;471000',
    neededDb: '17.1;1.1',
    sourceOhm: '2.6;475',
    loadOhm: '6.5',
    inductanceH: '78.8u',
    suppressorF: '103p',
    existingF: '3.93n',
    crossF: '3.82n',
    toleranceFrac: '8.2 %',
    temperatureFrac: '15 %',
    biasFrac: '12 %',
    ageingDecades: '3.1',
    dcrOhm: '0.231',
    inductorParallelOhm: '84500',
    inductorParallelF: '4.98p',
  })
  expect(answer.verdict).toBe('fails')
  expect(answer.findings.map(({ sentence }) => sentence).join(' ')).not.toContain('off what is already on the line')
})
