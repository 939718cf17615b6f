/** What only the whole connector tells, worked out while its screen stays alive; the strike of it in the worker. */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { DecidedContact } from '../calc/connector/decided.ts'
import type { ConnectorFinding } from '../calc/connector/finding.ts'
import type { Schedule } from '../calc/connector/schedule.ts'
import type { Connector } from '../calc/connector/types.ts'
import { strikeFindings } from '../calc/connector/whole/strike/findings.ts'
import { strikeQuestion } from '../calc/connector/whole/strike/question.ts'
import { type Whole, wholeOfRows } from '../calc/connector/whole/whole.ts'
import type { Express } from '../calc/line/fields.ts'
import type { Progress } from '../calc/types.ts'
import { expressionReading } from './expression.ts'
import { createSteppedRun } from './stepped-run.ts'
import { runInWorker } from './work.ts'

export type WholeBody = { readonly whole: Whole; readonly decided: readonly DecidedContact[] }

function* wholeSteps(express: Express, connector: Connector, schedule: Schedule): Generator<Progress, WholeBody> {
  const decided = schedule.rows.map((row) => row.decided)
  return { decided, whole: yield* wholeOfRows(connector, schedule.rows, express) }
}

/** From a schedule that is done. */
export const createWholeRun = () => createSteppedRun(wholeSteps)

export type StrikeState =
  | { readonly is: 'idle' }
  | { readonly is: 'missing'; readonly sentence: string }
  | { readonly is: 'working'; readonly doneFrac: number }
  | { readonly is: 'done'; readonly findings: readonly ConnectorFinding[] }
  | { readonly is: 'stopped' }
  | { readonly is: 'broken'; readonly message: string }

export type StrikeRun = {
  readonly state: ReadonlySignal<StrikeState>
  readonly start: (connector: Connector, decided: readonly DecidedContact[]) => void
  readonly stop: () => void
  /** the facts are others: what was found is not theirs */
  readonly forget: () => void
}

export function createStrikeRun(): StrikeRun {
  const state = signal<StrikeState>({ is: 'idle' })
  let away: AbortController | undefined
  const end = (next: StrikeState) => {
    away?.abort()
    away = undefined
    state.value = next
  }
  return {
    state,
    start: (connector, decided) => {
      end({ is: 'working', doneFrac: 0 })
      const asked = strikeQuestion(connector, decided, expressionReading)
      if (asked.is === 'missing') return end(asked)
      away = new AbortController()
      const { signal: until } = away
      const show = (next: StrikeState) => {
        if (!until.aborted) state.value = next
      }
      const { question } = asked
      runInWorker({ is: 'strike', input: question }, (progress) => show({ is: 'working', ...progress }), until).then(
        (answer) => show({ is: 'done', findings: strikeFindings(question, answer) }),
        (error) => show({ is: 'broken', message: error instanceof Error ? error.message : String(error) }),
      )
    },
    stop: () => end({ is: 'stopped' }),
    forget: () => end({ is: 'idle' }),
  }
}
