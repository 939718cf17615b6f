import { useEffect, useState } from 'preact/hooks'
import {
  type Difference,
  type How,
  type Outcome,
  type Planned,
  type Preview,
  performImport,
  previewImport,
  readTakenIn,
  takenIn,
  undoImport,
} from '../../state/exchange.ts'
import { isShareLost, type Offered, offered, takeOffered } from '../../state/offered-file.ts'
import { besideWords, FileOut } from '../parts/file-out.tsx'
import { ShownUnderWay, useUnderWay } from '../parts/under-way.tsx'
import { dayAndTime } from './moment.ts'
import { SharedFiles, Together } from './waiting-files.tsx'

/** Complaints in from a file, shown before anything is changed, and the whole Log out as one. */
export function BringIn() {
  const [preview, setPreview] = useState<Preview>()
  const [said, setSaid] = useState<Outcome>()
  const [now, doing] = useUnderWay()
  const [isBusy, setBusy] = useState(false)
  useEffect(() => void readTakenIn(), [])
  const during = async (job: () => Promise<void>) => {
    setBusy(true)
    setSaid(undefined)
    await job()
    setBusy(false)
  }
  const [from, setFrom] = useState<Offered>()
  const choose = (next: Offered | undefined) => {
    const file = next?.file
    setFrom(next)
    setSaid(undefined)
    setPreview(undefined)
    if (file === undefined) return
    void doing('Reading the file', async (onProgress, signal) => {
      setPreview(await previewImport(file, { onProgress, signal }))
    })
  }
  const coming = offered.value
  useEffect(() => {
    if (coming === undefined) return
    takeOffered()
    choose(coming)
  }, [coming])
  const conclude = (outcome: Outcome) => {
    setSaid(outcome)
    if (outcome.ok) setPreview(undefined)
  }
  const take = (how: How) =>
    during(async () => {
      if (preview === undefined) return
      const outcome = await performImport(preview, how)
      if (outcome.ok) from?.done?.()
      conclude(outcome)
    })
  return (
    <div class="stack">
      <p class="muted">Nothing is changed before you have seen what would be.</p>
      <div class="actions">
        <ChooseFile onChoose={choose} />
        <FileOut what="the whole Log as a file" title="Stillpin log" />
      </div>
      {isShareLost.value && (
        <p role="alert">
          What came to the app could not be kept here, or not all of it. Choose the file, or send it once more.
        </p>
      )}
      <SharedFiles onLook={choose} />
      <Together onLook={choose} />
      <ShownUnderWay now={now} />
      {from !== undefined && preview !== undefined && <p class="muted">{from.name}</p>}
      {isBusy && <p role="status">One moment…</p>}
      {said !== undefined && <p role={said.ok ? 'status' : 'alert'}>{said.ok ? said.words : said.message}</p>}
      {preview !== undefined && <Shown preview={preview} onTake={(how) => void take(how)} />}
      {preview === undefined && <Taken onBack={() => void during(async () => conclude(await undoImport()))} />}
    </div>
  )
}

function ChooseFile({ onChoose }: { readonly onChoose: (file: Offered | undefined) => void }) {
  return (
    <label class="button">
      Choose a file
      <input
        class="unseen"
        type="file"
        accept=".json,.txt,application/json,text/plain"
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? []
          currentTarget.value = ''
          onChoose(file && { name: file.name, file })
        }}
      />
    </label>
  )
}

/** What came in last, and the way back. */
function Taken({ onBack }: { readonly onBack: () => void }) {
  const last = takenIn.value
  if (last === undefined) return null
  const count = last.before.length
  return (
    <p>
      {count === 1 ? 'One complaint' : `${count} complaints`} came in from a file on {dayAndTime(last.at)}.{' '}
      <button type="button" class="button" onClick={onBack}>
        Take it back
      </button>
    </p>
  )
}

