/**
 * What of a page stands open and what is one tap away, by name: open is what its title is about, as much as a phone shows
 * on one screen; the order stays that of the page, and on paper everything is open. Pure.
 */

import { blockTexts, tappedInBlock } from '../../../guide/book/page-texts.ts'
import { sectionsOf } from '../../../guide/book/sections.ts'
import type { Block, BookPage, Shelf, Waveform } from '../../../guide/book/types.ts'
import { SAFETY_TEXTS } from '../../../reference/safety.ts'
import { fittingCautions } from '../cautions.tsx'
import {
  blockHeight,
  cautionsHeight,
  GAP_PX,
  headHeight,
  headingHeight,
  namesHeight,
  type Table,
  tableHeight,
} from './block-height.ts'
import { HOW, isPlain, nameOf } from './fold-names.ts'

/** A block that is shown; of a table so many rows before the rest is asked for. */
export type Shown = { readonly block: Block; readonly atOnce?: number }

export type Part =
  | { readonly is: 'open'; readonly heading?: string; readonly shown: readonly Shown[] }
  | { readonly is: 'fold'; readonly name: string; readonly blocks: readonly Block[] }

/** 800 px less the bar at the foot. */
const SCREEN_PX = 800 - 64
/** Of a table fewer rows do not show what it is about. */
const LEAST_ROWS = 1

/** The smallest thing that is open or folded: a block, or a row of it. */
type Atom = {
  readonly block: Block
  readonly section: number
  readonly heading?: string
  /** opened in this order; undefined: always folded, 0: always open */
  readonly rank: number | undefined
}

/** What stands at the foot of every page. */
export const FOOT = { words: 'Words', source: 'Source', sources: 'Sources', related: 'Related' } as const

const REST = 9

/** How near a block is to what the page is opened for, by its shelf. */
function rankOf(shelf: Shelf, block: Block, at: number, isFirstText: boolean): number | undefined {
  if (isFirstText && shelf !== 'sounds') return 0
  switch (block.is) {
    case 'never':
      return at === 0 ? 0 : 1
    case 'sound':
    case 'drawing':
    case 'waveform':
      return shelf === 'tests' ? 3 : 1
    case 'list':
      return shelf === 'tests' && at === 0 ? 1 : 6
    case 'rows':
      // of a line the ohms, which stand behind its picture
      if (shelf === 'lines') return at === 2 ? 2 : undefined
      return shelf === 'tables' ? 5 : 2
    case 'table':
      return shelf === 'tables' ? 1 : 5
    case 'text':
      if (shelf === 'sounds') return undefined
      return shelf === 'lines' ? 5 : block.text.startsWith(HOW) ? 3 : 4
    default:
      return REST
  }
}

/** What a picture shows, for those who rather read. */
const saidOf = ({ said }: Waveform): Block => ({ is: 'text', text: said, name: 'In words' })

/** What is asked for by its own name, whatever section it stands in. */
const isApart = ({ is }: Block): boolean => is === 'never' || is === 'open-check'

function atomsOf({ shelf, blocks }: BookPage): readonly Atom[] {
  const sections = sectionsOf(blocks)
  const firstText = blocks.find(({ is }) => is === 'text')
  return sections.flatMap(({ heading, isFolded, blocks: own }, section) =>
    own.flatMap((block): readonly Atom[] => {
      const named = { section, ...(heading !== undefined && { heading }) }
      const isAway = isFolded === true || block.is === 'open-check' || block.is === 'fill-in'
      const rank = isAway ? undefined : rankOf(shelf, block, section, block === firstText)
      if (block.is === 'waveform')
        return [
          { block, rank, ...named },
          { block: saidOf(block.waveform), rank: undefined, ...named },
        ]
      // has a name of its own, whatever it stands under
      if (isApart(block)) return [{ block, rank, section: section + 0.5 }]
      if (block.is !== 'rows') return [{ block, rank, ...named }]
      return block.rows.map((row) => ({ block: { is: 'rows', rows: [row] }, rank, ...named }))
    }),
  )
}

const rowsTogether = (one: Block | undefined, other: Block): Block | undefined =>
  one?.is === 'rows' && other.is === 'rows' ? { is: 'rows', rows: [...one.rows, ...other.rows] } : undefined

/** A part with one more block: rows stay one list. */
function withBlock(blocks: readonly Block[], block: Block): readonly Block[] {
  const joined = rowsTogether(blocks.at(-1), block)
  return joined === undefined ? [...blocks, block] : [...blocks.slice(0, -1), joined]
}

type Rows = ReadonlyMap<Block, number>
type Folding = Extract<Part, { readonly is: 'fold' }> & { readonly section: number; readonly isWhole: boolean }

/** Whether a block goes into the same fold as those before it. */
function belongs(fold: Folding, { block, section }: Atom, isWhole: boolean): boolean {
  const last = fold.blocks.at(-1)
  if (last === undefined || fold.section !== section || isApart(last) !== isApart(block)) return false
  if (isApart(last)) return last.is === block.is
  if (isWhole && fold.isWhole) return true
  return (
    last.is === block.is && (block.is === 'rows' || (isPlain(block) && isPlain(last)) || nameOf(block) === nameOf(last))
  )
}

