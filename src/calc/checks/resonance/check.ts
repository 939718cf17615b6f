/** Where cables, capacitors and boxes resonate, and what resonates where something is seen. */
import type { Check } from '../../types.ts'
import { type ResonanceFigures, resonanceFigures } from './figures.ts'
import { resonanceInputs } from './inputs.ts'
import { explainResonance } from './words.ts'

const HERTZ = { quantity: 'frequency', digits: 4 } as const

export const resonanceCheck: Check<typeof resonanceInputs, ResonanceFigures> = {
  id: 'resonance',
  title: 'Resonance',
  question: 'Where does it resonate?',
  inputs: resonanceInputs,
  outputs: [
    { key: 'cableHz', label: 'The cable', ...HERTZ, lead: true },
    { key: 'partHz', label: 'Capacitor and inductance', ...HERTZ, lead: true },
    { key: 'boxHz', label: 'The box on its strap', ...HERTZ, lead: true },
    { key: 'stretchHz', label: 'A stretch between grounds', ...HERTZ },
    { key: 'seenCableM', label: 'Cable that resonates there', quantity: 'length', digits: 3, lead: true },
    { key: 'seenInductanceH', label: 'Inductance that does', quantity: 'inductance', digits: 3 },
    { key: 'seenCapacitanceF', label: 'Capacitor that does', quantity: 'capacitance', digits: 3 },
    { key: 'seenStrapH', label: 'Strap that does', quantity: 'inductance', digits: 3 },
  ],
  figures: resonanceFigures,
  explain: explainResonance,
}
