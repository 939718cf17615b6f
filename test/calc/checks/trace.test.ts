import { describe, expect, it } from 'vitest'
import { traceCheck } from '../../../src/calc/checks/trace/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { checkLine, resolve } from '../../../src/calc/line/resolver.ts'
import { lossDb } from '../../../src/calc/network/chain.ts'
import { BENCH_LOAD, BENCH_SOURCE } from '../../../src/calc/network/circuit.ts'
import { circuitOfParts } from '../../../src/calc/touchstone/fit.ts'
import type { Fact, FactKey, Line } from '../../../src/calc/types.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'
import { LEAD } from '../../support/trace-lead.ts'

function lineWith(facts: Readonly<Partial<Record<FactKey, string>>>): Line {
  const typed = Object.entries(facts).map(([key, text]): [string, Fact] => [key, { text, origin: { by: 'user' } }])
  return { id: 'line', name: '', gate: 'clear', trials: [], facts: Object.fromEntries(typed) }
}

const LEAD_FACTS = {
  traceHz: '150 kHz',
  traceDb: '105',
  traceUnit: 'dbuv',
  traceLimit: 'ce102-base',
  traceNominalV: '115',
  traceBandwidthHz: '10 kHz',
  traceDetector: 'peak',
} as const
const EXACT_PARTS = {
  lineKind: 'power-115-vac-400',
  noiseSourceOhm: '50',
  noiseLoadOhm: '50',
  toleranceFrac: '0 %',
  temperatureFrac: '0',
  biasFrac: '0',
  ageingDecades: '0',
  esrOhm: '0',
  eslH: '0',
  bondOhm: '0',
  bondH: '0',
  dcrOhm: '0',
  inductorParallelF: '0',
  saturationFrac: '0',
} as const

/** Typographic spaces as plain ones. */
const plain = (text: string) => text.replaceAll(/[\u00A0\u2009\u202F]/g, ' ')

const windowValues = (facts: Readonly<Partial<Record<FactKey, string>>>) => {
  const figures = resolve(lineWith(facts)).figures(windowCheck)
  if ('ok' in figures) throw new Error(JSON.stringify(figures))
  return figures.values
}

describe('how well a limit is known', () => {
  const said = (texts: Record<string, string>) => run(traceCheck, texts).findings.map(({ sentence }) => plain(sentence))

  it('names the standing of points, bandwidths and detectors beside the answer', () => {
    expect(said(LEAD)).toContain(
      'The points of MIL-STD-461 CE102, base curve (28 V) are from memory, the bandwidths of its method and the order of detectors from memory: the line of your test plan counts.',
    )
    expect(said({ ...LEAD, limit: 'en55022-b-quasi-peak', bandwidthHz: '9 kHz' }).join(' ')).toContain(
      'are read in the source, the bandwidths of its method and the order of detectors from memory',
    )
    const { neededDb } = run(traceCheck, LEAD).outputs
    const memories = neededDb?.basis.sources.filter(({ standing }) => standing === 'memory').map(({ id }) => id)
    expect(memories).toEqual(['mil-std-461', 'mil-std-461', 'cispr-16'])
  })

  it('says of each line that nobody could confirm that it is not there, and what to do instead', () => {
    for (const texts of [{}, { ...LEAD, limit: 'own' }])
      for (const name of ['RTCA DO-160 section 20', 'RTCA DO-160 section 21', 'MIL-STD-461 CE101', 'RE102 below 2 MHz'])
        expect(
          said(texts).filter((one) => one.includes(name) && one.includes('points are not confirmed')),
        ).toHaveLength(1)
    expect(said(LEAD).join(' ')).not.toContain('DO-160')
  })
})

describe('nothing must come off', () => {
  const points = (count: number) => Array.from({ length: count }, (_, i) => 1e6 * 10 ** (i / (count - 1)))
  const at = (hz: readonly number[], more: Readonly<Record<string, string>> = {}) =>
    run(traceCheck, {
      limit: 'own',
      ownHz: '1M;10M',
      ownDb: '60;60',
      traceUnit: 'dbuv',
      bandwidthHz: '10k',
      detector: 'peak',
      traceHz: hz.join(';'),
      traceDb: hz.map(() => '50').join(';'),
      ...more,
    })

  it('is a yes where the whole span of the limit was read', () => {
    // a decade in steps of 4.0 %
    const whole = at(points(60))
    expect(whole).toMatchObject({ verdict: 'ok' })
    // 50 dBµV under 60
    expect(plain(whole.headline)).toMatch(/^Nothing must come off: .*10 dB under .* margin kept\.$/u)
  })

  it.each([
    ['one point', [2e6]],
    ['both ends alone', [1e6, 10e6]],
    ['half', points(60).slice(0, 30)],
  ])('is none of the limit where %s of it was read', (_what, hz) => {
    const answer = at(hz)
    expect(answer.verdict).toBe('marginal')
    expect(plain(answer.headline)).toMatch(/^With care: nothing must come off at .* was not read\.$/u)
    expect(answer.findings.map(({ sentence }) => plain(sentence)).join(' ')).toContain(
      'reaches from 1 MHz to 10 MHz: nothing is said of what lies beside and between the points.',
    )
  })
})

