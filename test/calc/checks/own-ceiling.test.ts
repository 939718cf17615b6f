/** The user's own ceiling on any kind of line: farads, dB and degrees at a frequency, and that frequency itself. */
import { describe, expect, it } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { run, si } from '../../support/run-check.ts'

const load = (texts: Record<string, string>) => run(loadingCheck, { suppressorF: '0', existingF: '0', ...texts })
const most = (texts: Record<string, string>) => si(load(texts), 'mostCapacitanceF')

describe('an own ceiling', () => {
  it('in farads gives a line without a criterion its ceiling', () => {
    const line = { lineKind: 'not-listed', ownCeilingF: '2.2n' }
    expect(most(line)).toBeCloseTo(2.2e-9, 15)
    expect(load({ ...line, capacitanceF: '2n' }).verdict).toBe('ok')
    expect(load({ ...line, capacitanceF: '2.5n' }).verdict).toBe('fails')
    expect(load({ ...line, capacitanceF: '2.5n' }).headline).toMatch(/^2\.5.nF: no\. The line stands 2\.2.nF/u)
  })

  it('counts between the wires of a pair, and only tightens what the kind allows', () => {
    expect(most({ lineKind: 'arinc-429-high', ownCeilingF: '1n' })).toBeCloseTo(2e-9, 15)
    expect(most({ lineKind: 'arinc-429-high', ownCeilingF: '1m' })).toBe(most({ lineKind: 'arinc-429-high' }))
  })

  it('in dB or degrees counts at the highest useful frequency, through the signal resistance', () => {
    const line = { lineKind: 'not-listed', usefulHz: '100k', signalOhm: '1k' }
    // √(10^(dB/10) − 1)/(2π·f·R) and tan φ/(2π·f·R)
    expect(most({ ...line, ownLossDb: '1' })).toBeCloseTo(Math.sqrt(10 ** 0.1 - 1) / (2 * Math.PI * 1e8), 15)
    expect(most({ ...line, ownPhaseDeg: '2' })).toBeCloseTo(Math.tan(Math.PI / 90) / (2 * Math.PI * 1e8), 15)
    const asked = (texts: Record<string, string>) => load({ lineKind: 'not-listed', ownLossDb: '1', ...texts }).headline
    expect(asked({ usefulHz: '100k' })).toContain('needs the resistance the signal sees')
    expect(asked({ signalOhm: '1k' })).toContain('needs the highest useful frequency')
  })

  it('moves the frequency a kind is judged at', () => {
    // a voice line needs 6 kHz, not 20: 10/3 of the room
    const ratio = (most({ lineKind: 'audio', usefulHz: '6k' }) ?? 0) / (most({ lineKind: 'audio' }) ?? 1)
    expect(ratio).toBeCloseTo(20 / 6, 9)
  })

  it('is judged with a coil too', () => {
    const line = { lineKind: 'not-listed', usefulHz: '100k', signalOhm: '1k', ownPhaseDeg: '2', capacitanceF: '50p' }
    expect(load(line).verdict).toBe('ok')
    // ω²·L·C = 0.2: atan(0.0314/0.8) = 2.25°
    expect(load({ ...line, inductanceH: '10m' }).verdict).toBe('fails')
  })

  it('bounds the window of a line that had none, and is named there', () => {
    const noise = { frequencyHz: '30M', neededDb: '20', sourceOhm: '50', loadOhm: '50', topology: 'C' }
    const result = run(windowCheck, {
      lineKind: 'not-listed',
      suppressorF: '0',
      existingF: '0',
      ownCeilingF: '10n',
      ...noise,
    })
    expect(si(result, 'mostCapacitanceF')).toBeCloseTo(10e-9 / (1.2 * 1.15), 15)
    expect(result.bounds.find(({ id }) => id === 'own-ceiling')?.why).toContain('your own figure allows 10')
  })
})
