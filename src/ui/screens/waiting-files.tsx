import { useEffect, useState } from 'preact/hooks'
import { dropShared, type SharedFile, sharedFiles } from '../../offline/shared-files.ts'
import { type Offered, putAway, together } from '../../state/offered-file.ts'

/** Files another app has shared to this one, until they were brought in or put away. */
export function SharedFiles({ onLook }: { readonly onLook: (file: Offered) => void }) {
  const [all, setAll] = useState<readonly SharedFile[]>([])
  const read = () => void sharedFiles().then(setAll)
  useEffect(read, [])
  const drop = (key: string) => dropShared(key).then(read)
  if (all.length === 0) return null
  return (
    <ul class="rows" aria-label="Shared to the app">
      {all.map(({ key, name, file }) => (
        <Waiting
          key={key}
          name={name}
          how="shared to the app"
          onLook={() => onLook({ name, file, done: () => void drop(key) })}
          onPutAway={() => void drop(key)}
        />
      ))}
    </ul>
  )
}

/** Files that came at once, one of which is looked at. */
export function Together({ onLook }: { readonly onLook: (file: Offered) => void }) {
  const all = together.value
  if (all.length === 0) return null
  return (
    <>
      <p role="status">
        Several files came at once. One is looked at; each stays here until it was brought in or put away.
      </p>
      <ul class="rows" aria-label="Came at once">
        {all.map((one, at) => (
          <Waiting
            key={`${at} ${one.name}`}
            name={one.name}
            how="came at once"
            onLook={() => onLook(one)}
            onPutAway={() => putAway(one)}
          />
        ))}
      </ul>
    </>
  )
}

type WaitingFile = {
  readonly name: string
  /** how it came, or what becomes of it */
  readonly how: string
  readonly onLook: () => void
  readonly onPutAway: () => void
}

function Waiting({ name, how, onLook, onPutAway }: WaitingFile) {
  return (
    <li>
      <span>
        {name || 'A file'}, {how}
      </span>
      <div class="actions">
        <button type="button" class="button" onClick={onLook}>
          Look at it <span class="unseen">{name}</span>
        </button>
        <button type="button" class="button" onClick={onPutAway}>
          Put it away <span class="unseen">{name}</span>
        </button>
      </div>
    </li>
  )
}
