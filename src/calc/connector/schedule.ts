/**
 * The schedule of one connector: what every contact carries, by whom it is decided, and why. Recomputed from the
 * connector and its Lines; nothing of it is kept.
 */
import type { Express } from '../line/fields.ts'
import { within } from '../surge/progress.ts'
import type { Line, Progress } from '../types.ts'
import { askContact } from './ask-contact.ts'
import { buildOf } from './build.ts'
import { type Asked, type ContactPart, type ContactRow, contactPartOf } from './contact-row.ts'
import type { ConnectorFinding } from './finding.ts'
import { holed } from './hole.ts'
import { inOneBond } from './in-one-bond.ts'
import { withOwnSuppressor } from './own-suppressor.ts'
import { placeWords, suppressorFor } from './place.ts'
import { questionsOf } from './questions.ts'
import type { Connector } from './types.ts'
import { withUnlikeLegs } from './unlike-legs.ts'
import { groupOfContact } from './whole/part-of-group.ts'

export type { Asked, ContactPart, ContactRow } from './contact-row.ts'

/** One kind of part of the connector, with the contacts that carry it. */
export type SchedulePart = ContactPart & { readonly contacts: readonly string[] }

/** What only the maker of the connector can say. */
export type MakerQuestion = { readonly id: string; readonly sentence: string; readonly contacts: readonly string[] }

export type Schedule = {
  readonly rows: readonly ContactRow[]
  /** the same rows with the windows they were made from: what grouping works on */
  readonly asked: readonly Asked[]
  /** distinct parts, largest capacitance first */
  readonly parts: readonly SchedulePart[]
  readonly questions: readonly MakerQuestion[]
  readonly findings: readonly ConnectorFinding[]
  /** rounds of the shared bond it took; absent: every figure is for its line alone */
  readonly rounds?: number
}

/** `alone`: every contact by itself is known, and may be shown before they meet in the bond. */
export type ScheduleProgress = Progress & { readonly alone?: Schedule }

/** Share of the work that is done when every contact is known by itself. */
const ALONE_SHARE = 0.5

/** Works the schedule out in steps; may be left between any two. Lines by id; one that is not there is asked for. */
export function* scheduleOf(
  connector: Connector,
  lines: readonly Line[],
  express?: Express,
): Generator<ScheduleProgress, Schedule> {
  const byId = new Map(lines.map((line) => [line.id, line]))
  const asked: Asked[] = []
  const { contacts, shared } = connector
  for (const [i, contact] of contacts.entries()) {
    const line = contact.lineId === undefined ? undefined : byId.get(contact.lineId)
    const [from, to] = [i, i + 1].map((done) => (ALONE_SHARE * done) / contacts.length) as [number, number]
    asked.push(yield* within(askContact({ contact, line, shared, express }), from, to))
    yield { doneFrac: to }
  }
  const alone = yield* at(ALONE_SHARE, madeOf(connector, asked, [], express))
  yield { doneFrac: ALONE_SHARE, alone }
  const { asked: bonded, findings, rounds } = yield* within(inOneBond(asked, shared, express), ALONE_SHARE, 1)
  const made = yield* at(1, madeOf(connector, bonded, findings, express))
  return { ...made, ...(rounds === undefined ? {} : { rounds }) }
}

/** Steps that tell no progress of their own. */
function* at<R>(doneFrac: number, running: Generator<undefined, R>): Generator<Progress, R> {
  let step = running.next()
  while (!step.done) {
    yield { doneFrac }
    step = running.next()
  }
  return step.value
}

function* madeOf(
  connector: Connector,
  bonded: readonly Asked[],
  findings: readonly ConnectorFinding[],
  express: Express | undefined,
): Generator<undefined, Schedule> {
  const settled = withUnlikeLegs(bonded)
  const isAnyFiltered = settled.some(({ row }) => row.decided.part !== undefined)
  const groups = groupOfContact(connector)
  const asked: Asked[] = []
  for (const one of settled) {
    asked.push({
      ...one,
      row: completed(
        connector,
        {
          ...one,
          row: withOwnSuppressor(holed(one, isAnyFiltered), {
            line: one.row.line,
            isShared: groups.has(one.row.contact.id),
            express,
          }),
        },
        express,
      ),
    })
    yield
  }
  const rows = asked.map(({ row }) => row)
  const parts = partsOf(rows)
  return { rows, asked, parts, questions: questionsOf(connector, rows, parts), findings }
}

/** The row with what can be built, where it goes, and its suppressor. */
function completed({ texts }: Connector, { row, open, judged }: Asked, express: Express | undefined): ContactRow {
  const { contact, decided, line } = row
  const answer = judged ?? open
  const build = answer && buildOf(contact, decided, answer, express)
  const place = placeWords(decided, texts.half)
  const isStruck = (texts.strikeWaveform?.trim() ?? '') !== ''
  return {
    ...row,
    ...(build === undefined ? {} : { build }),
    ...(place === undefined ? {} : { place }),
    ...(line === undefined || decided.by === 'barred' ? {} : { suppressor: suppressorFor(line, express, isStruck) }),
  }
}

function partsOf(rows: readonly ContactRow[]): readonly SchedulePart[] {
  const found = new Map<string, ContactPart & { contacts: string[] }>()
  for (const { decided } of rows) {
    if (decided.part === undefined) continue
    const { topology, capacitanceF, inductanceH } = decided.part
    const key = `${topology} ${capacitanceF} ${inductanceH ?? ''}`
    const part = found.get(key) ?? { ...contactPartOf(decided.part), contacts: [] }
    part.contacts.push(decided.id)
    found.set(key, part)
  }
  return [...found.values()].sort((a, b) => (b.valueF ?? 0) - (a.valueF ?? 0))
}
