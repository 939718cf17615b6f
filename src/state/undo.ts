/** What was changed on a Line in this window, so that it can be taken back step by step; nothing of it is stored. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Fact, FactKey } from '../calc/types.ts'

export type Change = { readonly fact: FactKey; readonly before: Fact | undefined }
export type UndoStep = { readonly what: string; readonly changes: readonly Change[] }
type Kept = UndoStep & { readonly lineId: string; readonly isOpen: boolean }

const MOST_STEPS = 50
const kept = signal<readonly Kept[]>([])
export const undoSteps: ReadonlySignal<readonly Kept[]> = kept

/** The step that would be taken back next on a Line. */
export const lastStep = (lineId: string): UndoStep | undefined =>
  kept.value.filter((step) => step.lineId === lineId).at(-1)

/** Notes what stood before a change. Keys typed one after the other into one field are one step (`isTyped`) until it is closed. */
export function noteStep(lineId: string, step: UndoStep, isTyped = false): void {
  const last = kept.peek().at(-1)
  const isSame = isTyped && last?.isOpen === true && last.lineId === lineId && last.what === step.what
  if (!isSame) kept.value = [...kept.peek(), { ...step, lineId, isOpen: isTyped }].slice(-MOST_STEPS)
}

/** What is typed from now on is another step. */
export function closeStep(): void {
  const last = kept.peek().at(-1)
  if (last?.isOpen) kept.value = [...kept.peek().slice(0, -1), { ...last, isOpen: false }]
}

/** Takes the last step of a Line off the list and gives it to be undone. */
export function takeStep(lineId: string): UndoStep | undefined {
  const step = lastStep(lineId)
  if (step !== undefined) kept.value = kept.peek().filter((one) => one !== step)
  return step
}
