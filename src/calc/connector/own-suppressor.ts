/** A suppressor that was entered for a line, against what the line does by itself: where it conducts then, it is none. */

import { lineKindById } from '../../reference/line-kinds.ts'
import { surgeCheck } from '../checks/surge/check.ts'
import type { SurgeGiven } from '../checks/surge/inputs.ts'
import { lineSentence } from '../checks/surge/words/line.ts'
import { refusalIssue } from '../checks/surge/words/refusals.ts'
import type { Express } from '../line/fields.ts'
import { resolve } from '../line/resolver.ts'
import { formatEstimate, formatExact } from '../quantity/format.ts'
import { lineQuestionOf } from '../surge/answer.ts'
import { blockingOf, type LineReason, lineReasons } from '../surge/line.ts'
import { asOnePart, type FittedPart, partOf } from '../surge/part.ts'
import type { Line, Verdict } from '../types.ts'
import { capital, VERDICT_RANK, VERDICT_WORDS, worse } from '../verdict.ts'
import type { ContactRow } from './contact-row.ts'

/** What the surge check reads of the suppressor and of what its line does by itself. */
const READ: readonly (keyof SurgeGiven)[] = [
  'standoffV',
  'breakdownV',
  'ratedPulseW',
  'dynamicOhm',
  'suppressorType',
  'suppressorPlace',
  'holdingA',
  'bidirectional',
  'seriesCount',
  'busMaxV',
  'busMinV',
  'supplyCategory',
  'busSourceOhm',
  'lineKind',
]
const READ_INPUTS = surgeCheck.inputs.filter(({ key }) => (READ as readonly string[]).includes(key))
/** Either of them says that there is a suppressor. */
const ENTERED_INPUTS = READ_INPUTS.filter(({ key }) => key === 'standoffV' || key === 'breakdownV')

type Said = { readonly verdict: Verdict; readonly sentence: string }

/**
 * The row with what its suppressor does on its own line, wherever that is no plain yes: judged as the surge check judges
 * it, of either sign, steady and in the long surges of its supply. `isShared`: it stands behind steering diodes, which
 * turn either sign of the line into one.
 */
export function withOwnSuppressor(
  row: ContactRow,
  { line, isShared, express }: { line: Line | undefined; isShared: boolean; express: Express | undefined },
): ContactRow {
  if (line === undefined) return row
  const said = [...saidOf(line, isShared, express)].sort((a, b) => VERDICT_RANK[b.verdict] - VERDICT_RANK[a.verdict])
  const [first] = said
  if (first === undefined) return row
  const verdict = worse(row.verdict ?? first.verdict, first.verdict)
  const sentence = [...new Set(said.map((one) => one.sentence))].join(' ')
  return {
    ...row,
    verdict,
    ...(verdict === row.verdict
      ? {}
      : {
          headline: `${capital(VERDICT_WORDS[verdict])}: ${first.sentence.charAt(0).toLowerCase()}${first.sentence.slice(1)} By itself: ${row.headline}`,
        }),
    findings: [
      ...row.findings,
      { id: `suppressor-${row.contact.id}`, verdict: first.verdict, sentence, contacts: [row.contact.id] },
    ],
  }
}

/** Every reason against; none where no suppressor was entered, or it stands all its line does. */
function saidOf(line: Line, isShared: boolean, express: Express | undefined): readonly Said[] {
  const resolution = resolve(line, express)
  if (resolution.filled(ENTERED_INPUTS).every(({ state }) => state === 'omitted')) return []
  // the surge check reads the window's value besides, which would be a second window for every contact
  const fields = resolution.filled(READ_INPUTS)
  const refused = fields.flatMap(({ issue }) => (issue === undefined ? [] : [issue.message]))
  if (refused.length > 0) return refused.map((sentence) => ({ verdict: 'unknown', sentence }))
  const given = asOnePart(Object.fromEntries(fields.map(({ key, value }) => [key, value])) as SurgeGiven)
  // how hard it conducts is the surge check's own question; whether it does takes no resistance
  const dynamicOhm = given.dynamicOhm ?? (given.ratedPulseW === undefined ? 0 : undefined)
  const answer = partOf({ ...given, dynamicOhm, bidirectional: given.bidirectional || isShared })
  if (answer.is === 'refused') return [{ verdict: 'unknown', sentence: refusalIssue(answer.refusal).message }]
  if (answer.is !== 'part') return []
  const kind = given.lineKind === undefined ? undefined : lineKindById(given.lineKind)
  return lineReasons(lineQuestionOf(given, answer.part, kind)).flatMap((reason) =>
    reason.verdict === 'ok' ? [] : [{ verdict: reason.verdict, sentence: sentenceOf(reason, answer.part) }],
  )
}

function sentenceOf(reason: LineReason, part: FittedPart): string {
  const coldV = formatEstimate(blockingOf(part).highV, 'voltage', 'most')
  if (reason.is === 'conducts-bus' || (reason.is === 'conducts-steady' && !reason.forward))
    return `Its suppressor breaks down at ${coldV} cold, and the line reaches ${formatExact(reason.peakV, 'voltage')} by itself.`
  if (reason.is === 'category-missing')
    return `Choose what its supply is built to: its suppressor breaks down at ${coldV} cold, and surges that last may reach ${formatExact(Math.max(...reason.surges.map(({ row }) => row.peakV)), 'voltage')}.`
  return lineSentence(reason)
}
