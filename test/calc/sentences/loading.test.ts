/**
 * Stories of the loading check and the sentence each is answered with. CAN at 500 kbit/s: 200 ns / (ln 4 · 60 Ω) is
 * 2.404 nF between the wires, 4.809 nF a leg, printed as 4.8. 100BASE-TX: 24.18 pF a leg over its cable range.
 */
import { expect, it, test } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { run } from '../../support/run-check.ts'
import { answered } from '../../support/sentence.ts'

const can = { lineKind: 'can', bitRateHz: '500k' }
const port = { lineKind: 'ethernet-100base-tx' }
const BUS = 'he whole bus stands 4.8 nF a leg, less what other nodes add; practice allows 100 pF a node.'
const SHARED =
  'with care. Shared with transceiver and magnetics: the whole port stands 24.1 pF a leg, and what they take of it was not entered.'

test.each([
  [{ ...can, capacitanceF: '10n' }, 'fails', `10 nF: no. T${BUS}`],
  [{ ...can, capacitanceF: '47p' }, 'ok', `47 pF as entered: yes. T${BUS}`],
  [
    { ...can, capacitanceF: '1n' },
    'marginal',
    '1 nF: with care. 10 times the 100 pF practice allows a node: needs the bus owner’s approval.',
  ],
  [
    { ...can, capacitanceF: '4n7', toleranceFrac: '20%' },
    'fails',
    `4.7 nF over its tolerance: no. 5.64 nF at its largest; t${BUS}`,
  ],
  [can, 'ok', 'Up to 4.8 nF per leg for the whole bus, less what other nodes add; practice allows 100 pF a node.'],
  [
    { ...can, existingF: '150p' },
    'ok',
    'Up to 4.5 nF per leg beside what is on the bus; practice allows 100 pF a node.',
  ],
  [port, 'ok', 'Up to 24.1 pF per leg for the whole port: leave room for transceiver and magnetics.'],
  [{ ...port, capacitanceF: '20p' }, 'marginal', `20 pF: ${SHARED}`],
  [{ ...port, capacitanceF: '5p' }, 'marginal', `5 pF: ${SHARED}`],
  [
    { ...port, capacitanceF: '40p' },
    'fails',
    '40 pF: no. The whole port stands 24.1 pF a leg, transceiver and magnetics included.',
  ],
  [
    { ...port, capacitanceF: '2p', existingF: '8.8p', suppressorF: '0' },
    'ok',
    '2 pF as entered: yes. 6.58 pF a leg are left beside what is on the port.',
  ],
  [{ lineKind: 'discrete-28v', capacitanceF: '100n' }, 'fails', '100 nF: no. The line stands 22.7 nF.'],
] as const)('%j is %s', (texts, verdict, sentence) => {
  expect(answered(loadingCheck, texts)).toMatchObject({ sentence, verdict })
})

test.each([
  [{}, 'Not known: needs the line. What it carries decides how much it stands.', 'lineKind'],
  [{ lineKind: 'can' }, 'Not known: needs the bit rate: what this line stands depends on it.', 'bitRateHz'],
  [
    { lineKind: 'i2c-fast' },
    'Not known: needs the pull-up as the signal resistance: what this line stands depends on it.',
    'signalOhm',
  ],
  [
    { lineKind: 'audio', capacitanceF: '4n' },
    'Not known: needs what is already on the line. As assumed it would be “yes” (4 nF as entered): the line stands 4.63 nF.',
    'existingF',
  ],
] as const)('%j lacks one fact and names its field', (texts, sentence, needs) => {
  expect(answered(loadingCheck, texts)).toEqual({ sentence, verdict: 'unknown', needs })
})

it('is with care on a port only while what shares it is not entered, and never above the whole', () => {
  expect(run(loadingCheck, { ...port, capacitanceF: '20p', existingF: '8.8p' }).verdict).toBe('fails')
  expect(run(loadingCheck, { ...port, capacitanceF: '24.3p' }).verdict).toBe('fails')
})

it('says how the fact it lacks is found out', () => {
  expect(run(loadingCheck, { lineKind: 'can' }).needs?.sentence).toContain('one over the shortest bit')
})
