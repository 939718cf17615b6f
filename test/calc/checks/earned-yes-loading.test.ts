/** What the signal side must not say yes to. */
import { describe, expect, it } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { faradsForReturnLoss } from '../../../src/calc/loading/return-loss.ts'
import { run, si } from '../../support/run-check.ts'

const load = (texts: Record<string, string>) => run(loadingCheck, { suppressorF: '0', existingF: '0', ...texts })
const words = (texts: Record<string, string>) =>
  load(texts)
    .findings.map(({ sentence }) => sentence)
    .join(' ')

describe('100BASE-TX', () => {
  const fast = { lineKind: 'ethernet-100base-tx' }

  it('stands what its mask leaves over the whole cable range the document names: 24 pF a leg, not 26.5', () => {
    // 16 dB at 30 MHz and 10 dB at 80 MHz against 115 Ω on a 100 Ω line, two legs in series: the tighter of the two.
    const at = (db: number, hz: number) => faradsForReturnLoss({ db, hz, loadOhm: 100, referenceOhm: 115 })
    expect(si(load(fast), 'mostCapacitanceF')).toBeCloseTo(2 * Math.min(at(16, 30e6), at(10, 80e6)), 15)
    expect(si(load(fast), 'mostCapacitanceF')).toBeCloseTo(24.2e-12, 13)
    expect(load({ ...fast, capacitanceF: '25p' }).verdict).toBe('fails')
    expect(load({ ...fast, capacitanceF: '24p' }).verdict).not.toBe('fails')
  })

  it('says that transceiver and magnetics share it', () => {
    expect(words({ ...fast, capacitanceF: '5p' })).toContain('which transceiver and magnetics share')
    expect(words({ ...fast, capacitanceF: '5p' })).toContain('cable range its document names')
  })

  it('is judged over that range with an inductor too', () => {
    // 68 nH before 2 pF in each leg keeps the mask against 100 Ω by 0.4 dB and misses it against 85 Ω by as much.
    expect(load({ ...fast, capacitanceF: '2p', inductanceH: '68n' }).verdict).toBe('fails')
    expect(load({ ...fast, capacitanceF: '2p', inductanceH: '47n' }).verdict).toBe('ok')
  })
})

