import { type ComponentChildren, render } from 'preact'
import { KnownWidth } from '../parts/width.ts'
import './paper.css'

/** Width between the margins of the narrower sheet (A4, 12 mm a side) in CSS pixels, less a hair for rounding. */
export const SHEET_PX = 696

/** Puts a sheet beside the app, where only a printer sees it; gives what takes it away again. */
export function lay(sheet: ComponentChildren): () => void {
  const host = document.createElement('div')
  host.className = 'paper'
  document.body.append(host)
  document.documentElement.classList.add('has-paper')
  render(<KnownWidth.Provider value={SHEET_PX}>{sheet}</KnownWidth.Provider>, host)
  return () => {
    render(null, host)
    host.remove()
    document.documentElement.classList.remove('has-paper')
  }
}
