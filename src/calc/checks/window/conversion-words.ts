/** What the window says of the common mode that unequal legs turn into signal. */
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Finding } from '../../types.ts'
import { type Conversion, conversionAt } from './conversion.ts'
import type { WindowRow } from './row.ts'
import type { WindowSetup } from './setup.ts'

const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const dB = (x: number) => formatQuantity(x, 'decibel', 3)

/** Of what was proposed, or of what does it without a capacitor; undefined where nothing is, or nothing is converted. */
export function conversionOf(row: WindowRow, setup: WindowSetup): Conversion | undefined {
  const isWithout = row.need.is === 'choke-alone' || row.need.is === 'inductor-only' || row.need.is === 'none-needed'
  const markedF = row.proposal?.valueF ?? (isWithout ? 0 : undefined)
  const found = markedF === undefined ? undefined : conversionAt(row.topology, setup, markedF)
  return found && Number.isFinite(found.db) ? found : undefined
}

const over = ({ db }: Conversion, { mostConversionDb }: WindowSetup): boolean =>
  mostConversionDb !== undefined && db > mostConversionDb + 1e-6

/** Clause of a row that turns too much into signal; undefined where it does not. */
export function conversionClause(row: WindowRow, setup: WindowSetup): string | undefined {
  const found = setup.mostConversionDb === undefined ? undefined : conversionOf(row, setup)
  if (found === undefined || !over(found, setup)) return undefined
  return `${dB(found.db)} of the common mode becomes signal at ${hertz(found.hz)}, over the ${dB(setup.mostConversionDb ?? 0)} allowed`
}

/** The figure, its limit where there is one, and that it is not judged where there is none. */
export function conversionFinding(found: Conversion | undefined, setup: WindowSetup): readonly Finding[] {
  if (found === undefined) return []
  const { mostConversionDb } = setup
  const said = `With legs as unlike as the tolerance lets them be, ${dB(found.db)} of the common mode becomes signal at ${hertz(found.hz)}`
  if (mostConversionDb === undefined)
    return [{ verdict: 'ok', sentence: `${said}. Nothing says how much may: a figure, not judged.` }]
  return [
    over(found, setup)
      ? { verdict: 'fails', sentence: `${said}, over the ${dB(mostConversionDb)} allowed.` }
      : { verdict: 'ok', sentence: `${said}, of ${dB(mostConversionDb)} allowed.` },
  ]
}

export const conversionBasis = (found: Conversion | undefined): Basis => ({
  steps: found
    ? [
        {
          formula: 'largest |V between the wires / common mode without the filter| over the box of both legs',
          withNumbers: `at ${hertz(found.hz)}`,
          si: found.db,
          quantity: 'decibel',
        },
      ]
    : [],
  assumptions: [
    'each leg with a source and a load of its own, twice those of the pair; what is already on the line and suppressors alike on both',
    'searched from the corners of the box',
  ],
  sources: [{ id: 'derived', clause: 'both legs solved together', standing: 'derived' }],
})