describe('a lead over its limit', () => {
  it('has to lose 34.5361 dB: 28.5361 over, 6 dB margin', () => {
    const answer = run(traceCheck, LEAD)
    expect(si(answer, 'worstExcessDb')).toBeCloseTo(28.5361, 4)
    expect(si(answer, 'neededDb')).toBeCloseTo(34.5361, 4)
    expect(answer).toMatchObject({ verdict: 'ok', answers: 'number' })
    expect(plain(answer.headline)).toBe('34.6 dB must come off: worst 28.6 dB over the limit at 150 kHz, 6 dB margin.')
  })

  it.each([
    ['C', undefined, 2.26213e-6],
    ['LC', '100 µH', 1.0688e-6],
    ['LC', '47 µH', 1.70373e-6],
  ] as const)('%s with %s takes what the worked example says', (topology, inductanceH, farads) => {
    const values = windowValues({ ...LEAD_FACTS, ...EXACT_PARTS, topology, ...(inductanceH ? { inductanceH } : {}) })
    expect(values['leastCapacitanceF']).toBeCloseTo(farads, 10)
  })

  it.each([
    // what the worked example says of parts at 150 kHz between 50 Ω and 50 Ω, against the 34.5361 dB that are needed
    ['LC', 0, 100e-6, 1e-6, 33.9536],
    ['PI', 0.22e-6, 47e-6, 0.22e-6, 31.5266],
    ['PI', 0.47e-6, 47e-6, 0.47e-6, 45.827],
  ] as const)('%s of %d F, %d H, %d F gives %d dB', (topology, nearF, henries, farF, db) => {
    const circuit = circuitOfParts({
      topology,
      capacitanceF: topology === 'LC' ? farF : nearF,
      capacitance2F: farF,
      inductanceH: henries,
    })
    expect(lossDb(circuit, BENCH_SOURCE, BENCH_LOAD, 150e3)).toBeCloseTo(db, 4)
    // and the window says no to what falls short of it, yes to what does not
    const texts = { ...LEAD_FACTS, ...EXACT_PARTS, topology, inductanceH: `${henries} H`, ownCeilingF: '10 m' }
    const least = windowValues(texts)['leastCapacitanceF'] ?? 0
    expect(least <= farF).toBe(db >= 34.5361)
  })

  it('a choke in the line alone takes 5.6553 mH', () => {
    const values = windowValues({ ...LEAD_FACTS, ...EXACT_PARTS, topology: 'L', inductanceH: '1 mH' })
    expect(values['leastInductanceH']).toBeCloseTo(5.6553e-3, 7)
  })
})

describe('the window', () => {
  const two = { ...LEAD_FACTS, traceHz: '150 kHz; 2 MHz', traceDb: '105; 99', ...EXACT_PARTS, topology: 'C' } as const

  it('meets every point of a trace at once', () => {
    // 99 − 66 + 6 = 39 dB at 2 MHz: √(10^3.9 − 1)/(2π·2 MHz·25 Ω) is less than 150 kHz takes
    expect(windowValues(two)['leastCapacitanceF']).toBeCloseTo(2.26213e-6, 10)
    const steep = { ...two, traceDb: '105; 140' }
    expect(windowValues(steep)['leastCapacitanceF']).toBeCloseTo(Math.sqrt(10 ** 8 - 1) / (2 * Math.PI * 2e6 * 25), 9)
  })

  it('and what is typed beside it', () => {
    const typed = { ...two, noiseHz: '10 kHz', neededDb: '30' }
    expect(windowValues(typed)['leastCapacitanceF']).toBeCloseTo(Math.sqrt(10 ** 3 - 1) / (2 * Math.PI * 1e4 * 25), 9)
  })

  it('asks for no noise frequency where a trace has the need', () => {
    const { lineKind: _, ...noKind } = EXACT_PARTS
    const fields = resolve(lineWith({ ...LEAD_FACTS, ...noKind, noiseLoadOhm: '' })).fields(windowCheck)
    const given = Object.fromEntries(fields.map(({ key, value }) => [key, value]))
    expect(given['traceNeedHz']).toEqual([150e3])
    const texts = Object.fromEntries(fields.map(({ key, text }) => [key, text]))
    expect(run(windowCheck, texts).headline).toContain('the noise load')
    expect(run(windowCheck, texts).headline).not.toContain('the noise frequency')
  })
})

