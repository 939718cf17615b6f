/** What every reading of a trial together leaves of the line, in words: its size, its angle, and what the need takes. */
import { formatEstimate, formatQuantity } from '../../quantity/format.ts'
import type { Basis, Finding } from '../../types.ts'
import type { OpenTrial } from './figures.ts'
import type { TrialGiven } from './inputs.ts'

const ohm = (si: number | undefined): string => formatQuantity(si ?? 0, 'resistance', 3)
const degrees = (si: number | undefined): string => formatQuantity(si ?? 0, 'angle', 2)

export function circuitFindings(given: TrialGiven, figures: OpenTrial): readonly Finding[] {
  const { circuits, values, isCarried, reading } = figures
  if (circuits === undefined || circuits.length === 0) return []
  const neededDb = given.neededDb && Math.max(...given.neededDb)
  const readLeastF = values['readLeastF']
  const takes =
    readLeastF === undefined || neededDb === undefined
      ? ''
      : ` Against the worst of them ${formatQuantity(neededDb, 'decibel', 3)} takes ${formatEstimate(readLeastF, 'capacitance', 'least')} a leg.`
  const said: Finding[] = [
    {
      verdict: 'ok',
      sentence: `Whatever its phase, all readings together leave source and load side by side ${ohm(values['sideLeastOhm'])} to ${ohm(values['sideMostOhm'])} in size, at ${degrees(values['sideLeastDeg'])} to ${degrees(values['sideMostDeg'])}.${takes}`,
    },
  ]
  if (isCarried)
    return [
      ...said,
      {
        verdict: 'ok',
        sentence:
          'The window of a capacitor alone is worked out with it. An inductor beside it meets source and load apart: for that the reading of a clamp is missing.',
      },
    ]
  if (reading.voids.length > 0) return said
  const isElsewhere = (reading.place === 'between') !== (given.mode === 'differential')
  return [
    ...said,
    {
      verdict: 'unknown',
      sentence: isElsewhere
        ? 'The window is not worked out with it: the capacitors stood where the noise mode that was supposed does not flow.'
        : 'The window is not worked out with it: the bare line first and last and the empty adapter have to be read as well.',
    },
  ]
}

export const CIRCUITS_BASIS: Basis = {
  steps: [],
  assumptions: [
    '|1 + j·b·Z| of each reading, every reading, adapter and lead anywhere within its error; Z has no negative resistance',
    'the worst lies where two of them are at the edge of their error at once: a capacitor is judged at each such place',
    'the figure per leg is of a capacitor without leads; the window counts them',
  ],
  sources: [{ id: 'derived', standing: 'derived' }],
}
