/** A change to what is stored, as data: it can be carried out now, or at the next start if this one ended too soon. */
import { assemble, type Complaint, later, recordOf } from './complaint.ts'
import { addComplaint, addLine, changeComplaint, changeLine } from './complaints.ts'
import type { ConnectorStep } from './connector-edits.ts'
import { type ComplaintEdit, editComplaint, editLine, type Late, type LineEdit, onFirst } from './edits.ts'
import type { KeptLine } from './line.ts'
import { type ScratchEdit, type TriageDraft, writeScratch, writeTriage } from './meta.ts'

export type Step =
  | { readonly do: 'put'; readonly complaint: Complaint; readonly lineId?: string | undefined }
  | { readonly do: 'addLine'; readonly line: KeptLine }
  | ComplaintEdit
  | LineEdit
  | ConnectorStep
  | { readonly do: 'triage'; readonly draft: TriageDraft; readonly base?: string }
  | ({ readonly do: 'scratch' } & ScratchEdit)

/** A way to carry a step out; false when what it changes is not there. */
export type Write = (step: Step, late: Late) => Promise<boolean>

/** Carries a step out; false when what it changes is not there. `late`: an earlier start left it behind. Fails with a `StoreError`. */
export async function performStep(step: Step, late: Late = false): Promise<boolean> {
  switch (step.do) {
    case 'put':
      await addComplaint(step.complaint, step.lineId)
      return true
    case 'addLine':
      await addLine(step.line)
      return true
    case 'change':
    case 'check':
    case 'cell':
    case 'settle':
    case 'undelete':
      return (await changeComplaint(step, late)) || (late !== false && (await salvaged(step)))
    case 'fact':
    case 'line':
    case 'settleFact':
    case 'undoRemoveLine':
      return (await changeLine(step, late)) || (late !== false && (await salvaged(step)))
    case 'delete':
      await changeComplaint(step, late)
      return true
    case 'removeLine':
      await changeLine(step, late)
      return true
    case 'triage':
      await writeTriage(step.draft, step.base, late !== false)
      return true
    case 'scratch':
      await writeScratch(step, late !== false)
      return true
    default: {
      const { performConnectorStep } = await import('./connector-steps.ts')
      return performConnectorStep(step, late)
    }
  }
}

async function salvaged(step: ComplaintEdit | LineEdit): Promise<boolean> {
  const { salvage } = await import('./tidy.ts')
  await salvage(step)
  return true
}

/** The Log as it is once a step is carried out; the same list when the step is about something else. */
export function applyStep(log: readonly Complaint[], step: Step, late: Late = false): readonly Complaint[] {
  switch (step.do) {
    case 'put':
      return log.some(({ id }) => id === step.complaint.id) ? log : [step.complaint, ...log]
    case 'addLine':
      return changed(log, step.line.complaintId, (old) =>
        old.lines.some(({ id }) => id === step.line.id) ? old : assemble(recordOf(old), [...old.lines, step.line]),
      )
    case 'change':
    case 'check':
    case 'cell':
    case 'settle':
      return changed(log, step.id, (old) => ({ ...editComplaint(recordOf(old), step, late), lines: old.lines }))
    case 'delete':
      return log.filter(({ id }) => id !== step.id)
    case 'fact':
    case 'line':
    case 'settleFact':
    case 'removeLine':
      return changed(log, step.id, (old) => withLine(old, step, late))
    default:
      return linesOf(step).reduce((now, one) => applyStep(now, one, late), log)
  }
}

/** The changes to lines that are part of another one. */
const linesOf = (step: Step): readonly Step[] => ('lines' in step ? (step.lines ?? []) : [])

function changed(log: readonly Complaint[], id: string, change: (old: Complaint) => Complaint): readonly Complaint[] {
  const old = log.find((complaint) => complaint.id === id)
  if (old === undefined) return log
  return [change(old), ...log.filter((complaint) => complaint.id !== id)]
}

function withLine(old: Complaint, edit: LineEdit, late: Late): Complaint {
  const line = old.lines.find(({ id }) => id === edit.lineId)
  if (line === undefined) return old
  const edited = editLine(line, edit, late)
  const lines = old.lines.flatMap((one) => (one !== line ? [one] : edited.removedAt === undefined ? [edited] : []))
  return { ...old, lines, updatedAt: later(edited.updatedAt, old.updatedAt) }
}

/** One step instead of two on the same thing, neither of which is written yet; undefined where both are needed. */
export function mergeSteps(first: Step, second: Step): Step | undefined {
  if (first.do === 'fact' && second.do === 'fact') return onFirst(first, { ...second, base: first.base })
  if (first.do === 'cell' && second.do === 'cell') return onFirst(first, { ...second, base: first.base })
  if (first.do === 'connectorText' && second.do === 'connectorText')
    return onFirst(first, { ...second, base: first.base })
  if (first.do === 'change' && second.do === 'change')
    return onFirst(first, first.base === undefined ? second : { ...second, base: first.base })
  if (first.do === 'line' && second.do === 'line')
    return onFirst(first, first.base === undefined ? second : { ...second, base: first.base })
  if (first.do === 'triage' && second.do === 'triage' && first.draft.line.id === second.draft.line.id) {
    const { base: _own, ...rest } = second
    return first.base === undefined ? rest : { ...rest, base: first.base }
  }
  if (
    first.do === 'scratch' &&
    second.do === 'scratch' &&
    first.line.id === second.line.id &&
    first.edit &&
    second.edit
  )
    return { ...second, edit: { ...second.edit, base: first.edit.base } }
  return undefined
}

/** The steps without those that a later one takes back, and without those that take back. */
export function withoutUndone(steps: readonly Step[]): readonly Step[] {
  const isUndone = (step: Step, at: number): boolean =>
    steps
      .slice(at + 1)
      .some(
        (later) =>
          (step.do === 'delete' && later.do === 'undelete' && later.id === step.id) ||
          (step.do === 'removeLine' && later.do === 'undoRemoveLine' && later.lineId === step.lineId),
      )
  return steps.filter((step, at) => !isUndone(step, at))
}
