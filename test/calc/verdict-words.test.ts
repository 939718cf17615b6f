/** The words of a verdict, and where a sentence says them. */
import { expect, it } from 'vitest'
import { aroundWord, sentenceOf, VERDICT_WORDS } from '../../src/calc/verdict.ts'

it('says yes, with care, no, and not known', () => {
  expect(VERDICT_WORDS).toEqual({ ok: 'yes', marginal: 'with care', fails: 'no', unknown: 'not known' })
})

it('finds the word where the sentence says it, and not inside another word', () => {
  expect(aroundWord('10 nF: no. The bus stands 4.8 nF.', 'fails')).toEqual({
    before: '10 nF: ',
    word: 'no',
    after: '. The bus stands 4.8 nF.',
  })
  expect(aroundWord('Not known: needs the bit rate.', 'unknown')?.word).toBe('Not known')
  expect(aroundWord('No single capacitor does both.', 'fails')).toEqual({
    before: '',
    word: 'No',
    after: ' single capacitor does both.',
  })
  expect(aroundWord('The casino. Nothing else.', 'fails')).toBeUndefined()
  expect(aroundWord('Nothing must come off.', 'fails')).toBeUndefined()
})

it('says the word before a sentence that lacks it, and no word where the number is the answer', () => {
  expect(sentenceOf({ verdict: 'fails', headline: 'The bus stands 4.8 nF.' })).toBe('No. The bus stands 4.8 nF.')
  expect(sentenceOf({ verdict: 'ok', headline: '36 dB must come off.', answers: 'number' })).toBe(
    '36 dB must come off.',
  )
  expect(sentenceOf({ verdict: 'unknown', headline: 'Enter the limit.', answers: 'number' })).toBe(
    'Not known. Enter the limit.',
  )
  expect(sentenceOf({ headline: 'Enter the limit.' })).toBe('Enter the limit.')
})
