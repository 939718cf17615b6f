/** The line cards: one for every kind, complete or saying what is not known, and their figures those of calc and of the documents. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { lineCardId } from '../../../src/guide/book/lines/line-card-id.ts'
import { linePage, pages } from '../../../src/guide/book/lines/lines.ts'
import { pageTexts } from '../../../src/guide/book/page-texts.ts'
import type { Block, BookPage } from '../../../src/guide/book/types.ts'
import { CHECK_KEYS } from '../../../src/guide/check-keys.ts'
import { formsIn, isExplained } from '../../../src/guide/screen-texts.ts'
import { BARRED_CARDS } from '../../../src/reference/line-cards/barred.ts'
import { barredCardOf, LINE_CARDS, lineCardOf, type Told } from '../../../src/reference/line-cards.ts'
import { LINE_KINDS, type LineKind, lineKindById } from '../../../src/reference/line-kinds.ts'
import { SHORT_FORMS } from '../../../src/reference/short-forms.ts'
import { SOURCES } from '../../../src/reference/sources.ts'

const PAGES = pages()
const OPEN = LINE_KINDS.filter(({ barredWhy }) => barredWhy === undefined)
const BARRED = LINE_KINDS.filter(({ barredWhy }) => barredWhy !== undefined)

const rowsOf = ({ blocks }: BookPage) => blocks.flatMap((block) => (block.is === 'rows' ? block.rows : []))
const blocksOf = <B extends Block['is']>({ blocks }: BookPage, is: B) =>
  blocks.filter((block): block is Extract<Block, { is: B }> => block.is === is)
const plain = (text: string): string => text.replaceAll('\u00a0', ' ')
/** What stands beside a label of a card, all of it. */
const said = (kindId: string, label: string): string =>
  plain(
    PAGES.filter(({ id }) => id === lineCardId(kindId))
      .flatMap(rowsOf)
      .filter((row) => row.label === label)
      .map(({ text }) => text)
      .join(' '),
  )

describe('the shelf of line cards', () => {
  it('has one card for every kind of line, in the order of the picker', () => {
    expect(PAGES.map(({ lineKind }) => lineKind)).toEqual(LINE_KINDS.map(({ id }) => id))
    expect(new Set(PAGES.map(({ id }) => id)).size).toBe(PAGES.length)
    for (const { id, shelf, lineKind = '' } of PAGES) expect([id, shelf]).toEqual([`line-${lineKind}`, 'lines'])
  })

  it('has no row for a kind that does not exist', () => {
    const rows = [...Object.keys(LINE_CARDS), ...Object.keys(BARRED_CARDS)]
    expect(rows.filter((id) => lineKindById(id) === undefined)).toEqual([])
    // every kind has a row of its own beside what its family has in common
    expect(LINE_KINDS.filter(({ id }) => !rows.includes(id)).map(({ id }) => id)).toEqual([])
  })

  it.each(OPEN)('of $id is complete, or says what is not known and how it is measured', (kind) => {
    const page = linePage(kind)
    const pictures = blocksOf(page, 'waveform').length
    const unknown = blocksOf(page, 'text').filter(({ text }) => text.startsWith('Not known: '))
    expect(pictures + unknown.length).toBe(1)
    const labels = new Set(rowsOf(page).map(({ label }) => label))
    const wanted = ['Box alone', 'Line, ends on', 'How to measure']
    const room = ['By document', 'By physics', 'Usually on it', 'Trial ladder', 'Seen by noise', 'Stand-off']
    expect([...wanted, ...(kind.family === 'ground' ? [] : room)].filter((label) => !labels.has(label))).toEqual([])
    if (kind.family !== 'ground') expect(labels.has('Its capacitance') || labels.has('Left for it')).toBe(true)
    for (const { text } of [...rowsOf(page), ...unknown])
      if (text.startsWith('Not known')) expect(text).toMatch(/Measure it so: \S.*\.$/u)
    expect(blocksOf(page, 'list')[0]?.items.length).toBeGreaterThan(1)
    expect(blocksOf(page, 'never').flatMap(({ items }) => items).length).toBeGreaterThan(1)
    expect(blocksOf(page, 'heading').map(({ text }) => text)).toContain('Shield')
  })

  it.each(OPEN)('of $id opens checks with the kind filled in, and a trial only where one may be made', (kind) => {
    const buttons = blocksOf(linePage(kind), 'open-check')
    expect(buttons.length).toBeGreaterThan(0)
    for (const { check, prefill } of buttons) {
      expect(prefill).toEqual({ lineKind: kind.id })
      expect(CHECK_KEYS[check]).toContain('lineKind')
    }
    const mayTry = kind.noTrialWhy === undefined && kind.trial !== undefined
    expect(buttons.some(({ check }) => check === 'trial')).toBe(mayTry)
  })

  it('of a line that is barred says why, shows nothing to measure or fit, and opens nothing', () => {
    expect(BARRED.length).toBeGreaterThan(9)
    for (const kind of BARRED) {
      const page = linePage(kind)
      expect(page.blocks.map(({ is }) => is).toSorted()).toEqual(['heading', 'list', 'never', 'text', 'text'])
      expect(blocksOf(page, 'never')[0]?.items[0]).toBe(kind.barredWhy)
      expect(barredCardOf(kind).never.length).toBeGreaterThan(1)
    }
  })

  it('sends nobody into a trial on a line in which none may be made, or for which no values are known', () => {
    const without = OPEN.filter(({ noTrialWhy, trial }) => noTrialWhy !== undefined || trial === undefined)
    expect(without.length).toBeGreaterThan(10)
    for (const kind of without) {
      const found = rowsOf(linePage(kind)).filter(({ text }) => /a trial in rising steps|Smallest first/u.test(text))
      expect(found, kind.id).toEqual([])
    }
  })

  it('says beside every trial value that it needs leave and comes off again, with the cautions of a trial', () => {
    for (const kind of OPEN.filter(({ noTrialWhy, trial }) => noTrialWhy === undefined && trial !== undefined)) {
      expect(said(kind.id, 'Trial ladder'), kind.id).toContain('with leave, and off again')
      const { cautions } = linePage(kind)
      expect(cautions).toContain('no-trial')
      expect(cautions).toContain('trial-authority')
    }
    for (const id of ['power-270-vdc', 'power-115-vac-400', 'power-230-vac', 'power-hvdc', 'motor-phases'])
      expect(linePage(lineKindById(id) as LineKind).cautions?.[0]).toBe('lethal-voltage')
    for (const kind of BARRED) expect(linePage(kind).cautions).toContain('no-trial')
  })

  it('has a card for a kind that nobody wrote one for, from its family alone', () => {
    const { usefulHz: _usefulHz, ...can } = lineKindById('can') as LineKind
    const made: LineKind = { ...can, id: 'made-up', name: 'A new bus' }
    const page = linePage(made)
    expect(page.blocks.some((block) => block.is === 'text' && block.text.startsWith('Not known: '))).toBe(true)
    expect(rowsOf(page).find(({ label }) => label === 'By physics')?.text).toMatch(/^Not known/u)
    expect(blocksOf(page, 'open-check')[0]?.prefill).toEqual({ lineKind: 'made-up' })
  })

  it('is found by the words of the trade', () => {
    const wordsOf = (id: string) => PAGES.find((page) => page.id === `line-${id}`)?.words ?? []
    expect(wordsOf('arinc-429-high')).toContain('429')
    expect(wordsOf('power-115-vac-400')).toContain('GPU')
  })
})

