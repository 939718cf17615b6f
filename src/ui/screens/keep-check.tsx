import { RULES_EDITION } from '../../calc/edition.ts'
import type { CheckModel } from '../../state/check.ts'
import { addCheck, addLine, complaints } from '../../state/complaints.ts'
import type { Desk } from '../../state/desk.ts'
import { createFromCheck } from '../../state/new-complaint.ts'
import { goTo, hashOfKept, readHash } from '../../state/router.ts'
import { triage } from '../../state/session.ts'
import { writeVariants } from '../../state/variants.ts'
import { newId } from '../../store/ids.ts'
import { Icon } from '../parts/icon.tsx'
import { KeptLink } from '../parts/kept-link.tsx'

/** One tap keeps this Line: in a complaint of its own, or in the one under way. From then on every step is saved there. */
export function KeepCheck({ model, desk }: { readonly model: CheckModel; readonly desk: Desk }) {
  const { check } = model
  const kept = readHash(desk.addressOf(check.id))
  const underWay = complaints.value?.find((complaint) => complaint.id === triage.value.complaintId)
  if (kept.place === 'log' && kept.id !== undefined) return <KeptLink id={kept.id} />
  const beside = () => {
    const text = writeVariants(check.inputs, model.variants.peek())
    return text === '' ? {} : { beside: text }
  }
  // what was measured on the line goes with it; nothing of it is loaded where there is none
  const withTraces = (lineId: string) => {
    const { id, facts } = model.line.peek()
    if (facts.traceHz === undefined) return
    void import('../../state/traces.ts').then(({ copyTraces }) => copyTraces(id, lineId))
  }
  const keepNew = () => {
    const line = { ...model.line.peek(), id: newId() }
    withTraces(line.id)
    const title = `${check.title}, ${new Date().toISOString().slice(0, 16).replace('T', ' ')} UTC`
    const made = createFromCheck({ title, check: check.id, line, ...beside() })
    goTo(hashOfKept(made.id, line.id, check.id))
  }
  const addTo = (complaintId: string, lines: readonly { readonly id: string }[]) => {
    const line = model.line.peek()
    const isThere = lines.some(({ id }) => id === line.id)
    const lineId = isThere ? line.id : newId()
    if (!isThere) {
      addLine(complaintId, { ...line, id: lineId })
      withTraces(lineId)
    }
    addCheck(complaintId, { check: check.id, lineId, rules: RULES_EDITION, ...beside() })
    goTo(hashOfKept(complaintId, lineId, check.id))
  }
  return (
    <>
      <button type="button" class="button strong" onClick={keepNew}>
        <Icon name="keep" />
        Keep in the log
      </button>
      {underWay && (
        <button type="button" class="button" onClick={() => addTo(underWay.id, underWay.lines)}>
          Add to “{underWay.title || 'the complaint under way'}”
        </button>
      )}
    </>
  )
}
