/**
 * No figure in a text of the book or of the guide is typed: each is worked out by calc or read from reference where the page is made, so
 * that text and calculator cannot disagree. A digit in a text may only be a name.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { textsOfCode } from '../../support/texts-in-code.ts'

const GUIDE = join(import.meta.dirname, '..', '..', '..', 'src', 'guide')
const BOOK = join(GUIDE, 'book')

/** What a case tells is what its report says; it is nobody's figure to work out. */
const TOLD = /^cases\//
/** Code that makes no text: ids and shapes, and what is searched for. */
const NO_TEXT = /^(types|contents|synonyms|shelves|notes\/words|glossary-match|page-texts)\.ts$/

/** Names that hold a digit: standards and their parts, buses, ceramics, codes on parts, pulses, legs, classes. */
const NAME =
  /\b(?:MIL-(?:STD|DTL|HDBK|PRF)-\d+\w*|ARINC \d+|RS-\d+|DO-160\w?|IEC \d+(?:-\d+)*|ISO \d+(?:-\d+)*|TIA-\d+\w*|IEEE \d+\w*|AC \d+-\w+|(?:CS|CE|RS|RE)\d+|10{1,3}BASE-\w+|C0G|NP0|X[57]R|L[125]\b|[CLRZ][012]\b|E(?:6|12|24|48|96)\b|1553|429|1394|(?:I2C|I²C|S2P|C1|C2|L1|L2)|section \d+(?:\.\d+)*|chapter \d+|clause \d+(?:\.\d+)*|waveforms? \d\w?|WF\d\w?|\d?\d[A-Z]\b|legs \d and \d|[Cc]lass \d|10\/1000 µs|8\/20 µs|4n7|1k5|R47)/g

/** A text with a digit that is part of no name. An id has no blank in it. */
const typedFigures = (code: string): readonly string[] =>
  textsOfCode(code).filter((text) => /\d/.test(text.replace(NAME, '')) && !/^[\w./-]+$/.test(text))

const filesOf = (room: string): readonly string[] =>
  readdirSync(room, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.ts'))

const files = filesOf(BOOK).filter((path) => !TOLD.test(path) && !NO_TEXT.test(path))

/**
 * Everything else that a page of the book shows: cases, notes, drawings, and the cards of the guide, which are the tests;
 * and what the guide answers with, outcomes and rules. Formulas, counts of a list and points of a scale hold digits there;
 * a number with its unit is a figure all the same.
 */
const MORE_ROOMS = ['notes', 'drawings', 'book/cases', 'evidence', 'suspects', 'chapters', 'rules'] as const
const MORE_FILES = [
  'close-out.ts',
  'close-out-trace.ts',
  'decision-sentence.ts',
  'fill-ins.ts',
  'screen-texts.ts',
] as const

/** What is no figure though it reads like one: a value as people type it, which the text is about. */
const SPELLINGS: ReadonlySet<string> = new Set([
  '4,7 nF',
  // how a time is written where one is asked for
  'The mean interval and the time since then count different things: write both in one unit, such as 6 h and 20 h of use, or both in days.',
  'The mean interval is the time from one event to the next, such as 6 h, and not how many come in an hour.',
])

const UNIT = [
  '[pnµμmkMG]?(?:V|A|F|H|Hz|W|Ω|s|J|m|bit/s)',
  'dB(?:µV|µA|m|Ω)?',
  '°C?|%|K|torr|ft|in|rpm|h|min',
  '(?:nano|micro|milli|centi|kilo|mega)?(?:volts?|amperes?|amps?|ohms?|farads?|henr(?:y|ies)|hertz|watts?|joules?|metres?|seconds?)',
  'inch(?:es)?|feet|minutes?|hours?|degrees?|percent|knots|poles?|decibels?',
].join('|')
const WITH_UNIT = new RegExp(`\\d[\\d.,]*[\\s\\u00a0\\u202f]?(?:${UNIT})(?![\\p{L}\\d])`, 'u')

const typedWithUnit = (code: string): readonly string[] =>
  textsOfCode(code).filter((text) => WITH_UNIT.test(text.replace(NAME, '')) && !SPELLINGS.has(text))

describe('figures in the texts of the book', () => {
  it('are told from names by this test', () => {
    expect(typedFigures("const a = { text: 'at 12 V' }")).toEqual(['at 12 V'])
    expect(typedFigures(`const a = \`up to \${volts(3)} and 4 more\``)).toEqual([' and 4 more'])
    expect(
      typedFigures("const a = { text: 'ARINC 429 and RS-422', id: 'line-3', source: { clause: '4.2 and 5' } }"),
    ).toEqual([])
  })

  it.each(files)('are worked out in %s', (path) => {
    expect(typedFigures(readFileSync(join(BOOK, path), 'utf8'))).toEqual([])
  })

  it('with their unit are told from formulas, counts and codes', () => {
    const seen = typedWithUnit(
      "const a = ['at 12 V', 'some 50 ohms', '5\\u00a0%', '30 to 45 s', 'in 4n7', '0 gone, 1 just there', '20·log10(2/3)', 'legs 1 and 2']",
    )
    expect(seen).toEqual(['at 12 V', 'some 50 ohms', '5\u00a0%', '30 to 45 s'])
  })

  it.each([
    ...MORE_ROOMS.flatMap((room) => filesOf(join(GUIDE, room)).map((path) => `${room}/${path}`)),
    ...MORE_FILES,
  ])('with a unit are worked out in %s', (path) => {
    expect(typedWithUnit(readFileSync(join(GUIDE, path), 'utf8'))).toEqual([])
  })
})
