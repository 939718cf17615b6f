/**
 * A file that came to the app by itself: dropped on the page, opened with the app, or shared to it.
 *
 * `offered`       the file to be looked at next
 * `together`      all that came at once, until they were brought in or put away; `putAway(file)` takes one off
 * `filesWanted`   whether the part of the Log for files is to be open
 * `offerFiles(files)`, `wantFiles()`   lead to the Log
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
/** What came to the app last, shared to it or opened with it, could not be kept, or not all of it. */
export const isShareLost: ReadonlySignal<boolean> = failed

/** Whether the part for files is open. */
export function setFilesWanted(isOpen: boolean): void {
  wanted.value = isOpen
}

export function wantFiles(): void {
  wanted.value = true
  goTo('#/log')
}

const several = signal<readonly Offered[]>([])
export const together: ReadonlySignal<readonly Offered[]> = several

export function putAway(file: Offered): void {
  several.value = several.peek().filter((one) => one !== file)
}

/** The first is looked at; of several, each waits until it was brought in or put away. */
export function offerFiles(files: readonly File[]): void {
  const all = files.map((file): Offered => {
    const one: Offered = { name: file.name, file, done: () => putAway(one) }
    return one
  })
  if (all.length > 1) several.value = [...several.peek(), ...all]
  next.value = all[0]
  wantFiles()
}

/** Files were shared to the app or opened with it, and are kept, or could not all be. */
export function noteShared(isKept: boolean): void {
  failed.value = !isKept
  wantFiles()
}

/** It is being looked at. */
export function takeOffered(): void {
  next.value = undefined
}
