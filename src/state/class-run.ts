/** The power class of each proposed suppressor, found in the worker when a screen asks for it. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { type ClassSaid, classesSaid } from '../calc/connector/class-words.ts'
import type { ContactRow } from '../calc/connector/contact-row.ts'
import type { Connector } from '../calc/connector/types.ts'
import { classQuestion } from '../calc/connector/whole/strike/power-class.ts'
import { expressionReading } from './expression.ts'
import { runInWorker } from './work.ts'

export type ClassState =
  | { readonly is: 'idle' | 'stopped' | 'broken' }
  | { readonly is: 'working'; readonly doneFrac: number }
  | { readonly is: 'done'; readonly said: ReadonlyMap<string, ClassSaid> }

export type ClassRun = {
  readonly state: ReadonlySignal<ClassState>
  /** from rows of a schedule that is done; what was under way is left */
  readonly start: (connector: Connector, rows: readonly ContactRow[]) => void
  readonly stop: () => void
  /** the facts are others: what was found is not theirs */
  readonly forget: () => void
}

export function createClassRun(): ClassRun {
  const state = signal<ClassState>({ is: 'idle' })
  let away: AbortController | undefined
  const end = (next: ClassState) => {
    away?.abort()
    away = undefined
    state.value = next
  }
  return {
    state,
    start: (connector, rows) => {
      const { contacts, stresses } = classQuestion(connector, rows, expressionReading)
      if (stresses.length === 0) return end({ is: 'done', said: classesSaid(contacts, []) })
      end({ is: 'working', doneFrac: 0 })
      away = new AbortController()
      const { signal: until } = away
      const show = (next: ClassState) => {
        if (!until.aborted) state.value = next
      }
      runInWorker({ is: 'powerClass', input: stresses }, (at) => show({ is: 'working', ...at }), until).then(
        (found) => show({ is: 'done', said: classesSaid(contacts, found) }),
        () => show({ is: 'broken' }),
      )
    },
    stop: () => end({ is: 'stopped' }),
    forget: () => end({ is: 'idle' }),
  }
}
