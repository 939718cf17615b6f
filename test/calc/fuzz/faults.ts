/** What must never be in an answer: numbers that are none, and words that betray them. */
import type { Result } from '../../../src/calc/types.ts'

/** What was typed may be quoted back, whatever it was. */
const QUOTED = /“[^“”]*”/g
const BETRAYING = /NaN|Infinity|undefined|null|\[object/

/** Paths and values of everything in a result that no reader should meet. Empty = sound. */
export function faultsOf(result: Result): string[] {
  const faults: string[] = []
  const note = (path: string, what: unknown) => faults.push(`${path} = ${String(what)}`)
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'number') {
      if (!Number.isFinite(value)) note(path, value)
    } else if (typeof value === 'string') {
      if (BETRAYING.test(value.replaceAll(QUOTED, ''))) note(path, value)
    } else if (value === undefined || value === null || typeof value === 'function') {
      note(path, value)
    } else if (value instanceof Float64Array) {
      const at = value.findIndex((x) => !Number.isFinite(x))
      if (at >= 0) note(`${path}[${at}]`, value[at])
    } else if (typeof value === 'object') {
      for (const [key, inner] of Object.entries(value)) walk(inner, path === '' ? key : `${path}.${key}`)
    }
  }
  walk(result, '')
  if (!result.ok) {
    if (result.issues.length === 0) faults.push('refused without an issue')
    for (const issue of result.issues) if (!isSentence(issue.message)) note(`issue ${issue.key}`, issue.message)
  } else if (!isSentence(result.headline)) note('headline', result.headline)
  return faults
}

/** Starts as text, ends as a sentence does, says more than a word. */
function isSentence(text: string): boolean {
  return text.trim().length > 12 && /[.…?!]$/.test(text.trim())
}
