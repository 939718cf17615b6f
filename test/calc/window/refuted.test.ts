/** Answers that random windows refuted once, cut down to what shows it. */
import { describe, expect, it } from 'vitest'
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
