/** How the guide speaks: short sentences, and every abbreviation explained where it first stands on a screen. */
import { describe, expect, it } from 'vitest'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Evidence } from '../../src/guide/investigation.ts'
import { TEST_NOTES } from '../../src/guide/notes/tests.ts'
import type { Outcome } from '../../src/guide/types.ts'
import { NO_TRIAL_LIST, SAFETY_TEXTS } from '../../src/reference/safety.ts'

/** A list is read line by line, not as a sentence. */
const LIST = NO_TRIAL_LIST.join('; ')

const LONGEST = 25
const MEAN = 14

const itemTexts = ({ text, why, findOut, options, card }: Evidence): readonly string[] => [
  text,
  why,
  findOut,
  ...options.flatMap(({ label, hint, means }) => [label, means, ...(hint === undefined ? [] : [hint])]),
  ...(card === undefined
    ? []
    : [...card.do, card.expect, ...card.with.map((one) => `${one.instrument}: ${one.setting}`)]),
]
const outcomeTexts = ({ headline, reason, steps, nextMeasurement, checks }: Outcome): readonly string[] => [
  headline,
  reason,
  ...steps,
  nextMeasurement,
  ...checks.map(({ why }) => why),
]

const TEXTS: readonly (readonly [string, readonly string[]])[] = [
  ...GUIDE.evidence.map((each) => [each.id, itemTexts(each)] as const),
  ...GUIDE.outcomes.map((each) => [each.id, outcomeTexts(each)] as const),
  ...GUIDE.suspects.map((each) => [each.id, [each.name, each.oneLine]] as const),
  ...TEST_NOTES.map((each) => [each.id, each.paragraphs] as const),
  ...Object.entries(SAFETY_TEXTS).map(([id, { text }]) => [id, [text.replace(LIST, 'these')]] as const),
]

/** Sentences end at a full stop or a question mark. */
const sentencesOf = (text: string): readonly string[] =>
  text
    .split(/(?<=[.?!])\s+(?=[\p{Lu}0-9“"])/u)
    .map((each) => each.trim())
    .filter((each) => each !== '')
const wordsOf = (sentence: string): number => sentence.split(/\s+/u).filter((word) => /[\p{L}\p{N}]/u.test(word)).length

describe('the language of the guide', () => {
  it('has no sentence over 25 words', () => {
    const long = TEXTS.flatMap(([id, texts]) =>
      texts.flatMap(sentencesOf).flatMap((each) => (wordsOf(each) > LONGEST ? [`${id}: ${each}`] : [])),
    )
    expect(long).toEqual([])
  })

  it('has 14 words in a sentence at most, on the average of every screen', () => {
    const heavy = TEXTS.flatMap(([id, texts]) => {
      const sentences = texts.flatMap(sentencesOf)
      const mean = sentences.reduce((sum, each) => sum + wordsOf(each), 0) / sentences.length
      return mean > MEAN ? [`${id}: ${mean.toFixed(1)}`] : []
    })
    expect(heavy).toEqual([])
  })

  it('explains every abbreviation on the screen where it stands', () => {
    const unexplained = TEXTS.flatMap(([id, texts]) => {
      const all = texts.join(' ')
      const found = new Set(all.match(/\b[A-Z][A-Z0-9]+(?:-[A-Z0-9]+)*\b/g) ?? [])
      return [...found].filter((word) => !isKnown(word) && !isExplained(word, all)).map((word) => `${id}: ${word}`)
    })
    expect(unexplained).toEqual([])
  })
})

/** Names of standards, buses and units, and what everybody on a flight line says. */
const KNOWN =
  /^(?:AC|DC|HF|VHF|UHF|COM|NAV|ADF|MIL-STD-\d+\w*|ARINC|RS-\d+|CAN|USB|LED|IEC|DO-160|CS\d+|C|L|LC|CL|Pi|T|P|S|X2|A|B|II|PTT|MHZ|BX|WF4|CE102|NTSB|FAA|ASRS|ATA|V|OK|OC|LX|PI)$/
const isKnown = (word: string): boolean => KNOWN.test(word)
const isExplained = (word: string, all: string): boolean =>
  new RegExp(`${word}[,:]? (?:is|means|\\()|\\(${word}\\)|${word}: |${word}, the`).test(all)
