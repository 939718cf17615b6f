import { useRef, useState } from 'preact/hooks'

export type Typed = {
  readonly shown: string
  readonly type: (text: string) => void
  /** the field is left: from now on it follows what is stored */
  readonly leave: () => void
}

/**
 * The text of a field that is written at every key. While the field is untouched it follows what is stored, also from
 * another window; while it is being typed in, it shows what was typed, and every write names the text it was typed on.
 */
export function useTyped(stored: string, onType: (text: string, base: string) => void): Typed {
  const [typed, setTyped] = useState<string | undefined>(undefined)
  const shown = typed ?? stored
  // Two keys may come before the next drawing: the second was typed on the first.
  const latest = useRef(shown)
  latest.current = shown
  return {
    shown,
    type: (text) => {
      setTyped(text)
      const base = latest.current
      latest.current = text
      onType(text, base)
    },
    leave: () => setTyped(undefined),
  }
}
