/** Everything a sheet of a connector says, without whose complaint it is: what a maker may read is a part of it. */
import type { Express } from '../../line/fields.ts'
import type { Progress, Trial } from '../../types.ts'
import type { ConnectorFinding } from '../finding.ts'
import { partWords } from '../said.ts'
import type { Schedule } from '../schedule.ts'
import type { Connector } from '../types.ts'
import { groundsOf, type SheetGrounds } from './grounds.ts'
import { type SheetRow, sheetRow } from './rows.ts'

/** A part of the connector, in words, with the contacts that carry it. */
export type SheetPart = { readonly words: string; readonly contacts: readonly string[] }

export type SheetQuestion = { readonly sentence: string; readonly contacts: readonly string[] }

export type SheetTrial = { readonly contacts: readonly string[]; readonly trial: Trial }

export type SheetBody = {
  readonly connector: Connector
  readonly rows: readonly SheetRow[]
  readonly parts: readonly SheetPart[]
  readonly findings: readonly ConnectorFinding[]
  readonly questions: readonly SheetQuestion[]
  readonly trials: readonly SheetTrial[]
  readonly grounds: SheetGrounds
}

type Given = {
  readonly connector: Connector
  readonly schedule: Schedule
  /** what the whole connector says beyond its schedule */
  readonly findings?: readonly ConnectorFinding[]
  readonly express?: Express
}

/** The sheet of a finished schedule, in steps. */
export function* sheetBody({ connector, schedule, findings = [], express }: Given): Generator<Progress, SheetBody> {
  const grounds = yield* groundsOf(schedule.rows, connector.shared, express)
  return {
    connector,
    rows: schedule.rows.map((row) => sheetRow(row, express)),
    parts: schedule.parts.map((part) => ({ words: partWords(part), contacts: part.contacts })),
    findings: [...schedule.findings, ...findings],
    questions: schedule.questions,
    trials: trialsOf(schedule),
    grounds,
  }
}

/** Trials by line: a pair has them once. */
function trialsOf({ rows }: Schedule): readonly SheetTrial[] {
  const lines = new Map(rows.flatMap(({ line }) => (line === undefined ? [] : [[line.id, line] as const])))
  return [...lines.values()].flatMap((line) => {
    const contacts = rows.filter((row) => row.line?.id === line.id).map(({ contact }) => contact.id)
    return line.trials.map((trial) => ({ contacts, trial }))
  })
}