describe('an inductor', () => {
  it('beside a capacitance on 100BASE-TX breaks the mask: every reason is listed', () => {
    const said = words({ lineKind: 'ethernet-100base-tx', capacitanceF: '2p', inductanceH: '22u' })
    expect(said).toContain('the mask asks')
    expect(load({ lineKind: 'ethernet-100base-tx', capacitanceF: '2p', inductanceH: '22u' }).verdict).toBe('fails')
  })

  it('slows the edge by ln 9·L/(Rs + Rl), and over the share of a bit it fails', () => {
    // RS-422 at 10 Mbit/s leaves 30 ns: 2.197 · 2 · 1.2 µH / 200 Ω = 26.4 ns with one coil in each leg, 52.7 ns with two.
    const fast = { lineKind: 'rs-422', bitRateHz: '10M', capacitanceF: '47p', inductanceH: '1.2u' }
    expect(load({ ...fast, topology: 'LC' }).verdict).toBe('ok')
    expect(load({ ...fast, topology: 'T' }).verdict).toBe('fails')
    expect(words({ ...fast, topology: 'T' })).toContain('its own edge takes 52.7')
  })

  it('rings at the lowest resistance its kind may have, where none was entered: R/2·√(C/L) = 0.158 at 1 kΩ', () => {
    // 20 kΩ, the top of the range that counts for room, would damp the same coil by 3.16
    const slow = { lineKind: 'discrete-28v', topology: 'LC', capacitanceF: '10n', inductanceH: '100m' }
    expect(load(slow).verdict).toBe('marginal')
    expect(words(slow)).toMatch(/rings near 5\.03.kHz \(damping 0\.16 at worst/u)
    expect(load({ ...slow, signalOhm: '20k' }).verdict).toBe('ok')
    expect(load({ ...slow, signalOhm: '1k' }).verdict).toBe('marginal')
  })

  it('turns a carrier with its capacitance: more than a degree fails', () => {
    // ω²·2L·C/2 = 0.253 at 400 Hz: atan(ω·R·C/2 / (1 − 0.253)) = 1.16°, without the coil 0.86°.
    const synchro = { lineKind: 'synchro', capacitanceF: '40n' }
    expect(load(synchro).verdict).toBe('ok')
    expect(load({ ...synchro, inductanceH: '1' }).verdict).toBe('fails')
    expect(words({ ...synchro, inductanceH: '1' })).toContain('the carrier turns by')
  })

  it('takes from the impedance of a terminal what its reactance is', () => {
    // 1/(2π · 1 MHz · 50 pF) = 3183 Ω, less 2π · 1 MHz · 2 · 180 µH = 2262 Ω, leaves 921 of 1000 Ω.
    const stub = { lineKind: 'mil-std-1553-stub', capacitanceF: '100p', signalOhm: '35' }
    expect(load(stub).verdict).toBe('ok')
    expect(load({ ...stub, inductanceH: '180u' }).verdict).toBe('fails')
    expect(words({ ...stub, inductanceH: '180u' })).toContain('the terminal is 921')
  })

  it('between two capacitances lifts the signal although the section they make together is damped', () => {
    // All 1.1 nF behind 1 µH from 60 Ω: ζ = 1.0. But 1 nF before the coil and 100 pF behind it ring.
    const can = { lineKind: 'can', bitRateHz: '50k', inductanceH: '500n', capacitanceF: '200p', existingF: '1n' }
    expect(si(load(can), 'damping')).toBeGreaterThan(0.7)
    expect(load({ ...can, existingF: '0', capacitanceF: '2n' }).verdict).toBe('marginal')
    expect(words(can)).toContain('a resonance lifts the signal')
    expect(load(can).verdict).toBe('marginal')
  })
})

describe('a yes over the tolerance of the part', () => {
  // From 600 Ω into a high impedance the damping is R/(2·√(L/C)): 0.72 as entered, 0.53 at the corner of ±20 %.
  const audio = { lineKind: 'audio', signalOhm: '600', capacitanceF: '2n', inductanceH: '347u' }

  it('is labelled as being for the part as entered where none was entered', () => {
    expect(load(audio).verdict).toBe('ok')
    expect(load(audio).headline).toContain('as entered')
    expect(words(audio)).toContain('Judged for the part as entered')
  })

  it('is no yes where a corner rings', () => {
    const result = load({ ...audio, toleranceFrac: '20 %' })
    expect(result.verdict).toBe('marginal')
    expect(words({ ...audio, toleranceFrac: '20 %' })).toContain('damping 0.53 at worst')
    expect(si(result, 'damping')).toBeCloseTo(0.72, 2)
  })

  it('counts the most a part can be against the ceiling', () => {
    // 0.5 dB at 20 kHz through 600 Ω leaves 4.64 nF
    expect(load({ lineKind: 'audio', capacitanceF: '4n' }).verdict).toBe('ok')
    expect(load({ lineKind: 'audio', capacitanceF: '4n', toleranceFrac: '20 %' }).verdict).toBe('fails')
  })
})

describe('ARINC 429', () => {
  it('names the slowest legal driver wherever its ceiling is used, until the edge is entered', () => {
    const line = { lineKind: 'arinc-429-high', existingF: '0', suppressorF: '0' }
    const noise = { frequencyHz: '30M', neededDb: '20', sourceOhm: '50', loadOhm: '100', topology: 'C' }
    const said = (texts: Record<string, string>) =>
      run(windowCheck, texts)
        .findings.map(({ sentence }) => sentence)
        .join(' ')
    expect(words({ lineKind: 'arinc-429-high', capacitanceF: '47p' })).toMatch(
      /slowest legal driver, 2.µs, leaves no room/u,
    )
    expect(said({ ...line, ...noise })).toMatch(/slowest legal driver, 2.µs, leaves no room/u)
    expect(said({ ...line, ...noise, driverEdgeSec: '1.6u' })).not.toContain('slowest legal driver')
  })
})
