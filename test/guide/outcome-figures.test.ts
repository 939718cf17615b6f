/**
 * Figures printed in outcomes and rules against figures worked outside: by hand, and for the two computed cases by a
 * circuit simulator. Whoever changes a formula or a row of the reference finds the sentence that would be wrong.
 */
import { describe, expect, it } from 'vitest'
import { returnLossDb } from '../../src/calc/loading/return-loss.ts'
import type { FactKey } from '../../src/calc/types.ts'
import { matchSpentF } from '../../src/guide/figures.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { advise } from '../../src/guide/rules.ts'
import { KILLS_ABOVE } from '../../src/reference/field-figures.ts'
import { SAFETY_TEXTS } from '../../src/reference/safety.ts'
import { LEAD_CASE, RINGING_CASE } from '../../src/reference/surge-cases.ts'
import { waveformById } from '../../src/reference/waveforms.ts'
import { DECKS } from '../support/surge-deck.ts'

const plain = (text: string): string => text.replace(/\u00a0|\u202f/gu, ' ')
const outcomeOf = (id: string) => {
  const found = GUIDE.outcomes.find((each) => each.id === id)
  if (found === undefined) throw new RangeError(id)
  return found
}
const deckOf = (id: string) => {
  const found = DECKS.find((each) => each.id === id)
  if (found === undefined) throw new RangeError(id)
  return found
}
const textOf = (id: string): string => {
  const { reason, steps, nextMeasurement, checks } = outcomeOf(id)
  return plain([reason, ...steps, nextMeasurement, ...checks.map(({ why }) => why)].join(' '))
}

/** What a rule says of a line. */
function ruleText(outcome: string, rule: string, facts: Partial<Readonly<Record<FactKey, string>>> = {}): string {
  const texts = Object.entries(facts).map(([key, text]) => [key, { text, origin: { by: 'user' } }] as const)
  const line = { id: 'line-1', name: 'scratch', gate: 'clear', trials: [], facts: Object.fromEntries(texts) } as const
  const { items } = advise({ guide: GUIDE, outcome: outcomeOf(outcome), line, gate: 'clear' })
  const found = items.find((item) => item.rule === rule)
  if (found === undefined) throw new RangeError(rule)
  return plain(found.text)
}

describe('figures of an outcome', () => {
  it.each([
    // C = √(10^(20/10) − 1)/(2π·f·1 Ω): 9.95/(2π·2.4 kHz)
    ['whine-alternator', 'From a 1 Ω source, 20 dB at 2.4 kHz needs 660 µF, at 4.8 kHz 330 µF.'],
    ['whine-rectifier', 'Rectified 400 Hz rings at 2.4 kHz with six pulses and 4.8 kHz with twelve'],
    ['whine-rectifier', 'A drop to 400 or 800 Hz'],
    // 2400/60 turns a second, half the plugs in each
    ['ignition', '80 a second with four cylinders at 2400 rpm, 120 with six'],
    ['weather-static', 'about 50 dB.'],
    // 26 frames in 120 ms
    ['portable-device', '217 Hz is one sort'],
    ['own-tx-antenna', '45 s on each'],
    ['ground-supply', 'brings 50, 60 or 400 Hz'],
    ['radiated-outside', 'Move the aircraft 100 m'],
    ['strobe-supply', 'at 1 to 20 kHz. Its lamp lead is at 400 to 600 V'],
    // 20·log10(25/(2π·10 MHz·20 nH)), hand
    ['bond-first', 'Between 50 Ω ends, one inch of wire (20 nH) leaves 26 dB at 10 MHz and 7 dB at 100 MHz'],
    ['bond-first', '2.5 mΩ or less'],
    // 2π·100 MHz·50 nH
    ['shield-first', 'A pigtail of 50 mm is some 50 nH in series with the shield: 31 Ω at 100 MHz.'],
    ['coil-first', 'What remains above 1 MHz'],
    ['low-frequency', 'Below 20 kHz a capacitor'],
    // |1 + j·2π·3 MHz·1 nF·50 Ω|
    ['filter-own-tx', 'At VHF 100 pF to 1 nF at the very pin is usual'],
    ['filter-own-tx', '1 nF gives 2.8 dB at 3 MHz from 50 Ω into a high input'],
    ['filter-victim-box', 'beside the 50 Ω bench figure'],
    ['choke-cable', 'within 50 mm of the connector. More turns below 10 MHz'],
    ['separate-cables', '150 mm or more between them'],
    ['separate-cables', 'The trouble at 0, 50, 150 and 300 mm.'],
    ['receiver-own', 'with 10 dB in front'],
    // read in a tutorial on the test, its repetition recalled
    ['pulses-cs115', 'drives 5 A for 30 ns into the whole bundle. It does so 30 times a second for 60 s.'],
    ['pulses-cs115', 'its edge is 2 ns. A filter slows the edge. A suppressor with 10 nH of lead'],
    ['pulses-cs116', 'from 10 kHz to 100 MHz, up to 10 A from 1 to 30 MHz'],
    ['suppressor-static', '5 nH more lead lifted a 49 V clamp to 208 V'],
    ['measure-probe', '50 Ω adds 34 dB, 100 Ω adds 40 dB, 1 Ω adds nothing'],
    ['stop-magneto', 'It carries 200 to 400 V'],
    ['stop-strobe', 'keeps 400 to 600 V'],
    // C = 2·0.1005/(2π·f·50 Ω)
    ['stop-antenna-coax', '5.4 pF at 118 MHz or 0.41 pF at 1575 MHz already spends a 20 dB return loss'],
    ['stop-live-power', 'a live line above 60 V DC or 30 V AC rms.'],
  ])('%s: %s', (id, words) => {
    expect(textOf(id)).toContain(words)
  })
})

