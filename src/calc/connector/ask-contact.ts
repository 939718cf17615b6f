/** One contact alone: its window as proposed and as chosen, and the row made from it. The contacts meet later. */

import type { Express } from '../line/fields.ts'
import { hasCapacitor } from '../network/circuit.ts'
import type { Line, Progress, Verdict } from '../types.ts'
import { worse } from '../verdict.ts'
import { type Choice, choiceOf } from './choice.ts'
import { barredWhy, bondConflicts, lineInConnector, type OpenAnswer, windowAnswer } from './contact-line.ts'
import type { Asked, ContactRow, Proposal } from './contact-row.ts'
import { decidedBare, decidedOf, partOf } from './decide.ts'
import type { ConnectorFinding } from './finding.ts'
import { type ContactSaid, chosenWords, saidOf } from './said.ts'
import type { Contact, SharedTexts } from './types.ts'

export type RowQuestion = {
  readonly contact: Contact
  readonly line: Line | undefined
  readonly shared: SharedTexts
  readonly express: Express | undefined
}

const WAITS = 'Advice waits for the safety questions of this line; the figures stand.'

const PLAIN = {
  ground: 'Ground: straight to the plate, no part.',
  spare: 'Spare: no line and no part.',
  'feed-through': 'Feed-through: passes as it is, on purpose.',
} as const

/** The row of one contact alone, in steps. */
export function* askContact(q: RowQuestion): Generator<Progress, Asked> {
  const { contact, line, express } = q
  if (contact.type !== 'line') return { row: rowWithout(q, PLAIN[contact.type]) }
  if (line === undefined) return { row: unassignedRow(q) }
  const barred = barredWhy(line)
  if (barred !== undefined)
    return {
      row: {
        ...rowWithout(q, `No: ${barred}`),
        line,
        decided: decidedBare(contact, line, 'barred'),
        verdict: 'fails',
        why: barred,
      },
    }
  const choice = choiceOf(contact, express)
  const open = yield* windowAnswer(lineInConnector(line, q.shared), undefined, express)
  if (open.is === 'refused' || open.is === 'barred') return { row: refusedRow(q, line, open) }
  const judged = choice === undefined || choice.isBare ? undefined : yield* judgedAs(q, line, choice)
  if (judged?.is === 'refused') return { row: refusedRow(q, line, judged), open }
  const isJudged = judged !== undefined && judged.is === 'window'
  const said = saidOf(open)
  const shown = isJudged ? { shown: judged, said: saidOf(judged) } : { shown: open, said }
  return {
    row: rowOf(q, { line, choice, proposal: proposalOf(open, said), ...shown }),
    open,
    ...(isJudged ? { judged } : {}),
  }
}

/** The window with what was chosen: topology and inductance as facts of the line, the value in place of the proposal. */
const judgedAs = ({ shared, express }: RowQuestion, line: Line, choice: Choice) =>
  windowAnswer(lineInConnector(line, shared, choice), choice.valueF, express)

function rowWithout({ contact }: RowQuestion, headline: string): ContactRow {
  return { contact, decided: decidedBare(contact, undefined, 'nobody'), headline, why: '', findings: [] }
}

function unassignedRow(q: RowQuestion): ContactRow {
  return {
    ...rowWithout(q, 'Not known: needs the line it carries.'),
    verdict: 'unknown',
    needs: 'lineKind',
    why: 'No line stands on this contact; choose its kind, or make it ground, spare or feed-through.',
  }
}

type Unanswered = { is: 'refused'; key: string; message: string } | { is: 'barred'; why: string }

function refusedRow(q: RowQuestion, line: Line, answer: Unanswered): ContactRow {
  const sentence = answer.is === 'refused' ? answer.message : answer.why
  return {
    ...rowWithout(q, `Not known: ${sentence}`),
    line,
    decided: decidedBare(q.contact, line, 'nobody'),
    verdict: 'unknown',
    ...(answer.is === 'refused' ? { needs: answer.key } : {}),
    why: sentence,
  }
}

function proposalOf(open: OpenAnswer, said: ContactSaid): Proposal | undefined {
  const { row, verdict = 'unknown' } = open
  const part = verdict === 'fails' ? undefined : partOf(open)
  if (part === undefined) return undefined
  const isCapacitor = hasCapacitor(part.topology)
  return {
    part,
    verdict,
    ...(isCapacitor && row.least !== undefined ? { leastF: row.least.markedF } : {}),
    ...(isCapacitor && row.upper !== undefined ? { mostF: row.upper.markedF } : {}),
    why: said.headline,
  }
}

function rowOf(
  q: RowQuestion,
  {
    line,
    choice,
    proposal,
    shown,
    said,
  }: {
    line: Line
    choice: Choice | undefined
    proposal: Proposal | undefined
    shown: OpenAnswer
    said: ContactSaid
  },
): ContactRow {
  const { contact } = q
  const isBare = choice?.isBare ?? false
  const isOwn = choice?.topology !== undefined || choice?.valueF !== undefined
  const verdict: Verdict = shown.verdict ?? 'unknown'
  const [unread] = choice?.refused ?? []
  const part = isBare || (verdict === 'fails' && !isOwn) ? undefined : partOf(shown)
  const by = part === undefined ? (isBare ? 'user' : 'nobody') : isOwn ? 'user' : 'proposed'
  const own = choice?.valueF !== undefined && part !== undefined && shown.restsOn === undefined
  const answer = {
    verdict: isBare ? 'marginal' : verdict,
    headline: isBare ? 'Bare by your choice: with care.' : own ? chosenWords(part, verdict, shown) : said.headline,
  } as const
  return {
    contact,
    line,
    decided: decidedOf({ contact, line, shown, part, by }),
    ...(unread === undefined ? answer : unreadOf(answer, unread)),
    ...(said.needs === undefined ? {} : { needs: said.needs }),
    why: said.how ?? said.headline,
    findings: findingsOf(q, line, choice),
    ...(proposal === undefined ? {} : { proposal }),
    ...(choice === undefined ? {} : { choice }),
    ...(line.gate === 'clear' ? {} : { waits: WAITS }),
  }
}

/** What was chosen is not what is judged where a part of it cannot be read: no yes to it. */
function unreadOf({ verdict, headline }: Answer, sentence: string): Answer {
  const worst = worse(verdict, 'unknown')
  return worst === verdict
    ? { verdict, headline }
    : { verdict: worst, headline: `Not known: ${sentence} As it stands: ${headline}` }
}

type Answer = { readonly verdict: Verdict; readonly headline: string }

function findingsOf(
  { contact, shared, express }: RowQuestion,
  line: Line,
  choice: Choice | undefined,
): readonly ConnectorFinding[] {
  const contacts = [contact.id]
  return [
    ...(choice?.refused ?? []).map(
      (sentence, i): ConnectorFinding => ({ id: `choice-refused-${i}`, verdict: 'unknown', sentence, contacts }),
    ),
    ...bondConflicts(line, shared, express).map(
      (one): ConnectorFinding => ({
        id: `bond-conflict-${one.fact}`,
        sentence: `The line states ${one.line} as its ${one.fact === 'bondOhm' ? 'bond resistance' : 'bond inductance'}; the connector’s own counts: ${one.connector}.`,
        contacts,
      }),
    ),
  ]
}
