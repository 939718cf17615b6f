/** A long computation of a screen, in steps: what it found, how far it is, and again when the calculator is there. */
import { type ReadonlySignal, signal, untracked } from '@preact/signals'
import type { Express } from '../calc/line/fields.ts'
import type { Progress } from '../calc/types.ts'
import { inSlices } from './in-slices.ts'
import { withCalculator } from './with-calculator.ts'

/** `working`: `body` is what stood before, of other facts; absent where there was nothing. */
export type Stepped<Body> =
  | { readonly is: 'working'; readonly doneFrac: number; readonly body?: Body }
  | { readonly is: 'done'; readonly body: Body }
  | { readonly is: 'stopped' }
  | { readonly is: 'broken' }

export type SteppedRun<Given extends readonly unknown[], Body> = {
  readonly state: ReadonlySignal<Stepped<Body>>
  /** begins anew; what was under way is left */
  readonly start: (...given: Given) => void
  readonly stop: () => void
}

/** `steps` reads typed calculations by what it is handed first; where the calculator was not there yet, it runs again. */
export function createSteppedRun<Given extends readonly unknown[], Body>(
  steps: (express: Express, ...given: Given) => Generator<Progress, Body>,
): SteppedRun<Given, Body> {
  const state = signal<Stepped<Body>>({ is: 'working', doneFrac: 0 })
  let away: AbortController | undefined
  const show = (until: AbortSignal, next: Stepped<Body>) => {
    if (!until.aborted) state.value = next
  }
  const work = (given: Given, until: AbortSignal, before: { readonly body?: Body }): Promise<Body> =>
    withCalculator((express) =>
      inSlices(steps(express, ...given), ({ doneFrac }) => show(until, { is: 'working', doneFrac, ...before }), until),
    )
  return {
    state,
    start: (...given) => {
      away?.abort()
      away = new AbortController()
      const { signal: until } = away
      const last = untracked(() => state.value)
      const before = 'body' in last && last.body !== undefined ? { body: last.body } : {}
      state.value = { is: 'working', doneFrac: 0, ...before }
      work(given, until, before).then(
        (body) => show(until, { is: 'done', body }),
        () => show(until, { is: 'broken' }),
      )
    },
    stop: () => {
      away?.abort()
      state.value = { is: 'stopped' }
    },
  }
}
