/**
 * A file that came to the app by itself: dropped on the page, opened with the app, or shared to it.
 *
 * `offered`       the file to be looked at next
 * `filesWanted`   whether the part of the Log for files is to be open
 * `offerFile(file)`, `wantFiles()`   lead to the Log
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { goTo } from './router.ts'

/** `done`: called once it has been brought in. */
export type Offered = { readonly name: string; readonly file: Blob; readonly done?: () => void }

const next = signal<Offered | undefined>(undefined)
const wanted = signal(false)
export const offered: ReadonlySignal<Offered | undefined> = next
export const filesWanted: ReadonlySignal<boolean> = wanted

const failed = signal(false)
/** What was shared to the app could not be kept, or not all of it. */
export const isShareLost: ReadonlySignal<boolean> = failed

/** Whether the part for files is open. */
export function setFilesWanted(isOpen: boolean): void {
  wanted.value = isOpen
}

export function wantFiles(): void {
  wanted.value = true
  goTo('#/log')
}

export function offerFile(file: Offered): void {
  next.value = file
  wantFiles()
}

/** A file was shared to the app and is kept, or could not be. */
export function noteShared(isKept: boolean): void {
  failed.value = !isKept
  wantFiles()
}

/** It is being looked at. */
export function takeOffered(): void {
  next.value = undefined
}
