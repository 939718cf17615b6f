/**
 * The gate for anything stored or imported, driven by one table per record type: for every field, how it is read and
 * what stands when it is not there. What a version does not understand is set aside under the place it was found, and
 * taken back by the first version that does; nothing is dropped.
 */
import { entriesOf, isRecord, plain } from './plain.ts'

/** Something this version did not understand, kept where it was found so that nothing is lost. */
export type Kept = { readonly at: string; readonly value: unknown }

/** `stored`: read back from this device. `import`: from a file or another person, so no safety gate is taken over. */
export type Provenance = 'stored' | 'import'

/** What a reader may do with the values it cannot use, or could not use earlier. */
export type Gate = {
  readonly from: Provenance
  readonly keep: (at: string, value: unknown) => void
  /** gets back the first value set aside at a place that can be read now */
  readonly takeBack: <T>(at: string, read: (value: unknown) => T | undefined) => T | undefined
  /** the rest of the places below `at` that hold something */
  readonly keptBelow: (at: string) => readonly string[]
}

/** undefined = not understood. */
export type Reader<T> = (value: unknown, at: string, gate: Gate) => T | undefined

type Absent<R, K extends keyof R> = object extends Pick<R, K> ? undefined : never

/** For every field of a record: how it is read, and what stands in when it is missing or not understood. */
export type Table<R> = {
  readonly [K in keyof R]-?: { readonly read: Reader<R[K]>; readonly or: () => R[K] | Absent<R, K> }
}

function openGate(kept: Kept[], from: Provenance): Gate {
  return {
    from,
    keep: (at, value) => kept.push({ at, value: plain(value) }),
    // read once: a reader sets aside what it does not know
    takeBack: (at, read) => {
      for (const one of kept.filter((item) => item.at === at)) {
        const value = read(one.value)
        if (value === undefined) continue
        kept.splice(kept.indexOf(one), 1)
        return value
      }
      return undefined
    },
    keptBelow: (at) => kept.flatMap((item) => (item.at.startsWith(`${at}.`) ? [item.at.slice(at.length + 1)] : [])),
  }
}

function keptBefore(raw: unknown): Kept[] {
  if (!Array.isArray(raw)) return raw === undefined ? [] : [{ at: 'kept', value: plain(raw) }]
  return raw.map((item: unknown, index) =>
    isRecord(item) && typeof item['at'] === 'string' && 'value' in item
      ? { at: item['at'], value: plain(item['value']) }
      : { at: `kept.${index}`, value: plain(item) },
  )
}

type Field<T> = { readonly read: Reader<T>; readonly or: () => T | undefined }

/** What stands where a field is not there, with what was set aside below it. */
function standIn<T>({ read, or }: Field<T>, at: string, gate: Gate): T | undefined {
  const value = or()
  return typeof value === 'object' ? (read(value, at, gate) ?? value) : value
}

function readField<T>(raw: unknown, at: string, field: Field<T>, gate: Gate): T | undefined {
  const { read, or } = field
  let value = raw === undefined ? undefined : read(raw, at, gate)
  if (raw !== undefined && value === undefined) gate.keep(at, raw)
  // An older window writes what stands in for a value it has set aside; the value itself is worth more.
  const isStandIn = () => value === undefined || (typeof value !== 'object' && value === or())
  while (isStandIn()) {
    const back = gate.takeBack(at, (kept) => read(kept, at, gate))
    if (back === undefined) break
    value = back
  }
  return value ?? standIn(field, at, gate)
}

/** A valid record from any record at all, with what was not understood in `kept`. Reading it again changes nothing. */
export function readRecord<R extends object>(
  table: Table<R>,
  raw: Record<string, unknown>,
  from: Provenance,
): R & { readonly kept: readonly Kept[] } {
  const kept = keptBefore(raw['kept'])
  const gate = openGate(kept, from)
  const fields: Readonly<Record<string, { readonly read: Reader<unknown>; readonly or: () => unknown }>> = table
  for (const [key, value] of entriesOf(raw)) if (key !== 'kept' && !Object.hasOwn(fields, key)) gate.keep(key, value)
  const read = Object.keys(fields).flatMap((key): [string, unknown][] => {
    const field = fields[key]
    const value = field && readField(raw[key], key, field, gate)
    return value === undefined ? [] : [[key, value]]
  })
  // The table names every field of R and gives each its type.
  return { ...(Object.fromEntries(read) as R), kept }
}

const REQUIRED = () => undefined

