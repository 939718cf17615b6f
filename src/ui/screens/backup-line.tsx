import { useEffect, useState } from 'preact/hooks'
import { countShared } from '../../offline/shared-files.ts'
import { backupDue, lookAtBackup, putOff } from '../../state/backup.ts'
import { keepsStorage } from '../../state/complaints.ts'
import { filesWanted, wantFiles } from '../../state/offered-file.ts'
import { isStorageKept } from '../../store/browser-storage-facts.ts'

/** Whether what is kept here is safe: that it is time for a file, and what the browser promised. */
export function BackupLine({ isEmpty }: { readonly isEmpty: boolean }) {
  const due = backupDue.value
  const [before, setBefore] = useState<boolean | undefined>(undefined)
  const [waiting, setWaiting] = useState(0)
  useEffect(() => {
    lookAtBackup()
    void isStorageKept().then(setBefore)
    void countShared().then(setWaiting)
  }, [])
  const isKept = keepsStorage.value ?? before
  return (
    <>
      {waiting > 0 && !filesWanted.value && (
        <p>
          {waiting === 1 ? 'A file' : `${waiting} files`} shared to the app {waiting === 1 ? 'waits' : 'wait'} to be
          looked at.{' '}
          <button type="button" class="button" onClick={wantFiles}>
            Look at what was shared
          </button>
        </p>
      )}
      {!isEmpty && due !== undefined && (
        <section class="stack" aria-label="Time for a file">
          <p>{due} A file is the copy that stays when this browser or this device is lost.</p>
          <div class="actions">
            <button type="button" class="button" onClick={wantFiles}>
              Save it all as a file
            </button>
            <button type="button" class="button" onClick={() => putOff()}>
              Not now
            </button>
          </div>
        </section>
      )}
      {!isEmpty && isKept !== undefined && (
        <p class="muted small" role="status">
          {isKept
            ? 'The browser promised to keep what is stored here.'
            : 'The browser was asked to keep what is stored here and did not promise it: it may clear it when space runs short.'}
        </p>
      )}
    </>
  )
}
