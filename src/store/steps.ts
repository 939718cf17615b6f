/** A change to what is stored, as data: it can be carried out now, or at the next start if this one ended too soon. */
import type { Line } from '../calc/types.ts'
import type { Complaint, ComplaintPatch } from './complaint.ts'
import {
  addComplaint,
  changeComplaint,
  deleteComplaint,
  getComplaint,
  putComplaint,
  undeleteComplaint,
} from './complaints.ts'
import { restoreScratch, restoreTriage, type TriageDraft, writeScratch, writeTriage } from './meta.ts'
import { entriesOf, isRecord } from './plain.ts'
import { restoreComplaint } from './restore.ts'

export type Step =
  | { readonly do: 'put'; readonly complaint: Complaint }
  | { readonly do: 'change'; readonly id: string; readonly patch: ComplaintPatch; readonly at: string }
  | { readonly do: 'delete' | 'undelete'; readonly id: string; readonly at: string }
  | { readonly do: 'triage'; readonly draft: TriageDraft }
  | { readonly do: 'scratch'; readonly line: Line }

/** Carries a step out. Fails with a `StoreError`. */
export function performStep(step: Step): Promise<void> {
  switch (step.do) {
    case 'put':
      return putComplaint(step.complaint)
    case 'change':
      return changeComplaint(step.id, step.patch, step.at)
    case 'delete':
      return deleteComplaint(step.id, step.at)
    case 'undelete':
      return undeleteComplaint(step.id)
    case 'triage':
      return writeTriage(step.draft)
    case 'scratch':
      return writeScratch(step.line)
  }
}

/**
 * Carries out a step that an earlier start left behind. What is stored already stays where it is newer: the window that
 * left it may still be writing. Fails with a `StoreError`.
 */
export async function performLate(step: Step): Promise<void> {
  if (step.do === 'put') return addComplaint(step.complaint)
  if (step.do === 'triage' || step.do === 'scratch') return performStep(step)
  const stored = await getComplaint(step.id)
  if (stored !== undefined && stored.updatedAt > step.at) return
  return performStep(step)
}

const TEXT_KEYS = ['id', 'at'] as const

/** Reads steps back from text that anything may have touched; what does not fit is left out. Never throws. */
export function restoreSteps(raw: unknown): readonly Step[] {
  return Array.isArray(raw) ? raw.flatMap((one) => restoreStep(one) ?? []) : []
}

function restoreStep(raw: unknown): Step | undefined {
  if (!isRecord(raw)) return undefined
  const { id, at, patch, complaint } = raw
  const hasTexts = TEXT_KEYS.every((key) => typeof raw[key] === 'string')
  switch (raw['do']) {
    case 'put':
      return isRecord(complaint) ? { do: 'put', complaint: restoreComplaint(complaint, 'stored') } : undefined
    case 'change':
      return hasTexts && isRecord(patch)
        ? { do: 'change', id: String(id), patch: restorePatch(patch), at: String(at) }
        : undefined
    case 'delete':
    case 'undelete':
      return hasTexts ? { do: raw['do'], id: String(id), at: String(at) } : undefined
    case 'triage':
      return { do: 'triage', draft: restoreTriage(raw['draft']) }
    case 'scratch':
      return { do: 'scratch', line: restoreScratch(raw['line']) }
    default:
      return undefined
  }
}

/** The parts of a complaint that the patch names, each through the gate. */
function restorePatch(raw: Record<string, unknown>): ComplaintPatch {
  const whole: Record<string, unknown> = { ...restoreComplaint(raw, 'stored') }
  return Object.fromEntries(entriesOf(raw).flatMap(([key]) => (key in whole ? [[key, whole[key]]] : [])))
}
