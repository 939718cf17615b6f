/** The surge check as an address opens it. Volts, amperes and joules are those of the ngspice circuits R1 to R6. */
import { describe, expect, it } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { evaluate } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import type { Success } from '../../../src/calc/types.ts'
import { isSafetyId } from '../../../src/reference/safety.ts'
import { SOURCES } from '../../../src/reference/sources.ts'
import { WAVEFORMS } from '../../../src/reference/waveforms.ts'
import { issuesOf, run, si } from '../../support/run-check.ts'

const R1 = { level: '4', breakdownV: '34.4', dynamicOhm: '0.3323263', ratedPulseW: '1500' }
/** Parts exactly as marked: the circuits are computed so. */
const EXACT = { toleranceFrac: '0', temperatureFrac: '0', biasFrac: '0', ageingDecades: '0' }
const R4 = {
  ...EXACT,
  level: '3',
  breakdownV: '34.4',
  dynamicOhm: '0.3323263',
  capacitanceF: '100n',
  inductanceH: '10u',
  dcrOhm: '0.05',
}

const answer = (texts: Readonly<Record<string, string>>) => run(surgeCheck, texts)
/** no-break spaces as plain ones */
const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const sentences = (result: Success) => plain(result.findings.map((f) => f.sentence).join(' '))
const ladder = (result: Success) => {
  const found = result.pictures.find((p) => p.is === 'ladder')
  if (found?.is !== 'ladder') throw new Error('no ladder')
  return { ...found, faults: found.faults.map(plain) }
}
const sizes = (result: Success) => {
  const found = result.pictures.find((p) => p.is === 'table')
  return found?.is === 'table' ? found.rows : undefined
}
const word = (result: Success, key: string) => {
  const cell = result.outputs[key]?.cell
  return cell?.is === 'word' ? cell.verdict : cell?.is
}
/** within half a per cent, one on joules */
const near = (result: Success, key: string, wanted: number) =>
  expect(Math.abs((si(result, key) ?? 0) / wanted - 1), `${key} ${si(result, key)}`).toBeLessThan(
    key === 'energyJ' ? 0.01 : 0.005,
  )

describe('reference circuits by their addresses', () => {
  it.each([
    ['R1', R1, { suppressorPeakV: 78.996, peakA: 134.19, energyJ: 0.65374, loadPeakV: 78.996 }],
    [
      'R2',
      { waveform: 'wf5a', level: '3', breakdownV: '34.4', dynamicOhm: '33.3333m' },
      { suppressorPeakV: 42.968, peakA: 257.03, energyJ: 1.113 },
    ],
    [
      'R3a',
      {
        waveform: 'wf3',
        level: '3',
        decayQ: '18.13',
        breakdownV: '34.4',
        dynamicOhm: '0.8333333',
        bidirectional: 'true',
      },
      { suppressorPeakV: 52.641, peakA: 21.889, energyJ: 2.749e-3 },
    ],
    ['R4a', { ...R4, topology: 'LC' }, { peakA: 52.782, energyJ: 0.15381, connectorPeakV: 51.941, loadPeakV: 87.865 }],
    ['R4b', { ...R4, topology: 'LC', loadOhm: '20' }, { peakA: 48.188, energyJ: 0.13721, loadPeakV: 64.313 }],
    [
      'R4c',
      { ...R4, topology: 'CL', placement: 'behind' },
      { peakA: 48.801, energyJ: 0.15178, connectorPeakV: 167.59, loadPeakV: 50.618, capacitorPeakV: 167.59 },
    ],
    [
      'R4d',
      { level: '4', topology: 'PI', capacitanceF: '10n', inductanceH: '10u', dcrOhm: '0.05' },
      { connectorPeakV: 754.5, loadPeakV: 787.09 },
    ],
    ['R4e', { level: '4', topology: 'C', capacitanceF: '1u' }, { loadPeakV: 675.66 }],
    [
      'R5a',
      { waveform: 'iec-1.2-50', level: '2', sourceOhm: '42', breakdownV: '34.4', dynamicOhm: '0.8333333' },
      { suppressorPeakV: 53.178, peakA: 22.533, energyJ: 0.062482 },
    ],
    [
      'R6b',
      {
        waveform: 'iec-esd',
        level: '4',
        breakdownV: '34.4',
        dynamicOhm: '0.5',
        bidirectional: 'true',
        suppressorF: '100p',
        suppressorLeadH: '5n',
      },
      { suppressorPeakV: 49.309, peakA: 29.817, energyJ: 47.4e-6, connectorPeakV: 207.89 },
    ],
  ])('%s', (_id, texts, wanted) => {
    const result = answer(texts)
    for (const [key, value] of Object.entries(wanted)) near(result, key, value)
  })
})

