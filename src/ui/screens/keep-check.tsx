import { useState } from 'preact/hooks'
import { type CheckModel, lineWith } from '../../state/check.ts'
import { addCheck, complaints, createFromCheck } from '../../state/complaints.ts'
import { triage } from '../../state/session.ts'
import { newLine } from '../../store/complaint.ts'
import { Icon } from '../parts/icon.tsx'
import { KeptLink } from '../parts/kept-link.tsx'

/** One tap makes a complaint of this check, or adds it to the one under way. */
export function KeepCheck({ model }: { readonly model: CheckModel }) {
  const [keptId, setKeptId] = useState<string | undefined>(undefined)
  const underWay = complaints.value?.find((complaint) => complaint.id === triage.value.complaintId)
  if (keptId !== undefined) return <KeptLink id={keptId} isFresh />
  const keepNew = () => {
    const line = lineWith(newLine(), model.check, model.texts.peek())
    const title = `${model.check.title}, ${new Date().toISOString().slice(0, 16).replace('T', ' ')} UTC`
    setKeptId(createFromCheck({ title, check: model.check.id, address: model.hash.peek(), line }).id)
  }
  return (
    <>
      <button type="button" class="button strong" onClick={keepNew}>
        <Icon name="keep" />
        Keep in the log
      </button>
      {underWay && (
        <button
          type="button"
          class="button"
          onClick={() => {
            addCheck(underWay.id, { check: model.check.id, address: model.hash.peek() })
            setKeptId(underWay.id)
          }}
        >
          Add to “{underWay.title || 'the complaint under way'}”
        </button>
      )}
    </>
  )
}
