/** Whether the Line under way has just taken the place of another one. */
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import { restartScratch, scratch } from './session.ts'

const madeRoomFor = signal<string | undefined>(undefined)

/** Whether the Line under way took the place of another one just now, and has not been left since. */
export const isFresh: ReadonlySignal<boolean> = computed(() => madeRoomFor.value === scratch.value.id)

/** The Line that was opened just now took the place of another one. */
export function noteFresh(): void {
  madeRoomFor.value = scratch.peek().id
}

/** An empty Line under way; the one before is kept aside. */
export function startFromNothing(): void {
  restartScratch()
  noteFresh()
}