function Shown({ preview, onTake }: { readonly preview: Preview; readonly onTake: (how: How) => void }) {
  if (!preview.ok)
    return (
      <div class="notice" role="alert">
        <p>This file cannot be brought in, and nothing was changed. {preview.message}</p>
      </div>
    )
  const { planned, notes } = preview
  const differs = planned.some(({ is }) => is === 'differs')
  const isAllHere = planned.every(({ is }) => is === 'same')
  return (
    <section class="stack" aria-label="What would change">
      <h2>What would change</h2>
      <ul class="rows">
        {planned.slice(0, MOST_ROWS).map((one) => (
          <Row key={one.whole.complaint.id} planned={one} />
        ))}
      </ul>
      <More count={planned.length - MOST_ROWS} what="complaints" />
      {planned.some(({ beside }) => beside.blocked > 0) && (
        <p class="muted">
          A line keeps one measured file for each use. Laid over, the one that is here stays; put in its place, it makes
          room for that of the file.
        </p>
      )}
      {notes.map((note) => (
        <p key={note} class="muted">
          {note}
        </p>
      ))}
      {isAllHere ? (
        <p>All of it is here already: there is nothing to bring in.</p>
      ) : (
        <Ways differs={differs} onTake={onTake} />
      )}
    </section>
  )
}

const MOST_ROWS = 50
const MOST_DIFFERENCES = 40

function More({ count, what }: { readonly count: number; readonly what: string }) {
  return count > 0 ? (
    <p class="muted">
      and {count} more {what}
    </p>
  ) : null
}

function Ways({ differs, onTake }: { readonly differs: boolean; readonly onTake: (how: How) => void }) {
  if (!differs)
    return (
      <div class="actions">
        <button type="button" class="button strong" onClick={() => onTake('merge')}>
          Bring it in
        </button>
      </div>
    )
  return (
    <>
      <p>
        Laid over: nothing that is here goes. Where both say something, the text written last counts and the other stays
        beside it until you take one. In place of: what is here of these complaints goes, as far as the file does not
        hold it. Either can be taken back.
      </p>
      <div class="actions">
        <button type="button" class="button strong" onClick={() => onTake('merge')}>
          Lay it over what is here
        </button>
        <button type="button" class="button" onClick={() => onTake('replace')}>
          Put it in place of what is here
        </button>
      </div>
    </>
  )
}

function wordsOf({ is, whole, differences, beside }: Planned): string {
  const { complaint, connectors } = whole
  const more = besideWords(beside)
  const alongside = more === '' ? '' : `, ${more}`
  const counted = (count: number, one: string): string =>
    count === 1 ? `one ${one}` : `${count === 0 ? 'no' : count} ${one}s`
  if (is === 'same') return 'here already, the same: stays untouched'
  if (is === 'differs' && differences.length === 0) return `here already, and ${more || 'a measured file'} beside it`
  if (is === 'differs') return `here already, other in ${counted(differences.length, 'place')}${alongside}`
  return `new: ${counted(complaint.lines.length, 'line')}, ${counted(connectors.length, 'connector')}${alongside}`
}

function Row({ planned }: { readonly planned: Planned }) {
  const { complaint } = planned.whole
  const kind = complaint.purpose === 'design' ? 'design' : 'complaint'
  return (
    <li>
      <strong>{complaint.title || `Untitled ${kind}`}</strong>
      <span class="row-note">{wordsOf(planned)}</span>
      {planned.differences.length > 0 && (
        <details class="fold">
          <summary>What is other</summary>
          <ul>
            {planned.differences.slice(0, MOST_DIFFERENCES).map((one, at) => (
              <li key={`${one.place} ${at}`}>{differenceWords(one)}</li>
            ))}
          </ul>
          <More count={planned.differences.length - MOST_DIFFERENCES} what="places" />
        </details>
      )}
    </li>
  )
}

/** One line of a difference: what is here, what the file holds. */
export function differenceWords({ place, here, there }: Difference): string {
  const quoted = (text: string): string => `“${text.length > 80 ? `${text.slice(0, 79)}…` : text}”`
  if (here === undefined) return `${place}: ${there ? `${quoted(there)} comes in` : 'comes in'}`
  if (there === undefined) return `${place}: ${here ? `${quoted(here)} is` : 'is'} not in the file`
  return `${place}: here ${quoted(here)}, in the file ${quoted(there)}`
}
