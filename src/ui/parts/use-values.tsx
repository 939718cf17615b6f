import { createContext } from 'preact'
import type { Use } from '../../calc/types.ts'

/** Enters values into the fields of the check whose picture is shown; absent where a picture stands by itself. */
export const UseValues = createContext<((uses: readonly Use[]) => void) | undefined>(undefined)

/** Enters them once what has the focus is left, so that its field shows what stands in it. */
export function enterNow(enter: (uses: readonly Use[]) => void, uses: readonly Use[]): void {
  if (document.activeElement instanceof HTMLInputElement) document.activeElement.blur()
  enter(uses)
}

type Given = {
  /** what is used, as it is read out */
  readonly name: string
  readonly use: readonly Use[]
  readonly enter: (uses: readonly Use[]) => void
}

/** Enters the values of a row. */
export function UseButton({ name, use, enter }: Given) {
  return (
    <button type="button" class="button" aria-label={`Use ${name}`} onClick={() => enterNow(enter, use)}>
      Use
    </button>
  )
}