describe('the verdict', () => {
  it('is the worst of circuit, suppressor, capacitor and signal, each a word', () => {
    const result = answer({
      ...R4,
      topology: 'LC',
      withstandV: '95',
      capacitorWithstandV: '250',
      ratedPulseW: '1500',
      ambientC: '25',
      suppressorLeadH: '0',
      busMaxV: '30',
      busMinV: '0',
    })
    expect(word(result, 'circuitVerdict')).toBe('ok')
    expect(word(result, 'suppressorVerdict')).toBe('ok')
    expect(word(result, 'capacitorVerdict')).toBe('ok')
    expect(word(result, 'signalVerdict')).toBe('none')
    expect(result.verdict).toBe('ok')
    const weak = answer({
      ...R4,
      topology: 'LC',
      withstandV: '95',
      capacitorWithstandV: '80',
      ratedPulseW: '1500',
      ambientC: '25',
      suppressorLeadH: '0',
      busMaxV: '30',
      busMinV: '0',
    })
    expect(word(weak, 'capacitorVerdict')).toBe('fails')
    expect(weak.verdict).toBe('fails')
  })

  it('is unknown until withstand, rating and capacitor are entered, and says which', () => {
    const result = answer({ ...R4, topology: 'LC' })
    expect(result.verdict).toBe('unknown')
    expect(sentences(result)).toContain('Enter what the circuit withstands')
    expect(sentences(result)).toContain('Enter the 10/1000 µs pulse power')
    expect(sentences(result)).toContain('its working voltage is not the measure')
  })

  it('becomes unknown when a lead nobody entered would turn it', () => {
    const esd = {
      waveform: 'iec-esd',
      level: '4',
      breakdownV: '34.4',
      dynamicOhm: '0.5',
      bidirectional: 'true',
      suppressorF: '100p',
      ratedPulseW: '600',
      withstandV: '90',
      busMaxV: '12',
    }
    expect(answer({ ...esd, suppressorLeadH: '0', ambientC: '25' }).verdict).toBe('ok')
    const doubtful = answer({ ...esd, ambientC: '25' })
    expect(doubtful.verdict).toBe('unknown')
    expect(sentences(doubtful)).toContain('suppressor lead inductance (taken as 0; 10n would turn it)')
  })

  it('names rungs out of order: 79 V against 60 V', () => {
    const result = answer({ ...R1, withstandV: '60' })
    expect(ladder(result).faults).toContain('Clamp 79 V is above the 60 V the input withstands.')
    expect(ladder(result).rungs.find((r) => r.id === 'surge-clamp')?.exceeds).toBe('surge-circuit-withstand')
    expect(result.verdict).toBe('fails')
    near(result, 'usedFrac', 1.89)
    // above 60 V the closed form stays until 53.9 µs
    expect(si(result, 'heldAfterSec')).toBeCloseTo(53.9e-6, 7)
    expect(si(result, 'letThroughVs')).toBeGreaterThan(19 * 20e-6)
  })

  it('holds the ring-up behind a filter against the circuit, not the clamp', () => {
    const rings = ladder(answer({ ...R4, topology: 'LC', withstandV: '60' }))
    expect(rings.faults).toEqual(['Peak at the load 87.9 V is above the 60 V the input withstands.'])
    expect(rings.rungs.find((r) => r.id === 'surge-load')?.exceeds).toBe('surge-circuit-withstand')
  })

  it('draws a ladder whether or not there is a suppressor, and no part rungs without one', () => {
    const bare = ladder(answer({ ...EXACT, level: '4', topology: 'C', capacitanceF: '1u', capacitorWithstandV: '500' }))
    expect(bare.faults).toEqual([
      'Peak on the filter capacitor 676 V is above the 500 V the filter capacitor withstands.',
    ])
    expect(bare.rungs.some((r) => r.id === 'surge-breakdown')).toBe(false)
  })
})

