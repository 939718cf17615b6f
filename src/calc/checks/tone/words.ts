/** What the tone check says: explanations in their order, each with its formula, and the test between the first two. */
import { waitingFor } from '../../explain/sentence.ts'
import { missingInputs } from '../../line/missing.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Explanation } from '../../tone/explanations.ts'
import type { Basis, Cell, Finding, Picture, Success } from '../../types.ts'
import { EXPLANATION_WORDS, separatingTest } from './explanation-words.ts'
import type { ToneFigures } from './figures.ts'
import { type ToneGiven, toneInputs } from './inputs.ts'

const hertz = (si: number): string => formatQuantity(si, 'frequency', 4)
const share = (si: number): string => formatQuantity(si, 'fraction', 2)
const none = (why: string): Cell => ({ is: 'none', why })

const MISSING_NAME = { polePairs: 'pole pairs', cylinders: 'cylinders', bars: 'commutator bars' } as const

export function explainTone(given: ToneGiven, figures: ToneFigures): Success {
  const { found } = figures
  const said =
    given.toneHz === undefined
      ? waitingFor(missingInputs(toneInputs, given))
      : { headline: headlineOf(given.toneHz, found) }
  return {
    ok: true,
    verdict: 'unknown',
    ...said,
    ...needsOf(given),
    findings: findingsOf(given, found),
    outputs: outputsOf(given, figures),
    bounds: [],
    rungs: [],
    pictures: found.length === 0 ? [] : [tableOf(found)],
    cautions: ['breakers'],
  }
}

/** The engine speed tells most, where a tone is known and nothing of the engine. */
function needsOf(given: ToneGiven): Pick<Success, 'needs'> {
  if (given.toneHz === undefined || given.rpm !== undefined) return {}
  return { needs: { key: 'rpm', sentence: 'The engine speed while it is heard; then again at another speed.' } }
}

function headlineOf(toneHz: number, found: readonly Explanation[]): string {
  const [first, second] = found
  if (first === undefined)
    return `Not known: nothing that is entered gives ${hertz(toneHz)}. Note it at two engine speeds.`
  const { name } = EXPLANATION_WORDS[first.id]
  const assumed =
    first.missing === undefined ? '' : `, if it has ${first.missing.value} ${MISSING_NAME[first.missing.what]}`
  const rest = second === undefined ? '' : `; next ${EXPLANATION_WORDS[second.id].name}`
  return `Not known until it is tested: ${hertz(toneHz)} is best explained by ${name}${assumed}, ${hertz(first.hz)}${rest}.`
}

function findingsOf(given: ToneGiven, found: readonly Explanation[]): readonly Finding[] {
  const [first, second] = found
  const said: Finding[] = []
  if (first !== undefined && second !== undefined)
    said.push({ verdict: 'unknown', sentence: separatingTest(first, second) })
  else if (first !== undefined) said.push({ verdict: 'unknown', sentence: `${EXPLANATION_WORDS[first.id].test}.` })
  if (given.toneHz !== undefined && given.rpm === undefined)
    said.push({ verdict: 'unknown', sentence: 'Nothing of the engine counts without its speed.' })
  else if (given.rpm !== undefined && given.driveRatio === undefined)
    said.push({ verdict: 'unknown', sentence: 'Nothing of the alternator counts without its drive ratio.' })
  return said
}

function tableOf(found: readonly Explanation[]): Picture {
  return {
    is: 'table',
    title: 'Explanations, best first',
    columns: [
      { key: 'what', label: 'Explanation' },
      { key: 'formula', label: 'Formula' },
      { key: 'hz', label: 'It gives', quantity: 'frequency' },
      { key: 'off', label: 'Off by' },
      { key: 'takes', label: 'It takes' },
      { key: 'test', label: 'Test' },
    ],
    rows: found.map((one, index) => {
      const words = EXPLANATION_WORDS[one.id]
      return {
        id: `${one.id}-${index}`,
        strong: index === 0,
        cells: [
          { is: 'word', word: words.name },
          { is: 'word', word: words.formula },
          { is: 'si', si: one.hz },
          { is: 'word', word: share(Math.abs(one.offFrac)) },
          {
            is: 'word',
            word: one.missing === undefined ? '–' : `${one.missing.value} ${MISSING_NAME[one.missing.what]}`,
          },
          { is: 'word', word: words.test },
        ],
      }
    }),
  }
}

function outputsOf(given: ToneGiven, { values, found }: ToneFigures): Success['outputs'] {
  const [first, second] = found
  const basis = first === undefined ? NO_BASIS : basisOf(first)
  const cell = (key: string, why: string, rests: Basis = basis) => {
    const si = values[key]
    return { cell: si === undefined ? none(why) : ({ is: 'si', si } as const), basis: rests }
  }
  const nothing = given.toneHz === undefined ? 'needs the tone' : 'nothing entered gives it'
  return {
    best: { cell: first === undefined ? none(nothing) : { is: 'word', word: EXPLANATION_WORDS[first.id].name }, basis },
    explanationCount: cell('explanationCount', 'needs the tone'),
    predictedHz: cell('predictedHz', nothing),
    order: cell('order', nothing),
    secondHz: cell('secondHz', 'no second one', second === undefined ? NO_BASIS : basisOf(second)),
    turnHz: cell('turnHz', 'needs the engine speed', NO_BASIS),
    toneOrder: cell('toneOrder', 'needs tone and engine speed', NO_BASIS),
  }
}

const NO_BASIS: Basis = {
  steps: [],
  assumptions: ['a tone names what to test; it proves nothing'],
  sources: [{ id: 'derived', standing: 'derived' }],
}

function basisOf(one: Explanation): Basis {
  const { formula, sources } = EXPLANATION_WORDS[one.id]
  return {
    steps: [{ formula, withNumbers: `its ${one.order}-fold`, si: one.hz, quantity: 'frequency' }],
    assumptions: ['a tone names what to test; it proves nothing'],
    sources,
  }
}
