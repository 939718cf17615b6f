/** Reads back at the start what was stored: the Log, and what was under way. */
import { loadComplaints } from './complaints.ts'
import { loadGuide } from './guide-content.ts'
import { resumeSession } from './session.ts'

/** Resolves when the triage and the scratch line are back; the Log comes when it has been read. */
export async function resumeWork(): Promise<void> {
  void loadComplaints()
  await resumeSession().catch((error: unknown) => console.warn('Not read back:', error))
}

/** Puts the guide into the store; the screens that need it say so themselves when it cannot be loaded. */
export async function seedGuide(): Promise<void> {
  await loadGuide().catch(() => undefined)
}
