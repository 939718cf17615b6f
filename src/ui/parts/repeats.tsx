import type { Event } from '../../guide/investigation.ts'

type Repeated = NonNullable<Event['repeats']>

const WORDS: Readonly<Record<Repeated, string>> = {
  agreed: 'Three times, agreed',
  differed: 'Repeated, differed',
  once: 'Once only',
}

/** How a trial came out when it was repeated. What differed proves nothing, and says so at once. */
export function Repeats(given: { readonly value: Event['repeats']; readonly onPick: (value: Repeated) => void }) {
  const { value, onPick } = given
  return (
    <fieldset class="repeats">
      <legend>On, off, on</legend>
      {(['agreed', 'differed', 'once'] as const).map((each) => (
        <label key={each}>
          <input
            type="radio"
            class="pick-mark"
            name="repeats"
            value={each}
            checked={value === each}
            onChange={() => onPick(each)}
          />
          {WORDS[each]}
        </label>
      ))}
      {value === 'differed' && (
        <p class="row-note" role="status">
          It proves nothing and clears nothing: it counts as not known until it repeats.
        </p>
      )}
    </fieldset>
  )
}
