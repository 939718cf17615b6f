/**
 * The quick checks done last on this device, for the list of checks.
 *
 * `recents`             the newest first; undefined until they are read
 * `loadRecents()`       reads them, once
 * `noteRecent(recent)`  puts one on top
 * `saidOf(recent)`      what it was about, in the texts of its address
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { checkById } from '../calc/registry.ts'
import type { Check, Input } from '../calc/types.ts'
import { type Recent, readRecents, withRecent, writeRecent } from '../store/recents.ts'
import { StoreError } from '../store/trouble.ts'
import { readHash, splitQuery } from './router.ts'
import { enqueue } from './save-queue.ts'

const list = signal<readonly Recent[] | undefined>(undefined)
/** noted here before the list was read, the newest last: it may not be on disk yet */
const noted: Recent[] = []
export const recents: ReadonlySignal<readonly Recent[] | undefined> = list

export async function loadRecents(): Promise<void> {
  if (list.peek() !== undefined) return
  try {
    const stored = await readRecents()
    list.value = noted.reduce(withRecent, stored)
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    list.value = noted.reduce<readonly Recent[]>(withRecent, [])
  }
}

export function noteRecent(recent: Recent): void {
  const shown = list.peek()
  if (shown === undefined) noted.push(recent)
  else list.value = withRecent(shown, recent)
  void enqueue(() => writeRecent(recent))
}

/** Texts of an address that say most of what a check was about. */
const MOST_TEXTS = 4

/** What a check of an address was about: its line first, then what was entered, defaults left out. */
export function saidOf({ check: id, address }: Recent): { readonly check: Check; readonly words: string } | undefined {
  const check = checkById(id)
  const route = readHash(address)
  if (check === undefined || route.place !== 'check') return undefined
  const { texts } = splitQuery(route.query, check.inputs)
  const entered = check.inputs.flatMap((input) => {
    const text = (texts[input.key] ?? '').trim()
    return text === '' || text === input.defaultText ? [] : [{ input, words: wordsOf(input, text) }]
  })
  const weight = ({ input }: { input: Input }) => (input.fact === 'lineKind' ? 0 : input.group === undefined ? 1 : 2)
  const words = [...entered].sort((a, b) => weight(a) - weight(b)).map((each) => each.words)
  return { check, words: words.slice(0, MOST_TEXTS).join(', ') }
}

function wordsOf({ type, label }: Input, text: string): string {
  if (type.is === 'choice') return type.options.find(({ value }) => value === text)?.label ?? text
  return type.is === 'flag' ? label.toLowerCase() : text
}
