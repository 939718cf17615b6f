/** What must never be in an answer: numbers that are none, words that betray them, sentences that are not whole. */
import type { Check, Result, Success } from '../../../src/calc/types.ts'
import { isSafetyId } from '../../../src/reference/safety.ts'

/** What was typed may be quoted back, whatever it was. */
const QUOTED = /“[^“”]*”/g
const BETRAYING = /NaN|Infinity|undefined|null|\[object/
/** Where words make a sentence; a label may end as it likes. */
const SAID = /(?:why|headline|sentence|message)$/
/** A list of things to enter that came out empty, a gap where a word should be. */
const GAPPY = /^\s|\s$| {2}|\w \b(?:and|from|to|at|needs|enter) ?[.,;:]?$|^enter\.?$/i

/** Starts as text, ends as a sentence does, says more than a word. */
const isSentence = (text: string): boolean => text.length > 12 && /[.…?!]$/.test(text)

/** Paths and values of everything in a result that no reader should meet. Empty = sound. */
export function faultsOf(check: Check, result: Result): string[] {
  const found = [...betrayals(result, '')]
  if (result.ok) return [...found, ...unsoundParts(check, result)]
  const known = new Set(check.inputs.map(({ key }) => key))
  for (const { key, message } of result.issues) {
    if (!isSentence(message)) found.push(`issue ${key} = ${message}`)
    if (!known.has(key)) found.push(`issue for no field: ${key}`)
  }
  return result.issues.length > 0 ? found : [...found, 'refused without an issue']
}

function* betrayals(value: unknown, path: string): Generator<string> {
  const wrong = `${path} = ${String(value)}`
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) yield wrong
  } else if (typeof value === 'string') {
    const own = value.replaceAll(QUOTED, '“…”')
    if (BETRAYING.test(own) || (SAID.test(path) && GAPPY.test(own))) yield wrong
  } else if (value === undefined || value === null || typeof value === 'function') {
    yield wrong
  } else if (value instanceof Float64Array) {
    const at = value.findIndex((x) => !Number.isFinite(x))
    if (at >= 0) yield `${path}[${at}] = ${value[at]}`
  } else if (typeof value === 'object') {
    for (const [key, inner] of Object.entries(value)) yield* betrayals(inner, path === '' ? key : `${path}.${key}`)
  }
}

function unsoundParts(check: Check, result: Success): string[] {
  const found: string[] = []
  for (const text of [result.headline, ...result.findings.map(({ sentence }) => sentence)])
    if (!isSentence(text)) found.push(`not a sentence: ${text}`)
  const declared = new Set(check.outputs.map(({ key }) => key))
  for (const key of Object.keys(result.outputs)) if (!declared.has(key)) found.push(`output not declared: ${key}`)
  for (const id of result.cautions) if (!isSafetyId(id)) found.push(`no such caution: ${id}`)
  for (const { id, markedF } of result.bounds) if (markedF < 0) found.push(`bound below zero: ${id} = ${markedF}`)
  for (const { id, minV, maxV } of result.rungs) if (minV > maxV) found.push(`rung upside down: ${id}`)
  return found
}
