/**
 * A schedule on its way from one thread to another: in pieces, so that none takes long to be taken in, and without the
 * contacts and lines, which both sides have. `sentRow` and `sentAsked` take them off; `rowOf` and `askedOf` put them back.
 */
import type { Line } from '../types.ts'
import type { Asked, ContactRow } from './contact-row.ts'
import type { DecidedContact } from './decided.ts'
import type { Schedule } from './schedule.ts'
import type { Connector, Contact } from './types.ts'

type SentRow = Omit<ContactRow, 'contact' | 'line' | 'decided'> & {
  readonly decided: Omit<DecidedContact, 'line'>
  /** whether the row, and what is decided in it, carries the line of its contact */
  readonly hasLine: boolean
  readonly isDecidedOnLine: boolean
}

type SentAsked = Omit<Asked, 'row'> & { readonly row: SentRow }

/** Rows in the order of the contacts. */
export type SchedulePiece =
  /** every contact by itself, nothing to group yet */
  | { readonly is: 'alone'; readonly rows: readonly SentRow[]; readonly rest: Omit<Schedule, 'rows' | 'asked'> }
  /** the next contacts of the answer */
  | { readonly is: 'asked'; readonly asked: readonly SentAsked[] }

/** So many contacts come at once: a millisecond or two to take in. */
const AT_ONCE = 16

function sentRow({ contact: _, line, decided: { line: decidedLine, ...decided }, ...row }: ContactRow): SentRow {
  return { ...row, decided, hasLine: line !== undefined, isDecidedOnLine: decidedLine !== undefined }
}

export function alonePiece({ rows, asked: _, ...rest }: Schedule): SchedulePiece {
  return { is: 'alone', rows: rows.map(sentRow), rest }
}

export function* askedPieces({ asked }: Schedule): Generator<SchedulePiece> {
  for (let from = 0; from < asked.length; from += AT_ONCE)
    yield {
      is: 'asked',
      asked: asked.slice(from, from + AT_ONCE).map(({ row, ...answers }) => ({ ...answers, row: sentRow(row) })),
    }
}

/** Takes the pieces of one schedule in as they come. */
export function createReceiver({ contacts }: Pick<Connector, 'contacts'>, lines: readonly Line[]) {
  const byId = new Map(lines.map((line) => [line.id, line]))
  const rowOf = ({ hasLine, isDecidedOnLine, decided, ...row }: SentRow, i: number): ContactRow => {
    const contact = contacts[i] as Contact
    const line = byId.get(contact.lineId ?? '')
    return {
      ...row,
      contact,
      ...(hasLine && line ? { line } : {}),
      decided: { ...decided, ...(isDecidedOnLine && line ? { line } : {}) },
    }
  }
  const asked: Asked[] = []
  return {
    /** what there is to read of every contact by itself; there is nothing to group yet */
    alone: ({ rows, rest }: SchedulePiece & { is: 'alone' }): Schedule => ({
      ...rest,
      rows: rows.map(rowOf),
      asked: [],
    }),
    take: (piece: SchedulePiece & { is: 'asked' }): void => {
      for (const { row, ...answers } of piece.asked) asked.push({ ...answers, row: rowOf(row, asked.length) })
    },
    end: (rest: Omit<Schedule, 'rows' | 'asked'>): Schedule => ({ ...rest, rows: asked.map(({ row }) => row), asked }),
  }
}