describe('figures of the line cards, by documents and by hand', () => {
  it.each([
    // √(2.0² − 1.5²) µs / (ln 9 · 75 Ω)
    ['arinc-429-high', 'By physics', '8.02 nF'],
    // 1/(2π · 1 MHz · 1 kΩ), and of 2 kΩ; cut down, as a most is
    ['mil-std-1553-stub', 'By physics', '159 pF'],
    ['mil-std-1553-direct', 'By physics', '79.5 pF'],
    // a tenth of a microsecond / (ln 4 · 60 Ω)
    ['can', 'By physics', '1.2 nF at 1 Mbit/s'],
    // 0.3 · 100 ns / (ln 9 · 50 Ω), and of 60 Ω
    ['rs-422', 'By physics', '273 pF at 10 Mbit/s'],
    ['rs-485', 'By physics', '227 pF at 10 Mbit/s'],
    // 10 mA · 0.04/115200 s / 6 V
    ['rs-232', 'By physics', '578 pF at 115.2 kbit/s'],
    ['rs-232', 'By document', '2.5 nF in all'],
    // 300 ns / (0.8473 · 2.2 kΩ), 1000 ns / (0.8473 · 4.7 kΩ)
    ['i2c-fast', 'By physics', '160 pF with a pull-up of 2.2 kΩ'],
    ['i2c-standard', 'By physics', '251 pF with a pull-up of 4.7 kΩ'],
    // 0.3/(655 Mb/s) / (ln 9 · 50 Ω)
    ['lvds', 'By physics', '4.16 pF at 655 Mbit/s'],
    ['can', 'Line, ends on', '60 Ω'],
    ['rs-422', 'Line, ends on', '100 Ω'],
    ['mil-std-1553-direct', 'Line, ends on', '39 Ω'],
    ['composite-video', 'Line, ends on', '37.5 Ω'],
    ['composite-video', 'Box alone', '75 Ω'],
    ['discrete-ground', 'Line, ends on', 'At most 10 Ω'],
    ['discrete-ground', 'Line, ends on', '100 kΩ or more'],
    // 2π · 407 Hz · 10 nF · 118 V, and at 800 Hz
    ['power-115-vac-400', 'To chassis', '3.02 mA'],
    ['power-115-vac-variable', 'To chassis', '5.93 mA'],
    // Navy rule: 0.03 µF below 500 W, 0.075 µF for each kW, 0.02 µF at 400 Hz
    ['power-28-vdc', 'By document', '30 nF from a line to ground for a small load, 75 nF for one of 1 kW'],
    ['power-115-vac-400', 'By document', '20 nF'],
    // 33 V · 1.11 · (1 − 9.6e-4 · 80) = 33.8 V, over 32.2 V; 30 V would conduct at 30.7 V
    ['power-28-vdc', 'Stand-off', '33 V or more to chassis, unidirectional'],
    // 78 V conducts from 79.9 V on when cold: not over 80 V
    ['power-28-vdc', 'Long surges', '85 V or more lets it pass: 80 V for 100 ms'],
    ['can', 'Stand-off', '7 V or more from each leg to chassis, bidirectional'],
    // 30 MHz: 12 kΩ with 50 pF is 106 Ω
    ['arinc-429-high', 'Seen by noise', 'middle at 30 MHz'],
    ['power-28-vdc', 'Seen by noise', 'Low from 1 MHz to 120 MHz'],
    ['arinc-429-high', 'Trial ladder', '100 pF, 470 pF, 1 nF, from each leg to chassis'],
    ['arinc-429-high', 'Trial ladder', 'From 100 pF on it is more than the document allows.'],
    // 1 ms / (ln 9 · 30 kΩ) = 15.2 nF, less 3 nF of wire
    ['discrete-ground', 'Left for it', '12.1 nF'],
    ['discrete-ground', 'Trial ladder', 'From 100 nF on it is more than the physics leaves.'],
    // tan 1° / (2π · 10 kHz · 2 kΩ) = 139 pF, and 10 m of wire have 1 nF
    ['lvdt', 'Left for it', 'nothing'],
    ['lvdt', 'Trial ladder', 'The usual load alone takes all the physics leaves'],
  ])('%s, %s: %s', (kindId, label, figure) => {
    expect(said(kindId, label)).toContain(figure)
  })
})