describe('a trace whose need is not known', () => {
  const steep = { ...LEAD_FACTS, ...EXACT_PARTS, topology: 'C', lineKind: 'discrete-28v', signalOhm: '10k' } as const
  const typed = { ...steep, noiseHz: '10 MHz', neededDb: '20', existingF: '0', suppressorF: '0' }
  const { traceHz: _, ...without } = typed
  const said = (facts: Record<string, string>) => {
    const result = checkLine(windowCheck, lineWith(facts))
    if (!result.ok) throw new Error(result.issues[0]?.message)
    return { verdict: result.verdict, headline: plain(result.headline) }
  }

  it.each([
    ['the bandwidth', { traceBandwidthHz: '' }],
    ['the detector', { traceDetector: '' }],
    ['the unit of its levels', { traceUnit: '' }],
    ['a level for each frequency', { traceDb: '105; 99' }],
    ['what another bandwidth reads', { traceHz: '200 kHz', traceBandwidthHz: '1 kHz' }],
    ['a detector that reads as much', { traceDetector: 'average' }],
  ] as const)('is not passed over where it lacks %s: no yes on what is typed alone', (_what, facts) => {
    expect(said(without).verdict).toBe('ok')
    const open = said({ ...typed, ...facts })
    expect(open.verdict).toBe('unknown')
    expect(open.headline).toContain('what the trace needs')
    expect(resolve(lineWith({ ...typed, ...facts })).fact('traceNeedDb')).toBeUndefined()
  })
})

describe('levels meet in one unit', () => {
  it('dBm into 50 Ω: 107 dB to dBµV', () => {
    const answer = run(traceCheck, { ...LEAD, traceUnit: 'dbm', traceDb: '-1.98970' })
    expect(si(answer, 'neededDb')).toBeCloseTo(34.5361, 4)
  })

  it('dBµA only across an impedance', () => {
    expect(issuesOf(traceCheck, { ...LEAD, traceUnit: 'dbua' })[0]).toMatch(/^impedanceOhm: The trace is in dBµA/)
    const answer = run(traceCheck, { ...LEAD, traceUnit: 'dbua', traceDb: '85', impedanceOhm: '10' })
    expect(si(answer, 'neededDb')).toBeCloseTo(34.5361, 4)
  })

  it('a voltage never against a field', () => {
    expect(issuesOf(traceCheck, { ...LEAD, limit: 're102-external' })[0]).toMatch(/^traceUnit: The trace is in dBµV/)
  })
})

describe('another bandwidth', () => {
  it('is refused until it is said what the emission is like', () => {
    expect(plain(issuesOf(traceCheck, { ...LEAD, bandwidthHz: '1 kHz', traceHz: '200 kHz' })[0] ?? '')).toBe(
      'bandwidthHz: At 200 kHz the method reads in 10 kHz, not in 1 kHz. Measure it again in that, or say whether the emission is narrowband, noise or impulsive.',
    )
  })

  it.each([
    ['narrowband', 0],
    ['noise', 10],
    ['impulsive', 20],
  ])('%s in a tenth of it is %d dB more', (emission, moreDb) => {
    const at = { ...LEAD, traceHz: '200 kHz', emission }
    const same = si(run(traceCheck, at), 'neededDb') ?? Number.NaN
    expect(si(run(traceCheck, { ...at, bandwidthHz: '1 kHz' }), 'neededDb')).toBeCloseTo(same + moreDb, 9)
  })

  it('needs to be said where a method has one', () => {
    const answer = run(traceCheck, { ...LEAD, bandwidthHz: '' })
    expect(answer).toMatchObject({ verdict: 'unknown', needs: { key: 'bandwidthHz' } })
    expect(answer.outputs['neededDb']?.cell.is).toBe('none')
    expect(si(answer, 'worstExcessDb')).toBeCloseTo(28.5361, 4)
  })
})

