/**
 * How high the blocks of a page stand on a phone 360 px wide with letters of the default size: counted, so that a page is
 * laid out once, before anything of it is drawn. A little more than they take is right, less is not. Pure.
 */
import type { Block, BookRow } from '../../../guide/book/types.ts'
import drawingHeights from '../../../state/drawing-heights.ts?built'
import { waveformShape } from './waveform-shape.ts'

const WIDTH_PX = 328
const LINE_PX = 24
/** between blocks, and between what stands folded and what does not */
export const GAP_PX = 12
const ITEM_GAP_PX = 8
/** mean advance of a letter, as a share of its size; that of a bold one is wider */
const LETTER_FRAC = 0.51
const BOLD_FRAC = 0.56
const TEXT_PX = 16
const CELL_PX = 15
const TAP_PX = 48
/** a sheet of 320 units fills the width */
const UNIT_PX = WIDTH_PX / 320

/** How many lines a text takes. */
export function linesOf(text: string, widthPx: number, letterPx: number): number {
  let [lines, x] = [1, 0]
  for (const word of text.split(' ')) {
    const wide = word.length * letterPx
    if (x > 0 && x + letterPx + wide > widthPx) [lines, x] = [lines + 1, wide]
    else x += (x > 0 ? letterPx : 0) + wide
  }
  return lines
}

const PLAIN_PX = TEXT_PX * LETTER_FRAC
const STRONG_PX = TEXT_PX * BOLD_FRAC

const proseHeight = (text: string, widthPx = WIDTH_PX): number => linesOf(text, widthPx, PLAIN_PX) * LINE_PX

const listHeight = (items: readonly string[], widthPx: number): number =>
  items.reduce((sum, item) => sum + proseHeight(item, widthPx), ITEM_GAP_PX * items.length)

/** A label takes two of seven parts of the width, and six letters' room at least. */
const LABEL_PX = 96
const VALUE_PX = WIDTH_PX - LABEL_PX - GAP_PX - 6

export const rowHeight = ({ label, text, source }: BookRow): number =>
  Math.max(proseHeight(label, LABEL_PX), proseHeight(text, VALUE_PX) + (source === undefined ? 0 : 2 * LINE_PX)) + 17

/** A row of a table is a card on a phone: its cells follow each other, each with the name of its column. */
function cardHeight(head: readonly string[], cells: readonly string[]): number {
  const width = WIDTH_PX - 18
  let [lines, x] = [0, width]
  for (const [at, cell] of cells.entries()) {
    if (cell === '') continue
    const text = `${head[at] ?? ''} ${cell}`
    const letter = CELL_PX * 0.6
    const wide = text.length * letter
    if (x + GAP_PX + wide <= width) x += GAP_PX + wide
    else {
      const own = linesOf(text, width, letter)
      lines += own
      x = own > 1 ? width : wide
    }
  }
  return lines * 20.25 + 14
}

export type Table = Extract<Block, { readonly is: 'table' }>

/** A table with so many of its rows; below it the tap that shows all, or that copies it. */
export const tableHeight = ({ caption, head, rows }: Table, shown: number): number =>
  rows.slice(0, shown).reduce((sum, cells) => sum + cardHeight(head, cells), TAP_PX + 8) +
  (caption === undefined ? 0 : linesOf(caption, WIDTH_PX, STRONG_PX) * 20.25 + 4)

const NAME_LETTER_PX = 7.5
const NAME_MARK_PX = 17
/** the sign before what must not be done */
const TICK_PX = 28

/** Names side by side, each a target of its own. */
export function namesHeight(names: readonly string[]): number {
  let [rows, x] = [0, WIDTH_PX]
  for (const name of names) {
    const wide = Math.min(WIDTH_PX, name.length * NAME_LETTER_PX + NAME_MARK_PX + (/^Never/.test(name) ? TICK_PX : 0))
    if (x + GAP_PX + wide <= WIDTH_PX) x += GAP_PX + wide
    else [rows, x] = [rows + 1, wide]
  }
  return rows * TAP_PX
}

export const headHeight = (title: string): number => 67 + linesOf(title, 272, 9.7) * LINE_PX

/** The titles of what to beware of, in one box. */
export const cautionsHeight = (titles: readonly string[]): number =>
  titles.length === 0 ? 0 : linesOf(titles.join('\u00A0· '), WIDTH_PX - 58, PLAIN_PX) * 20 + 10 + GAP_PX

export const headingHeight = (): number => 20 + GAP_PX

/** What a block takes by itself where it is shown. */
export function blockHeight(block: Block): number {
  switch (block.is) {
    case 'heading':
      return headingHeight()
    case 'text':
      return proseHeight(block.text, WIDTH_PX - 6)
    case 'list':
      return listHeight(block.items, WIDTH_PX - 28)
    case 'never':
      return listHeight(block.items, WIDTH_PX - 45) - (ITEM_GAP_PX / 2) * (block.items.length - 1) + LINE_PX + 18
    case 'rows':
      return block.rows.reduce((sum, row) => sum + rowHeight(row), 1)
    case 'table':
      return tableHeight(block, block.rows.length)
    case 'drawing': {
      const [units, letters] = drawingHeights[block.drawing] ?? [0, 0]
      return Math.ceil((letters * STRONG_PX) / WIDTH_PX) * LINE_PX + units * UNIT_PX
    }
    case 'waveform':
      return (
        linesOf(block.waveform.title, WIDTH_PX, STRONG_PX) * LINE_PX +
        4 +
        waveformShape(block.waveform).height * UNIT_PX
      )
    case 'sound':
      return TAP_PX + 4 + 150 * UNIT_PX
    case 'fill-in':
    case 'open-check':
      return TAP_PX
  }
}
