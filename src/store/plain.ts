/** Plain data: what can be stored, exported and compared without surprises. */

/** Deeper nesting than this is cut: nothing of ours comes near it. */
const DEEPEST = 64

/** True for an object that is not a list. */
export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** The items of a list; of anything else none. */
export function itemsOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : []
}

/** What a text in JSON says; undefined where it is none. */
export function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** The named own values of a record. */
export function entriesOf(value: object): [string, unknown][] {
  return Object.entries(value)
}

/**
 * A copy made of strings, finite numbers, booleans, null, lists and records only.
 * What has no such form (functions, symbols, big integers, NaN) becomes its text.
 */
export function plain(value: unknown, depth = 0): unknown {
  if (value === null || value === undefined) return null
  if (typeof value === 'string' || typeof value === 'boolean') return value
  if (typeof value === 'number') return Number.isFinite(value) ? value + 0 : String(value)
  if (typeof value !== 'object' || depth >= DEEPEST) return String(value)
  if (value instanceof Date) return String(value)
  if (Array.isArray(value)) return value.map((item) => plain(item, depth + 1))
  const copied = entriesOf(value).map(([key, item]): [string, unknown] => [key, plain(item, depth + 1)])
  return Object.fromEntries(copied.filter(([key]) => key !== '__proto__'))
}
