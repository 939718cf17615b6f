/** A measured filter fitted to the parts of the model, and those parts taken over into the facts of a line. */
import { type ReadonlySignal, signal } from '@preact/signals'
import { printText } from '../calc/quantity/format.ts'
import type { Quantity } from '../calc/quantity/quantity.ts'
import type { Fitted, PartName } from '../calc/touchstone/fit.ts'
import type { Network } from '../calc/touchstone/types.ts'
import type { FactKey, Line } from '../calc/types.ts'
import type { Desk } from './desk.ts'
import { doing } from './trace-work.ts'
import { runInWorker } from './work.ts'

const found = signal<{ readonly of: Network; readonly fits: readonly Fitted[] } | undefined>(undefined)
export const fits: ReadonlySignal<{ readonly of: Network; readonly fits: readonly Fitted[] } | undefined> = found

/** Searches the parts; a stop leaves what was found before. */
export function fitParts(network: Network): Promise<void> {
  return doing({
    what: 'Fitting the parts',
    about: found,
    job: (tell, stop) => runInWorker({ is: 'fitFilter', input: network }, ({ doneFrac }) => tell(doneFrac), stop),
    take: (fits) => {
      found.value = { of: network, fits }
    },
  })
}

/** Which fact each part is: what is measured is the part itself, so that nothing of its spread is known by it. */
export const FACT_OF: Readonly<Record<PartName, readonly [FactKey, Quantity]>> = {
  capacitanceF: ['markedF', 'capacitance'],
  capacitance2F: ['marked2F', 'capacitance'],
  esrOhm: ['esrOhm', 'resistance'],
  eslH: ['eslH', 'inductance'],
  inductanceH: ['inductanceH', 'inductance'],
  inductance2H: ['inductance2H', 'inductance'],
  dcrOhm: ['dcrOhm', 'resistance'],
  inductorParallelF: ['inductorParallelF', 'capacitance'],
  inductorParallelOhm: ['inductorParallelOhm', 'resistance'],
}

/** Told to be less than this it stands as 0. Four digits: more would be its residual. */
const NOTHING_BELOW: Readonly<Partial<Record<Quantity, number>>> = {
  resistance: 1e-6,
  inductance: 1e-13,
  capacitance: 1e-15,
}
const rounded = (si: number, quantity: Quantity): number =>
  si < (NOTHING_BELOW[quantity] ?? 0) ? 0 : Number(si.toPrecision(4))
/** A loss resistance above this is none. */
const NO_LOSS_OHM = 1e9

/** What was measured of the parts as the texts of facts: none of one on which the measurement says nothing. */
export function textsOf({ parts, untold }: Pick<Fitted, 'parts' | 'untold'>): readonly (readonly [FactKey, string])[] {
  const texts = Object.entries(FACT_OF).flatMap(([name, [fact, quantity]]): readonly (readonly [FactKey, string])[] => {
    const si = parts[name as PartName]
    if (si === undefined || untold.includes(name as PartName) || (name === 'inductorParallelOhm' && si > NO_LOSS_OHM))
      return []
    return [[fact, printText(rounded(si, quantity), quantity)]]
  })
  return [['topology', parts.topology], ...texts]
}

/**
 * The facts of its parts that are not taken over and have a text on the line, with that text. It may be out of data or of
 * another filter that was fitted before, which no fact tells apart, so that nothing is erased.
 */
export function staying(
  fitted: Pick<Fitted, 'parts' | 'untold'>,
  { facts }: Line,
): readonly (readonly [FactKey, string])[] {
  const taken = new Set(textsOf(fitted).map(([fact]) => fact))
  return Object.entries(FACT_OF).flatMap(([name, [fact]]) => {
    const text = facts[fact]?.text ?? ''
    return fitted.parts[name as PartName] === undefined || taken.has(fact) || text === '' ? [] : [[fact, text] as const]
  })
}

/**
 * Writes the fitted parts to the line; every check reads them there. `mode`: of a pair, the mode they were fitted in, in
 * which alone they count.
 */
export function takeParts({ line, write }: Desk, fitted: Fitted, mode?: 'common' | 'differential'): void {
  const texts: readonly (readonly [FactKey, string])[] = [
    ...textsOf(fitted),
    ...(mode === undefined ? [] : [['noiseMode', mode] as const]),
  ]
  for (const [fact, text] of texts) {
    const before = line.peek().facts[fact]
    if (before?.text !== text) write(fact, { text, origin: { by: 'user' } }, before?.text ?? '')
  }
}
