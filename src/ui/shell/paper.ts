import { readySheet } from './offered-sheet.ts'

/** Folds that belong on paper where a screen has no sheet of its own. Help and doubled tables do not. */
const ON_PAPER = 'main details.fold:not(.as-table, .read-point, .group):not([open]), main details.caution:not([open])'

/** Lays out what paper should show while a print is made, and takes it away again. */
export function watchPrinting(): void {
  let undo: () => void = () => undefined
  addEventListener('beforeprint', () => {
    undo()
    undo = readySheet()?.() ?? openFolds()
  })
  addEventListener('afterprint', () => {
    undo()
    undo = () => undefined
  })
}

function openFolds(): () => void {
  const folds = [...document.querySelectorAll<HTMLDetailsElement>(ON_PAPER)]
  for (const fold of folds) fold.open = true
  return () => {
    for (const fold of folds) fold.open = false
  }
}