describe('bus and temperature', () => {
  it('refuses a suppressor that conducts through a long bus surge, with the joules', () => {
    const result = answer({ level: '3', breakdownV: '45', dynamicOhm: '1u', busMaxV: '80', busSourceOhm: '0.1' })
    expect(word(result, 'suppressorVerdict')).toBe('fails')
    expect(sentences(result)).toContain('350 A, 15.75 kW, 1.575 kJ in 100 ms through 100 mΩ')
    expect(ladder(result).faults[0]).toContain('Highest line peak 80 V is above')
  })

  it('finds a 28 V class that conducts cold at the top of the bus range', () => {
    const result = answer({ level: '3', standoffV: '28', ratedPulseW: '1500', busMaxV: '30.3', busMinV: '0' })
    expect(word(result, 'suppressorVerdict')).toBe('marginal')
    expect(sentences(result)).toContain(
      'Cold, at −55 °C, it breaks down from 28.7 V and conducts at the bus peak of 30.3 V',
    )
    const breakdown = ladder(result).rungs.find((r) => r.id === 'surge-breakdown')
    expect(breakdown?.minV).toBeCloseTo(28.71, 1)
    // worked out at either end of the temperature, each in volts
    const { steps } = result.rungs.find(({ id }) => id === 'surge-breakdown')?.basis ?? {}
    expect(steps?.map(({ si: volts, quantity }) => [volts, quantity])).toEqual([
      [breakdown?.minV, 'voltage'],
      [breakdown?.maxV, 'voltage'],
    ])
  })

  it('asks for the line peak where a supply has surges that would make it conduct', () => {
    const result = answer({ ...R1, lineKind: 'power-28-vdc' })
    expect(sentences(result)).toContain('DO-160 abnormal Z (80 V for 100 ms, ')
    expect(word(result, 'suppressorVerdict')).toBe('fails')
    const strong = answer({ ...R1, level: '1', lineKind: 'power-28-vdc', ambientC: '25' })
    expect(word(strong, 'suppressorVerdict')).toBe('unknown')
    const bus = (texts: Readonly<Record<string, string>>) =>
      ladder(answer({ ...R1, lineKind: 'power-28-vdc', ...texts })).rungs.flatMap(({ id }) =>
        id.startsWith('bus-') ? [id] : [],
      )
    // of a supply nobody named none is drawn beside the verdict
    expect(bus({})).toEqual([])
    expect(bus({ supplyCategory: 'do160-a' })).toEqual([
      'bus-do160-normal-ab',
      'bus-do160-abnormal-a',
      'bus-do160-abnormal-long-a',
    ])
    expect(word(result, 'signalVerdict')).toBe('none')
  })

  it('has no rating left at the end of the derating line', () => {
    const result = answer({ ...R1, ambientC: '150', withstandV: '100' })
    expect(result.outputs['usedFrac']?.cell).toEqual({ is: 'none', why: 'no rating left at this temperature' })
    expect(word(result, 'suppressorVerdict')).toBe('fails')
  })

  it('takes the most of a class for volts and the least for current', () => {
    const result = answer({ level: '3', standoffV: '28', ratedPulseW: '1500' })
    const spread = [31.08, 34.4988].map((v) =>
      answer({ level: '3', breakdownV: String(v), ratedPulseW: '1500', dynamicOhm: '0.3342' }),
    )
    expect(si(result, 'suppressorPeakV')).toBeCloseTo(si(spread[1] ?? result, 'suppressorPeakV') ?? 0, 1)
    expect(si(result, 'peakA')).toBeCloseTo(si(spread[0] ?? result, 'peakA') ?? 0, 1)
  })
})

