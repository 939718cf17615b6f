/** The bond of a connector, contact by contact: what each loses alone, with all others, and receives while quiet. */
import type { Express } from '../../line/fields.ts'
import { within } from '../../surge/progress.ts'
import type { Progress } from '../../types.ts'
import type { Complex } from '../complex.ts'
import type { DecidedContact } from '../decided.ts'
import type { Connector } from '../types.ts'
import { firstLostIn } from './first-lost.ts'
import { typedNumber } from './given.ts'
import { placesOf } from './places.ts'
import {
  aloneDb,
  certainDb,
  foundDb,
  markedDb,
  type Plate,
  type PlateBox,
  plateOf,
  receivedAsMarkedDb,
  receivedDb,
} from './plate-bounds.ts'
import { type OnPlate, onPlate } from './plate-contact.ts'

/** One contact at one of its noise frequencies. */
export type BondRow = {
  readonly id: string
  readonly hz: number
  readonly neededDb: number
  readonly aloneDb: number
  /** all driven alike: as marked, certain over all tolerances, and the least found where that is less than needed */
  readonly markedDb: number
  readonly certainDb: number
  readonly foundDb?: number
  /** while quiet, all others driven: at most over all tolerances, and with every part as marked */
  readonly receivedDb: number
  readonly receivedAsMarkedDb: number
  readonly isBare: boolean
  /** driven in differential mode: the plate's noise is common to both legs of the pair and added to neither signal */
  readonly isDifferential: boolean
}

export type Bond = {
  readonly bondOhm: number
  readonly bondH: number
  /** what of the bond was typed; the rest is taken from practice */
  readonly typed: { readonly ohm: boolean; readonly henries: boolean }
  readonly refused: readonly string[]
  readonly rows: readonly BondRow[]
  /** filtered contacts whose noise is not known: they are in no sum */
  readonly uncounted: readonly string[]
  /** contacts whose need is not certain even with no bond at all: no bond cures them */
  readonly shortAnyhow: readonly string[]
  /** largest inductance with which every other need is certain to be met; absent where all are, or nothing is needed */
  readonly mostBondH?: number
}

/** What stands for a bond nobody entered: a metal face all round, as the contrary of a perfect one. */
export const USUAL_BOND = { ohm: 2.5e-3, henries: 0.5e-9 } as const

const MOST_BOND_H = 1e-6
const PLACES_PER_SLICE = 300
const ROWS_PER_SLICE = 4
/** Met to within this is met. */
const HAIR_DB = 1e-9

type AtHz = { readonly hz: number; readonly boxes: readonly PlateBox[]; readonly contacts: readonly OnPlate[] }

/** In slices of one frequency. Every filtered contact with known noise is driven alike, in common mode. */
export function* bondOf(
  connector: Connector,
  decided: readonly DecidedContact[],
  express?: Express,
): Generator<Progress, Bond> {
  const ohm = typedNumber(
    connector.shared.bondOhm,
    { quantity: 'resistance', what: 'bond resistance', example: '2.5m' },
    express,
  )
  const henries = typedNumber(
    connector.shared.bondH,
    { quantity: 'inductance', what: 'bond inductance', example: '0.5n' },
    express,
  )
  const typed = { ohm: ohm.si !== undefined, henries: henries.si !== undefined }
  const bondOhm = ohm.si ?? USUAL_BOND.ohm
  const bondH = henries.si ?? USUAL_BOND.henries
  const counted: OnPlate[] = []
  const uncounted: string[] = []
  for (const [i, contact] of decided.entries()) {
    if (i % ROWS_PER_SLICE === 0) yield { doneFrac: 0 }
    if (contact.type !== 'line') continue
    const found = onPlate(contact, express)
    if (found !== undefined) counted.push(found)
    else if (contact.part !== undefined) uncounted.push(contact.id)
  }
  const legs = new Map<string, number>()
  for (const { lineId, part } of counted) if (part) legs.set(lineId, (legs.get(lineId) ?? 0) + 1)
  const frequencies = [...new Set(counted.flatMap(({ needs }) => needs.map(({ hz }) => hz)))].sort((a, b) => a - b)
  const rows: BondRow[] = []
  const all: AtHz[] = []
  for (const [i, hz] of frequencies.entries()) {
    const from = i / (frequencies.length + 1)
    const { at, unknown } = yield* within(atFrequency(counted, hz), from, from)
    for (const id of unknown) if (!uncounted.includes(id)) uncounted.push(id)
    all.push(at)
    const plate = yield* within(plateOf(at.boxes, bondAt(bondOhm, bondH, hz)), from, from)
    rows.push(...(yield* within(rowsAt(at, plate, legs), from, from)))
  }
  const isShort = rows.some((row) => !isMet(row))
  const would = isShort ? yield* mostOf(all, bondOhm) : undefined
  return {
    bondOhm,
    bondH,
    typed,
    refused: [ohm.refused, henries.refused].filter((one): one is string => one !== undefined),
    rows,
    uncounted,
    shortAnyhow: would?.shortAnyhow ?? [],
    ...(would?.mostBondH === undefined ? {} : { mostBondH: would.mostBondH }),
  }
}

