/** What a resonance does to the noise beside the need. Truth: the closed form of one inductance and one capacitance. */
import { describe, expect, it } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { lcGainDb } from '../../support/lc-gain.ts'
import { run, si } from '../../support/run-check.ts'

const LINE = {
  lineKind: 'discrete-28v',
  frequencyHz: '10M',
  neededDb: '20',
  sourceOhm: '1',
  loadOhm: '10k',
  bondOhm: '0',
  bondH: '0',
  eslH: '0',
  esrOhm: '0',
  suppressorF: '0',
  existingF: '0',
  biasFrac: '0',
}
const told = (texts: Readonly<Record<string, string>>) => {
  const answer = run(windowCheck, { ...LINE, ...texts })
  const sentence = answer.findings.find((one) => one.sentence.includes('lifts the noise'))?.sentence
  return { answer, sentence: sentence?.replaceAll('\u00a0', ' ') }
}

/** |V| at resonance into R in parallel: 1/(R/Z0 + Z0/Rl), Z0 = √(L/C). */
function gainDb(henries: number, farads: number): number {
  const z = Math.sqrt(henries / farads)
  return 20 * Math.log10(1 / (1 / z + z / 10e3))
}
const resonanceMHz = (henries: number, farads: number) => 1 / (2 * Math.PI * Math.sqrt(henries * farads)) / 1e6

describe('a resonance between the noise ends', () => {
  it.each([
    ['of the part with the inductance of the source', { topology: 'C', sourceH: '10u' }],
    ['inside the filter', { topology: 'LC', inductanceH: '10u', inductorParallelF: '0', dcrOhm: '0' }],
  ])('%s is told with its frequency and its gain', (_what, texts) => {
    const { answer, sentence } = told(texts)
    const farads = si(answer, 'proposedF') as number
    const said = /Near ([\d.]+) MHz .* by ([\d.]+) dB/u.exec(sentence ?? '')
    expect(Number(said?.[1])).toBeCloseTo(resonanceMHz(10e-6, farads), 1)
    expect(Number(said?.[2]) - gainDb(10e-6, farads)).toBeGreaterThanOrEqual(-0.01)
    expect(Number(said?.[2]) - gainDb(10e-6, farads)).toBeLessThan(0.3)
  })

  it('of parts at an end of their tolerance is told where those as marked do not reach it', () => {
    const { answer, sentence } = told({
      ...{ topology: 'LC', inductanceH: '2.2u', inductorParallelF: '0', dcrOhm: '0', neededDb: '30' },
      ...{ sourceOhm: '10', loadOhm: '80', toleranceFrac: '20 %', temperatureFrac: '0', ageingDecades: '0' },
    })
    const farads = si(answer, 'proposedF') as number
    const gain = (ofFarads: number, ofHenries: number) =>
      lcGainDb({ sourceOhm: 10, loadOhm: 80, inductanceH: ofHenries * 2.2e-6, capacitanceF: ofFarads * farads })
    // an inductor of 20 % that is 2.2 µH at least is 3.3 µH at most
    const most = Math.max(...[0.8, 1.2].flatMap((ofFarads) => [1, 1.5].map((ofHenries) => gain(ofFarads, ofHenries))))
    expect(gain(1, 1)).toBeLessThan(3)
    expect(most).toBeGreaterThan(3.5)
    const said = Number(/lifts the noise by up to ([\d.]+) dB, with parts at an end/u.exec(sentence ?? '')?.[1])
    expect(said).toBeGreaterThanOrEqual(most - 0.001)
    expect(said).toBeLessThan(most + 0.01)
    // a yes names what it does elsewhere
    expect(answer.headline.replaceAll('\u00a0', ' ')).toContain(`; but it lifts the noise by up to ${said} dB near `)
  })

  it('is told as what damping leaves of it', () => {
    const [dampOhm, dampF] = [100, 2.2e-9]
    const plain = { topology: 'LC', inductanceH: '10u', inductorParallelF: '0', dcrOhm: '0' }
    const damped = told({ ...plain, dampOhm: String(dampOhm), dampF: String(dampF) })
    const farads = si(damped.answer, 'proposedF') as number
    // |H| of (Rs + Rl)/Rl / (1 + (Rs + jωL)·(1/Rl + jωC + jωCd/(1 + jωRCd)))
    const gain = (hz: number) => {
      const w = 2 * Math.PI * hz
      const x = w * dampOhm * dampF
      const [g, b] = [1 / 10e3 + (w * dampF * x) / (1 + x * x), w * farads + (w * dampF) / (1 + x * x)]
      const [r, i] = [1, w * 10e-6]
      return 20 * Math.log10(10001 / 10000 / Math.hypot(1 + r * g - i * b, r * b + i * g))
    }
    const most = Math.max(...Array.from({ length: 4001 }, (_, at) => gain(1e5 * 10 ** (at / 2000))))
    expect(most).toBeGreaterThan(3)
    expect(gainDb(10e-6, farads) - most).toBeGreaterThan(10)
    const said = Number(/lifts the noise by ([\d.]+) dB/u.exec(damped.sentence ?? '')?.[1])
    expect(said).toBeGreaterThanOrEqual(most - 0.001)
    expect(said).toBeLessThan(most + 0.1)
  })

  it('is not where the ends damp it, nor without anything to resonate with', () => {
    expect(told({ topology: 'C' }).sentence).toBeUndefined()
    expect(
      told({ topology: 'LC', inductanceH: '1u', sourceOhm: '50', loadOhm: '50', inductorParallelF: '0' }).sentence,
    ).toBeUndefined()
    expect(told({ topology: 'C' }).answer.headline).not.toContain('lifts')
  })
})
