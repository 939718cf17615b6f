/**
 * Stories of the window and the sentence each is answered with. A least is brought up and a most cut down; the numbers
 * behind them are proved in test/calc/window.
 */
import { expect, it, test } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { run, si } from '../../support/run-check.ts'
import { answered } from '../../support/sentence.ts'

const noise = { sourceOhm: '50', loadOhm: '10k', frequencyHz: '12M', neededDb: '36' }
const bare = { existingF: '0', suppressorF: '0', biasFrac: '12 %' }
const bus = { lineKind: 'arinc-429-high', topology: 'C', ...noise, ...bare }
const perfect = { bondOhm: '0', bondH: '0', eslH: '0', esrOhm: '0' }

test.each([
  [
    bus,
    'fails',
    'No single capacitor does both: the noise needs 14.8 nF, the signal stands 11.6 nF. What opens it: Pi (2.47 nF to 5.81 nF), or a common-mode choke of 1 µH and 10 nF on each leg.',
  ],
  [
    { ...bus, neededDb: '6' },
    'marginal',
    '680 pF: with care. 18.8 times the 50 pF ARINC 429 allows a receiver: needs the bus owner’s approval; the noise needs 405 pF, the signal stands 11.6 nF.',
  ],
  [
    { lineKind: 'power-28-vdc', ...noise, ...perfect, ...bare, maxBuildableF: '47n' },
    'ok',
    '33 nF: yes. The noise needs 29.6 nF, the contact takes 47 nF.',
  ],
  [
    { lineKind: 'audio', ...noise, frequencyHz: '3k', mode: 'differential' },
    'fails',
    'No: the noise is inside the signal band (up to 20 kHz), and no low-pass filter can cure it.',
  ],
  [
    { lineKind: 'discrete-28v', ...noise, ...bare, topology: 'L', inductanceH: '100u' },
    'fails',
    'The inductor alone: no. 34.1 dB short; 8.41 mH would do.',
  ],
] as const)('%j is %s', (texts, verdict, sentence) => {
  expect(answered(windowCheck, texts)).toEqual({ sentence, verdict, needs: undefined })
})

test.each([
  [
    { lineKind: 'arinc-429-high' },
    'Not known: needs the noise frequency, the attenuation needed, the noise source and the noise load. The signal stands 11.6 nF.',
    'frequencyHz',
  ],
  [{ lineKind: 'can', ...noise }, 'Not known: needs the bit rate. The noise needs 14.8 nF.', 'bitRateHz'],
  [
    { lineKind: 'power-115-vac-400', ...noise, ...perfect, ...bare },
    'Not known: needs the chassis current allowed. The noise needs 29.6 nF.',
    'chassisLimitA',
  ],
  [
    // unequal halves before an open end, with a coil that loses nothing: C0/C1 where no current flows between them
    { lineKind: 'discrete-28v', ...noise, ...bare },
    'Not known: needs the inductance. As assumed it would be “with care” (Pi with 4.7 nF): a resonance lifts the signal by 7.7 dB near 3.66 MHz; the noise needs 3.34 nF, the signal stands 8.24 nF.',
    'inductanceH',
  ],
] as const)('%j lacks one fact and names its field', (texts, sentence, needs) => {
  expect(answered(windowCheck, texts)).toEqual({ sentence, verdict: 'unknown', needs })
})

it('prints a least that is none too small and a most that is none too large', () => {
  const shut = run(windowCheck, bus)
  expect(si(shut, 'leastCapacitanceF')).toBeLessThanOrEqual(14.8e-9)
  expect(si(shut, 'mostCapacitanceF')).toBeGreaterThanOrEqual(11.6e-9)
})