function partsOf(atoms: readonly Atom[], open: ReadonlySet<Atom>, rows: Rows): readonly Part[] {
  const parts: (Part | Folding)[] = []
  const hasOpen = (section: number) => atoms.some((atom) => atom.section === section && open.has(atom))
  for (const atom of atoms) {
    const { block, section, heading } = atom
    const last = parts.at(-1)
    if (open.has(atom)) {
      const before = atoms.slice(0, atoms.indexOf(atom)).some((one) => one.section === section && open.has(one))
      const atOnce = rows.get(block)
      const shown: Shown = { block, ...(atOnce !== undefined && { atOnce }) }
      if (last?.is === 'open' && before) {
        const blocks = withBlock(
          last.shown.map((one) => one.block),
          block,
        )
        const isJoined = blocks.length === last.shown.length
        parts.splice(-1, 1, {
          ...last,
          shown: isJoined ? [...last.shown.slice(0, -1), { block: blocks.at(-1) ?? block }] : [...last.shown, shown],
        })
      } else parts.push({ is: 'open', ...(heading !== undefined && !before && { heading }), shown: [shown] })
      continue
    }
    const isWhole = heading !== undefined && !hasOpen(section) && !isApart(block)
    if (last?.is === 'fold' && 'section' in last && belongs(last, atom, isWhole)) {
      const blocks = withBlock(last.blocks, block)
      const [only] = blocks
      const name = last.isWhole || only === undefined || blocks.length > 1 ? last.name : nameOf(only)
      parts.splice(-1, 1, { ...last, name, blocks })
    } else parts.push({ is: 'fold', name: isWhole ? heading : nameOf(block), blocks: [block], section, isWhole })
  }
  return parts
}

const isPicture = ({ is }: Block): boolean => is === 'drawing' || is === 'waveform' || is === 'sound'

/** Rows begin with a line of their own, and a picture with its name; under a heading both stand close. */
const gapOver = (block: Block, isHeaded: boolean): number =>
  block.is === 'rows' ? (isHeaded ? 7 : 8) : isPicture(block) ? (isHeaded ? 0 : 4) : GAP_PX

/** How far down a page goes that is laid out so. */
function heightOf(page: BookPage, parts: readonly Part[]): number {
  const titles = fittingCautions(page.cautions ?? []).map((id) => SAFETY_TEXTS[id].title)
  let px = headHeight(page.title) + cautionsHeight(titles) - GAP_PX
  let names: string[] = []
  const endNames = () => {
    if (names.length > 0) px += namesHeight(names) + GAP_PX
    names = []
  }
  for (const part of parts) {
    if (part.is === 'fold') {
      names.push(part.name)
      continue
    }
    endNames()
    if (part.heading !== undefined) px += headingHeight()
    for (const [at, { block, atOnce }] of part.shown.entries()) {
      px += gapOver(block, part.heading !== undefined && at === 0)
      px += block.is === 'table' ? tableHeight(block, atOnce ?? block.rows.length) : blockHeight(block)
    }
  }
  names.push(FOOT.words, `${FOOT.sources}, 9`, `${FOOT.related}, 9`)
  endNames()
  return px
}

const IS_SERIES: readonly Block['is'][] = ['rows', 'text']

/** Whether one says on what the other began; how to check it can be read by itself. */
const goesOn = (before: Atom, { block, section }: Atom): boolean =>
  before.section === section &&
  before.block.is === block.is &&
  IS_SERIES.includes(block.is) &&
  !(block.is === 'text' && block.text.startsWith(HOW))

/** As many rows as fit, none where too few do. */
function rowsThatFit(table: Table, fits: (rows: number) => boolean): number {
  const least = Math.min(LEAST_ROWS, table.rows.length)
  for (let rows = table.rows.length; rows >= least; rows--) if (fits(rows)) return rows
  return 0
}

/** A page laid out for one screen of a phone. */
export function layoutOf(page: BookPage): readonly Part[] {
  const atoms = atomsOf(page)
  const open = new Set(atoms.filter(({ rank }) => rank === 0))
  const rows = new Map<Block, number>()
  const fits = () => heightOf(page, partsOf(atoms, open, rows)) <= SCREEN_PX
  const wanted = atoms.filter(({ rank }) => rank !== undefined && rank > 0)
  for (const atom of wanted.toSorted((a, b) => (a.rank ?? REST) - (b.rank ?? REST))) {
    const before = atoms[atoms.indexOf(atom) - 1]
    // of rows and of paragraphs the first ones
    if (before !== undefined && goesOn(before, atom) && !open.has(before)) continue
    const { block } = atom
    open.add(atom)
    if (block.is === 'table') {
      const shown = rowsThatFit(block, (count) => {
        rows.set(block, count)
        return fits()
      })
      if (shown === 0) open.delete(atom)
      else rows.set(block, shown)
    } else if (!fits()) open.delete(atom)
  }
  return partsOf(atoms, open, rows)
}

const blocksOf = (part: Part): readonly Block[] =>
  part.is === 'fold' ? part.blocks : part.shown.map(({ block }) => block)

/**
 * The texts of a page whose words can be tapped, in the order they are read: all but its title, which is no text of the
 * page, the button that opens a check, and the name of a fold, which a tap opens.
 */
export const tappedTexts = (parts: readonly Part[]): readonly string[] =>
  parts.flatMap((part) => [
    ...(part.is === 'open' && part.heading !== undefined ? [part.heading] : []),
    ...blocksOf(part).flatMap(tappedInBlock),
  ])

/** The folds that hold a word somebody looks for and that does not stand in the open. */
export function soughtFolds(parts: readonly Part[], words: readonly string[]): ReadonlySet<Part> {
  const holds = (part: Part, word: string) =>
    blocksOf(part)
      .flatMap(blockTexts)
      .some((text) => text.toLowerCase().includes(word))
  const hidden = words.filter((word) => !parts.some((part) => part.is === 'open' && holds(part, word)))
  return new Set(parts.filter((part) => part.is === 'fold' && hidden.some((word) => holds(part, word))))
}
