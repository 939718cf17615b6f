/** The contacts a supply feeds, with what stands from each to chassis. */
import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import { powerCheck } from '../../checks/power/check.ts'
import type { Express } from '../../line/fields.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import { crestV } from '../../power/supply.ts'
import type { Line } from '../../types.ts'
import type { DecidedContact } from '../decided.ts'
import type { Connector } from '../types.ts'
import { givenOf, numberOf } from './given.ts'
import { setupOf } from './plate-contact.ts'

export type Phase = 'A' | 'B' | 'C' | 'neutral'

export type Supplied = {
  readonly id: string
  readonly lineId: string
  readonly name: string
  readonly kindId: string
  readonly workingRmsV: number
  /** 0 = DC */
  readonly supplyHz: number
  readonly crestV: number
  /** undefined: not said */
  readonly phase: Phase | undefined
  /** to chassis, every capacitor of the contact and that of its damper, least and most over its tolerances */
  readonly leastF: number
  readonly mostF: number
  /** from line to line, charged with the others and no part of the chassis current; counted once a Line */
  readonly crossF: number
  readonly wiringOhm: number | undefined
  readonly wiringH: number | undefined
  readonly bleedOhm: number | undefined
}

/** A phase as it is typed: "A", "phase b", "C", "N". */
export function phaseOf(text: string | undefined): Phase | undefined {
  const word =
    text
      ?.trim()
      .toUpperCase()
      .replace(/^PHASE\s+/u, '') ?? ''
  if (word === 'A' || word === 'B' || word === 'C') return word
  return word === 'N' || word === 'NEUTRAL' ? 'neutral' : undefined
}

export type PowerContacts = {
  readonly supplied: readonly Supplied[]
  /** filtered contacts of a supply whose volts or frequency cannot be read, or are not those of its kind */
  readonly unread: readonly string[]
  /** filtered contacts of which nobody said what they carry: it may be a supply */
  readonly unnamed: readonly string[]
}

/** Volts that somebody entered make a supply of a line of any kind. */
const isSupply = (kind: LineKind | undefined, { facts }: Line): boolean =>
  kind?.supply !== undefined || (facts.workingRmsV?.text.trim() ?? '') !== ''

/** A 14 V bus is entered as one of 28 V; a third of the volts or of the hertz of its kind is another supply. Practice of ours. */
const LEAST_SHARE = 1 / 3

/** Whether volts and frequency may be those of the kind: one that was typed far too low would make every sum little. */
const isOfKind = (kind: LineKind | undefined, typed: { readonly workingRmsV: number; readonly supplyHz: number }) =>
  kind?.supply === undefined ||
  (typed.workingRmsV >= LEAST_SHARE * kind.supply.nominalRmsV && typed.supplyHz >= LEAST_SHARE * kind.supply.nominalHz)

/** Every contact on a supply, filtered or not, with volts and frequency as its Line has them. */
export function suppliedContacts(
  connector: Connector,
  decided: readonly DecidedContact[],
  express?: Express,
): PowerContacts {
  const phases = new Map(connector.contacts.map(({ id, texts }) => [id, phaseOf(texts.phase)]))
  const supplied: Supplied[] = []
  const unread: string[] = []
  const unnamed: string[] = []
  for (const contact of decided) {
    const kind = contact.kind === undefined ? undefined : lineKindById(contact.kind)
    const { line } = contact
    const { part } = contact
    const count = part === undefined ? 0 : CAPACITOR_COUNT[part.topology]
    if (line === undefined) continue
    if (!isSupply(kind, line)) {
      if (count > 0 && (kind === undefined || kind.id === 'not-listed')) unnamed.push(contact.id)
      continue
    }
    const given = givenOf(powerCheck, line, express)
    const workingRmsV = numberOf(given, 'workingRmsV')
    const supplyHz = numberOf(given, 'supplyHz')
    if (workingRmsV === undefined || supplyHz === undefined || !isOfKind(kind, { workingRmsV, supplyHz })) {
      if (count > 0) unread.push(contact.id)
      continue
    }
    const markedF = count * (part?.capacitanceF ?? 0)
    const beside = count > 0 ? setupOf(contact, express)?.elements.damper?.farads : undefined
    supplied.push({
      id: contact.id,
      lineId: line.id,
      name: kind?.name ?? 'line',
      kindId: kind?.id ?? '',
      workingRmsV,
      supplyHz,
      crestV: crestV({ workingRmsV, supplyHz }),
      phase: phases.get(contact.id),
      leastF: markedF * (part?.leastFrac ?? 1) + (beside?.least ?? 0),
      mostF: markedF * (part?.mostFrac ?? 1) + (beside?.most ?? 0),
      crossF: contact.leg === 'b' ? 0 : (numberOf(given, 'crossF') ?? 0),
      wiringOhm: numberOf(given, 'wiringOhm'),
      // twice the crest is counted where nobody entered it
      wiringH: given.assumed.includes('wiringH') ? undefined : numberOf(given, 'wiringH'),
      bleedOhm: numberOf(given, 'bleedOhm'),
    })
  }
  return { supplied, unread, unnamed }
}

/** Whether every contact that could be on a supply is in the sums. */
export const isAllCounted = ({ unread, unnamed }: Pick<PowerContacts, 'unread' | 'unnamed'>): boolean =>
  unread.length === 0 && unnamed.length === 0

/** Contacts of one supply: the same kind at the same volts and frequency. */
export function bySupply(supplied: readonly Supplied[]): readonly (readonly Supplied[])[] {
  const groups = new Map<string, Supplied[]>()
  for (const one of supplied) {
    const key = `${one.kindId} ${one.workingRmsV} ${one.supplyHz}`
    groups.set(key, [...(groups.get(key) ?? []), one])
  }
  return [...groups.values()]
}
