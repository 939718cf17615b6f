/** Unequal legs in the window: a figure without a requirement, a bound with one. Truth: the closed form of two capacitors. */
import { describe, expect, it } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import type { Success } from '../../../src/calc/types.ts'
import { run, si } from '../../support/run-check.ts'

type Texts = Readonly<Record<string, string>>
const window = (texts: Texts): Success => run(windowCheck, texts)
const words = (result: Success): string =>
  [result.headline, ...result.findings.map(({ sentence }) => sentence)].join(' ').replaceAll('\u00a0', ' ')

const PAIR = {
  lineKind: 'rs-422',
  bitRateHz: '100k',
  topology: 'C',
  frequencyHz: '1M',
  neededDb: '3',
  sourceOhm: '100',
  loadOhm: '100k',
  toleranceFrac: '20 %',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  eslH: '0',
  esrOhm: '0',
  bondOhm: '0',
  bondH: '0',
  suppressorF: '0',
  existingF: '0',
}

/** Two legs of R between 2·Rs and 2·Rl: ω·R·|C1 − C2| over both their corners, against Rl/(Rs + Rl) of the common mode. */
function convertedDb(markedF: number): number {
  const ohm = (200 * 200e3) / 200_200
  const x = 2 * Math.PI * 1e6 * ohm * markedF
  return 20 * Math.log10((0.4 * x) / Math.hypot(1, 1.2 * x) / Math.hypot(1, 0.8 * x))
}

describe('the balance of the legs', () => {
  it('is a figure, not judged, where nothing says how much may become signal', () => {
    const answer = window(PAIR)
    expect(answer.verdict).toBe('ok')
    expect(si(answer, 'conversionDb')).toBeCloseTo(convertedDb(si(answer, 'proposedF') ?? 0), 6)
    expect(words(answer)).toContain('a figure, not judged')
  })

  it('is shown at the frequency that turns most, not at the first', () => {
    // the need at 1 MHz asks for the capacitor; at 100 kHz the same one turns a tenth as much
    const answer = window({ ...PAIR, frequencyHz: '100k; 1M', neededDb: '0.01; 3' })
    expect(si(answer, 'proposedF')).toBe(si(window(PAIR), 'proposedF'))
    expect(si(answer, 'conversionDb')).toBeCloseTo(convertedDb(si(answer, 'proposedF') ?? 0), 6)
    expect(words(answer)).toMatch(/at 1 MHz: a figure, not judged|1 MHz/u)
  })

  it('is a bound where a requirement is entered: small capacitors and large ones hold it, those between do not', () => {
    // 1.2 and 0.8 of 2.2 nF turn −14 dB at most; the requirement is met below and above a stretch around it.
    const limitDb = -20
    const from = crossing((farads) => convertedDb(farads) - limitDb, 1e-11, 5e-10)
    const to = crossing((farads) => convertedDb(farads) - limitDb, 1e-9, 1e-7)
    const answer = window({ ...PAIR, neededDb: '6', mostConversionDb: String(limitDb), ownCeilingF: '1u' })
    const said = answer.bounds.find(({ id }) => id === 'pair-conversion')
    expect(said?.side).toBe('least')
    expect((said?.markedF ?? 0) / to).toBeCloseTo(1, 6)
    // A need of so little that a small one would do ends at the other side of it.
    const small = window({
      ...PAIR,
      neededDb: '0.01',
      mostConversionDb: String(limitDb),
      ownCeilingF: '1u',
      maxBuildableF: '300p',
    })
    expect(si(small, 'proposedF')).toBeLessThan(from)
  })

  it('fails what turns too much, in words with both figures', () => {
    const answer = window({ ...PAIR, mostConversionDb: '-60' })
    expect(answer.verdict).toBe('fails')
    const held = window({ ...PAIR, mostConversionDb: '-60', toleranceFrac: '0' })
    expect(held.verdict).toBe('ok')
    const over = window({
      ...PAIR,
      topology: 'L',
      inductanceH: '100u',
      neededDb: '1',
      mostConversionDb: '-60',
      sourceOhm: '10',
      loadOhm: '50',
    })
    expect(words(over)).toMatch(
      /of the common mode becomes signal at 1 MHz, over the -60 dB allowed|over the −60 dB allowed/u,
    )
  })

  it('is not asked of differential noise, which is signal already', () => {
    const answer = window({ ...PAIR, mode: 'differential', frequencyHz: '30M', mostConversionDb: '-90' })
    expect(si(answer, 'conversionDb')).toBeUndefined()
    expect(answer.verdict).not.toBe('fails')
  })
})

function crossing(excess: (farads: number) => number, low: number, high: number): number {
  let [a, b] = [low, high]
  for (let k = 0; k < 200; k++) {
    const middle = Math.sqrt(a * b)
    if (excess(middle) > 0 === excess(a) > 0) a = middle
    else b = middle
  }
  return Math.sqrt(a * b)
}

it('asks nothing of a choke with equal windings where nothing has to come off, however strict', () => {
  const nothing = { ...PAIR, neededDb: '0', chokeH: '184u', chokeF: '0', mostConversionDb: '-150' }
  const answer = window({ ...nothing, bitRateHz: '10k', chokeLeakageH: '1u' })
  expect(answer.verdict).not.toBe('fails')
})
