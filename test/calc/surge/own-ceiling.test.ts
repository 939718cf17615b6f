/** The user's own limits on the signal reach the surge check as they reach window and loading. */
import { expect, test } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { run } from '../../support/run-check.ts'

const LINE = {
  lineKind: 'not-listed',
  waveform: 'wf4',
  level: '2',
  standoffV: '30',
  breakdownV: '33',
  dynamicOhm: '0.3',
  ratedPulseW: '1500',
  bidirectional: 'true',
  suppressorF: '400p',
  topology: 'C',
  capacitanceF: '1n',
  withstandV: '200',
  capacitorWithstandV: '200',
  busMaxV: '28',
  busMinV: '0',
  existingF: '0',
}
const verdictOf = (more: Readonly<Record<string, string>>) => {
  const cell = run(surgeCheck, { ...LINE, ...more }).outputs['signalVerdict']?.cell
  return cell?.is === 'word' ? cell.verdict : undefined
}
const words = (more: Readonly<Record<string, string>>) =>
  run(surgeCheck, { ...LINE, ...more })
    .findings.map(({ sentence }) => sentence)
    .join(' ')

test('farads of the user’s own are a ceiling', () => {
  // 1 nF at its most, 1.2·1.15, and 400 pF of suppressor: 1.78 nF
  expect(verdictOf({ ownCeilingF: '1.7n' })).toBe('fails')
  expect(verdictOf({ ownCeilingF: '1.9n' })).toBe('ok')
  expect(words({ ownCeilingF: '1.7n' })).toContain('your own figure')
})

test('a loss at a frequency needs the resistance, and judges with it', () => {
  const own = { usefulHz: '1M', ownLossDb: '1' }
  expect(verdictOf(own)).toBe('unknown')
  // 1 dB at 1 MHz through 50 Ω is 1.62 nF: less than the 1.78 nF; 40 Ω leave 2.02 nF
  expect(verdictOf({ ...own, signalOhm: '50' })).toBe('fails')
  expect(verdictOf({ ...own, signalOhm: '40' })).toBe('ok')
})
