/** Puts a part on a page and finds things the way people do: by role and name. */
import type { ComponentChild } from 'preact'
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { vi } from 'vitest'

export function show(what: ComponentChild): HTMLElement {
  const place = document.createElement('div')
  document.body.replaceChildren(place)
  act(() => render(what, place))
  return place
}

/** Lets effects and lazy parts settle. */
export async function settle(turns = 5): Promise<void> {
  for (let turn = 0; turn < turns; turn += 1) {
    await act(async () => {
      await vi.dynamicImportSettled()
      await new Promise((done) => setTimeout(done, 0))
    })
  }
}

const SELECTORS: Readonly<Record<string, string>> = {
  button: 'button',
  link: 'a[href]',
  textbox: 'input[type=text], textarea',
  radio: 'input[type=radio]',
  checkbox: 'input[type=checkbox]',
  img: '[role=img]',
  heading: 'h1, h2, h3',
  region: 'section[aria-label]',
}

function nameOf(element: Element): string {
  const labelled = element.getAttribute('aria-label')
  if (labelled !== null) return labelled
  const named = element.getAttribute('aria-labelledby')?.split(' ') ?? []
  if (named.length > 0) return named.map((id) => document.getElementById(id)?.textContent?.trim()).join(' ')
  const label = element.id === '' ? null : document.querySelector(`label[for="${element.id}"]`)
  const around = element.closest('label')
  const isField = element.matches('input, textarea')
  const text = label?.textContent ?? (isField ? around?.textContent : element.textContent) ?? ''
  return text.replace(/\s+/gu, ' ').trim()
}

export function allBy(role: string, name: string | RegExp): HTMLElement[] {
  const found = [...document.querySelectorAll<HTMLElement>(SELECTORS[role] ?? role)]
  return found.filter((element) => {
    const own = nameOf(element)
    return typeof name === 'string' ? own === name : name.test(own)
  })
}

export function by(role: string, name: string | RegExp): HTMLElement {
  const [first, ...rest] = allBy(role, name)
  if (first === undefined || rest.length > 0) {
    const names = [...document.querySelectorAll(SELECTORS[role] ?? role)].map(nameOf).join(' | ')
    throw new Error(`expected one ${role} named ${name}, got ${rest.length + (first ? 1 : 0)}; there are: ${names}`)
  }
  return first
}

export async function type(field: HTMLElement, text: string): Promise<void> {
  await act(async () => {
    if (field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement) field.value = text
    field.dispatchEvent(new Event('input', { bubbles: true }))
  })
  await settle()
}

export async function tap(target: HTMLElement): Promise<void> {
  await act(async () => target.click())
  await settle()
}

export function output(id: string): { readonly text: string; readonly si: string | null } | undefined {
  const found = document.querySelectorAll<HTMLElement>(`output#${id}`)
  if (found.length > 1) throw new Error(`${found.length} outputs are called ${id}`)
  const [only] = found
  return only && { text: (only.textContent ?? '').trim(), si: only.getAttribute('data-si') }
}

/** Waits until there is something: parts and computations take as long as they take. */
export async function eventually<T>(what: string, look: () => T | null | undefined): Promise<T> {
  for (let turn = 0; turn < 400; turn += 1) {
    const found = look()
    if (found !== null && found !== undefined) return found
    await act(() => new Promise((done) => setTimeout(done, 10)))
  }
  throw new Error(`never came: ${what}`)
}

/** Waits until something is on the page. */
export function until(selector: string): Promise<Element> {
  return eventually(selector, () => document.querySelector(selector))
}