/** A field that an item cannot do without. */
export const required = <T>(read: Reader<T>): { readonly read: Reader<T>; readonly or: () => never } => ({
  read,
  // readItem refuses the whole item before the missing value is used
  or: REQUIRED as () => never,
})

/**
 * Reads a small record inside another one: whole, or not at all. Fields this version does not know stay in it where
 * they are; one it cannot read sets the whole item aside.
 */
export function item<R extends object>(table: Table<R>): Reader<R> {
  const fields: Readonly<Record<string, { readonly read: Reader<unknown>; readonly or: () => unknown }>> = table
  return (raw, at, gate) => {
    if (!isRecord(raw)) return undefined
    const strange = entriesOf(raw).filter(([key]) => !Object.hasOwn(fields, key) && key !== '__proto__')
    const read: [string, unknown][] = strange.map(([key, value]) => [key, plain(value)])
    for (const [key, field] of Object.entries(fields)) {
      const place = `${at}.${key}`
      const value = raw[key] === undefined ? standIn(field, place, gate) : field.read(raw[key], place, gate)
      if (value !== undefined) read.push([key, value])
      else if (raw[key] !== undefined || field.or === REQUIRED) return undefined
    }
    // The table names every field of R and gives each its type.
    return Object.fromEntries(read) as R
  }
}

/** Reads a list item by item; what is no item is set aside under its number, and comes back there. */
export function listOf<T>(read: Reader<T>): Reader<readonly T[]> {
  return (raw, at, gate) => {
    if (!Array.isArray(raw)) return undefined
    const items = raw.flatMap((value: unknown, index) => {
      const one = read(value, `${at}.${index}`, gate)
      if (one === undefined) gate.keep(`${at}.${index}`, value)
      return one === undefined ? [] : [one]
    })
    for (const place of gate.keptBelow(at).filter((rest) => /^\d+$/.test(rest))) {
      const back = gate.takeBack(`${at}.${place}`, (value) => read(value, `${at}.${place}`, gate))
      if (back !== undefined) items.splice(Math.min(Number(place), items.length), 0, back)
    }
    return items
  }
}

/** Reads a dictionary entry by entry; what is no entry is set aside under its key, and comes back there. */
export function dictionaryOf<K extends string, T>(
  isKey: (key: string) => key is K,
  read: Reader<T>,
): Reader<{ readonly [key in K]?: T }> {
  return (raw, at, gate) => {
    if (!isRecord(raw)) return undefined
    const good = new Map<K, T>()
    for (const [key, value] of entriesOf(raw)) {
      const one = isKey(key) ? read(value, `${at}.${key}`, gate) : undefined
      if (isKey(key) && one !== undefined) good.set(key, one)
      else gate.keep(`${at}.${key}`, value)
    }
    for (const key of gate.keptBelow(at)) {
      if (!isKey(key) || good.has(key)) continue
      const back = gate.takeBack(`${at}.${key}`, (value) => read(value, `${at}.${key}`, gate))
      if (back !== undefined) good.set(key, back)
    }
    return Object.fromEntries(good) as { readonly [key in K]?: T }
  }
}

/** Readers of single values. */
export const text: Reader<string> = (value) => (typeof value === 'string' ? value : undefined)
export const flag: Reader<boolean> = (value) => (typeof value === 'boolean' ? value : undefined)
export const version: Reader<number> = (value) =>
  // minus zero would not survive being stored as JSON
  Number.isSafeInteger(value) && Number(value) >= 0 ? Number(value) + 0 : undefined
/** A count of changes: one of another device says nothing here. */
export const turn: Reader<number> = (value, at, gate) => (gate.from === 'import' ? 0 : version(value, at, gate))
export const positive: Reader<number> = (value) =>
  typeof value === 'number' && value > 0 && Number.isFinite(value) ? value : undefined
/** A place in an order. */
export const place: Reader<number> = (value) =>
  typeof value === 'number' && Number.isFinite(value) ? value + 0 : undefined
export const time: Reader<string> = (value) =>
  typeof value === 'string' && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d/.test(value) && Number.isFinite(Date.parse(value))
    ? value
    : undefined
export const id: Reader<string> = (value) =>
  typeof value === 'string' && /^[\w-]{1,64}$/.test(value) ? value : undefined
/** The version of a record's shape: one written by a newer window keeps that window's number. */
export const schema =
  (current: number): Reader<number> =>
  (value, at, gate) => {
    const read = version(value, at, gate)
    return read === undefined ? undefined : Math.max(read, current)
  }
/** One of a few words. */
export function oneOf<T extends string>(words: readonly T[]): Reader<T> {
  return (value) => words.find((word) => word === value)
}
