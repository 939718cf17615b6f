/** What the need check says. */
import { FIELD_OF_ALL } from '../../explain/field-need.ts'
import { waitingFor } from '../../explain/sentence.ts'
import { levelIn } from '../../level.ts'
import { missingInputs, missingNames } from '../../line/missing.ts'
import { formatEstimate, formatExact, formatQuantity } from '../../quantity/format.ts'
import type { Basis, Step, Success, Verdict } from '../../types.ts'
import type { Levels, NeedFigures } from './figures.ts'
import { type NeedGiven, needInputs } from './inputs.ts'

const db = (x: number) => formatQuantity(x, 'decibel', 4)
const exact = (x: number) => formatExact(x, 'decibel')
const NOTHING = { bounds: [], rungs: [], pictures: [], cautions: [] } as const

export function explainNeed(given: NeedGiven, { levels, values, verdict, fieldNeededDb }: NeedFigures): Success {
  const neededDb = values['neededDb'] ?? fieldNeededDb
  if (levels === undefined || neededDb === undefined) {
    const missing = missingNames(needInputs, given).join(' and ')
    return {
      ...NOTHING,
      ok: true,
      verdict,
      ...waitingFor(missingInputs(needInputs, given)),
      findings: [],
      outputs: { neededDb: { cell: { is: 'none', why: `needs ${missing}` }, basis: basisOf([]) } },
    }
  }
  const { measuredDb, limitDb, marginDb } = levels
  const convert = conversionStep(given, levels)
  const step = {
    formula: 'needed = max(0, measured − limit + margin)',
    withNumbers: `max(0, ${db(measuredDb)} − ${db(limitDb)} + ${db(marginDb)})`,
    si: neededDb,
    quantity: 'decibel' as const,
  }
  const outputs = { neededDb: { cell: { is: 'si', si: neededDb }, basis: basisOf([...convert, step]) } } as const
  if (fieldNeededDb !== undefined)
    return {
      ...NOTHING,
      ok: true,
      verdict,
      headline: `Not known: needs a clamp on its cable. As read: ${headlineOf(levels, neededDb, verdict)}`,
      needs: {
        key: 'measuredDb',
        sentence: 'Once a clamp on this cable made the worst fall, enter both levels in plain dB.',
      },
      findings: [{ verdict, sentence: FIELD_OF_ALL }],
      outputs,
    }
  return {
    ...NOTHING,
    ok: true,
    verdict,
    answers: 'number',
    headline: headlineOf(levels, neededDb, verdict),
    findings:
      verdict === 'marginal'
        ? [
            {
              verdict: 'marginal',
              sentence:
                'More than 100 dB is beyond what one connector holds in practice: look for the source or the path first.',
            },
          ]
        : [],
    outputs,
  }
}

/** The reading in the unit of the limit, where that is another one. */
function conversionStep(
  { measuredDb, impedanceOhm }: NeedGiven,
  { unit, isConverted, measuredDb: si }: Levels,
): readonly Step[] {
  if (!isConverted || measuredDb === undefined) return []
  const perOhm = levelIn({ ...measuredDb, db: 0 }, unit, impedanceOhm)
  const across = impedanceOhm === undefined ? '' : ` across ${formatQuantity(impedanceOhm, 'resistance', 4)}`
  return [
    {
      formula: `${unit} = ${measuredDb.unit} ${perOhm < 0 ? '−' : '+'} ${db(Math.abs(perOhm))}${across}`,
      withNumbers: `${db(measuredDb.db)} ${perOhm < 0 ? '−' : '+'} ${db(Math.abs(perOhm))}`,
      si,
      quantity: 'level',
    },
  ]
}

function headlineOf({ measuredDb, limitDb, marginDb }: Levels, neededDb: number, verdict: Verdict): string {
  const over = measuredDb - limitDb
  if (neededDb <= 0) return `Nothing must come off: ${exact(-over)} under the limit, ${exact(marginDb)} margin kept.`
  const side = over >= 0 ? `${exact(over)} over the limit` : `${exact(-over)} under the limit`
  const off = `${formatEstimate(neededDb, 'decibel', 'least')} must come off`
  return verdict === 'marginal'
    ? `${off}: with care. No connector holds more than about 100 dB: look for the source or the path first.`
    : `${off}: ${side}, ${exact(marginDb)} margin.`
}

function basisOf(steps: Basis['steps']): Basis {
  return {
    steps,
    assumptions: ['measured and allowed level are the same quantity in the same bandwidth and detector'],
    sources: [
      { id: 'derived', standing: 'derived' },
      { id: 'practice', standing: 'practice' },
    ],
  }
}
