/** The schedule of a connector, away from the screen. Calculations in its texts are read by the window, and asked for. */

import type { Schedule } from '../calc/connector/schedule.ts'
import { scheduleOf } from '../calc/connector/schedule.ts'
import { alonePiece, askedPieces, type SchedulePiece } from '../calc/connector/sent.ts'
import type { Connector } from '../calc/connector/types.ts'
import type { Express } from '../calc/line/fields.ts'
import type { Quantity } from '../calc/quantity/quantity.ts'
import type { Reading } from '../calc/quantity/reading.ts'
import type { Line, Progress } from '../calc/types.ts'

export type Calculation = { readonly text: string; readonly quantity: Quantity }

export type ScheduleJob = {
  readonly connector: Connector
  readonly lines: readonly Line[]
  /** what the calculations come to that were asked for before */
  readonly readings: readonly (Calculation & { readonly reading: Reading })[]
}

export type ScheduleStep = Progress & { readonly found?: SchedulePiece }

export type ScheduleEnd = {
  readonly rest: Omit<Schedule, 'rows' | 'asked'>
  /** without these it is not what was asked for: they were taken as still being worked out */
  readonly unread: readonly Calculation[]
}

const keyOf = ({ text, quantity }: Calculation): string => `${quantity} ${text}`
const readings = new Map<string, Reading>()
const unread = new Map<string, Calculation>()

/** One and the same at every order: what was read of a line by it is remembered from one to the next. */
const express: Express = (text, quantity) => {
  const key = keyOf({ text, quantity })
  const reading = readings.get(key)
  if (reading === undefined) unread.set(key, { text, quantity })
  return reading
}

const kept = new Map<string, { readonly text: string; readonly line: Line }>()
const MOST_KEPT = 1024

/** The same object for the same line, which is a copy at every order: what was worked out of it is found by it. */
function known(line: Line): Line {
  const text = JSON.stringify(line)
  const before = kept.get(line.id)
  if (before?.text === text) return before.line
  if (kept.size >= MOST_KEPT) kept.clear()
  kept.set(line.id, { text, line })
  return line
}

export function* run(job: ScheduleJob): Generator<ScheduleStep, ScheduleEnd> {
  for (const one of job.readings) {
    readings.set(keyOf(one), one.reading)
    unread.delete(keyOf(one))
  }
  const running = scheduleOf(job.connector, job.lines.map(known), express)
  for (;;) {
    const step = running.next()
    if (step.done) {
      for (const found of askedPieces(step.value)) yield { doneFrac: 1, found }
      const { rows: _rows, asked: _asked, ...rest } = step.value
      return { rest, unread: [...unread.values()] }
    }
    const { doneFrac, alone } = step.value
    yield alone === undefined ? { doneFrac } : { doneFrac, found: alonePiece(alone) }
  }
}
