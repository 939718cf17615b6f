/** All contacts of a connector in its one bond: the rounds, and what they change in the rows. */
import type { Express } from '../line/fields.ts'
import { formatEstimate, formatExact, formatQuantity } from '../quantity/format.ts'
import type { Progress, Verdict } from '../types.ts'
import { VERDICT_WORDS, worse } from '../verdict.ts'
import { lineInConnector, type OpenAnswer, windowAnswer } from './contact-line.ts'
import { type Asked, type ContactPart, type ContactRow, contactPartOf } from './contact-row.ts'
import { decidedOf } from './decide.ts'
import type { DecidedContact } from './decided.ts'
import type { ConnectorFinding } from './finding.ts'
import { otherParts } from './other-parts.ts'
import { type TypedBond, typedBond, USUAL_BOND } from './plate/bond.ts'
import type { Together } from './plate/judge.ts'
import { type Member, memberOf } from './plate/member.ts'
import { bondRounds, type Seat } from './plate/rounds.ts'
import { besideWords, partWords } from './said.ts'
import type { SharedTexts } from './types.ts'

export type InOneBond = {
  readonly asked: readonly Asked[]
  readonly findings: readonly ConnectorFinding[]
  readonly rounds?: number
}

/** The rows with every contact driven alike in the shared bond. Without a bond they stay as they are, and it is said. */
export function* inOneBond(
  asked: readonly Asked[],
  shared: SharedTexts,
  express?: Express,
): Generator<Progress, InOneBond> {
  const bond = typedBond(shared, express)
  const seated = asked.flatMap((one, i) => (isSeated(one) ? [i] : []))
  if (!bond.typed.ohm && !bond.typed.henries)
    return { asked, findings: seated.length === 0 ? [] : [alone(seated.map((i) => idOf(asked, i)))] }
  if (bond.bondOhm === 0 && bond.bondH === 0) return { asked, findings: seated.length < 2 ? [] : [perfect()] }
  const seats: Seat[] = []
  for (const i of seated) {
    seats.push(seatOf(asked[i] as Asked))
    yield { doneFrac: 0 }
  }
  const outcome = yield* bondRounds(seats, bond)
  const after = [...asked]
  for (const [k, i] of seated.entries()) {
    const { part, together, isMoving } = outcome.seats[k] as (typeof outcome.seats)[number]
    const isReadAlone = seats[k]?.member.isReadAlone === true
    after[i] = yield* settled(asked[i] as Asked, { part, together, isMoving, isReadAlone, shared, express })
  }
  return {
    asked: after,
    rounds: outcome.rounds,
    findings: [
      ...unstated(
        bond,
        seated.map((i) => idOf(asked, i)),
      ),
      ...unsettled(
        outcome.isStable,
        outcome.seats.flatMap(({ isMoving }, k) => (isMoving ? [idOf(asked, seated[k] as number)] : [])),
      ),
      ...assumedSources(
        seats.flatMap(({ member }, k) => (member.isSourceAssumed ? [idOf(asked, seated[k] as number)] : [])),
      ),
    ],
  }
}

const idOf = (asked: readonly Asked[], i: number): string => (asked[i] as Asked).row.contact.id

/** Whether a contact has a part that meets the plate. */
const isSeated = ({ row, open, judged }: Asked): boolean =>
  row.decided.part !== undefined && (judged ?? open) !== undefined

/** The seat of a contact that has a part. */
function seatOf({ row, open, judged }: Asked): Seat {
  const decided = row.decided.part as NonNullable<DecidedContact['part']>
  const answer = (judged ?? open) as OpenAnswer
  const part = contactPartOf(decided)
  const lineId = lineIdOf(row)
  const isFixed = row.choice?.valueF !== undefined
  return { part, member: memberOf(answer, lineId, part), others: () => (isFixed ? [] : others(answer, lineId)) }
}

const lineIdOf = ({ line, contact }: ContactRow): string => line?.id ?? contact.id

function* others(answer: OpenAnswer, lineId: string): Generator<{ part: ContactPart; member: Member } | undefined> {
  for (const part of otherParts(answer)) yield part && { part, member: memberOf(answer, lineId, part) }
}

type Settled = {
  readonly part: ContactPart
  readonly together: Together | undefined
  readonly isMoving: boolean
  readonly isReadAlone: boolean
  readonly shared: SharedTexts
  readonly express: Express | undefined
}

/** A yes that rests on source and load side by side: the shared bond meets them apart. */
const openInBond = (row: ContactRow): ContactRow =>
  row.verdict === 'fails'
    ? row
    : {
        ...row,
        verdict: 'unknown',
        headline:
          'Not known: needs noise source and load apart. The trial read them side by side, which is enough on its line alone, not in a bond it shares: take the reading of a clamp.',
      }

