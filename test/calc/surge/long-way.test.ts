/** A bundle test on a cable nobody measured: its inductance rings with a capacitor at the connector. */
import { describe, expect, it } from 'vitest'
import { open, said, word } from '../../support/open-surge.ts'
import { si } from '../../support/run-check.ts'

// level 3 of waveform 2: 600 A and at most 300 V for the bundle; 5 % of it is 30 A, through 10 Ω
const BUNDLE =
  'waveform=wf2&bundleLevel=3&bundleShareFrac=5%25&topology=C&capacitanceF=10n&toleranceFrac=0&loadOhm=1M&busMaxV=0&capacitorWithstandV=1k'
const circuit = (more: string) => {
  const result = open(`${BUNDLE}&${more}`)
  return { verdict: word(result, 'circuitVerdict'), peakV: si(result, 'loadPeakV') ?? 0, result }
}

describe('the wire ahead of the connector in a bundle test', () => {
  it('rings with the capacitor as a series circuit does', () => {
    // 300 V through 10 Ω and 10 µH into 10 nF: ζ = (10/2)·√(10n/10µ) = 0.158, overshoot e^(−πζ/√(1−ζ²)) = 60.5 %
    const zeta = (10 / 2) * Math.sqrt(10e-9 / 10e-6)
    const stepV = 300 * (1 + Math.exp((-Math.PI * zeta) / Math.sqrt(1 - zeta ** 2)))
    const { peakV } = circuit('withstandV=1k&lineH=10u')
    // waveform 2 rises in 0.1 µs, as a step here, and falls to zero at 6.4 µs: the crest comes half a ring later
    const crestSec = Math.PI * Math.sqrt(10e-6 * 10e-9)
    expect(peakV).toBeLessThan(stepV)
    expect(peakV).toBeGreaterThan(stepV * (1 - crestSec / 6.3e-6))
    expect(circuit('withstandV=1k&lineH=0').peakV).toBeLessThan(301)
  })

  it('is asked for where some metres of it would take the yes back', () => {
    const peakV = circuit('withstandV=1k&lineH=10u').peakV
    const between = `withstandV=${Math.round((300 + peakV) / 2)}`
    expect(circuit(`${between}&lineH=0`).verdict).toBe('ok')
    const open = circuit(between)
    expect(open.verdict).toBe('unknown')
    expect(said(open.result)).toMatch(
      /The cable ahead of the connector is not known: at .* 10 µH of cable .*Enter its inductance\./u,
    )
    expect(open.result.headline).toContain('the inductance of the wire ahead of the connector')
    expect(circuit(`${between}&lineH=10u`).verdict).toBe('fails')
  })

  it('is not asked for where it decides nothing, nor of a pulse injected at the pin', () => {
    expect(circuit('withstandV=1k').verdict).toBe('ok')
    expect(circuit('withstandV=100').verdict).toBe('fails')
    const pin = open(
      BUNDLE.replace('bundleLevel=3&bundleShareFrac=5%25', 'level=3').replace('wf2', 'wf4').concat('&withstandV=330'),
    )
    expect(word(pin, 'circuitVerdict')).toBe('ok')
  })

  it('is searched together with the tolerances of the parts', () => {
    const wide = (more: string) => open(`${BUNDLE.replace('toleranceFrac=0', 'toleranceFrac=50%25')}&${more}`)
    const worstV = si(wide('withstandV=1k&lineH=10u'), 'worstLoadPeakV') ?? 0
    expect(worstV).toBeGreaterThan(1.02 * circuit('withstandV=1k&lineH=10u').peakV)
    expect(word(wide(`withstandV=${worstV / 1.01}`), 'circuitVerdict')).toBe('unknown')
    expect(word(wide(`withstandV=${worstV / 0.9}`), 'circuitVerdict')).toBe('ok')
  })

  it('is no plain yes where metres were entered as henries', () => {
    // 2 m is read as 2 mH: 2 km of wire at 1 µH a metre
    const metres = circuit('withstandV=373&lineH=2 m')
    expect(metres.verdict).toBe('marginal')
    expect(said(metres.result)).toContain('is that of 2 km of wire')
    expect(circuit('withstandV=1k&lineH=100u').verdict).toBe('ok')
  })

  it('is asked for by the capacitor too', () => {
    const peakV = circuit('withstandV=1k&lineH=10u').peakV
    const result = open(
      `${BUNDLE.replace('capacitorWithstandV=1k', `capacitorWithstandV=${Math.round((300 + peakV) / 2)}`)}&withstandV=1k`,
    )
    expect(word(result, 'capacitorVerdict')).toBe('unknown')
    expect(said(result)).toContain('a filter capacitor would see')
  })
})
