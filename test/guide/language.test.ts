/** How the guide speaks: short sentences, and every short form with its words on the screen where it stands. */
import { describe, expect, it } from 'vitest'
import type { FactKey, Line } from '../../src/calc/types.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import { advise } from '../../src/guide/rules.ts'
import {
  adviceTexts,
  formsIn,
  isExplained,
  itemTexts,
  noteTexts,
  outcomeTexts,
  withCautions,
} from '../../src/guide/screen-texts.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import { NO_TRIAL_LIST, SAFETY_TEXTS } from '../../src/reference/safety.ts'
import { SHORT_FORMS } from '../../src/reference/short-forms.ts'

/** A list is read line by line, not as a sentence. */
const LIST = NO_TRIAL_LIST.join('; ')

const LONGEST = 25
const MEAN = 14

/** Lines that make the rules speak: nothing known, a slow pair, a fast one, power, a wire, and what a plan states. */
const LINES: readonly Partial<Record<FactKey, string>>[] = [
  {},
  { lineKind: 'arinc-429-high', noiseHz: '30 MHz', neededDb: '20', noiseSourceOhm: '50; 300', markedF: '100p' },
  { lineKind: 'ethernet-100base-tx', noiseHz: '2 MHz; 400 MHz', noiseMode: 'differential' },
  { lineKind: 'power-28-vdc', noiseHz: '1 MHz', noiseMode: 'differential', loadW: '50' },
  { lineKind: 'power-115-vac-400', noiseHz: '1 MHz' },
  { lineKind: 'discrete-ground', noiseHz: '10 MHz', noiseSourceOhm: '5', noiseLoadOhm: '1k', inductanceH: '1µ' },
  { lineKind: 'composite-video', noiseHz: '1 MHz', maxBuildableF: '1n' },
]
const lineOf = (facts: Partial<Record<FactKey, string>>): Line => ({
  id: 'l',
  name: '',
  gate: 'clear',
  trials: [],
  facts: Object.fromEntries(Object.entries(facts).map(([key, text]) => [key, { text, origin: { by: 'user' } }])),
})

/** Each piece of advice once, by its words. */
const ADVICE: readonly (readonly [string, readonly string[]])[] = [
  ...new Map(
    GUIDE.outcomes
      .flatMap((outcome) =>
        LINES.flatMap((facts) => advise({ guide: GUIDE, outcome, line: lineOf(facts), gate: 'clear' }).items),
      )
      .map((item) => [item.text, [`${item.rule} (advice)`, adviceTexts([item])] as const]),
  ).values(),
]

const TEXTS: readonly (readonly [string, readonly string[]])[] = [
  ...GUIDE.evidence.map((each) => [each.id, itemTexts(each)] as const),
  ...GUIDE.outcomes.map((each) => [each.id, outcomeTexts(each)] as const),
  ...GUIDE.suspects.map((each) => [each.id, [each.name, each.oneLine]] as const),
  ...FIELD_NOTES.map((each) => [each.id, each.paragraphs] as const),
  ...Object.entries(SAFETY_TEXTS).map(([id, { text }]) => [id, [text.replace(LIST, 'these')]] as const),
  ...LINE_KINDS.flatMap(({ id, barredWhy, noTrialWhy }) => [[id, [barredWhy ?? '', noTrialWhy ?? '']] as const]),
  ...ADVICE,
]

/** What stands on one screen together. */
const SCREENS: readonly (readonly [string, readonly string[]])[] = [
  ...GUIDE.evidence.map((each) => [each.id, withCautions(itemTexts(each), each.cautions)] as const),
  ...GUIDE.outcomes.map((each) => [each.id, withCautions(outcomeTexts(each), each.cautions)] as const),
  ...FIELD_NOTES.map((each) => [each.id, noteTexts(each)] as const),
  ...ADVICE,
]

/** Sentences end at a full stop or a question mark. */
const sentencesOf = (text: string): readonly string[] =>
  text
    .split(/(?<=[.?!])\s+(?=[\p{Lu}0-9“"√])/u)
    .map((each) => each.trim())
    .filter((each) => each !== '')
/** Figures, units and formulas are read as one word each. */
const wordsOf = (sentence: string): number => sentence.split(/\s+/u).filter((word) => /[\p{L}\p{N}]/u.test(word)).length

describe('the language of the guide', () => {
  it('has no sentence over 25 words', () => {
    const long = TEXTS.flatMap(([id, texts]) =>
      texts.flatMap(sentencesOf).flatMap((each) => (wordsOf(each) > LONGEST ? [`${id}: ${each}`] : [])),
    )
    expect([...new Set(long)]).toEqual([])
  })

  it('has 14 words in a sentence at most, on the average of every screen', () => {
    const heavy = TEXTS.flatMap(([id, texts]) => {
      const sentences = texts.flatMap(sentencesOf)
      const mean = sentences.reduce((sum, each) => sum + wordsOf(each), 0) / sentences.length
      return mean > MEAN ? [`${id}: ${mean.toFixed(1)}`] : []
    })
    expect(heavy).toEqual([])
  })

  it('says what every short form stands for, in the text where it is first met or in the list of the screen', () => {
    const unexplained = SCREENS.flatMap(([id, texts]) =>
      formsIn(texts)
        .filter((form) => !NAME.test(form) && SHORT_FORMS[form] === undefined && !isExplained(form, texts))
        .map((form) => `${id}: ${form}`),
    )
    expect([...new Set(unexplained)]).toEqual([])
  })
})

/** Names of standards, tests, buses and signals, and signs in formulas: they stand for themselves. */
const NAME =
  /^(?:MIL-[A-Z]+-\d+\w*|ARINC|RS-\d+|DO-160|CS\d+|CE\d+|100BASE-TX|10BASE-T|WF4|L[125]|[CLZ]\d|LC|CL|II|OK|0 PF|X2|AS5643)$/
