type Given = {
  readonly label: string
  readonly words: readonly { readonly value: string; readonly label: string }[]
  readonly value: string
  readonly onPick: (value: string) => void
}

/** A few words as large buttons in a row; a second tap takes the choice back. */
export function Pad({ label, words, value, onPick }: Given) {
  return (
    <fieldset class="pad-row">
      <legend class="small">{label}</legend>
      {words.map((word) => (
        <button
          key={word.value}
          type="button"
          class="button"
          aria-pressed={value === word.value}
          onClick={() => onPick(value === word.value ? '' : word.value)}
        >
          {value === word.value ? '✓ ' : ''}
          {word.label}
        </button>
      ))}
    </fieldset>
  )
}

export const asWords = (words: readonly string[]): Given['words'] => words.map((value) => ({ value, label: value }))