describe('polarity, lead and side', () => {
  it('reports the other polarity when it is worse, and answers for it when asked', () => {
    expect(sentences(answer(R1))).toContain('The negative polarity is worse in: 150 A through the suppressor.')
    const negative = answer({ ...R1, polarity: 'negative' })
    // (750 − 1)/(5 + 0.02)
    expect(si(negative, 'peakA')).toBeCloseTo(749 / 5.02, 0)
    expect(si(negative, 'suppressorPeakV')).toBeCloseTo(1 + 0.02 * (749 / 5.02), 1)
    expect(sentences(answer({ ...R1, bidirectional: 'true' }))).not.toContain('polarity is worse')
  })

  it('gives the overshoot of the lead and how long it lasts', () => {
    const esd = {
      waveform: 'iec-esd',
      level: '4',
      breakdownV: '34.4',
      dynamicOhm: '0.5',
      bidirectional: 'true',
      suppressorF: '100p',
    }
    const five = answer({ ...esd, suppressorLeadH: '5n' })
    expect(si(five, 'overshootV')).toBeCloseTo(207.8 - 49.31, 0)
    expect(si(five, 'overshootSec')).toBeGreaterThan(0.5e-9)
    expect(si(five, 'overshootSec')).toBeLessThan(3e-9)
    expect(si(answer({ ...esd, suppressorLeadH: '0' }), 'overshootV')).toBeUndefined()
  })

  it('reasons the side from both: ring-up behind, the connector-side capacitor ahead', () => {
    const said = sentences(answer({ ...R4, topology: 'CL', placement: 'behind' }))
    expect(said).toContain('Behind the filter: 48.9 A through the suppressor, load 50.7 V, filter capacitor 168 V.')
    expect(said).toContain('at the connector')
    const rings = answer({
      level: '3',
      breakdownV: '34.4',
      dynamicOhm: '33m',
      topology: 'CL',
      capacitanceF: '3.3u',
      inductanceH: '1.1u',
      bidirectional: 'true',
    })
    expect(sentences(rings)).toContain('carries more, not less')
  })
})

describe('the worst of the tolerances', () => {
  it('at the small end of a capacitor that holds a surge down is an end, not inside', () => {
    const twenty = { ...EXACT, toleranceFrac: '20 %' }
    const result = answer({ ...twenty, level: '3', topology: 'C', capacitanceF: '10u', withstandV: '900' })
    // less of it holds down less
    expect(si(result, 'worstCapacitanceF')).toBeCloseTo(8e-6, 12)
    expect(si(result, 'worstLoadPeakV') ?? 0).toBeGreaterThan(1.05 * (si(result, 'loadPeakV') ?? 0))
    expect(sentences(result)).toMatch(
      /The load peaks at [\d.]+ V with the parts as entered and [\d.]+ V at 8 µF, below/u,
    )
  })
})

describe('the worst of a ring', () => {
  it('says of which parts its frequency is, as the volts that come with it do', () => {
    const filter = { topology: 'LC', capacitanceF: '10n', inductanceH: '1u', withstandV: '90' }
    const { outputs } = answer({ ...R1, ...filter, waveform: 'wf3', level: '1' })
    expect(outputs['worstRingHz']?.cell).toMatchObject({ is: 'si' })
    expect(outputs['worstRingHz']?.basis).toEqual(outputs['worstLoadPeakV']?.basis)
    expect(outputs['worstRingHz']?.basis).not.toEqual(outputs['loadPeakV']?.basis)
  })
})

describe('the signal', () => {
  const light = { waveform: 'iec-esd', level: '2', standoffV: '15', ratedPulseW: '400', bidirectional: 'true' }

  it('counts suppressor and filter together against what the line stands', () => {
    const result = answer({
      ...light,
      suppressorF: '700p',
      lineKind: 'arinc-429-high',
      topology: 'C',
      capacitanceF: '100n',
    })
    expect(word(result, 'signalVerdict')).toBe('fails')
    expect(result.bounds.map((b) => b.id)).toEqual(['surge-signal-room'])
    const strip = result.pictures.find((p) => p.is === 'strip')
    expect(strip?.is === 'strip' && strip.chosenF).toBe(100e-9)
  })

  it('is unknown without the capacitance of the suppressor', () => {
    expect(word(answer({ ...light, lineKind: 'arinc-429-high' }), 'signalVerdict')).toBe('unknown')
  })

  it('offers the low-capacitance form where the suppressor takes most of the room', () => {
    const said = sentences(answer({ ...light, suppressorF: '1n', lineKind: 'ethernet-100base-tx' }))
    expect(said).toContain('would count 9.9 pF')
  })
})

