/** Folds that belong on paper: reasons, assumptions, cautions and workings. Help and doubled tables do not. */
const ON_PAPER = 'main details.fold:not(.as-table, .read-point, .group):not([open]), main details.caution:not([open])'

/** Opens what paper should show while a print is made, and closes it again. */
export function watchPrinting(): void {
  let opened: readonly HTMLDetailsElement[] = []
  addEventListener('beforeprint', () => {
    opened = [...document.querySelectorAll<HTMLDetailsElement>(ON_PAPER)]
    for (const fold of opened) fold.open = true
  })
  addEventListener('afterprint', () => {
    for (const fold of opened) fold.open = false
    opened = []
  })
}
