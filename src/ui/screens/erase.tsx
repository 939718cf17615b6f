import { useState } from 'preact/hooks'
import { removeOfflineCopy } from '../../offline/removal.ts'
import { complaints } from '../../state/complaints.ts'
import { eraseEverything } from '../../state/erase.ts'
import { isStoreOdd } from '../../state/save-queue.ts'
import { StoreError } from '../../store/trouble.ts'

type State = 'offered' | 'asked' | 'erasing' | 'erased' | { readonly refused: string }

/** Everything off this device: a question first, then what was done, and nothing is started again unasked. */
export function Erase() {
  const [state, setState] = useState<State>('offered')
  const erase = async () => {
    setState('erasing')
    try {
      await eraseEverything()
      await removeOfflineCopy()
      setState('erased')
    } catch (error) {
      setState({ refused: error instanceof StoreError ? error.message : String(error) })
    }
  }
  if (state === 'offered')
    return (
      <button type="button" class="button" onClick={() => setState('asked')}>
        Erase everything on this device
      </button>
    )
  if (state === 'asked') return <Question onErase={() => void erase()} onKeep={() => setState('offered')} />
  if (state === 'erasing') return <p role="status">Erasing…</p>
  if (state === 'erased') return <Erased />
  return (
    <div class="notice" role="alert">
      <p>Not everything could be erased. {state.refused}</p>
      <div class="actions">
        <button type="button" class="button" onClick={() => void erase()}>
          Try again
        </button>
      </div>
    </div>
  )
}

function Question({ onErase, onKeep }: { readonly onErase: () => void; readonly onKeep: () => void }) {
  const count = complaints.value?.length ?? 0
  const kept = isStoreOdd.value
    ? 'all complaints, also those that cannot be shown now, what is under way'
    : count === 0
      ? 'what is under way'
      : `${count === 1 ? 'one complaint' : `${count} complaints`}, what is under way`
  return (
    <div class="notice" role="alertdialog" aria-label="Erase everything?" aria-describedby="erase-words">
      <p id="erase-words">
        Erase everything? That is {kept}, the guide, the theme and the offline copy. It cannot be undone, and opening
        Stillpin here again takes the network.
      </p>
      <div class="actions">
        <button type="button" class="button" onClick={onErase}>
          Erase it all
        </button>
        <button type="button" class="button strong" onClick={onKeep}>
          Keep it
        </button>
      </div>
    </div>
  )
}

function Erased() {
  return (
    <div class="notice" role="status">
      <p>Erased. Nothing of Stillpin is left on this device; what is still on the screen goes with this window.</p>
      <div class="actions">
        <button
          type="button"
          class="button"
          onClick={() => {
            history.replaceState(null, '', './')
            location.reload()
          }}
        >
          Start anew
        </button>
      </div>
    </div>
  )
}
