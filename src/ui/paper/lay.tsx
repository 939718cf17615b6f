import { type ComponentChildren, render } from 'preact'
import { KnownWidth } from '../parts/width.ts'

/** Width between the margins of the narrower sheet (A4, 12 mm a side) in CSS pixels, less a hair for rounding. */
export const SHEET_PX = 696

/** Puts a sheet beside the app, where only a printer sees it; gives what takes it away again. `head`: said on every page. */
export function lay(sheet: ComponentChildren, head = ''): () => void {
  const takeHead = layHead(head)
  const host = document.createElement('div')
  host.className = 'paper'
  document.body.append(host)
  document.documentElement.classList.add('has-paper')
  render(<KnownWidth.Provider value={SHEET_PX}>{sheet}</KnownWidth.Provider>, host)
  return () => {
    render(null, host)
    host.remove()
    takeHead()
    document.documentElement.classList.remove('has-paper')
  }
}

/** Words in the head of every page: in a sheet of style of their own, since they are what somebody typed. */
function layHead(head: string): () => void {
  if (head === '') return () => undefined
  const style = new CSSStyleSheet()
  style.replaceSync(`@page { @top-left { content: ${quoted(head)}; font: 8pt sans-serif; white-space: nowrap } }`)
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, style]
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style)
  }
}

/** Characters a head has room for on the narrower sheet. */
const LONGEST_HEAD = 100

/** A text as a string of a style sheet, cut where the page ends. */
function quoted(text: string): string {
  const plain = text.replaceAll(/\s+/g, ' ').trim()
  const cut = plain.length > LONGEST_HEAD ? `${plain.slice(0, LONGEST_HEAD - 1)}…` : plain
  return `"${cut.replaceAll(/["\\]/g, (sign) => `\\${sign}`)}"`
}
