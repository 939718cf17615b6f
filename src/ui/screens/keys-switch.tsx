import { hasKeys, setKeys } from '../../state/keys.ts'

/** Single keys can be in the way of speech input and of other tools. */
export function KeysSwitch() {
  return (
    <div class="field flag">
      <label for="keys">Single keys</label>
      <input
        id="keys"
        type="checkbox"
        class="switch"
        checked={hasKeys.value}
        aria-describedby="note-keys"
        onChange={(event) => setKeys(event.currentTarget.checked)}
      />
      <p id="note-keys" class="field-note">
        A digit answers a question, / searches, Enter moves on to the next field or step.
      </p>
    </div>
  )
}
