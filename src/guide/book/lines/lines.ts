/** The shelf of line cards: one page for each kind of line, made from the rows of reference and worked out by calc. */

import type { CheckId, Source } from '../../../calc/types.ts'
import { barredCardOf, type LineCard, lineCardOf, type Told } from '../../../reference/line-cards.ts'
import { LINE_KINDS, type LineKind, lineKindNames } from '../../../reference/line-kinds.ts'
import type { SafetyId } from '../../../reference/safety.ts'
import type { Block, BookLink, BookPage } from '../types.ts'
import { guardRows } from './guard-rows.ts'
import { lineCardId } from './line-card-id.ts'
import { notKnownText, ohmRows } from './ohm-rows.ts'
import { roomRows } from './room-rows.ts'
import { waveformOf } from './waveforms.ts'

const texts = (told: readonly Told[]): readonly string[] => told.map(({ text }) => text)

/** Each source once, as it is first met: which clause a figure is from stands beside the figure. */
function together(sources: readonly Source[]): readonly Source[] {
  const key = ({ id, standing }: Source): string => `${id} ${standing}`
  const first = new Map<string, Source>()
  for (const source of sources) if (!first.has(key(source))) first.set(key(source), source)
  return [...first.values()]
}

/** Notes that belong to a family of lines. */
function relatedOf({ family, noTrialWhy, barredWhy, id }: LineKind): readonly BookLink[] {
  if (barredWhy !== undefined) return [{ page: 'no-trial-lines' }]
  const lethal: readonly BookLink[] = noTrialWhy === undefined ? [] : [{ page: 'no-trial-lines' }]
  if (family === 'data-pair') return [{ page: 'bus-first-aid' }]
  if (family === 'audio') return [{ page: 'audio-ground' }]
  if (family === 'drive') return [...lethal, { page: 'drives' }]
  if (family === 'ground') return [{ page: 'bond-four-wire' }]
  if (id === 'power-28-vdc') return [{ page: 'bus-dip' }, { page: 'navy-rule' }]
  if (family === 'power-dc' || family === 'power-ac') return [...lethal, { page: 'paschen' }]
  return lethal
}

/** Whether values for a trial are known, and nothing rules one out. */
const mayTry = ({ barredWhy, noTrialWhy, trial }: LineKind): boolean =>
  barredWhy === undefined && noTrialWhy === undefined && trial !== undefined

/** Cautions that belong to the kind: what kills first, then what a trial needs. */
function cautionsOf(kind: LineKind): readonly SafetyId[] {
  const { family, noTrialWhy } = kind
  const isPower = family === 'power-dc' || family === 'power-ac'
  if (noTrialWhy !== undefined && (isPower || family === 'drive'))
    return ['lethal-voltage', 'stored-charge', 'power-off']
  return [
    ...(isPower ? (['stored-charge'] as const) : []),
    'no-trial',
    'power-off',
    ...(mayTry(kind) ? (['trial-authority'] as const) : []),
  ]
}

/** Where this line is worked out. A ground is bonded: one check says so. */
function buttons(kind: LineKind): readonly Block[] {
  const prefill = { lineKind: kind.id }
  const open = (check: CheckId, why: string): Block => ({ is: 'open-check', check, prefill, why })
  const loading = open('loading', 'How much can this line stand?')
  if (kind.family === 'ground') return [loading]
  return [
    loading,
    open('window', 'Which capacitor fits it?'),
    open('surge', 'Which suppressor fits it?'),
    ...(mayTry(kind) ? [open('trial', 'Read a trial on it')] : []),
  ]
}

function waveBlock({ wave }: LineCard, kind: LineKind): Block {
  return wave.is === 'not-known'
    ? { is: 'text', text: notKnownText(wave) }
    : { is: 'waveform', waveform: waveformOf(wave, kind) }
}

/** What may be added to it. A ground is no line to add to: its reason stands alone. */
function addedBlocks(card: LineCard, kind: LineKind): readonly Block[] {
  const { loading } = kind
  if (kind.family === 'ground' && loading.rule === 'none')
    return [
      { is: 'heading', text: 'Capacitance and suppressor' },
      { is: 'text', text: `None. ${loading.why}` },
    ]
  return [
    { is: 'heading', text: 'Capacitance' },
    { is: 'rows', rows: roomRows(card, kind) },
    { is: 'heading', text: 'Noise and suppressor' },
    { is: 'rows', rows: guardRows(card, kind) },
  ]
}

const rowSources = (blocks: readonly Block[]): readonly Source[] =>
  blocks.flatMap((block) => (block.is === 'rows' ? block.rows.flatMap(({ source }) => source ?? []) : []))

function openPage(kind: LineKind): Pick<BookPage, 'inShort' | 'blocks' | 'sources'> {
  const card = lineCardOf(kind)
  const blocks: readonly Block[] = [
    { is: 'text', text: card.carries.text },
    ...(kind.noTrialWhy === undefined ? [] : [{ is: 'never', items: [kind.noTrialWhy] } as const]),
    { is: 'heading', text: 'When it is good' },
    waveBlock(card, kind),
    { is: 'heading', text: 'On the meter' },
    { is: 'rows', rows: ohmRows(card, kind) },
    { is: 'heading', text: 'Shield' },
    { is: 'text', text: card.shield.text },
    ...addedBlocks(card, kind),
    { is: 'heading', text: 'Usual faults' },
    { is: 'list', items: texts(card.faults) },
    { is: 'never', items: texts(card.never) },
    ...buttons(kind),
  ]
  const told = [card.carries, card.shield, ...card.faults, ...card.never].map(({ source }) => source)
  const wave = card.wave.is === 'not-known' ? [] : [card.wave.source]
  const [first, ...rest] = kind.sources
  return {
    inShort: card.carries.text,
    blocks,
    sources: [first, ...together([first, ...rest, ...wave, ...told, ...rowSources(blocks)]).slice(1)],
  }
}

function barredPage(kind: LineKind, why: string): Pick<BookPage, 'inShort' | 'blocks' | 'sources'> {
  const card = barredCardOf(kind)
  const [first, ...rest] = kind.sources
  const told = [card.carries, ...card.faults, ...card.never]
  return {
    inShort: card.carries.text,
    blocks: [
      { is: 'text', text: card.carries.text },
      { is: 'never', items: [why, ...texts(card.never)] },
      { is: 'text', text: BARRED, name: 'What is left to do' },
      { is: 'heading', text: 'Usual faults' },
      { is: 'list', items: texts(card.faults) },
    ],
    sources: [first, ...together([first, ...rest, ...told.map(({ source }) => source)]).slice(1)],
  }
}

const BARRED =
  'No picture, no ohms, no ladder and no suppressor stand here on purpose. Look at it from outside: shields, bonds, plugs, routing. The rest is for the maintenance manual and the design authority.'

/** The page of any kind, also of one that has no card of its own yet. */
export function linePage(kind: LineKind): BookPage {
  return {
    id: lineCardId(kind.id),
    shelf: 'lines',
    title: kind.name,
    lineKind: kind.id,
    words: lineKindNames(kind).slice(1),
    cautions: cautionsOf(kind),
    ...(kind.barredWhy === undefined ? openPage(kind) : barredPage(kind, kind.barredWhy)),
    related: relatedOf(kind),
  }
}

/** Every page of the shelf, in the order of the picker. */
export const pages = (): readonly BookPage[] => LINE_KINDS.map(linePage)

export { pages as built }
