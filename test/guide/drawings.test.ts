/** The drawings: every one is shown somewhere, told in words, and lies on its sheet with no letters over others. */
import { describe, expect, it } from 'vitest'
import { pages as drawingPages } from '../../src/guide/book/drawings/drawings.ts'
import { pages as testPages } from '../../src/guide/book/tests/tests.ts'
import { DRAWING_IDS } from '../../src/guide/drawing-ids.ts'
import { BOOK_DRAWING_IDS } from '../../src/guide/drawings/book-ids.ts'
import { RINGS_AT_HZ, ringsByDb } from '../../src/guide/drawings/circuits.ts'
import { DRAWINGS } from '../../src/guide/drawings/drawings.ts'
import { type Drawing, type Mark, SHEET_WIDTH } from '../../src/guide/drawings/types.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { FIELD_NOTES } from '../../src/guide/notes.ts'

type Box = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }

/** A letter of 12 units is about this wide; bold ones wider. */
const LETTER = 6.3
const BOLD_LETTER = 6.9

function letters(mark: Extract<Mark, { text: string }>): Box {
  const width = mark.text.length * (mark.bold ? BOLD_LETTER : LETTER)
  const [x, y] = mark.at
  const left = mark.anchor === 'middle' ? x - width / 2 : mark.anchor === 'end' ? x - width : x
  return { left, right: left + width, top: y - 9, bottom: y + 3 }
}

const textsOf = ({ marks }: Drawing) => marks.filter((mark) => 'text' in mark)

function pointsOf(mark: Mark): readonly (readonly [number, number])[] {
  if ('line' in mark) return mark.line
  if ('box' in mark) {
    const [x, y, width, height] = mark.box
    return [
      [x, y],
      [x + width, y + height],
    ]
  }
  if ('ring' in mark) {
    const [x, y, rx, ry] = mark.ring
    return [
      [x - rx, y - ry],
      [x + rx, y + ry],
    ]
  }
  if ('coil' in mark) return [mark.coil, [mark.coil[0] + 40, mark.coil[1]]]
  if ('dot' in mark) return [mark.dot]
  if ('text' in mark) return [mark.at]
  const [x, y] = 'capacitor' in mark ? mark.capacitor : 'resistor' in mark ? mark.resistor : mark.suppressor
  return [
    [x, y],
    [x, y + 40],
  ]
}

it('an inductor of 10 µH and a capacitor of 10 nF ring at 503 kHz, from 2 Ω and 0.5 Ω of winding into 500 Ω by 17 dB', () => {
  expect(RINGS_AT_HZ).toBeCloseTo(1 / (2 * Math.PI * Math.sqrt(1e-13)), 0)
  // by hand: V = jX/(R·(1 + jX/Rl)) at resonance with X = 31.6 Ω, R = 2.5 Ω; bare 500/502
  const [x, r, load] = [Math.sqrt(10e-6 / 10e-9), 2.5, 500]
  const behind = 1 / Math.hypot(1 - 1 + r / load, r / x + x / load)
  expect(ringsByDb()).toBeCloseTo(17, 1)
  expect(ringsByDb()).toBeCloseTo(20 * Math.log10(behind / (load / (load + 2))), 6)
})

describe('the drawings', () => {
  it('are those of the list, each once, and each stands on a card or a note', () => {
    expect(DRAWINGS.map(({ id }) => id).toSorted()).toEqual([...DRAWING_IDS, ...BOOK_DRAWING_IDS].toSorted())
    const shown = new Set([...GUIDE.evidence, ...FIELD_NOTES].flatMap(({ picture }) => picture ?? []))
    expect([...shown].toSorted()).toEqual([...DRAWING_IDS].toSorted())
    const inBook = new Set(
      [...drawingPages(), ...testPages()].flatMap(({ blocks }) =>
        blocks.flatMap((block) => (block.is === 'drawing' ? [block.drawing] : [])),
      ),
    )
    for (const { id } of DRAWINGS) expect(inBook, id).toContain(id)
  })

  it.each(DRAWINGS)('$id says in short sentences what it shows', ({ said, title }) => {
    expect(title.trim()).not.toBe('')
    const sentences = said.split(/(?<=[.:])\s+/)
    expect(sentences.length).toBeGreaterThan(1)
    for (const sentence of sentences) expect(sentence.split(/\s+/).length, sentence).toBeLessThanOrEqual(25)
  })

  it.each(DRAWINGS)('$id lies on its sheet', (drawing) => {
    for (const mark of drawing.marks)
      for (const [x, y] of pointsOf(mark)) {
        expect(x, JSON.stringify(mark)).toBeGreaterThanOrEqual(0)
        expect(x, JSON.stringify(mark)).toBeLessThanOrEqual(SHEET_WIDTH)
        expect(y, JSON.stringify(mark)).toBeGreaterThanOrEqual(0)
        expect(y, JSON.stringify(mark)).toBeLessThanOrEqual(drawing.height)
      }
    for (const text of textsOf(drawing)) {
      const { left, right, top, bottom } = letters(text)
      expect([left >= 0, right <= SHEET_WIDTH, top >= 0, bottom <= drawing.height], text.text).toEqual(
        Array(4).fill(true),
      )
    }
  })

  it.each(DRAWINGS)('$id has no letters over other letters', (drawing) => {
    const boxes = textsOf(drawing).map((text) => ({ name: text.text, ...letters(text) }))
    const over = boxes.flatMap((a, at) =>
      boxes
        .slice(at + 1)
        .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map((b) => `${a.name} / ${b.name}`),
    )
    expect(over).toEqual([])
  })
})

it('the ladder that explains ladders is one that holds: each rung that comes lies below the one it is held by', () => {
  const ladder = DRAWINGS.find(({ id }) => id === 'ladder-explained')
  const heightOf = (name: string) => {
    const text = ladder && textsOf(ladder).find((mark) => mark.text === name)
    if (ladder === undefined || text === undefined) throw new RangeError(name)
    return ladder.height - text.at[1]
  }
  expect(heightOf('line in work')).toBeLessThan(heightOf('stand-off'))
  expect(heightOf('surge of supply')).toBeLessThan(heightOf('stand-off'))
  expect(heightOf('clamp at peak')).toBeLessThan(heightOf('capacitor’s'))
  expect(heightOf('clamp at peak')).toBeLessThan(heightOf('circuit’s'))
})
