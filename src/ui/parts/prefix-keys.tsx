import type { RefObject } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { insertKey, PREFIX_NAMES } from './prefixes.ts'

/** What is touched has a keyboard on the screen, and that hides the prefixes. */
const TOUCHED = '(pointer: coarse)'

/** Keys for the prefixes, above the keyboard, while a field that can use them is typed in. */
export function PrefixKeys({ form }: { readonly form: RefObject<HTMLElement | null> }) {
  const field = useTypedField(form)
  const known = field?.dataset['keys']
  if (field === undefined || known === undefined) return null
  const keys = [...Object.keys(PREFIX_NAMES), ...(known.includes(';') ? [';'] : [])]
  return (
    <div class="prefix-keys" role="toolbar" aria-label="Prefixes">
      {keys.map((key) => (
        <button
          key={key}
          type="button"
          aria-label={key === ';' ? 'semicolon, for the next value' : `${key}, ${PREFIX_NAMES[key]}`}
          disabled={!known.includes(key)}
          // the field keeps the focus, and with it the keyboard and the caret
          onPointerDown={(event) => event.preventDefault()}
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => insertKey(field, key)}
        >
          {key}
        </button>
      ))}
    </div>
  )
}

/** The text field that has the focus, on a screen that is touched. */
function useTypedField(form: RefObject<HTMLElement | null>): HTMLInputElement | undefined {
  const [field, setField] = useState<HTMLInputElement>()
  useEffect(() => {
    const place = form.current
    if (place === null || typeof matchMedia !== 'function' || !matchMedia(TOUCHED).matches) return
    const take = ({ target }: FocusEvent) => setField(target instanceof HTMLInputElement ? target : undefined)
    const drop = () => setField(undefined)
    place.addEventListener('focusin', take)
    place.addEventListener('focusout', drop)
    return () => {
      place.removeEventListener('focusin', take)
      place.removeEventListener('focusout', drop)
    }
  }, [form])
  return field
}
