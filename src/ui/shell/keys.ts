import { effect } from '@preact/signals'
import { hasKeys } from '../../state/keys.ts'
import { goTo } from '../../state/router.ts'
import { isSearchWanted } from './search-wanted.ts'

const TYPED_IN = 'input:not([type="radio"], [type="checkbox"], [type="range"]), textarea, select, [contenteditable]'
const ACTED_ON = 'a, button, summary, input, textarea, select'

const inMain = (selector: string): HTMLElement[] =>
  [...document.querySelectorAll<HTMLElement>(`main ${selector}`)].filter((one) => one.checkVisibility())

/** The answers of a question; a list that is searched by typing is none. */
const answerRows = (): HTMLElement[] =>
  inMain('.answers > li > .answer-row').filter((row) => row.closest('.option-search') === null)

/** A digit gives the answer of that number; 0 the last one, which is often "don't know". */
function answer(digit: number): boolean {
  const rows = answerRows()
  const row = digit === 0 ? rows.at(-1) : rows[digit - 1]
  row?.click()
  return row !== undefined
}

/** The search of this screen, or that of the start page. */
function search(): boolean {
  const [field] = inMain('input[type="search"]')
  if (field !== undefined) field.focus()
  else {
    isSearchWanted.value = true
    goTo('#/ask')
  }
  return true
}

/** The next field of the form; after the last one it stays. */
function nextField(field: HTMLElement): boolean {
  const fields = inMain('form input[type="text"]')
  const next = fields[fields.indexOf(field) + 1]
  if (!(next instanceof HTMLInputElement)) return false
  next.focus()
  next.select()
  return true
}

/** On with what stands there: the answer already given, or the one strong button. */
function moveOn(): boolean {
  const chosen = answerRows().find((row) => row.ariaPressed === 'true')
  const [strong] = inMain('a.button.strong')
  const next = chosen ?? strong
  next?.click()
  return next !== undefined
}

function press(event: KeyboardEvent): boolean {
  const { key, target } = event
  const at = target instanceof HTMLElement ? target : document.body
  const isTypedIn = at.matches(TYPED_IN)
  if (key === 'Enter') {
    if (isTypedIn) return at.matches('form input[type="text"]') && nextField(at)
    return !at.matches(ACTED_ON) && moveOn()
  }
  if (isTypedIn) return false
  if (key === '/') return search()
  return /^[0-9]$/.test(key) && answer(Number(key))
}

/** Listens as long as the app is open; what is typed into a field stays typing. */
export function watchKeys(): void {
  effect(() => {
    document.documentElement.toggleAttribute('data-keys', hasKeys.value)
  })
  addEventListener('keydown', (event) => {
    const isChord = event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.repeat
    if (!hasKeys.peek() || event.defaultPrevented || isChord) return
    if (document.querySelector('dialog[open]') !== null) return
    if (press(event)) event.preventDefault()
  })
}
