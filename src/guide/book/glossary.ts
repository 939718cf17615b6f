/** The glossary: words of the trade and short forms, one line each. The short forms stand in `reference` alone. */
import { capital } from '../../calc/verdict.ts'
import { SHORT_FORMS } from '../../reference/short-forms.ts'
import { AIRCRAFT_WORDS } from './glossary/aircraft.ts'
import { CIRCUIT_WORDS } from './glossary/circuits.ts'
import { FINDING_WORDS } from './glossary/finding.ts'
import { PART_WORDS } from './glossary/parts.ts'
import { SIGNAL_WORDS } from './glossary/signals.ts'
import type { GlossaryWord } from './glossary/types.ts'

export type GlossaryEntry = GlossaryWord & {
  /** in addresses; made of the word */
  readonly id: string
  /** met in capitals only, as it is written */
  readonly isShortForm?: true
}

const idOf = (word: string): string =>
  word
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')

const shortForms: readonly GlossaryEntry[] = Object.entries(SHORT_FORMS).map(([word, words]) => ({
  id: idOf(word),
  word,
  line: `${capital(words)}.`,
  isShortForm: true,
}))

const words: readonly GlossaryEntry[] = [
  ...FINDING_WORDS,
  ...CIRCUIT_WORDS,
  ...PART_WORDS,
  ...AIRCRAFT_WORDS,
  ...SIGNAL_WORDS,
].map((entry) => ({ ...entry, id: idOf(entry.word) }))

/** Every word in the order of the alphabet. */
export const GLOSSARY: readonly GlossaryEntry[] = [...words, ...shortForms].sort((a, b) =>
  a.id < b.id ? -1 : a.id > b.id ? 1 : 0,
)
