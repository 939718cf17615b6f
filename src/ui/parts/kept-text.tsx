import { useEffect } from 'preact/hooks'
import { Rivals } from './rival.tsx'
import { useTyped } from './typed.ts'

type Given = {
  readonly id: string
  readonly label: string
  /** the text in a sentence about it: "title", "note" */
  readonly what: string
  readonly stored: string
  readonly rivals: readonly { readonly text: string }[]
  readonly onType: (text: string, base: string) => void
  /** one of several texts is taken; `left` are the others that were seen */
  readonly onTake: (text: string, left: readonly string[]) => void
  readonly help?: string
  /** what stands against the text */
  readonly against?: string
  /** lines of text; one where it is absent */
  readonly rows?: number
  readonly isLong?: boolean
}

/** Notes on the page that a long text is typed in: a rule that asked the page itself would cost every other screen. */
const typeLong = (isTyped: boolean) => document.documentElement.toggleAttribute('data-long-text', isTyped)

/** A text that is written at every key; what another window typed on the same text stands beside it. */
export function KeptText(given: Given) {
  const { id, label, what, stored, rivals, onType, onTake, help, against, rows, isLong } = given
  const typed = useTyped(stored, onType)
  const described = [help && `${id}-help`, against && `${id}-against`].filter((one) => one !== undefined).join(' ')
  const box = {
    id,
    value: typed.shown,
    onBlur: typed.leave,
    ...(described !== '' && { 'aria-describedby': described }),
  }
  useEffect(() => () => void typeLong(false), [])
  return (
    <div class="field wide">
      <label for={id}>{label}</label>
      {rows === undefined ? (
        <input
          {...box}
          type="text"
          autocomplete="off"
          enterkeyhint="done"
          onInput={(event) => typed.type(event.currentTarget.value)}
        />
      ) : (
        <textarea
          {...box}
          rows={rows}
          onFocus={() => typeLong(isLong === true)}
          onBlur={() => {
            typeLong(false)
            typed.leave()
          }}
          onInput={(event) => {
            typeLong(isLong === true)
            typed.type(event.currentTarget.value)
          }}
        />
      )}
      {help !== undefined && (
        <p id={`${id}-help`} class="muted small">
          {help}
        </p>
      )}
      {against !== undefined && (
        <p id={`${id}-against`} class="against small" role="status">
          {against}
        </p>
      )}
      <Rivals
        what={what}
        shown={typed.shown}
        stored={stored}
        rivals={rivals}
        onTake={(text, left) => {
          typed.leave()
          onTake(text, left)
        }}
      />
    </div>
  )
}
