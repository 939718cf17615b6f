/** Each explanation of a tone in words: what it is, its formula, and the test that shows it. */
import type { Explanation, ExplanationId, Follows } from '../../tone/explanations.ts'
import type { Source } from '../../types.ts'

export type Words = {
  readonly name: string
  readonly formula: string
  /** done at once, and what is to be expected if this is it */
  readonly test: string
  readonly sources: readonly [Source, ...Source[]]
}

const DERIVED: Source = { id: 'derived', standing: 'derived' }
const PRACTICE: Source = { id: 'practice', standing: 'practice' }
const WHINE: Source = { id: 'R40', standing: 'read' }

export const EXPLANATION_WORDS: Readonly<Record<ExplanationId, Words>> = {
  'alternator-ripple': {
    name: 'ripple of the alternator',
    formula: 'rpm/60 · drive ratio · pole pairs · 6',
    test: 'Alternator field off: gone',
    sources: [DERIVED, WHINE, { id: 'R41', standing: 'read' }],
  },
  'alternator-open-diode': {
    name: 'an open diode of the alternator',
    formula: 'rpm/60 · drive ratio · pole pairs · 1 or 2',
    test: 'A scope on its output: a hump is missing in each period',
    sources: [DERIVED, WHINE],
  },
  'alternator-six-phase': {
    name: 'ripple of a six-phase alternator',
    formula: 'rpm/60 · drive ratio · pole pairs · 12',
    test: 'Alternator field off: gone',
    sources: [DERIVED, { id: 'R42', standing: 'read' }],
  },
  ignition: {
    name: 'ignition',
    formula: 'rpm/60 · cylinders/2',
    test: 'A handheld receiver on its own battery, outside the arc: it hears it too, with the master off',
    sources: [DERIVED, PRACTICE],
  },
  'engine-turns': {
    name: 'something that turns with the engine',
    formula: 'rpm/60 · 1 or 2',
    test: 'Change the speed: it moves with it, with the field off too',
    sources: [DERIVED],
  },
  commutator: {
    name: 'a commutator on the engine',
    formula: 'rpm/60 · drive ratio · bars',
    test: 'Generator off: gone; the brushes spark',
    sources: [DERIVED, PRACTICE],
  },
  'bus-hum': {
    name: 'hum of the AC bus or inverter',
    formula: 'bus frequency · 1, 2 or 3',
    test: 'AC bus or inverter off: gone',
    sources: [DERIVED, PRACTICE],
  },
  rectifier: {
    name: 'ripple of a rectifier on the AC bus',
    formula: 'bus frequency · pulse number',
    test: 'That transformer-rectifier off: gone',
    sources: [DERIVED, { id: 'R36', standing: 'read' }],
  },
  'rectifier-open-diode': {
    name: 'an open diode of a rectifier on the AC bus',
    formula: 'bus frequency · 1 or 2, in place of its pulse number',
    test: 'Another transformer-rectifier in its place: the pitch rises to its pulse number',
    sources: [DERIVED, PRACTICE],
  },
  'mains-50': {
    name: 'ground power or hangar, 50 Hz',
    formula: '50 Hz · 1, 2 or 3',
    test: 'Ground power unplugged: gone',
    sources: [PRACTICE],
  },
  'mains-60': {
    name: 'ground power or hangar, 60 Hz',
    formula: '60 Hz · 1, 2 or 3',
    test: 'Ground power unplugged: gone',
    sources: [PRACTICE],
  },
  phone: {
    name: 'bursts of a mobile phone of one sort',
    formula: '217 Hz · 1, 2 or 3',
    test: 'The phone switched off, not to flight mode: gone',
    sources: [PRACTICE],
  },
  'strobe-charger': {
    name: 'the charger of a strobe',
    formula: '1 to 20 kHz, rising between flashes',
    test: 'Strobe off: gone; it rises after each flash',
    sources: [PRACTICE],
  },
  dimmer: {
    name: 'a dimmer, heater or regulator that switches',
    formula: '100 Hz to 20 kHz',
    test: 'Turn the dimmer, or switch a large load at one engine speed: the pitch moves',
    sources: [PRACTICE],
  },
}

const WITH: Readonly<Record<Follows, string>> = {
  rpm: 'the engine',
  bus: 'the AC bus',
  load: 'the load',
  device: 'its device',
  fixed: 'nothing',
}

/** The one test that tells two explanations apart. */
export function separatingTest(first: Explanation, second: Explanation): string {
  const [a, b] = [EXPLANATION_WORDS[first.id], EXPLANATION_WORDS[second.id]]
  if (first.follows !== second.follows && (first.follows === 'rpm' || second.follows === 'rpm')) {
    const [moving, still] = first.follows === 'rpm' ? [a, b] : [b, a]
    return `Change the engine speed by a tenth: ${moving.name} moves by a tenth with it, ${still.name} stays.`
  }
  if (first.follows !== second.follows)
    return `${a.test}: ${a.name}, which follows ${WITH[first.follows]}. If it stays: ${b.test.charAt(0).toLowerCase()}${b.test.slice(1)}.`
  if (first.id === second.id) return `Both are ${a.name}: ${a.test}. Its data plate says which.`
  return `${a.test}: ${a.name}. ${b.test}: ${b.name}.`
}
