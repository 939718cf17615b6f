/**
 * Windows that said "ok" and were refuted: each has to say what is true. Truth: the loading judgement (mask, edge, band),
 * an independent nodal solver, closed forms (derived).
 */
import { describe, expect, test } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { type FilterCircuit, NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import type { StripRow, Success } from '../../../src/calc/types.ts'
import { nodalLossDb } from '../../support/nodal.ts'
import { run, si } from '../../support/run-check.ts'

type Texts = Readonly<Record<string, string>>

const window = (texts: Texts): Success => run(windowCheck, texts)
const NO_SPREAD = { toleranceFrac: '0', temperatureFrac: '0', biasFrac: '0', ageingDecades: '0' }
const IDEAL = { eslH: '0', bondOhm: '0', bondH: '0', inductorParallelF: '0' }
/** What a small part loses at voltage is not what these are about. */
const LARGE_PART = { biasFrac: '12 %' }
const NOTHING_ELSE = { suppressorF: '0', existingF: '0' }
const words = (result: Success): string =>
  [result.headline, ...result.findings.map(({ sentence }) => sentence)].join(' ').replaceAll('\u00a0', ' ')

function rowsOf(result: Success): readonly StripRow[] {
  const strip = result.pictures.find((picture) => picture.is === 'strip')
  if (!strip) throw new Error('no strip')
  return strip.rows
}

/** An opener as the address that would follow it. */
function opened(texts: Texts, { id, sentence }: { readonly id: string; readonly sentence: string }): Texts | undefined {
  const plain = sentence.replaceAll('\u00a0', ' ')
  const topology = /^(?:topology|inductance)-(.*)$/.exec(id)?.[1]
  if (id.startsWith('topology-') && topology) return { ...texts, topology }
  const henries = /with ([\d.]+ [nµm]?H) opens/u.exec(plain)?.[1]
  if (topology && henries) return { ...texts, topology, inductanceH: henries }
  if (id === 'part')
    return { ...texts, toleranceFrac: '5 %', temperatureFrac: '0.3 %', biasFrac: '0', ageingDecades: '0' }
  const less = /^([\d.]+) dB less/.exec(plain)?.[1]
  if (less) return { ...texts, neededDb: String(Number(texts['neededDb']) - Number(less) - 0.06) }
  return undefined
}

describe('an inductor and the signal', () => {
  const CHOKED = {
    lineKind: 'ethernet-100base-tx',
    frequencyHz: '30M',
    neededDb: '20',
    sourceOhm: '50',
    loadOhm: '75',
    inductanceH: '22u',
    suppressorF: '2p',
    existingF: '8.8p',
    toleranceFrac: '5 %',
    temperatureFrac: '0',
    biasFrac: '0',
    ageingDecades: '0',
  }

  test('22 µH in each leg of 100BASE-TX breaks the mask, whatever it does to the noise', () => {
    for (const topology of ['', 'L', 'LC', 'CL', 'PI', 'T'])
      expect(window({ ...CHOKED, topology }).verdict).toBe('fails')
    expect(words(window({ ...CHOKED, topology: 'L' }))).toMatch(/return loss is .* the mask asks 16 dB/)
    expect(words(window({ ...CHOKED, topology: 'L' }))).toContain('The inductor alone: no.')
    for (const { topology, state } of rowsOf(window(CHOKED)))
      if (topology !== 'C' && topology !== 'L') expect(state).not.toBe('open')
  })

  test('every row that is not refused is not refused by the loading check either', () => {
    let held = 0
    for (const lineKind of ['ethernet-100base-tx', 'rs-422', 'can', 'arinc-429-high', 'composite-video', 'microphone'])
      for (const inductanceH of ['10n', '470n', '22u'])
        for (const neededDb of ['3', '12']) {
          const texts = {
            lineKind,
            inductanceH,
            neededDb,
            bitRateHz: '1M',
            frequencyHz: '40M',
            sourceOhm: '50',
            loadOhm: '100',
          }
          for (const row of rowsOf(window({ ...texts, ...NO_SPREAD, ...IDEAL, ...NOTHING_ELSE }))) {
            if (row.verdict !== 'ok' && row.verdict !== 'marginal') continue
            if (row.topology === 'PI' || row.topology === 'T') continue
            held++
            const loaded = run(loadingCheck, {
              lineKind,
              bitRateHz: '1M',
              ...NOTHING_ELSE,
              capacitanceF: String(row.proposedF ?? 0),
              inductanceH: row.topology === 'C' ? '0' : inductanceH,
            })
            expect(loaded.verdict, `${lineKind} ${row.topology} ${inductanceH}`).not.toBe('fails')
          }
        }
    expect(held).toBeGreaterThan(20)
  })

  test('its damping is judged over the box of tolerances, not at the nominal part', () => {
    // A microphone works from 150 Ω into a high impedance: ζ = 75·√(C/L), least for the largest inductor and the least
    // capacitor: 1 nF·0.569 with 4 µH·1.5 has 0.73. With 6.8 µH·1.5 nothing up to 1 nF reaches 0.7.
    const mic = {
      lineKind: 'microphone',
      topology: 'LC',
      frequencyHz: '20M',
      neededDb: '18',
      sourceOhm: '150',
      loadOhm: '150',
      maxBuildableF: '1n',
      ...IDEAL,
      ...LARGE_PART,
      ...NOTHING_ELSE,
    }
    expect(window({ ...mic, inductanceH: '4u' }).verdict).toBe('ok')
    const ringing = window({ ...mic, inductanceH: '6.8u' })
    expect(ringing.verdict).toBe('marginal')
    const zeta = 75 * Math.sqrt(((si(ringing, 'proposedF') ?? 0) * 0.8 * 0.85 * 0.88 * 0.975 ** 2) / (6.8e-6 * 1.5))
    expect(words(ringing)).toContain(`damping ${zeta.toFixed(2)} at worst`)
  })

  test('no opener is shown that its own check refuses', () => {
    let followed = 0
    for (const texts of [
      {
        lineKind: 'ethernet-100base-tx',
        topology: 'C',
        frequencyHz: '30M',
        neededDb: '20',
        sourceOhm: '50',
        loadOhm: '75',
      },
      {
        lineKind: 'rs-422',
        bitRateHz: '10M',
        topology: 'C',
        frequencyHz: '120M',
        neededDb: '40',
        sourceOhm: '50',
        loadOhm: '100',
      },
      {
        lineKind: 'can',
        bitRateHz: '1M',
        topology: 'C',
        frequencyHz: '20M',
        neededDb: '20',
        suppressorF: '900p',
        sourceOhm: '10',
        loadOhm: '60',
      },
      { lineKind: 'microphone', topology: 'L', frequencyHz: '3M', neededDb: '30', sourceOhm: '50', loadOhm: '150' },
    ] as readonly Texts[]) {
      const shut = window(texts)
      expect(shut.verdict).toBe('fails')
      const openers = shut.bounds[0]?.openedBy ?? []
      for (const opener of openers) {
        const after = opened(texts, opener)
        if (!after) continue
        followed++
        expect(window(after).verdict, opener.sentence).not.toBe('fails')
      }
      const refused = rowsOf(shut)
        .filter(({ verdict }) => verdict === 'fails')
        .map(({ topology }) => `topology-${topology}`)
      for (const { id } of openers) expect(refused).not.toContain(id)
    }
    expect(followed).toBeGreaterThan(3)
    expect(
      words(
        window({
          lineKind: 'ethernet-100base-tx',
          topology: 'C',
          frequencyHz: '30M',
          neededDb: '20',
          sourceOhm: '50',
          loadOhm: '75',
        }),
      ),
    ).not.toMatch(/opens it: \d/)
  })
})

describe('the bond', () => {
  const TC = {
    lineKind: 'thermocouple',
    topology: 'C',
    frequencyHz: '1M;30M',
    neededDb: '30',
    sourceOhm: '50',
    loadOhm: '50',
    bondH: '8n',
  }

  test('carries both legs’ current in common mode: 24.48 dB at best, not 30.55', () => {
    // a large capacitor: 20·log10|1 + Rp/(jω·2·Lb)|, Rp = 2·50 ∥ 2·50
    const best = 20 * Math.log10(Math.hypot(1, 50 / (2 * Math.PI * 30e6 * 16e-9)))
    expect(Math.abs(best - 24.48)).toBeLessThan(0.1)
    const result = window({ ...TC, ...NOTHING_ELSE, eslH: '0', bondOhm: '0' })
    expect(result.verdict).toBe('fails')
    expect(words(result)).toContain(`${(30 - best).toFixed(2)} dB short`)
  })

  test('carries none in differential mode', () => {
    const at = (bondH: string) =>
      window({ ...TC, ...NOTHING_ELSE, eslH: '0', bondOhm: '0', mode: 'differential', bondH })
    expect(si(at('8n'), 'leastCapacitanceF')).toBe(si(at('0'), 'leastCapacitanceF'))
  })

  test('is what it is on a single line', () => {
    const least = (bondH: string) =>
      window({ ...TC, lineKind: 'power-28-vdc', ...NOTHING_ELSE, eslH: '0', bondOhm: '0', bondH })
    const best = 20 * Math.log10(Math.hypot(1, 25 / (2 * Math.PI * 30e6 * 8e-9)))
    expect(words(least('8n'))).toContain(`${(30 - best).toFixed(2)} dB short`)
  })
})

test('an inductor has its own capacitance: 22 µH at 100 MHz is 42.8 dB without it, 18.6 with 2 pF', () => {
  const texts = {
    lineKind: 'discrete-28v',
    topology: 'L',
    inductanceH: '22u',
    frequencyHz: '100M',
    neededDb: '30',
    sourceOhm: '50',
    loadOhm: '50',
    ...NO_SPREAD,
    ...NOTHING_ELSE,
  }
  const assumed = window(texts)
  expect(si(assumed, 'worstLossDb')).toBeCloseTo(42.8, 1)
  expect(assumed.verdict).toBe('unknown')
  expect(words(assumed)).toContain('inductor self-capacitance (taken as 0; 2p would turn it)')
  const real = window({ ...texts, inductorParallelF: '2p' })
  const w = 2 * Math.PI * 100e6
  const x = (w * 22e-6) / (1 - w * w * 22e-6 * 2e-12)
  expect(Math.abs((si(real, 'worstLossDb') ?? 0) - 20 * Math.log10(Math.hypot(1, x / 100)))).toBeLessThan(1e-6)
  expect(si(real, 'worstLossDb')).toBeCloseTo(18.6, 1)
  expect(real.verdict).toBe('fails')
})

describe('what stands at the ends', () => {
  const ENDS = { sourceOhm: '50', loadOhm: '1k' }
  const MIC = {
    lineKind: 'microphone',
    topology: 'T',
    inductanceH: '0.27u',
    suppressorF: '5.7p',
    existingF: '62p',
    frequencyHz: '123M',
    neededDb: '25',
    ...ENDS,
    ...NO_SPREAD,
    ...IDEAL,
  }

  /** The least loss with the suppressor (30 to 100 %) and the line's own capacitance at either end, by nodes. */
  function nodalWorst(farads: number): number {
    const part = { ...NO_SHUNT, capacitanceF: farads }
    const coil = { ...NO_SERIES, inductanceH: 0.27e-6 }
    const circuit: FilterCircuit = {
      topology: 'T',
      shunt1: part,
      shunt2: part,
      series1: coil,
      series2: coil,
      bondOhm: 0,
      bondH: 0,
    }
    const losses: number[] = []
    for (let step = -1; step <= 70; step++) {
      // without it, and from 30 to 100 % of it
      const s = step < 0 ? 0 : 5.7e-12 * (0.3 + step / 100)
      for (const suppressorAtLoad of [false, true])
        for (const existingAtLoad of [false, true]) {
          const load = { ohm: 1000, parallelF: existingAtLoad ? 62e-12 : 0, parallelH: Number.POSITIVE_INFINITY }
          const nodes = {
            sourceF: suppressorAtLoad ? 0 : s,
            loadF: suppressorAtLoad ? s : 0,
            sourceInBare: false,
            loadInBare: false,
          }
          const own = existingAtLoad ? 0 : 62e-12
          // at the source end it is there before the filter too: the node solver takes one figure for both, so that the
          // suppressor's share of the bare loss is put back
          const both = { ...nodes, sourceF: nodes.sourceF + own, sourceInBare: true }
          const bareDb = (f: number) => 10 * Math.log10(1 + (2 * Math.PI * 123e6 * f * ((50 * 1000) / 1050)) ** 2)
          losses.push(
            nodalLossDb(circuit, { ohm: 50, seriesH: 0 }, load, 123e6, own > 0 ? both : nodes) +
              (own > 0 ? bareDb(nodes.sourceF + own) - bareDb(own) : 0),
          )
        }
    }
    return Math.min(...losses)
  }

  test('the suppressor earns nothing but can harm: the lower loss counts, by an independent solver', () => {
    const result = window(MIC)
    const proposedF = si(result, 'proposedF') ?? 0
    const worst = nodalWorst(proposedF)
    expect(worst).toBeGreaterThanOrEqual(25 - 0.01)
    expect(Math.abs((si(result, 'worstLossDb') ?? 0) - worst)).toBeLessThan(0.05)
    // without anything at the ends a fifth of the capacitor would have done
    const bare = si(window({ ...MIC, ...NOTHING_ELSE }), 'leastCapacitanceF') ?? 0
    expect((si(result, 'leastCapacitanceF') ?? 0) / bare).toBeGreaterThan(4)
    expect(nodalWorst(bare)).toBeLessThan(25 - 5)
  })

  test('what lies between the wires of a pair does nothing in common mode', () => {
    const can = {
      lineKind: 'can',
      bitRateHz: '125k',
      topology: 'C',
      frequencyHz: '30M',
      neededDb: '20',
      sourceOhm: '50',
      loadOhm: '50',
      ...NO_SPREAD,
      ...IDEAL,
      suppressorF: '0',
    }
    const least = (more: Texts) => si(window({ ...can, ...more }), 'leastCapacitanceF')
    expect((least({ existingF: '200p' }) ?? 0) / (least({ existingF: '0' }) ?? 1)).toBeCloseTo(1, 9)
    expect(least({ existingF: '200p', mode: 'differential' })).toBeGreaterThan(
      least({ existingF: '0', mode: 'differential' }) ?? 0,
    )
  })
})

describe('doubts', () => {
  test('keep topology and part: push-to-talk, 38 dB at 100 MHz rests on the lead and the bond', () => {
    const result = window({
      lineKind: 'push-to-talk',
      frequencyHz: '100M',
      neededDb: '38',
      sourceOhm: '30',
      loadOhm: '50',
      ...NOTHING_ELSE,
    })
    // another topology would do, which says nothing about this part: over 0.5 nH no capacitor reaches 36 dB
    expect(20 * Math.log10(Math.hypot(1, 18.75 / (2 * Math.PI * 100e6 * 0.5e-9)))).toBeLessThan(36)
    expect(result.verdict).toBe('unknown')
    expect(result.findings[0]?.sentence).toContain('bond inductance')
    expect(result.findings[0]?.sentence).not.toContain('bond resistance')
  })

  test('a suppressor and a line left empty are assumed away, and the kind says what is usual', () => {
    // 0.1 bit at 1 Mb/s: 1.2 nF between the wires; 1 nF across leaves 0.4 nF on each leg, ten nodes take 0.2
    const can = {
      lineKind: 'can',
      bitRateHz: '1M',
      topology: 'C',
      frequencyHz: '50M',
      neededDb: '14',
      sourceOhm: '50',
      loadOhm: '50',
      ...NO_SPREAD,
      ...IDEAL,
    }
    const tight = { ...can, crossF: '1n' }
    expect(window({ ...tight, ...NOTHING_ELSE }).verdict).not.toBe('unknown')
    const result = window(tight)
    expect(result.verdict).toBe('unknown')
    expect(words(result)).toMatch(/already on the line \(taken as 0; 100 pF would turn it\)/)
    expect(
      words(
        window({
          lineKind: 'ethernet-100base-tx',
          topology: 'C',
          frequencyHz: '400M',
          neededDb: '3',
          sourceOhm: '50',
          loadOhm: '50',
          ...IDEAL,
        }),
      ),
    ).toMatch(/taken as 0; 8\.8 pF would turn it/)
  })
})

describe('a rule that was chosen but lacks a fact is unknown', () => {
  test('the Navy rule on DC without the load, whatever fits the contact', () => {
    const dc = {
      lineKind: 'power-28-vdc',
      frequencyHz: '5M',
      neededDb: '20',
      sourceOhm: '50',
      loadOhm: '50',
      navyRule: 'true',
      maxBuildableF: '100n',
      ...IDEAL,
      ...LARGE_PART,
      ...NOTHING_ELSE,
    }
    expect(window(dc).verdict).toBe('unknown')
    expect(words(window(dc))).toContain('Enter the connected load')
    for (const row of rowsOf(window(dc))) expect(row.verdict === 'unknown' || row.verdict === 'fails').toBe(true)
    expect(window({ ...dc, loadW: '1k', topology: 'C' }).verdict).toBe('ok')
  })

  test('what fits the contact on 115 V AC says what goes into the chassis and asks for its limit', () => {
    const ac = {
      lineKind: 'power-115-vac-400',
      topology: 'C',
      frequencyHz: '150k',
      neededDb: '34',
      sourceOhm: '50',
      loadOhm: '50',
      maxBuildableF: '10u',
      ...IDEAL,
      ...LARGE_PART,
      ...NOTHING_ELSE,
    }
    const result = window(ac)
    expect(result.verdict).toBe('unknown')
    // 6.8 µF · 1.2 · 1.15 at 118 V, 407 Hz
    expect(si(result, 'chassisRmsA')).toBeCloseTo(2 * Math.PI * 407 * 118 * 6.8e-6 * 1.38, 6)
    expect(words(result)).toMatch(/2\.84 A into the chassis at 118 V and 407 Hz: enter the chassis current allowed/)
    const limited = window({ ...ac, chassisLimitA: '10m' })
    expect(si(limited, 'mostCapacitanceF')).toBeCloseTo(10e-3 / (2 * Math.PI * 407 * 118) / 1.38, 15)
    expect(limited.verdict).toBe('fails')
    expect(window({ ...ac, chassisLimitA: '3', maxBuildableF: '10u' }).verdict).not.toBe('unknown')
  })
})

describe('noise inside the signal band', () => {
  const NOISE = { neededDb: '10', sourceOhm: '100', loadOhm: '100' }

  test('RS-422 at 1 Mb/s, noise at 800 kHz between the wires', () => {
    const rs422 = { lineKind: 'rs-422', bitRateHz: '1M', mode: 'differential', ...NOISE }
    expect(words(window({ ...rs422, frequencyHz: '800k' }))).toContain('no low-pass filter can cure it')
    // 0.35 / (0.3 bit) = 1.17 MHz
    expect(words(window({ ...rs422, frequencyHz: '1.2M' }))).not.toContain('no low-pass filter can cure it')
    expect(words(window({ ...rs422, frequencyHz: '800k', mode: 'common' }))).not.toContain(
      'no low-pass filter can cure it',
    )
  })

  test('a single line has one way for both', () => {
    expect(window({ lineKind: 'audio', frequencyHz: '3k', ...NOISE }).headline).toContain(
      'no low-pass filter can cure it',
    )
    expect(window({ lineKind: 'power-115-vac-400', frequencyHz: '3k', ...NOISE }).headline).not.toContain('low-pass')
  })
})

describe('only what may be fitted counts', () => {
  test('a resonance above the ceiling does not lift the least', () => {
    // Two capacitors beside 1 µH: 2·C = √(10^0.3 − 1)/(ω·500 Ω) = 3.175 nF. At 5.07 µF the Pi resonates and loses the 3 dB
    // again; RS-232 stands 6.9 nF in all.
    const texts = { lineKind: 'rs-232', bitRateHz: '9600', topology: 'PI', frequencyHz: '100k', neededDb: '3' }
    const ends = { sourceOhm: '1k', loadOhm: '1k', inductanceH: '1u', signalOhm: '300' }
    const result = window({ ...texts, ...ends, ...NO_SPREAD, ...IDEAL, ...NOTHING_ELSE })
    const each = Math.sqrt(10 ** 0.3 - 1) / (2 * Math.PI * 100e3 * 500) / 2
    expect(Math.abs((si(result, 'leastCapacitanceF') ?? 0) / each - 1)).toBeLessThan(2e-3)
    expect(si(result, 'proposedF')).toBe(2.2e-9)
    expect(result.verdict).not.toBe('fails')
  })

  test('a value that a document permits is proposed before one above it', () => {
    // 12 MHz, 100 Ω a leg: 4 dB from 326 pF … nothing permitted; 120 MHz: from 32.6 pF, and 33 pF·1 is inside the 50 pF of a receiver
    const texts = {
      lineKind: 'arinc-429-high',
      topology: 'C',
      frequencyHz: '120M',
      neededDb: '4',
      sourceOhm: '50',
      loadOhm: '50',
    }
    const result = window({ ...texts, ...NO_SPREAD, ...IDEAL, ...NOTHING_ELSE })
    const leastF = Math.sqrt(10 ** 0.4 - 1) / (2 * Math.PI * 120e6 * 50)
    expect(Math.abs((si(result, 'leastCapacitanceF') ?? 0) / leastF - 1)).toBeLessThan(1e-6)
    expect(si(result, 'permittedF')).toBeCloseTo(50e-12, 18)
    expect(si(result, 'proposedF')).toBe(47e-12)
    expect(result.verdict).toBe('ok')
  })
})
