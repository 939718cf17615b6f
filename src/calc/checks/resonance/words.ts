/** What the resonance check says: where each part resonates, the band it lies in, and what would be seen. */
import { bandsAt, RADIO_BANDS } from '../../../reference/radio-bands.ts'
import { formatEstimate, formatExact, formatQuantity } from '../../quantity/format.ts'
import type { Basis, Cell, Finding, Picture, Quantity, Success } from '../../types.ts'
import { capital } from '../../verdict.ts'
import type { ResonanceFigures, Resonating } from './figures.ts'
import type { ResonanceGiven } from './inputs.ts'

const hertz = (si: number): string => formatEstimate(si, 'frequency')
const none = (why: string): Cell => ({ is: 'none', why })

const NAME: Readonly<Record<Resonating['id'], string>> = {
  cable: 'the cable',
  stretch: 'a stretch between grounds',
  part: 'the capacitor with its inductance',
  box: 'the box on its strap',
}

/** Nearer than this a resonance may be what is seen: lengths and straps are known no better. Practice. */
const NEAR = 0.15

export function explainResonance(given: ResonanceGiven, figures: ResonanceFigures): Success {
  const verdict = figures.verdict ?? 'unknown'
  return {
    ok: true,
    verdict,
    ...(verdict === 'ok' ? { answers: 'number' as const } : {}),
    headline: headlineOf(given, figures),
    findings: findingsOf(given, figures),
    outputs: outputsOf(given, figures),
    bounds: [],
    rungs: [],
    pictures: figures.found.length === 0 ? [] : [tableOf(figures)],
    cautions: [],
  }
}

/** Bands it lies in; of one that is worked out also those it may lie in, as lengths and straps are known no better. */
function bandWords(hz: number, isSeen = false): string {
  const names = bandsAt(hz).map(({ system }) => system)
  if (names.length > 0) return `in the band of ${names.join(' and ')}`
  const nearby = isSeen ? [] : bandsNear(hz)
  return nearby.length === 0
    ? 'in no band of the table'
    : `in no band as worked out, but within ${formatQuantity(NEAR, 'fraction', 2)} of ${nearby.join(' and ')}`
}

const bandsNear = (hz: number): readonly string[] => [
  ...new Set(
    RADIO_BANDS.filter(({ fromHz, toHz }) => fromHz <= hz * (1 + NEAR) && toHz >= hz * (1 - NEAR)).map(
      ({ system }) => system,
    ),
  ),
]

function headlineOf({ seenHz }: ResonanceGiven, { found, values, ends }: ResonanceFigures): string {
  const near = seenHz === undefined ? undefined : found.find(({ hz }) => Math.abs(hz / seenHz - 1) <= NEAR)
  if (near !== undefined && seenHz !== undefined)
    return `${capital(NAME[near.id])} resonates at ${hertz(near.hz)}, near ${hertz(seenHz)}, ${bandWords(near.hz)}.`
  const firsts = found.filter(({ order }) => order === 1)
  if (firsts.length > 0)
    return `${firsts.map(({ id, hz }) => `${capital(NAME[id])} resonates at ${hertz(hz)}, ${bandWords(hz)}`).join('. ')}.`
  if (seenHz !== undefined && values['seenCableM'] !== undefined)
    return `A cable of ${formatQuantity(values['seenCableM'], 'length', 3)} ${ENDS[ends]} resonates at ${formatExact(seenHz, 'frequency')}, ${bandWords(seenHz, true)}.`
  return `Not known: needs a length, a capacitor with its inductance, a box with its strap, or where something is seen.`
}

const ENDS = {
  'both-grounded': 'grounded at both ends',
  'one-grounded': 'grounded at one end',
  open: 'open at both ends',
} as const

