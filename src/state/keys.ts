/** Whether single keys do something: a digit answers, `/` searches, Enter moves on. Kept on this device. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { keepSmallText, smallText } from '../store/browser-storage.ts'

const NAME = 'keys'
const OFF = 'off'

const isOn = signal(smallText(NAME) !== OFF)
export const hasKeys: ReadonlySignal<boolean> = isOn

/** Switches the keys on or off, also for the next visit. */
export function setKeys(wanted: boolean): void {
  isOn.value = wanted
  keepSmallText(NAME, wanted ? undefined : OFF)
}
