/** What of a complaint is different in a file and on this device, text by text, in words. */

import { FACTS } from '../../calc/fact-meanings.ts'
import { isFactKey } from '../ids.ts'
import { entriesOf, isRecord } from '../plain.ts'
import type { Whole } from './whole.ts'
import { formOf } from './whole.ts'

/** `here`, `there`: the text on this device and in the file; absent = it is not there. */
export type Difference = { readonly place: string; readonly here?: string; readonly there?: string }

type Leaf = { readonly place: string; readonly text: string }

/** What says when and by which version, not what. */
const NOT_COMPARED: ReadonlySet<string> = new Set([
  'id',
  'schemaVersion',
  'guideVersion',
  'createdAt',
  'updatedAt',
  'isDemo',
  'order',
  'kept',
  'rivals',
])

/** Names that only hold others together. */
const SILENT: ReadonlySet<string> = new Set(['facts', 'texts', 'shared', 'tables'])

/** That a text was typed goes without saying. */
const isTypedHere = (name: string, one: unknown): boolean => name === 'origin' && isRecord(one) && one['by'] === 'user'

const nameOf = (one: Readonly<Record<string, unknown>>): string => String(one['name'] || one['id'])

/** What one entry of a list is called; entries without a name are told apart by their number. */
function titleOf(list: string, one: unknown, at: number): { readonly key: string; readonly place: string } {
  if (!isRecord(one) || one['id'] === undefined) return { key: String(at), place: `${list} ${at + 1}` }
  const what = {
    lines: 'line',
    connectors: 'connector',
    contacts: 'contact',
    trials: 'trial',
    suppressors: 'suppressor',
  }
  const word = entriesOf(what).find(([key]) => key === list)?.[1] ?? list
  return { key: String(one['id']), place: `${String(word)} ${nameOf(one)}` }
}

function collect(value: unknown, key: string, place: string, into: Map<string, Leaf>): void {
  if (Array.isArray(value)) {
    const list = place.split(', ').at(-1) ?? ''
    const above = place.slice(0, Math.max(0, place.length - list.length))
    for (const [at, one] of value.entries()) {
      const title = titleOf(list, one, at)
      into.set(`${key}/${title.key}`, { place: `${above}${title.place}`, text: '' })
      collect(one, `${key}/${title.key}`, `${above}${title.place}`, into)
    }
    return
  }
  if (!isRecord(value)) {
    into.set(key, { place, text: String(value) })
    return
  }
  const isInFacts = key.endsWith('/facts')
  const isTyped = typeof value['text'] === 'string' && isRecord(value['origin'])
  for (const [name, one] of entriesOf(value)) {
    if (NOT_COMPARED.has(name) || (isTyped && isTypedHere(name, one))) continue
    const isOwnText = isTyped && name === 'text'
    const isSilent = SILENT.has(name)
    const words = isInFacts && isFactKey(name) ? FACTS[name] : name
    const next = isOwnText || isSilent ? place : place === '' ? words : `${place}, ${words}`
    collect(one, `${key}/${name}`, next, into)
  }
}

function leavesOf(whole: Whole): ReadonlyMap<string, Leaf> {
  const leaves = new Map<string, Leaf>()
  collect(formOf(whole), '', '', leaves)
  return leaves
}

/** Every text that differs, in the order of this device, then what is in the file alone. */
export function differencesOf(here: Whole, there: Whole): readonly Difference[] {
  const [ours, theirs] = [leavesOf(here), leavesOf(there)]
  const gone = [...ours].flatMap(([key, { place, text }]): Difference[] => {
    const other = theirs.get(key)
    if (other === undefined) return [{ place, here: text }]
    return other.text === text ? [] : [{ place, here: text, there: other.text }]
  })
  const added = [...theirs].filter(([key]) => !ours.has(key))
  return [...gone, ...added.map(([, { place, text }]): Difference => ({ place, there: text }))]
}
