/** Where each figure comes from. Standards and publications by author, number and title; part data sheets by kind only. */
export type SourceRow = { readonly title: string; readonly seen: string }
export const SOURCES = {
  derived: { title: 'Computed here from the stated inputs', seen: 'derivation in the working' },
  practice: { title: 'Common practice', seen: 'engineering judgement, no printed source' },
} as const satisfies Readonly<Record<string, SourceRow>>
export type SourceId = keyof typeof SOURCES