function findingsOf({ seenHz }: ResonanceGiven, { found, values }: ResonanceFigures): readonly Finding[] {
  const said: Finding[] = []
  if (seenHz !== undefined && found.length > 0 && !found.some(({ hz }) => Math.abs(hz / seenHz - 1) <= NEAR))
    said.push({
      verdict: 'unknown',
      sentence: `None of these lies within 15 % of ${hertz(seenHz)}: look for another length, strap or lead.`,
    })
  if (found.some(({ id }) => id === 'cable' || id === 'stretch'))
    said.push({
      verdict: 'unknown',
      sentence:
        'Near a resonance of its length a cable takes in most: some 1.5 mA for each volt a metre, and its impedance is ten to a thousand ohms.',
    })
  if (values['boxHz'] !== undefined)
    said.push({
      verdict: 'unknown',
      sentence:
        'At that frequency the strap bonds nothing: box and structure are parted. A wider, shorter strap or none but the face moves it up.',
    })
  if (values['partHz'] !== undefined)
    said.push({
      verdict: 'unknown',
      sentence:
        'In series the two short the noise there; across a line a harness and a capacitor can raise it instead. Above it the capacitor is an inductor.',
    })
  return said
}

function tableOf({ found }: ResonanceFigures): Picture {
  return {
    is: 'table',
    title: 'Where it resonates',
    columns: [
      { key: 'what', label: 'What' },
      { key: 'order', label: 'Order', quantity: 'count' },
      { key: 'hz', label: 'At', quantity: 'frequency' },
      { key: 'band', label: 'Band' },
    ],
    rows: found.map(({ id, hz, order }, index) => ({
      id: `${id}-${index}`,
      cells: [
        { is: 'word', word: NAME[id] },
        { is: 'si', si: order },
        { is: 'si', si: hz },
        {
          is: 'word',
          word:
            bandsAt(hz)
              .map(({ system }) => system)
              .join(', ') ||
            bandsNear(hz)
              .map((name) => `near ${name}`)
              .join(', ') ||
            '–',
        },
      ],
    })),
  }
}

function outputsOf(given: ResonanceGiven, { values, ends }: ResonanceFigures): Success['outputs'] {
  const quarter = ends === 'one-grounded'
  const cableFormula = quarter ? 'v·c / (4·l)' : 'v·c / (2·l)'
  const put = (
    key: string,
    why: string,
    formula: string,
    withNumbers: string,
    quantity: Quantity,
  ): Success['outputs'] => {
    const si = values[key]
    const basis: Basis = {
      steps: si === undefined ? [] : [{ formula, withNumbers, si, quantity }],
      assumptions: ['lowest order; a real end moves it by some per cent'],
      sources: [
        { id: 'derived', standing: 'derived' },
        { id: 'practice', standing: 'practice' },
      ],
    }
    return { [key]: { cell: si === undefined ? none(why) : { is: 'si', si }, basis } }
  }
  const length = (m: number | undefined) => (m === undefined ? '' : formatExact(m, 'length'))
  const speed = `${formatQuantity(given.velocityFrac, 'number', 3)} · 299.8 Mm/s`
  const lc = (farads: number | undefined, henries: number | undefined) =>
    farads === undefined || henries === undefined
      ? ''
      : `L = ${formatExact(henries, 'inductance')}, C = ${formatExact(farads, 'capacitance')}`
  const seen = given.seenHz === undefined ? '' : `f = ${formatExact(given.seenHz, 'frequency')}`
  const noSeen = 'needs where it is seen'
  return {
    ...put('cableHz', 'needs a length', cableFormula, `${speed} / ${length(given.cableM)}`, 'frequency'),
    ...put('stretchHz', 'needs a spacing', 'v·c / (2·l)', `${speed} / ${length(given.spacingM)}`, 'frequency'),
    ...put(
      'partHz',
      'needs capacitor and inductance',
      '1 / (2π·√(L·C))',
      lc(given.capacitanceF, given.inductanceH),
      'frequency',
    ),
    ...put('boxHz', 'needs strap and capacitance', '1 / (2π·√(L·C))', lc(given.chassisF, given.strapH), 'frequency'),
    ...put('seenCableM', noSeen, quarter ? 'v·c / (4·f)' : 'v·c / (2·f)', seen, 'length'),
    ...put('seenInductanceH', 'needs a capacitor, and where it is seen', '1 / ((2πf)²·C)', seen, 'inductance'),
    ...put('seenCapacitanceF', 'needs an inductance, and where it is seen', '1 / ((2πf)²·L)', seen, 'capacitance'),
    ...put('seenStrapH', 'needs the capacitance of a box, and where it is seen', '1 / ((2πf)²·C)', seen, 'inductance'),
  }
}
