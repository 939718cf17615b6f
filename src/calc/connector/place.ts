/** Where the parts of a contact go, and which suppressor its line lets it have. */
import { busSurgesOf } from '../../reference/bus-surges.ts'
import { lineKindById } from '../../reference/line-kinds.ts'
import { FORWARD_STARTS } from '../../reference/suppressors.ts'
import { listed } from '../explain/sentence.ts'
import type { Express } from '../line/fields.ts'
import { resolve } from '../line/resolver.ts'
import { hasCapacitor } from '../network/circuit.ts'
import { formatExact } from '../quantity/format.ts'
import { typedPeakV } from '../surge/line.ts'
import { leastStandoffV } from '../surge/suppressor.ts'
import type { Line } from '../types.ts'
import type { DecidedContact } from './decided.ts'

/** Above this nobody builds a capacitor into a contact cavity without saying so. Practice, a question for the maker. */
export const LARGE_IN_CONTACT_F = 100e-9

/** Where the filter goes and which way round it stands. */
export function placeWords({ part }: DecidedContact, half: string | undefined): string | undefined {
  if (part === undefined) return undefined
  const { topology, capacitanceF } = part
  const where = /adapter/iu.test(half ?? '') ? 'in the adapter (a test tool, not for flight)' : 'in this connector'
  const bits = [
    ...(hasCapacitor(topology) ? ['capacitor to the plate'] : []),
    ...(topology === 'LC' ? ['inductor on the side the noise comes from'] : []),
    ...(topology === 'CL' ? ['inductor on the side away from the noise'] : []),
    ...(topology === 'PI' || topology === 'T' || topology === 'L' ? [`inductor in the line`] : []),
  ]
  const large =
    hasCapacitor(topology) && capacitanceF > LARGE_IN_CONTACT_F
      ? '; more than a contact usually takes: on the board behind it if the maker cannot'
      : ''
  return `${where}: ${listed(bits)}${large}`
}

export type SuppressorAdvice = {
  /** "33 V stand-off, unidirectional"; absent = none is advised */
  readonly class?: string
  /** what that class says, in V; absent = none is advised */
  readonly standoffV?: number
  readonly isBidirectional?: boolean
  readonly why: string
}

/** What a line reaches by itself, steady and in the long surges of its supply; undefined where nothing is known of it. */
export function reachOf(
  line: Line,
  express?: Express,
): { readonly highV: number; readonly lowV: number | undefined; readonly needsCategory: boolean } | undefined {
  const resolution = resolve(line, express)
  const category = resolution.fact('supplyCategory')?.text.trim() ?? ''
  const kind = lineKindById(line.facts.lineKind?.text.trim() ?? '')
  const volts = (key: 'busMaxV' | 'busMinV') => resolution.numbers(resolution.fact(key), 'voltage')[0]
  const [ownLowV, ownHighV] = kind?.ownPeaks?.leg ?? [undefined, undefined]
  const supply = kind?.ownPeaks?.surgesOf
  const surges = supply === undefined ? [] : busSurgesOf(supply, category)
  const known = [volts('busMaxV'), ownHighV, ...surges.map(({ peakV }) => peakV)].filter((one) => one !== undefined)
  if (known.length === 0) return undefined
  return {
    highV: Math.max(...known),
    lowV: volts('busMinV') ?? ownLowV,
    needsCategory:
      supply !== undefined &&
      category === '' &&
      typedPeakV({ kind, busMaxV: volts('busMaxV'), part: { place: 'leg' } }) === undefined,
  }
}

/** The surge facts of a line that say it is struck at all. */
const STRUCK = ['surgeWaveform', 'surgeLevel'] as const

/**
 * The smallest stand-off step above everything the line does by itself, cold breakdown above it too. Its power class takes
 * surges to find, and is found when it is asked for. No strike entered, of the line or of its connector: none.
 */
export function suppressorFor(line: Line, express?: Express, isConnectorStruck = false): SuppressorAdvice {
  const resolution = resolve(line, express)
  const text = (key: 'surgeWaveform' | 'surgeLevel') => resolution.fact(key)?.text.trim() ?? ''
  if (!isConnectorStruck && STRUCK.every((key) => text(key) === ''))
    return {
      why: 'No strike was entered for this line: no suppressor is proposed. It needs the waveform and level of the test.',
    }
  const reach = reachOf(line, express)
  if (reach === undefined)
    return {
      why: 'What the line reaches by itself is not known: enter its highest peak before a suppressor is chosen.',
    }
  const { highV, lowV } = reach
  if (lowV === undefined)
    return {
      why: 'Whether the line goes below chassis is not known: name the line, or enter its lowest peak (0 if it never does), before a suppressor is chosen.',
    }
  const isBidirectional = lowV <= -FORWARD_STARTS.value
  const mostV = Math.max(highV, isBidirectional ? -lowV : 0)
  const standoffV = leastStandoffV(mostV)
  if (standoffV === undefined)
    return { why: `No usual stand-off step is above the ${formatExact(mostV, 'voltage')} the line reaches by itself.` }
  const { needsCategory } = reach
  return {
    standoffV,
    isBidirectional,
    class: `${formatExact(standoffV, 'voltage')} stand-off, ${isBidirectional ? 'bidirectional' : 'unidirectional'}`,
    why: `The line reaches ${formatExact(mostV, 'voltage')} by itself; on the cable side, ahead of the filter.${
      needsCategory ? ' The surges of its supply are not counted until the category of the supply is entered.' : ''
    }`,
  }
}
