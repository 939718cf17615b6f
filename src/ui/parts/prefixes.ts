import { QUANTITIES } from '../../calc/quantity/quantity.ts'
import type { Input } from '../../calc/types.ts'

/** Prefixes a phone's keyboard hides, smallest first, with the names they are read out by. */
export const PREFIX_NAMES: Readonly<Record<string, string>> = {
  p: 'pico',
  n: 'nano',
  µ: 'micro',
  m: 'milli',
  k: 'kilo',
  M: 'mega',
}

/** The prefix keys a field can use, and the semicolon where it takes several values; undefined where it uses none. */
export function prefixKeysOf({ type }: Input): string | undefined {
  if (type.is === 'column') return type.quantity === 'capacitance' ? 'pnµ;' : ';'
  if (type.is !== 'number') return undefined
  const keys = QUANTITIES[type.quantity].prefixes.filter((prefix) => prefix in PREFIX_NAMES)
  return keys.length === 0 ? undefined : [...keys, ...(type.many ? [';'] : [])].join('')
}

/** Puts a key where the caret of a field is, as if it had been typed. */
export function insertKey(field: HTMLInputElement, key: string): void {
  const end = field.value.length
  field.setRangeText(key, field.selectionStart ?? end, field.selectionEnd ?? end, 'end')
  field.dispatchEvent(new InputEvent('input', { bubbles: true, inputType: 'insertText', data: key }))
}
