import { useState } from 'preact/hooks'
import { parseList } from '../../calc/quantity/parse.ts'

/** The exact frequency, wherever a band can be tapped; several are separated by semicolons. */
export function FrequencyField({ onGive }: { readonly onGive: (text: string) => void }) {
  const [text, setText] = useState('')
  const [refusal, setRefusal] = useState('')
  const give = () => {
    const read = parseList(text, 'frequency')
    if (text.trim() === '') setRefusal('Type a frequency such as 121.5 MHz, or tap a band below.')
    else if (read.is === 'refused') setRefusal(read.message)
    else onGive(text.trim())
  }
  return (
    <form
      class="field wide"
      onSubmit={(event) => {
        event.preventDefault()
        give()
      }}
    >
      <label for="exact-frequency">Exact frequency, when it is known</label>
      <input
        id="exact-frequency"
        type="text"
        autocomplete="off"
        enterkeyhint="go"
        value={text}
        aria-invalid={refusal !== ''}
        aria-describedby="exact-frequency-note"
        onInput={(event) => {
          setText(event.currentTarget.value)
          setRefusal('')
        }}
      />
      <p id="exact-frequency-note" class="small" role={refusal === '' ? undefined : 'alert'}>
        {refusal === '' ? 'For instance 121.5 MHz, or 118 MHz; 137 MHz.' : refusal}
      </p>
      <button type="submit" class="button">
        Use this frequency
      </button>
    </form>
  )
}
