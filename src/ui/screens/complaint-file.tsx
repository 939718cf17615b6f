import { useState } from 'preact/hooks'
import { fileWaysHere, saveFile } from '../../state/files.ts'
import { Icon } from '../parts/icon.tsx'

/** The complaint with its lines and connectors as a file that any copy of the app can bring in. */
export function ComplaintFile({ id }: { readonly id: string }) {
  const [said, setSaid] = useState('')
  const save = async () => {
    const { exportComplaint } = await import('../../state/exchange.ts')
    const file = await exportComplaint(id)
    if (file === undefined) return
    saveFile({ name: file.name, type: 'application/json', content: file.text }, fileWaysHere())
    setSaid(`Saved as ${file.name}: look among the downloads. ${file.left.join(' ')}`)
  }
  return (
    <>
      <button type="button" class="button" onClick={() => void save()}>
        <Icon name="keep" />
        Save as a file
      </button>
      <p class="action-note" role="status">
        {said}
      </p>
    </>
  )
}
