import { useEffect, useState } from 'preact/hooks'
import {
  keepPhoto,
  openPhotos,
  photos,
  photoTrouble,
  removedPhoto,
  removePhoto,
  type ShownPhoto,
  undoRemovePhoto,
} from '../../state/photos.ts'
import { dayAndTime } from '../screens/moment.ts'
import { Icon } from './icon.tsx'

type Given = {
  /** whose photos: the complaint and its lines, or the line of a triage not kept yet; a new one goes to the first */
  readonly owners: readonly string[]
  /** the test whose photos are shown and taken; absent: those of every test */
  readonly evidence?: string
  readonly titleOf: (evidence: string) => string
  /** only looked at: no taking, no deleting */
  readonly isPlain?: true
}

/** Photos of a test, or of a whole complaint. */
export function Photos({ owners, evidence, titleOf, isPlain }: Given) {
  const key = owners.join()
  useEffect(() => {
    void openPhotos(key.split(','))
  }, [key])
  const [owner] = owners
  const own = (photos.value ?? []).filter((one) => evidence === undefined || one.evidence === evidence)
  const isEmpty = own.length === 0 && removedPhoto.value === undefined
  if (isEmpty && (isPlain || evidence === undefined)) return null
  if (isPlain) return <List shown={own} titleOf={titleOf} />
  return (
    <section class="photos" aria-label="Photos">
      <h2>Photos</h2>
      <List shown={own} titleOf={titleOf} canDelete />
      {owner !== undefined && evidence !== undefined && <Take owner={owner} evidence={evidence} />}
      {photoTrouble.value !== undefined && (
        <p class="notice" role="alert">
          {photoTrouble.value}
        </p>
      )}
      {removedPhoto.value !== undefined && (
        <p class="notice" role="status">
          Photo deleted.{' '}
          <button type="button" class="button" onClick={() => void undoRemovePhoto()}>
            <Icon name="undo" />
            Undo
          </button>
        </p>
      )}
    </section>
  )
}

type ListGiven = Pick<Given, 'titleOf'> & { readonly shown: readonly ShownPhoto[]; readonly canDelete?: true }

function List({ shown, titleOf, canDelete }: ListGiven) {
  if (shown.length === 0) return null
  return (
    <ul class="photo-list">
      {shown.map((photo) => {
        const name = `${titleOf(photo.evidence)}, ${dayAndTime(photo.takenAt)}`
        return (
          <li key={photo.id}>
            <figure>
              <img src={photo.url} alt={`Photo: ${name}`} width={photo.widthPx} height={photo.heightPx} />
              <figcaption class="row-note">{name}</figcaption>
            </figure>
            {canDelete && (
              <button type="button" class="button" onClick={() => void removePhoto(photo)}>
                <Icon name="close" />
                Delete<span class="unseen"> the photo of {name}</span>
              </button>
            )}
          </li>
        )
      })}
    </ul>
  )
}

/** Takes one with the camera, or chooses one that is there. It stays on this device. */
function Take({ owner, evidence }: { readonly owner: string; readonly evidence: string }) {
  const [isBusy, setBusy] = useState(false)
  const take = async (input: HTMLInputElement) => {
    const [file] = input.files ?? []
    input.value = ''
    if (file === undefined) return
    setBusy(true)
    await keepPhoto(owner, evidence, file)
    setBusy(false)
  }
  return (
    <div class="actions">
      <Pick label="Take a photo" camera onPick={take} />
      <Pick label="Choose a photo" onPick={take} />
      {isBusy && (
        <p class="muted" role="status">
          Keeping the photo…
        </p>
      )}
    </div>
  )
}

function Pick(given: {
  readonly label: string
  readonly camera?: true
  readonly onPick: (input: HTMLInputElement) => Promise<void>
}) {
  const { label, camera, onPick } = given
  return (
    <label class="button">
      {label}
      <input
        class="unseen"
        type="file"
        accept="image/*"
        {...(camera && { capture: 'environment' })}
        onChange={(event) => void onPick(event.currentTarget)}
      />
    </label>
  )
}