/** A need that is certain to be met; a bare contact has nothing that could. */
export const isMet = ({ certainDb: certain, neededDb, isBare }: BondRow): boolean =>
  isBare || certain >= neededDb - HAIR_DB

const bondAt = (ohm: number, henries: number, hz: number): Complex => [ohm, 2 * Math.PI * hz * henries]

function* atFrequency(
  counted: readonly OnPlate[],
  hz: number,
): Generator<Progress, { at: AtHz; unknown: readonly string[] }> {
  const boxes: PlateBox[] = []
  const contacts: OnPlate[] = []
  const unknown: string[] = []
  let tried = 0
  for (const [i, contact] of counted.entries()) {
    const places = placesOf(contact, hz)
    tried += places.length
    if (tried > PLACES_PER_SLICE) {
      tried = 0
      yield { doneFrac: i / counted.length }
    }
    if (places.length === 0) {
      unknown.push(contact.id)
      continue
    }
    contacts.push(contact)
    boxes.push({ places: places.map(({ share }) => share), volts: contact.isDriven ? 1 : 0 })
  }
  return { at: { hz, boxes, contacts }, unknown }
}

function* rowsAt(
  { hz, contacts }: AtHz,
  plate: Plate,
  legs: ReadonlyMap<string, number>,
): Generator<Progress, readonly BondRow[]> {
  const rows: BondRow[] = []
  for (const [i, contact] of contacts.entries()) {
    const need = contact.needs.find((one) => one.hz === hz)
    if (need === undefined) continue
    const alone = aloneDb(plate, i, legs.get(contact.lineId) ?? 1)
    const isDifferential = !contact.isDriven
    const row: BondRow = {
      id: contact.id,
      hz,
      neededDb: need.db,
      aloneDb: alone,
      markedDb: isDifferential ? alone : markedDb(plate, i),
      certainDb: isDifferential ? alone : certainDb(plate, i),
      receivedDb: receivedDb(plate, i),
      receivedAsMarkedDb: receivedAsMarkedDb(plate, i),
      isBare: contact.part === undefined,
      isDifferential,
    }
    rows.push(isMet(row) || isDifferential ? row : { ...row, foundDb: foundDb(plate, i) })
    if (i % ROWS_PER_SLICE === ROWS_PER_SLICE - 1) yield { doneFrac: i / contacts.length }
  }
  return rows
}

type Would = { readonly shortAnyhow: readonly string[]; readonly mostBondH?: number }

/**
 * The largest bond inductance with which everything is certain that is with no bond; 0 = none, `Infinity` = up to 1 µH;
 * absent where nothing is left.
 */
function* mostOf(all: readonly AtHz[], bondOhm: number): Generator<Progress, Would> {
  const shortAnyhow = new Set<string>()
  let most = MOST_BOND_H
  let isAny = false
  for (const { hz, boxes, contacts } of all) {
    const needing = contacts.flatMap(({ id, part, needs, isDriven }, i) => {
      const need = part && isDriven ? needs.find((one) => one.hz === hz) : undefined
      return need === undefined ? [] : [{ i, id, db: need.db }]
    })
    const none = yield* plateOf(boxes, [0, 0])
    const isHeld = ({ i, db }: (typeof needing)[number], plate: Plate) => certainDb(plate, i) >= db - HAIR_DB
    for (const one of needing) if (!isHeld(one, none)) shortAnyhow.add(one.id)
    const curable = needing.filter((one) => isHeld(one, none))
    if (curable.length === 0) continue
    isAny = true
    const holds = function* (henries: number): Generator<Progress, boolean> {
      const plate = yield* plateOf(boxes, bondAt(bondOhm, henries, hz))
      yield { doneFrac: 0 }
      return curable.every((one) => isHeld(one, plate))
    }
    most = yield* firstLostIn(holds, most)
    if (most === 0) break
  }
  const mostBondH = most < MOST_BOND_H ? most : Number.POSITIVE_INFINITY
  return { shortAnyhow: [...shortAnyhow], ...(isAny ? { mostBondH } : {}) }
}