/** The row with the part it ended with, judged in the shared bond. */
function* settled(one: Asked, q: Settled): Generator<Progress, Asked> {
  const { row } = one
  const { decided, line } = row
  const { part, together, isMoving } = q
  const isOther = part.topology !== decided.part?.topology || (part.valueF ?? 0) !== decided.part?.capacitanceF
  const answer =
    isOther && line !== undefined
      ? yield* windowAnswer(
          lineInConnector(line, q.shared, { ...row.choice, topology: part.topology }),
          part.valueF,
          q.express,
        )
      : undefined
  const taken = answer?.is === 'window' ? answer : undefined
  if (together === undefined) return q.isReadAlone ? { ...one, row: openInBond(row) } : one
  // what was found before the bond stays found, whatever part it ends with
  const found = row.findings.reduce<Verdict>((worst, { verdict: one = 'ok' }) => worse(worst, one), 'ok')
  const verdict = worse(worse(taken?.verdict ?? row.verdict ?? 'unknown', found), verdictOf(together, isMoving))
  const shown = taken ?? one.judged ?? one.open
  return {
    ...one,
    ...(taken === undefined ? {} : { judged: taken }),
    row: {
      ...row,
      decided:
        shown === undefined || line === undefined || !isOther
          ? decided
          : decidedOf({ contact: row.contact, line, shown, part, by: decided.by }),
      verdict,
      headline: `${headlineOf({ row, part, together, verdict, isMoving, isOther })}${isOther && taken !== undefined ? besideWords(taken) : ''}`,
      together,
      ...(isOther ? { aloneF: decided.part?.capacitanceF ?? 0 } : {}),
    },
  }
}

const verdictOf = ({ is }: Together, isMoving: boolean): Verdict =>
  isMoving || is === 'open' ? 'unknown' : is === 'short' ? 'fails' : 'ok'

const dB = (si: number) => formatEstimate(si, 'decibel', 'most')

/** The sentence of the row: as it was where the bond changes nothing, else with what the others in the bond do. */
function headlineOf(q: {
  row: ContactRow
  part: ContactPart
  together: Together
  verdict: Verdict
  isMoving: boolean
  isOther: boolean
}): string {
  const { row, part, together, verdict, isMoving, isOther } = q
  const at = formatQuantity(together.need.hz, 'frequency', 4)
  const need = formatExact(together.need.db, 'decibel')
  if (together.lacksBead && (row.verdict !== 'fails' || isOther))
    return `Not known: needs the impedance of every bead in the bond at ${at}. While one is missing, what ${partWords(part)} keeps there is not known.`
  if (isMoving)
    return `Not known: needs a value by hand. Five rounds of the shared bond did not settle on one; with ${partWords(part)} it keeps ${dB(together.leastDb)} of ${need} at ${at}.`
  // what fails by itself is not the doing of the bond
  if (row.verdict === 'fails' && !isOther) return row.headline
  if (together.is === 'met') {
    if (!isOther) return row.headline
    return `${partWords(part)}: ${VERDICT_WORDS[verdict]}. With all contacts in the bond it keeps ${dB(together.leastDb)} at ${at}, needed ${need}; alone ${formatExact(row.decided.part?.capacitanceF ?? 0, 'capacitance')} would do.`
  }
  const alone = `alone ${dB(together.aloneDb)}, needed ${need} at ${at}`
  return together.is === 'short'
    ? `${partWords(part)}: no. With all contacts in the bond ${dB(Math.max(0, together.leastDb))} is left; ${alone}.`
    : `Not known: needs a better bond, or more room. With all contacts in the bond ${dB(Math.max(0, together.leastDb))} is sure with ${partWords(part)}; ${alone}.`
}

const alone = (contacts: readonly string[]): ConnectorFinding => ({
  id: 'bond-alone',
  verdict: 'unknown',
  sentence:
    'Every figure is for its line alone: the bond of the connector is not entered, and it carries the current of all contacts.',
  contacts,
})

/** One figure of a bond is none: what was taken for the other may be far from it. */
function unstated({ typed }: TypedBond, contacts: readonly string[]): readonly ConnectorFinding[] {
  const id = 'bond-half-entered'
  const verdict = 'unknown' as const
  if (!typed.henries)
    return [
      {
        id,
        verdict,
        sentence: `Only the resistance of the bond is entered, and at radio frequency its inductance counts: ${formatExact(USUAL_BOND.henries, 'inductance')} is taken, a metal face all round; a strap has a hundred times that.`,
        contacts,
      },
    ]
  if (typed.ohm) return []
  return [
    {
      id,
      verdict,
      sentence: `Only the inductance of the bond is entered: ${formatExact(USUAL_BOND.ohm, 'resistance')} is taken for its resistance, as of a new joint.`,
      contacts,
    },
  ]
}

const perfect = (): ConnectorFinding => ({
  id: 'bond-perfect',
  verdict: 'unknown',
  sentence:
    'A bond of 0 Ω and 0 H was entered, which no bond has: with it nothing one contact sends into the plate reaches another. Enter what it has.',
  contacts: [],
})

function unsettled(isStable: boolean, contacts: readonly string[]): readonly ConnectorFinding[] {
  if (isStable) return []
  const sentence = 'Five rounds of the shared bond did not settle: choose a value for these contacts, or a better bond.'
  return [{ id: 'bond-unsettled', verdict: 'unknown', sentence, contacts }]
}

function assumedSources(contacts: readonly string[]): readonly ConnectorFinding[] {
  if (contacts.length === 0) return []
  const sentence =
    'What drives these contacts in common mode is not known: 1, 10, 50 and 150 Ω were tried for what they send into the plate.'
  return [{ id: 'bond-sources-assumed', sentence, contacts }]
}
