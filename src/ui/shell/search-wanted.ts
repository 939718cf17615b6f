import { signal } from '@preact/signals'

/** True from the key that asks for the search until its field has the focus. */
export const isSearchWanted = signal(false)
