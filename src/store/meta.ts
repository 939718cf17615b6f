/** Small things the app remembers between starts: theme, current triage, scratch line. */
import type { Line } from '../calc/types.ts'
import type { Answers } from '../guide/types.ts'
import { newLine } from './complaint.ts'
import { readOne, writeOne } from './db.ts'
import { isRecord } from './plain.ts'
import { restoreComplaint } from './restore.ts'

/** What the user chose; `auto` follows the system. */
export type ThemeChoice = 'auto' | 'day' | 'dark' | 'night'

/** The triage under way: answers and typed facts, and the complaint it is saved in, if any. */
export type TriageDraft = {
  readonly answers: Answers
  readonly guideVersion: number
  readonly line: Line
  readonly complaintId?: string
}

const CHOICES = ['auto', 'day', 'dark', 'night'] as const

/** Reads the theme; `auto` when none or an unknown one is stored. Fails with a `StoreError`. */
export async function readTheme(): Promise<ThemeChoice> {
  const raw = await readOne('meta', 'theme')
  return CHOICES.find((choice) => choice === raw) ?? 'auto'
}

/** Stores the theme. Fails with a `StoreError`. */
export function writeTheme(choice: ThemeChoice): Promise<void> {
  return writeOne('meta', 'theme', choice)
}

/** A triage without answers. */
export function emptyTriage(): TriageDraft {
  return { answers: {}, guideVersion: 0, line: newLine() }
}

/** The triage left open at the last visit; an empty one when there is none. Fails with a `StoreError`. */
export async function readTriage(): Promise<TriageDraft> {
  return restoreTriage(await readOne('meta', 'triage'))
}

/** The gate for a triage; anything else becomes an empty one. Never throws. */
export function restoreTriage(raw: unknown): TriageDraft {
  if (!isRecord(raw)) return emptyTriage()
  const { answers, guideVersion, lines } = restoreComplaint(
    { answers: raw['answers'], guideVersion: raw['guideVersion'], lines: [raw['line']] },
    'stored',
  )
  const complaintId = raw['complaintId']
  return {
    answers,
    guideVersion,
    line: lines[0] ?? newLine(),
    ...(typeof complaintId === 'string' ? { complaintId } : {}),
  }
}

/** Stores the triage under way. Fails with a `StoreError`. */
export function writeTriage(draft: TriageDraft): Promise<void> {
  return writeOne('meta', 'triage', draft)
}

/** The scratch line of the quick checks; an empty one when there is none. Fails with a `StoreError`. */
export async function readScratch(): Promise<Line> {
  return restoreScratch(await readOne('meta', 'scratch'))
}

/** The gate for a scratch line; anything else becomes an empty one. Never throws. */
export function restoreScratch(raw: unknown): Line {
  return restoreComplaint({ lines: [raw] }, 'stored').lines[0] ?? newLine()
}

/** Stores the scratch line. Fails with a `StoreError`. */
export function writeScratch(line: Line): Promise<void> {
  return writeOne('meta', 'scratch', line)
}