describe('another detector', () => {
  it('that reads less is refused', () => {
    expect(issuesOf(traceCheck, { ...LEAD, detector: 'average' })[0]).toMatch(
      /^detector: The limit is written for peak/,
    )
  })

  it('that reads more counts, and it is said', () => {
    const answer = run(traceCheck, { ...LEAD, limit: 'en55022-b-average', bandwidthHz: '9 kHz' })
    expect(si(answer, 'neededDb')).toBeCloseTo(105 - 56 + 6, 9)
    expect(answer.findings.some(({ sentence }) => sentence.includes('the need may be less'))).toBe(true)
  })
})

describe('a radiated trace', () => {
  const field = {
    traceHz: '50 MHz',
    traceDb: '40',
    traceUnit: 'dbuv-m',
    limit: 're102-external',
    bandwidthHz: '100 kHz',
    detector: 'peak',
  }

  it('is no need of this line until a clamp on its cable made the worst fall', () => {
    const answer = run(traceCheck, field)
    expect(answer).toMatchObject({ verdict: 'unknown', needs: { key: 'clamp' } })
    expect(si(answer, 'neededDb')).toBeUndefined()
    expect(si(answer, 'worstExcessDb')).toBeCloseTo(16, 9)
    expect(run(traceCheck, { ...field, clamp: 'not' }).headline).toContain('another cable or the box')
    expect(si(run(traceCheck, { ...field, clamp: 'dominates' }), 'neededDb')).toBeCloseTo(22, 9)
  })

  it('hands nothing to the window before', () => {
    const facts = {
      traceHz: '50 MHz',
      traceDb: '40',
      traceUnit: 'dbuv-m',
      traceLimit: 're102-external',
      traceBandwidthHz: '100 kHz',
      traceDetector: 'peak',
    }
    expect(resolve(lineWith(facts)).fact('traceNeedHz')).toBeUndefined()
    expect(resolve(lineWith({ ...facts, traceClamp: 'dominates' })).fact('traceNeedDb')).toMatchObject({
      text: '22 dB',
      origin: { by: 'check', check: 'trace' },
    })
  })
})

describe('susceptibility', () => {
  it('takes the upset level below what has to be withstood', () => {
    const answer = run(traceCheck, {
      traceHz: '2 MHz; 10 MHz',
      traceDb: '100; 120',
      traceUnit: 'dbua',
      limit: 'cs114-curve-5',
    })
    expect(si(answer, 'worstExcessDb')).toBeCloseTo(9, 9)
    expect(si(answer, 'neededDb')).toBeCloseTo(15, 9)
    expect(si(answer, 'worstAtHz')).toBe(2e6)
    expect(answer.headline).toContain('short of what has to be withstood')
  })
})

describe('a line of one’s own', () => {
  const own = {
    traceHz: '150 kHz; 548 kHz; 1 GHz',
    traceDb: '73; 66.5; 90',
    traceUnit: 'dbua',
    limit: 'own',
    ownHz: '150k; 2M; 30M',
    ownDb: '73; 40; 40',
  }

  it('is straight between its corners over the logarithm of frequency; what lies outside is not judged', () => {
    const answer = run(traceCheck, own)
    // 73 − 33·log(548/150)/log(2000/150) at 548 kHz
    const limit = 73 - (33 * Math.log(548 / 150)) / Math.log(2000 / 150)
    expect(si(answer, 'worstExcessDb')).toBeCloseTo(66.5 - limit, 9)
    expect(answer.findings[0]?.sentence).toBe('1 of 2 points is over the limit.')
    expect(answer.findings.some(({ sentence }) => sentence.startsWith('1 point lies outside the span'))).toBe(true)
  })

  it('is refused with lists that do not fit, or without two corners', () => {
    expect(issuesOf(traceCheck, { ...own, ownDb: '73; 40' })[0]).toBe(
      'ownDb: 2 levels for 3 corners; give one for each, separated by “;”.',
    )
    expect(issuesOf(traceCheck, { ...own, traceDb: '1; 2' })[0]).toBe(
      'traceDb: 2 levels for 3 frequencies; give one for each, separated by “;”.',
    )
    expect(issuesOf(traceCheck, { ...own, ownHz: '1M; 1M; 1M' })[0]).toMatch(/^ownHz: A line has at least two corners/)
    expect(run(traceCheck, { ...own, ownHz: '' }).headline).toContain('the corners of your line')
  })

  it('compares its own bandwidth and detector where they are entered', () => {
    expect(issuesOf(traceCheck, { ...own, ownBandwidthHz: '1 kHz', bandwidthHz: '10 kHz' })[0]).toMatch(/^bandwidthHz:/)
    expect(issuesOf(traceCheck, { ...own, ownDetector: 'peak', detector: 'rms' })[0]).toMatch(/^detector:/)
  })
})
