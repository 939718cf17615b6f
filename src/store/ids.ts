import { CHECK_IDS, FACT_KEYS } from '../calc/ids.ts'
import type { CheckId, FactKey, LineText } from '../calc/types.ts'

/** True for the id of a check this version has. */
export const isCheckId = (value: unknown): value is CheckId => CHECK_IDS.some((id) => id === value)

const FACT_KEY_SET: ReadonlySet<unknown> = new Set(FACT_KEYS)

/** True for a fact this version knows. */
export const isFactKey = (key: unknown): key is FactKey => FACT_KEY_SET.has(key)

/** True for what is typed about a line. */
export const isLineText = (key: unknown): key is LineText => key === 'name' || isFactKey(key)

/**
 * A random id of 32 hexadecimal digits.
 * Not crypto.randomUUID, which is missing where a page is opened over plain http on a local network.
 */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}