describe('figures of a rule', () => {
  const AC = { lineKind: 'power-115-vac-400' }
  const at = (id: string, rule: string, words: string, facts: Partial<Readonly<Record<FactKey, string>>> = {}) =>
    [id, rule, words, facts] as const
  it.each([
    at('filter-victim-box', 'impedance', 'take 1, 10, 50 and 150 Ω for the source'),
    at('filter-victim-box', 'impedance', 'The 50 Ω bench figure is not your circuit.'),
    at('filter-victim-box', 'need', '6 dB as a usual margin'),
    at('measure-probe', 'probe', '1 Ω adds 0 dB, 5 Ω 14 dB, 50 Ω 34 dB, 100 Ω 40 dB.'),
    // 0.4/2 and 0.1/2 of the mean
    at(
      'filter-victim-box',
      'pair',
      '±20 % turn common noise into signal at −14 dB in the worst place, ±5 % at −26 dB',
      {
        lineKind: 'rs-422',
      },
    ),
    // 2π·f·C·V by hand: 2.890 mA and 5.932 mA
    at('filter-victim-box', 'power-line', '10 nF at 115 V 400 Hz 2.9 mA, at 118 V 800 Hz 5.9 mA, on every phase', AC),
    at('filter-victim-box', 'power-line', 'allows 20 nF a line at 400 Hz', AC),
    // 28 V·√(10 µF/1 µH) = 88.54 A
    at('filter-victim-box', 'power-line', '28 V through 1 µH into 10 µF can reach 89 A.', { lineKind: 'power-28-vdc' }),
    // 20·log10(25/0.628), of 3.14 and 12.57 Ω
    at(
      'filter-victim-box',
      'bond',
      'Between 50 Ω ends at 100 MHz, 1 nH of bond leaves at most 32 dB, 5 nH 18 dB, 20 nH 7 dB.',
    ),
    at('filter-victim-box', 'place-box', 'Feed-through parts above 100 MHz'),
    at(
      'choke-cable',
      'clamp',
      'A clamp of 100 Ω lowers the current by 9.5 dB in a loop of 50 Ω. In one of 300 Ω it is 2.5 dB.',
    ),
    at(
      'suppressor-plan',
      'filter-side',
      '300 V behind 5 Ω, 10 µH, 100 nF, 10 kΩ. There the load reached 88 V over a 52 V clamp.',
    ),
    at(
      'suppressor-plan',
      'filter-side',
      'Behind the filter it stayed at 51 V, and the capacitor at the connector saw 168 V.',
    ),
  ])('%s, %s: %s', (id, rule, words, facts) => {
    expect(ruleText(id, rule, facts)).toContain(words)
  })
})

describe('what the figures stand on', () => {
  it('is, for the two computed cases, what the circuit simulator came to with those very parts', () => {
    const [ahead, behind] = [deckOf('R4a'), deckOf('R4c')]
    const parts = { inductanceH: RINGING_CASE.inductanceH, capacitanceF: RINGING_CASE.capacitanceF }
    for (const { circuit } of [ahead, behind]) {
      expect(circuit).toMatchObject({ waveform: 'wf4', peak: RINGING_CASE.openCircuitV, ohm: RINGING_CASE.sourceOhm })
      expect(circuit.filter).toMatchObject(parts)
    }
    expect(ahead.expected).toMatchObject({ clampV: RINGING_CASE.ahead.clampV, loadV: RINGING_CASE.ahead.loadV })
    expect(behind.expected).toMatchObject({
      connectorV: RINGING_CASE.behind.capacitorV,
      loadV: RINGING_CASE.behind.loadV,
    })
    const [bare, led] = [deckOf('R6a'), deckOf('R6b')]
    expect([bare.circuit.suppressor?.leadH, led.circuit.suppressor?.leadH]).toEqual([0, LEAD_CASE.leadH])
    expect([bare.expected.loadV, led.expected.loadV]).toEqual([LEAD_CASE.withoutV, LEAD_CASE.withV])
  })

  it('is, for the match of an antenna line, the return loss the loading check computes', () => {
    for (const hz of [118e6, 1575.42e6])
      expect(returnLossDb({ farads: matchSpentF(hz), loadOhm: 50, referenceOhm: 50 }, hz)).toBeCloseTo(20, 9)
  })

  it('is one for the volts that kill, in the guide and in the safety text', () => {
    const { dcV, acRmsV } = KILLS_ABOVE
    expect(SAFETY_TEXTS['no-trial'].text).toContain(`above ${dcV} V DC or ${acRmsV} V AC rms`)
  })

  it('is one for the train of the test pulse: 1,800 in a minute at 500 V', () => {
    const wave = waveformById('cs115')
    expect(wave?.only?.openCircuitV).toBe(500)
    expect(wave?.repeats[0]?.gaps).toEqual([{ count: 1800, spacingSec: 1 / 30 }])
  })
})
