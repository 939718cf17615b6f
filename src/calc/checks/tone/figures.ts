/** The tone check in numbers: explanations in their order. */
import { type Explanation, explanationsOf } from '../../tone/explanations.ts'
import type { Figures } from '../../types.ts'
import type { ToneGiven } from './inputs.ts'

export type ToneFigures = Figures & { readonly found: readonly Explanation[] }

export function toneFigures(given: ToneGiven): ToneFigures {
  const { toneHz, offFrac, rpm, polePairs, driveRatio, pulses, busHz, cylinders, bars } = given
  const found =
    toneHz === undefined
      ? []
      : explanationsOf({ toneHz, offFrac, rpm, polePairs, driveRatio, pulses, busHz, cylinders, bars })
  const [first, second] = found
  const values: Readonly<Record<string, number | undefined>> = {
    explanationCount: toneHz === undefined ? undefined : found.length,
    predictedHz: first?.hz,
    order: first?.order,
    secondHz: second?.hz,
    turnHz: rpm === undefined ? undefined : rpm / 60,
    toneOrder: rpm === undefined || toneHz === undefined ? undefined : toneHz / (rpm / 60),
  }
  return {
    // a tone alone proves nothing: it names what to test
    verdict: 'unknown',
    found,
    values: Object.fromEntries(
      Object.entries(values).filter((entry): entry is [string, number] => entry[1] !== undefined),
    ),
    bounds: [],
    rungs: [],
  }
}