const toldOf = (kind: LineKind): readonly Told[] => {
  if (kind.barredWhy !== undefined) {
    const { carries, faults, never } = barredCardOf(kind)
    return [carries, ...faults, ...never]
  }
  const { carries, faults, never, measure, shield } = lineCardOf(kind)
  return [carries, ...faults, ...never, measure, shield]
}

describe('the texts of the line cards', () => {
  it('carry no figure of their own: a number with a unit is a row of reference', () => {
    const typed = LINE_KINDS.flatMap(toldOf).filter(({ text }) =>
      /\d/u.test(text.replace(/RS-\d+|MIL-STD-\d+\w?/gu, '')),
    )
    expect(typed.map(({ text }) => text)).toEqual([])
  })

  it('are made by code that types no figure either', () => {
    const folder = join(import.meta.dirname, '../../../src/guide/book/lines')
    const files = readdirSync(folder).map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }))
    expect(files.length).toBeGreaterThan(8)
    const figure = /\d[\s\u00a0]?(?:[pnµmkMG]?(?:F|Ω|V|A|W|Hz|s)|[kM]?bit\/s|°)(?![\p{L}\d])/u
    const texts = files.flatMap(({ name, text }) =>
      [...text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '').matchAll(/'[^'\n]*'|`[^`]*`/gu)]
        .map(([literal]) => literal.replace(/\$\{[^}]*\}/gu, ''))
        .filter((literal) => figure.test(literal))
        .map((literal) => `${name}: ${literal}`),
    )
    expect(texts).toEqual([])
  })

  it('cite what is listed', () => {
    for (const kind of LINE_KINDS)
      for (const { source } of toldOf(kind)) expect(Object.keys(SOURCES)).toContain(source.id)
    for (const { id, sources } of PAGES)
      for (const source of sources) expect(Object.keys(SOURCES), id).toContain(source.id)
  })

  it('are sentences of 20 words at most', () => {
    const long = PAGES.flatMap(({ id, blocks }) =>
      blocks
        .flatMap((block) => (block.is === 'waveform' ? [block.waveform.said] : []))
        .concat(
          pageTexts({
            id,
            blocks,
            title: '',
            shelf: 'lines',
            inShort: '',
            sources: [{ id: 'practice', standing: 'practice' }],
          }),
        )
        .flatMap((text) => text.split(/(?<=[.?!:])\s+(?=[\p{Lu}\p{Ll}0-9])/u))
        .filter((sentence) => sentence.split(/\s+/u).filter((word) => /[\p{L}\p{N}]/u.test(word)).length > 20)
        .map((sentence) => `${id}: ${sentence}`),
    )
    expect(long).toEqual([])
  })

  it('explain every short form, in the text or in the list of short forms', () => {
    const NAME =
      /^(?:MIL-[A-Z]+-\d+\w*|ARINC|RS-\d+|DO-160|TIA-\d+-?A?|ISO|AS5643|IEEE|\d+BASE-TX?|100BASE-TX|10BASE-T|1000BASE-T|H|L|A|B)$/u
    const missing = PAGES.flatMap((page) => {
      const texts = pageTexts(page)
      return formsIn(texts)
        .filter((form) => !NAME.test(form) && SHORT_FORMS[form] === undefined && !isExplained(form, texts))
        .map((form) => `${page.id}: ${form}`)
    })
    expect(missing).toEqual([])
  })
})