describe('the other way round', () => {
  it('lists classes smallest first, the first that works marked', () => {
    const rows = sizes(answer({ ...R1, withstandV: '60', busMaxV: '32.2' }))
    expect(rows?.map((r) => r.id)).toEqual(['w400', 'w600', 'w1500', 'w3000', 'w5000', 'w15000', 'w30000'])
    // 5000 W at 33 V of stand-off clamps at 40.7 V + 0.14 Ω · 138 A = 59.9 V: below 60 V, but without margin
    expect(rows?.filter((r) => r.strong).map((r) => r.id)).toEqual(['w15000'])
    const cell = rows?.[5]?.cells[2]
    expect(cell?.is === 'si' && cell.si).toBe(33)
  })

  it('finds what it lists: the smallest class holds when it is entered', () => {
    const texts = { level: '4', withstandV: '60', busMaxV: '32.2', busMinV: '0', standoffV: '33', ratedPulseW: '15000' }
    const result = answer({ ...texts, ambientC: '25', suppressorLeadH: '0' })
    expect(si(result, 'loadPeakV')).toBeLessThanOrEqual(60)
    expect(si(result, 'usedFrac')).toBeLessThan(0.8)
    expect(result.verdict).toBe('ok')
  })

  it('says so when bus and withstand leave no room', () => {
    const result = answer({ ...R1, withstandV: '40', busMaxV: '36' })
    expect(sizes(result)).toBeUndefined()
    expect(sentences(result)).toContain('No class has a stand-off at 36 V and a breakdown below 40 V')
  })
})

describe('what is asked and refused', () => {
  it('refuses a level where the waveform has none, with what to enter instead', () => {
    for (const { id } of WAVEFORMS.filter(({ levels }) => levels.length === 0))
      expect(issuesOf(surgeCheck, { waveform: id, level: '3' })[0]).toMatch(/^level: /)
    expect(issuesOf(surgeCheck, { waveform: 'wf1', level: '3' })[0]).toContain(
      'Never size one pin from a bundle current',
    )
    expect(issuesOf(surgeCheck, { waveform: 'iec-esd', level: '5' })[0]).toContain('has the levels 1, 2, 3, 4')
  })

  it('refuses physics that cannot be', () => {
    expect(issuesOf(surgeCheck, { level: '3', standoffV: '40', breakdownV: '34', dynamicOhm: '1' })[0]).toContain(
      'above the breakdown',
    )
    expect(issuesOf(surgeCheck, { waveform: 'custom', peakSec: '3u', halfSec: '2u' })[0]).toContain(
      'must come after the peak',
    )
    expect(plain(issuesOf(surgeCheck, { waveform: 'cs116', ringHz: '2k' })[0] ?? '')).toContain('10 kHz to 100 MHz')
    expect(issuesOf(surgeCheck, { level: '9' })[0]).toContain('outside what this field works with')
  })

  it('asks for what is missing', () => {
    expect(answer({}).headline).toBe('Not known: needs the level or the open-circuit volts.')
    expect(answer({ waveform: 'custom' }).headline).toContain('the time to peak')
    expect(answer({ level: '3', standoffV: '28' }).headline).toContain('the dynamic resistance or the pulse power')
    expect(answer({ level: '3', topology: 'LC' }).headline).toContain('the inductance of the filter')
  })

  it('draws the shape of a waveform before its volts are known, peak 1', () => {
    for (const { id, name, shape } of WAVEFORMS) {
      const [picture] = answer({ waveform: id }).pictures
      if (!shape) expect(picture).toBeUndefined()
      else if (picture?.is === 'plot' && picture.title === `Shape: ${name}`)
        expect(Math.max(...(picture.curves[0]?.y ?? [])), id).toBeCloseTo(1, 1)
      else expect(picture?.is, id).toBe('ladder')
    }
  })

  it('runs every waveform once volts and ohms are known, and draws its shape', () => {
    for (const { id, name } of WAVEFORMS) {
      const result = answer({
        waveform: id,
        openCircuitV: '4.1k',
        sourceOhm: '7.3',
        peakSec: '2u',
        halfSec: '37u',
        standoffV: '28',
        ratedPulseW: '600',
      })
      expect(si(result, 'loadPeakV'), id).toBeGreaterThan(28)
      expect(result.pictures.map((p) => p.title)).toContain(`Shape: ${name}`)
    }
  })

  it('overrides the level by what is entered', () => {
    expect(si(answer({ ...R1, openCircuitV: '300' }), 'peakA')).toBeCloseTo(
      si(answer({ ...R1, level: '3' }), 'peakA') ?? 0,
      9,
    )
    expect(si(answer({ ...R1, sourceOhm: '50' }), 'peakA')).toBeLessThan(15)
  })

  it('states the decay and the impedance it took', () => {
    const said = sentences(answer({ waveform: 'wf3', level: '3', breakdownV: '34.4', dynamicOhm: '0.8' }))
    expect(said).toContain('Source impedance taken as 25 Ω')
    expect(said).toContain('Decay taken as Q = 43.68')
  })
})

