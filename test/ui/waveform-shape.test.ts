/** The waveforms of the book: no letters over others, nothing off the sheet, and every level and time named on it. */
import { describe, expect, it } from 'vitest'
import { pages as linePages } from '../../src/guide/book/lines/lines.ts'
import { pages as testPages } from '../../src/guide/book/tests/tests.ts'
import type { BookPage, Waveform } from '../../src/guide/book/types.ts'
import { textWidth } from '../../src/ui/parts/axis.ts'
import { LETTER_PX, type Letters, SHEET_WIDTH, waveformShape } from '../../src/ui/parts/book/waveform-shape.ts'

const wavesOf = (pages: readonly BookPage[]): readonly (readonly [string, Waveform])[] =>
  pages.flatMap(({ id, blocks }) =>
    blocks.flatMap((block, at) => (block.is === 'waveform' ? [[`${id} ${at}`, block.waveform] as const] : [])),
  )

/** Random pictures: long names, levels close together, times too short for their words. */
function invented(seed: number): Waveform {
  let state = seed
  const next = (): number => {
    state = (state * 48271) % 0x7fffffff
    return state / 0x7fffffff
  }
  const span = 10 ** (12 * next() - 10)
  const size = 10 ** (7 * next() - 3)
  const level = (at: number) => ({
    label: 'least the box runs on'.slice(0, 3 + Math.floor(18 * next())),
    volt: size * (next() - at / 3),
  })
  return {
    title: 'invented',
    said: 'invented',
    spanSec: span,
    wires: Array.from({ length: 1 + Math.floor(4 * next()) }, (_, at) => ({
      label: `wire of a long name ${at}`,
      points: [
        [0, size * next()],
        [span, -size * next()],
      ] as const,
    })),
    levels: Array.from({ length: Math.floor(6 * next()) }, (_, at) => level(at)),
    marks: Array.from({ length: Math.floor(4 * next()) }, () => {
      const fromSec = span * next()
      return { label: 'a stretch of time', fromSec, toSec: fromSec + (span - fromSec) * next() }
    }),
  }
}

const WAVES = [
  ...wavesOf(linePages()),
  ...wavesOf(testPages()),
  ...Array.from({ length: 60 }, (_, at) => [`invented ${at}`, invented(at + 1)] as const),
]

function boxOf({ text, x, y, anchor }: Letters) {
  const width = textWidth(text, LETTER_PX)
  const left = anchor === 'middle' ? x - width / 2 : anchor === 'end' ? x - width : x
  return { text, left, right: left + width, top: y - 9, bottom: y + 3 }
}

describe('a waveform', () => {
  it('is drawn for the lines and the instruments', () => {
    expect(wavesOf(linePages()).length).toBeGreaterThan(30)
    expect(wavesOf(testPages()).length).toBeGreaterThan(3)
  })

  it.each(WAVES)('%s has no letters over others, and none off its sheet', (_, waveform) => {
    const { letters, height } = waveformShape(waveform)
    const boxes = letters.map(boxOf)
    const over = boxes.flatMap((a, at) =>
      boxes
        .slice(at + 1)
        .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map((b) => `${a.text} / ${b.text}`),
    )
    expect(over).toEqual([])
    const off = boxes.filter((box) => box.left < 0 || box.right > SHEET_WIDTH || box.top < 0 || box.bottom > height)
    expect(off).toEqual([])
  })

  it.each(WAVES)('%s names its wires, levels, times and both units', (_, waveform) => {
    const { letters, paths } = waveformShape(waveform)
    const said = letters.map(({ text }) => text).join(' ')
    for (const { label } of [...waveform.wires, ...waveform.levels, ...(waveform.marks ?? [])])
      expect(said).toContain(label)
    const ticks = letters.filter(({ is }) => is === 'tick').map(({ text }) => text)
    expect(ticks.some((text) => /^[pnµmk]?V$/u.test(text))).toBe(true)
    expect(ticks.some((text) => /^[fpnµm]?s$/u.test(text))).toBe(true)
    expect(paths.every(({ d }) => !/NaN|Infinity|undefined/u.test(d))).toBe(true)
  })
})
