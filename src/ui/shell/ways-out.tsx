import { useState } from 'preact/hooks'
import { fileWaysHere, saveFile } from '../../state/files.ts'
import { rescueFile } from '../../state/rescue.ts'
import { isAboutOpen } from './head.tsx'

/** What can be done where the storage cannot be used as it is: get the newer version, save what is left, begin anew. */
export function WaysOut() {
  const [said, setSaid] = useState('')
  const save = async () => {
    const file = await rescueFile()
    if (!file.ok) return setSaid(file.message)
    saveFile({ name: file.name, type: 'application/json', content: file.text }, fileWaysHere())
    setSaid(`Saved as ${file.name}: look among the downloads. ${file.words}`)
  }
  return (
    <>
      <p>
        What is on the disk stays as it is. Reload while online to get the newest version; what can be read goes into a
        file that any version brings in.
      </p>
      <button type="button" class="button" onClick={() => location.reload()}>
        Reload
      </button>
      <button type="button" class="button" onClick={() => void save()}>
        Save what can be read
      </button>
      <button
        type="button"
        class="button"
        onClick={() => {
          isAboutOpen.value = true
        }}
      >
        Erase, in About
      </button>
      {said !== '' && <p role="status">{said}</p>}
    </>
  )
}
