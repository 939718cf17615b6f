/** Stories of the power check and the sentence each is answered with. 2π·400 Hz·115 V·10 nF is 2.8903 mA: what flows is brought up. */
import { expect, test } from 'vitest'
import { powerCheck } from '../../../src/calc/checks/power/check.ts'
import { answered } from '../../support/sentence.ts'

// without inductance in the wiring nothing rings
const ac = { workingRmsV: '115', supplyHz: '400', capacitanceF: '10n', wiringH: '0' }
const dc = { workingRmsV: '28', supplyHz: '0', capacitanceF: '10n' }

test.each([
  [
    { ...ac, chassisLimitA: '2m' },
    'fails',
    '10 nF: no. 2.9 mA into the chassis in each line, 2 mA allowed: 6.91 nF on this supply.',
  ],
  [
    { ...ac, chassisLimitA: '5m' },
    'ok',
    '10 nF: yes. 2.9 mA into the chassis in each line, 5 mA allowed: 17.2 nF on this supply.',
  ],
  [{ ...ac, navyRule: 'true' }, 'ok', '10 nF: yes. MIL-STD-461 4.2.2 (Navy) allows 20 nF from each line to ground.'],
  [
    { ...ac, capacitanceF: '100n', navyRule: 'true' },
    'fails',
    '100 nF: no. MIL-STD-461 4.2.2 (Navy) allows 20 nF from each line to ground.',
  ],
  [
    { ...ac, workingRmsV: '230', chassisLimitA: '50m' },
    'marginal',
    '10 nF: with care. A working peak of 326 V is close to the 327 V at which thin air can break down.',
  ],
] as const)('%j is %s', (texts, verdict, sentence) => {
  expect(answered(powerCheck, texts)).toEqual({ sentence, verdict, needs: undefined })
})

test.each([
  [{}, 'Not known: needs the working voltage, the supply frequency (0 for DC) and the capacitance.', 'workingRmsV'],
  [ac, 'Not known: needs the chassis current allowed. 2.9 mA into the chassis in each line.', 'chassisLimitA'],
  [dc, 'Not known: needs the rule that limits it on DC. No steady current on DC, 3.92 µJ stored.', 'navyRule'],
  [
    { ...dc, navyRule: 'true' },
    'Not known: needs the connected load: on DC the Navy rule goes by it. No steady current on DC, 3.92 µJ stored.',
    'loadW',
  ],
  // an inductance nobody entered could ring the capacitor to 2·√2·115 V = 325.3 V, over the 322 V of its test
  [
    { ...ac, wiringH: '', chassisLimitA: '5m' },
    'Not known: needs the wiring inductance. As assumed it would be “yes” (10 nF): 2.9 mA into the chassis in each line, 5 mA allowed: 17.2 nF on this supply.',
    'wiringH',
  ],
] as const)('%j lacks one fact and names its field', (texts, sentence, needs) => {
  expect(answered(powerCheck, texts)).toEqual({ sentence, verdict: 'unknown', needs })
})
