/**
 * One number is printed alike in the sentence and in the figures of the same card, to the careful side: what comes is
 * brought up, what is promised to come off cut down. By hand: 300 V behind 5 Ω leave 257.14 V at 30 Ω; 10 nF between
 * 50 Ω and 50 Ω take off 25.554 dB at 12.05 MHz; 2π·400 Hz·115 V·10 nF is 2.8903 mA.
 */
import { expect, it } from 'vitest'
import { checkById } from '../../src/calc/registry.ts'
import type { CheckId } from '../../src/calc/types.ts'
import { sentenceOf } from '../../src/calc/verdict.ts'
import { outputText, printed } from '../../src/ui/parts/figure.ts'
import { run } from '../support/run-check.ts'

const ends = { sourceOhm: '50', loadOhm: '50' }
const STORIES: readonly [CheckId, string, string, Readonly<Record<string, string>>][] = [
  ['surge', 'loadPeakV', '258 V', { waveform: 'wf4', level: '3', withstandV: '400', loadOhm: '30' }],
  ['filter', 'insertionLossDb', '25.5 dB', { ...ends, capacitanceF: '10n', frequencyHz: '12.05M' }],
  ['filter', 'benchInsertionLossDb', '25.5 dB', { capacitanceF: '10n', frequencyHz: '12.05M' }],
  ['power', 'currentRmsA', '2.9 mA', { workingRmsV: '115', supplyHz: '400', capacitanceF: '10n', chassisLimitA: '5m' }],
]

it.each(STORIES)('%s: %s is %s in the sentence and among the figures', (id, key, text, texts) => {
  const check = checkById(id)
  const output = check?.outputs.find((one) => one.key === key)
  if (check === undefined || output === undefined) throw new Error(`No ${key} of ${id}.`)
  const result = run(check, texts)
  const cell = result.outputs[key]?.cell
  if (cell?.is !== 'si' || !('quantity' in output)) throw new Error(`${key} has no number.`)
  const plain = (said: string) => said.replaceAll(/[\u00a0\u202f]/gu, ' ')
  expect(plain(sentenceOf(result))).toContain(text)
  expect(plain(outputText(cell, output))).toBe(text)
  expect(plain(printed(cell.si, output.quantity))).not.toBe(text)
})
