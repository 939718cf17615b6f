/** Checks whose question is for a number are answered by it: need, pair, and a filter without a need. */
import { expect, it, test } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { needCheck } from '../../../src/calc/checks/need/check.ts'
import { pairCheck } from '../../../src/calc/checks/pair/check.ts'
import { run } from '../../support/run-check.ts'
import { answered } from '../../support/sentence.ts'

test.each([
  [{ measuredDb: '70', limitDb: '40' }, 'ok', '36 dB must come off: 30 dB over the limit, 6 dB margin.'],
  [{ measuredDb: '70.02', limitDb: '40' }, 'ok', '36.1 dB must come off: 30.02 dB over the limit, 6 dB margin.'],
  [{ measuredDb: '38', limitDb: '40' }, 'ok', '4 dB must come off: 2 dB under the limit, 6 dB margin.'],
  [{ measuredDb: '30', limitDb: '40' }, 'ok', 'Nothing must come off: 10 dB under the limit, 6 dB margin kept.'],
  [
    { measuredDb: '170 dBuV', limitDb: '40' },
    'marginal',
    '136 dB must come off: with care. No connector holds more than about 100 dB: look for the source or the path first.',
  ],
] as const)('need, %j: %s', (texts, verdict, sentence) => {
  expect(answered(needCheck, texts)).toEqual({ sentence, verdict, needs: undefined })
})

test.each([
  [{}, 'Not known: needs the measured level and the allowed level.', 'measuredDb'],
  [{ measuredDb: '70' }, 'Not known: needs the allowed level.', 'limitDb'],
] as const)('need, %j lacks a level', (texts, sentence, needs) => {
  expect(answered(needCheck, texts)).toEqual({ sentence, verdict: 'unknown', needs })
})

// (C1 − C2)/(C1 + C2) = 1/9 is −19.08 dB at 1/(2π·50·√(0.8 nF²)) = 3.559 MHz: at most, so brought up.
const legs = { capacitanceF: '1n', capacitance2F: '0.8n', legOhm: '50' }
test.each([
  [
    { ...legs, frequencyHz: '12M' },
    'ok',
    '−24.3 dB of the common mode becomes signal at 12 MHz; at most −19 dB near 3.559 MHz.',
  ],
  [legs, 'ok', 'Common mode becomes signal, at most −19 dB near 3.559 MHz.'],
  [
    { ...legs, capacitance2F: '0' },
    'marginal',
    'Common mode becomes signal, at most 0 dB, rising with frequency: with care. One leg has no capacitor: worse than none on both.',
  ],
  [
    { ...legs, capacitance2F: '1n' },
    'marginal',
    'Equal legs turn nothing into signal: with care. Real parts are never equal: enter both ends of their tolerance.',
  ],
] as const)('pair, %j: %s', (texts, verdict, sentence) => {
  expect(answered(pairCheck, texts)).toEqual({ sentence, verdict, needs: undefined })
})

it('a pair lacks its second leg and the resistance', () => {
  expect(answered(pairCheck, { capacitanceF: '1n' })).toEqual({
    sentence: 'Not known: needs the other leg and the series resistance.',
    verdict: 'unknown',
    needs: 'capacitance2F',
  })
})

const ends = { capacitanceF: '10n', frequencyHz: '12M', sourceOhm: '50', loadOhm: '50', biasFrac: '12 %' }
test.each([
  [ends, 'ok', '25.5 dB come off at 12 MHz from 50 Ω.', undefined],
  [
    { ...ends, neededDb: '20' },
    'ok',
    '10 nF: yes. 20.6 dB come off at 12 MHz from 50 Ω with the worst part, 20 dB needed.',
    undefined,
  ],
  [
    { ...ends, neededDb: '25' },
    'fails',
    '10 nF: no. 20.6 dB come off at 12 MHz from 50 Ω with the worst part, 25 dB needed; as entered 25.5 dB.',
    undefined,
  ],
  [
    { capacitanceF: '10n', frequencyHz: '12M' },
    'unknown',
    'Not known: needs the noise source and the noise load. On the 50 Ω bench 25.5 dB come off at 12 MHz, which says little of your circuit.',
    'sourceOhm',
  ],
  [{}, 'unknown', 'Not known: needs the capacitance.', 'capacitanceF'],
] as const)('filter, %j: %s', (texts, verdict, sentence, needs) => {
  expect(answered(filterCheck, texts)).toEqual({ sentence, verdict, needs })
})

it('says of a number that it is one, so that no yes is read into it', () => {
  expect(run(needCheck, { measuredDb: '70', limitDb: '40' }).answers).toBe('number')
  expect(run(pairCheck, legs).answers).toBe('number')
  expect(run(filterCheck, ends).answers).toBe('number')
  expect(run(filterCheck, { ...ends, neededDb: '20' }).answers).toBeUndefined()
})
