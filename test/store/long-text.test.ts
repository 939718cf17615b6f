/** A long text as what was changed in it: replayed, the differences are the text again. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  applied,
  type Difference,
  differenceOf,
  isMarked,
  journalLines,
  markOf,
  readJournal,
} from '../../src/store/long-text.ts'
import type { Step } from '../../src/store/steps.ts'

/** Few letters, so that pieces repeat and a difference could begin at several places; half a pair of surrogates is one too. */
const text = fc
  .array(fc.constantFrom('a', 'b', '\n', 'µ', '😀', '\ud83d', '"', '\\'), { maxLength: 40 })
  .map((letters) => letters.join(''))

/** What a journal holds of texts that follow each other. */
function journalOf(texts: readonly string[]): string {
  const [first = '', ...later] = texts
  const differences: Difference[] = []
  let before = first
  for (const one of later) {
    differences.push(differenceOf(before, one))
    before = one
  }
  const step: Step = {
    do: 'change',
    id: 'c',
    at: '2026-01-01T00:00:00.000Z',
    base: { note: first },
    patch: { note: before },
  }
  const placeOf = (one: string) => (one === before ? later.length : one === first ? 0 : undefined)
  return journalLines({ count: later.length, run: 1, began: markOf(first), steps: [step], differences, placeOf })
}

const noteOf = (raw: unknown): string | undefined => (raw as { patch: { note?: string } } | undefined)?.patch.note

describe('a difference', () => {
  it('turns one text into the other, whatever was changed', () => {
    fc.assert(
      fc.property(text, text, text, text, (head, was, now, tail) => {
        const [before, after] = [head + was + tail, head + now + tail]
        const [at, cut, insert] = differenceOf(before, after)
        expect(applied(before, [at, cut, insert])).toBe(after)
        expect(cut).toBeLessThanOrEqual(was.length)
        expect(insert.length).toBeLessThanOrEqual(now.length)
      }),
    )
  })

  it('of a key in two million letters is that key', () => {
    const long = 'and so on\n'.repeat(200_000)
    const at = 777_777
    expect(differenceOf(long, `${long.slice(0, at)}µ${long.slice(at)}`)).toEqual([at, 0, 'µ'])
    expect(differenceOf(long, long.slice(0, at) + long.slice(at + 1))).toEqual([at, 1, ''])
    expect(differenceOf(long, `${long}!`)).toEqual([long.length, 0, '!'])
  })
})

describe('a journal of differences', () => {
  it('read back is the text, however many keys it took', () => {
    fc.assert(
      fc.property(fc.array(text, { minLength: 2, maxLength: 12 }), (texts) => {
        const [raw] = readJournal(journalOf(texts))?.stepsOn(texts[0] ?? '') ?? []
        expect(noteOf(raw)).toBe(texts.at(-1))
      }),
    )
  })

  it('torn in its last line loses the last key and nothing else', () => {
    const texts = ['a note', 'a note ', 'a note o', 'a note of', 'a note of µ']
    const lines = journalOf(texts)
    const last = lines.lastIndexOf('\n')
    for (let length = last + 1; length < lines.length; length++) {
      const [raw] = readJournal(lines.slice(0, length))?.stepsOn(texts[0] ?? '') ?? []
      expect(noteOf(raw), lines.slice(last + 1, length)).toBe('a note of')
    }
  })

  it('torn in the middle ends there', () => {
    const lines = journalOf(['a note', 'a note ', 'a note o', 'a note of']).split('\n')
    const torn = [...lines.slice(0, 2), lines[2]?.slice(1), ...lines.slice(3)].join('\n')
    expect(noteOf(readJournal(torn)?.stepsOn('a note')[0])).toBe('a note ')
  })

  it('torn in its first line is none, and never throws', () => {
    const lines = journalOf(['a note', 'a note!'])
    for (let length = 0; length < lines.indexOf('\n'); length++)
      expect(readJournal(lines.slice(0, length))).toBeUndefined()
    fc.assert(fc.property(fc.string(), (any) => void readJournal(any)?.stepsOn('')))
  })

  it('knows the text it began with from another', () => {
    const long = 'and so on\n'.repeat(20_000)
    expect(isMarked(long, markOf(long))).toBe(true)
    expect(isMarked(`${long}!`, markOf(long))).toBe(false)
    for (const at of [0, 77_777, long.length - 1])
      expect(isMarked(`${long.slice(0, at)}µ${long.slice(at + 1)}`, markOf(long))).toBe(false)
  })
})
