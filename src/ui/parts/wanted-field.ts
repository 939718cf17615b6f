import { signal } from '@preact/signals'

/** The field somebody is led to, by its key: the fold it stands in opens for it. */
export const wantedField = signal<string | undefined>(undefined)