describe('the answer', () => {
  it('cites sources that exist, cautions that exist, and only declared outputs', () => {
    const result = answer({
      ...R4,
      topology: 'T',
      standoffV: '28',
      ratedPulseW: '1500',
      withstandV: '70',
      busMaxV: '40',
      lineKind: 'arinc-429-high',
      suppressorF: '1n',
      suppressorLeadH: '7n',
    })
    const declared = new Set(surgeCheck.outputs.map((o) => o.key))
    for (const [key, { basis }] of Object.entries(result.outputs)) {
      expect(declared, key).toContain(key)
      for (const source of basis.sources) expect(SOURCES[source.id]).toBeDefined()
    }
    for (const rung of result.rungs) for (const source of rung.basis.sources) expect(SOURCES[source.id]).toBeDefined()
    expect(result.cautions.filter((id) => !isSafetyId(id))).toEqual([])
    expect(result.cautions).toEqual(
      expect.arrayContaining(['after-strike', 'hipot', 'lightning-hirf-fuel', 'permanent-approved', 'screening']),
    )
  })

  it('thins its curves for drawing and keeps their peaks', () => {
    const result = answer({
      waveform: 'wf3',
      level: '4',
      breakdownV: '34.4',
      dynamicOhm: '0.8',
      topology: 'LC',
      capacitanceF: '10n',
      inductanceH: '10u',
    })
    const plot = result.pictures.find((p) => p.is === 'plot')
    if (plot?.is !== 'plot') throw new Error('no plot')
    for (const curve of plot.curves) expect(curve.x.length).toBeLessThan(600)
    const load = plot.curves.find((c) => c.id === 'load')
    const drawn = Math.max(...(load?.y ?? []).map(Math.abs))
    expect(drawn / (si(result, 'loadPeakV') ?? 1)).toBeCloseTo(1, 2)
  })

  it('pauses often and reports progress that never runs back', () => {
    const running = evaluate(
      surgeCheck,
      readFields(surgeCheck, {
        waveform: 'wf3',
        level: '3',
        standoffV: '28',
        ratedPulseW: '600',
        withstandV: '60',
        busMaxV: '28',
        topology: 'PI',
        capacitanceF: '3.3n',
        inductanceH: '4.7u',
      }),
    )
    const seen: number[] = []
    for (let step = running.next(); !step.done; step = running.next()) seen.push(step.value.doneFrac)
    expect(seen.length).toBeGreaterThan(200)
    expect(seen.every((frac, i) => frac >= 0 && frac <= 1 && frac >= (seen[i - 1] ?? 0) - 1e-9)).toBe(true)
  })
})

describe('equal parts in series', () => {
  it('are circuit R1 again: two of half the volts, half the ohms and half the power', () => {
    const stack = answer({
      level: '4',
      breakdownV: '17.2',
      dynamicOhm: '0.16616315',
      ratedPulseW: '750',
      seriesCount: '2',
    })
    const one = answer(R1)
    for (const key of ['suppressorPeakV', 'peakA', 'energyJ', 'usedFrac'])
      expect(Math.abs((si(stack, key) ?? 0) / (si(one, key) ?? 1) - 1)).toBeLessThan(1e-9)
    expect(sentences(stack)).toContain('2 equal parts in series')
  })

  it('divide their capacitance, and parallel parts are warned of with their shares', () => {
    // 134 A over a spread of 1.11: 34.4 − 30.99 V over 0.332 Ω is 10.3 A between the two (T27, T28).
    const over = sentences(answer(R1))
    expect(over).toMatch(/share 134 A as 72\.\d A and 62/)
    const facts = { ...R1, lineKind: 'arinc-429-high', suppressorF: '6n' }
    const whole = answer({ ...facts, seriesCount: '3' }).bounds[0]?.markedF ?? 0
    const single = answer(facts).bounds[0]?.markedF ?? 0
    expect(whole - single).toBeCloseTo(4e-9, 15)
  })

  it('are counted in whole parts', () => {
    expect(issuesOf(surgeCheck, { ...R1, seriesCount: '1.5' })[0]).toMatch(/seriesCount/)
  })
})
