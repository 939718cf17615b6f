import { useState } from 'preact/hooks'
import { canShareFiles, type FileOutcome, fileWaysHere, type OwnFile, saveFile, shareFile } from '../../state/files.ts'
import { Icon } from './icon.tsx'

type Given = {
  /** what it is, as the buttons name it: "table (CSV)" */
  readonly what: string
  /** title on the share sheet */
  readonly title: string
  readonly type: string
  /** made when it is asked for; throws a sentence where it cannot be */
  readonly make: () => OwnFile | Promise<OwnFile>
}

const WORDS: Readonly<Record<FileOutcome, string>> = {
  shared: 'Shared.',
  saved: 'Saved: look among the downloads.',
  dismissed: '',
}

/** Saves a file on this device; where the system's share sheet takes files, it can go there too. */
export function FileButtons({ what, title, type, make }: Given) {
  const [said, setSaid] = useState('')
  const [ways] = useState(fileWaysHere)
  const act = async (hand: (file: OwnFile) => Promise<FileOutcome> | FileOutcome) => {
    setSaid('')
    try {
      setSaid(WORDS[await hand(await make())])
    } catch (error) {
      setSaid(error instanceof Error ? error.message : 'This file could not be made.')
    }
  }
  const save = (file: OwnFile): FileOutcome => {
    saveFile(file, ways)
    return 'saved'
  }
  return (
    <>
      <button type="button" class="button" onClick={() => void act(save)}>
        <Icon name="keep" />
        Save {what}
      </button>
      {canShareFiles(ways, type) && (
        <button type="button" class="button" onClick={() => void act((file) => shareFile(file, title, ways))}>
          <Icon name="share" />
          Share {what}
        </button>
      )}
      <p class="action-note" role="status">
        {said}
      </p>
    </>
  )
}
