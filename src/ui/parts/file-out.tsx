import { useEffect, useState } from 'preact/hooks'
import { counted } from '../../calc/quantity/counted.ts'
import { changesSoFar, noteSaved } from '../../state/backup.ts'
import { complaints } from '../../state/complaints.ts'
import { type AttachedCount, countAttached, exportAll, exportComplaint } from '../../state/export-file.ts'
import { canShareFiles, fileWaysHere, type OwnFile, saveFile, shareFile } from '../../state/files.ts'
import { settled } from '../../state/save-queue.ts'
import { Icon } from './icon.tsx'
import { ShownUnderWay, useUnderWay } from './under-way.tsx'

type Given = {
  /** of one complaint; without it, of the whole Log */
  readonly id?: string
  /** what the buttons hand on: "as a file" */
  readonly what: string
  readonly title: string
}

/** A share sheet takes texts everywhere, and records nowhere. */
const SHARED_TYPE = 'text/plain'

/** A photo of 300 kB, written in base 64. */
const PHOTO_MB = 0.4

export const besideWords = ({ photos, traces }: AttachedCount): string =>
  [photos > 0 ? counted(photos, 'photo') : '', traces > 0 ? counted(traces, 'measured file') : '']
    .filter((one) => one !== '')
    .join(' and ')

/** One complaint, or the whole Log, as a file that any copy of the app brings in: saved here, or to the share sheet. */
export function FileOut({ id, what, title }: Given) {
  const [ways] = useState(fileWaysHere)
  const [attached, setAttached] = useState<AttachedCount>({ photos: 0, traces: 0 })
  const [withAttached, setWithAttached] = useState(true)
  const [said, setSaid] = useState('')
  const [now, during] = useUnderWay()
  // of the whole Log again when that changes, as after a file was brought in
  const log = id === undefined ? complaints.value : undefined
  useEffect(() => void countAttached(id).then(setAttached), [id, log])
  const make = (hand: (file: OwnFile) => Promise<string> | string) =>
    during('Writing the file', async (onProgress, signal) => {
      setSaid('')
      const wish = { withAttached, onProgress, signal }
      await settled()
      const count = changesSoFar()
      const file = id === undefined ? await exportAll(wish) : await exportComplaint(id, wish)
      if (file === undefined) return setSaid('This complaint is not on this device any more.')
      const words = await hand({ name: file.name, type: 'application/json', content: new Blob([...file.parts]) })
      if (words === '') return
      if (id === undefined) noteSaved(Date.now(), count)
      setSaid(`${words} ${file.left.join(' ')}`)
    })
  const savedWords = (name: string) => `Saved as ${name}: look among the downloads.`
  const save = (file: OwnFile): string => {
    saveFile(file, ways)
    return savedWords(file.name)
  }
  const share = async (file: OwnFile): Promise<string> => {
    const sent = { ...file, name: file.name.replace(/\.json$/, '.txt'), type: SHARED_TYPE }
    const outcome = await shareFile(sent, title, ways)
    return outcome === 'shared' ? 'Shared.' : outcome === 'saved' ? savedWords(sent.name) : ''
  }
  const words = besideWords(attached)
  const box = `with-attached-${id ?? 'all'}`
  return (
    <>
      {words !== '' && (
        <div class="field flag">
          <label for={box}>With {words}</label>
          <input
            id={box}
            type="checkbox"
            class="switch"
            checked={withAttached}
            aria-describedby={`note-${box}`}
            onChange={() => setWithAttached(!withAttached)}
          />
          <p id={`note-${box}`} class="field-note">
            {attached.photos > 0 ? `A photo adds up to ${PHOTO_MB} MB to the file.` : 'They are most of a large file.'}
          </p>
        </div>
      )}
      <button type="button" class="button" disabled={now !== undefined} onClick={() => void make(save)}>
        <Icon name="keep" />
        Save {what}
      </button>
      {canShareFiles(ways, SHARED_TYPE) && (
        <button type="button" class="button" disabled={now !== undefined} onClick={() => void make(share)}>
          <Icon name="share" />
          Share {what}
        </button>
      )}
      <ShownUnderWay now={now} />
      <p class="action-note" role="status">
        {said}
      </p>
    </>
  )
}
