/** From the fields of the check to the pulse, the suppressor and the circuit, or to what is still missing. */
import type { SurgeGiven } from '../checks/surge/inputs.ts'
import { hasCapacitor, hasInductor } from '../network/circuit.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Issue, Topology } from '../types.ts'
import { type FittedFilter, NO_FILTER, type Suppressor, type SurgeCircuit, type SurgeSource } from './circuit.ts'
import { type Pulse, pulseOf } from './pulse.ts'
import { breakdownOfClass, dynamicOhmOfClass } from './suppressor.ts'

/** A suppressor with its spread; a typed breakdown has none. */
export type FittedPart = {
  readonly leastV: number
  readonly mostV: number
  readonly fromClass: boolean
  readonly dynamicOhm: number
  readonly ohmFromClass: boolean
  readonly standoffV: number | undefined
  readonly bidirectional: boolean
  readonly capacitanceF: number
  readonly leadH: number
}

export type SurgeSetup = {
  readonly pulse: Pulse
  readonly part: FittedPart | undefined
  readonly filter: FittedFilter
  readonly placement: 'connector' | 'behind'
  readonly lineOhm: number
  readonly lineH: number
  readonly loadOhm: number
  readonly loadF: number
  readonly sign: 1 | -1
}

export type SetupAnswer =
  | { readonly is: 'setup'; readonly setup: SurgeSetup }
  | { readonly is: 'missing'; readonly words: readonly string[] }
  | { readonly is: 'refused'; readonly issue: Issue }

/** Everything a run needs. */
export function setUpSurge(given: SurgeGiven): SetupAnswer {
  const pulse = pulseOf(given)
  if (pulse.is === 'refused') return pulse
  const part = partOf(given)
  if (part.is === 'refused') return part
  const filter = filterOf(given)
  const words = [
    ...(pulse.is === 'missing' ? pulse.words : []),
    ...(part.is === 'missing' ? part.words : []),
    ...('missing' in filter ? filter.missing : []),
  ]
  if (pulse.is === 'missing' || part.is === 'missing' || 'missing' in filter) return { is: 'missing', words }
  return {
    is: 'setup',
    setup: {
      pulse: pulse.pulse,
      part: part.is === 'part' ? part.part : undefined,
      filter: filter.filter,
      placement: given.placement === 'behind' ? 'behind' : 'connector',
      lineOhm: given.lineOhm ?? 0,
      lineH: henriesOf(given.lineH),
      loadOhm: given.loadOhm ?? 10e3,
      loadF: faradsOf(given.loadF),
      sign: given.polarity === 'negative' ? -1 : 1,
    },
  }
}

/** Smaller than any piece of wire: none at all, so that no rate overflows. */
const faradsOf = (farads: number | undefined): number => (farads === undefined || farads < 1e-18 ? 0 : farads)
const henriesOf = (henries: number | undefined): number => (henries === undefined || henries < 1e-15 ? 0 : henries)

type PartAnswer =
  | { readonly is: 'none' }
  | { readonly is: 'part'; readonly part: FittedPart }
  | { readonly is: 'missing'; readonly words: readonly string[] }
  | { readonly is: 'refused'; readonly issue: Issue }

function partOf(given: SurgeGiven): PartAnswer {
  const { standoffV, breakdownV } = given
  if (standoffV === undefined && breakdownV === undefined) return { is: 'none' }
  if (standoffV !== undefined && breakdownV !== undefined && standoffV > breakdownV)
    return {
      is: 'refused',
      issue: {
        key: 'standoffV',
        code: 'above-breakdown',
        message: `A stand-off of ${volts(standoffV)} is above the breakdown of ${volts(breakdownV)}; it is usually 10 to 15 % below.`,
      },
    }
  const spread = breakdownV === undefined ? breakdownOfClass(standoffV ?? 0) : { leastV: breakdownV, mostV: breakdownV }
  const classOhm =
    given.ratedPulseW === undefined
      ? undefined
      : dynamicOhmOfClass({ mostBreakdownV: spread.mostV, ratedPulseW: given.ratedPulseW })
  const dynamicOhm = given.dynamicOhm ?? classOhm
  if (dynamicOhm === undefined)
    return { is: 'missing', words: ['the dynamic resistance or the pulse power of the suppressor'] }
  return {
    is: 'part',
    part: {
      ...spread,
      fromClass: breakdownV === undefined,
      dynamicOhm,
      ohmFromClass: given.dynamicOhm === undefined,
      standoffV,
      bidirectional: given.bidirectional ?? false,
      capacitanceF: faradsOf(given.suppressorF),
      leadH: henriesOf(given.suppressorLeadH),
    },
  }
}

const volts = (si: number) => formatQuantity(si, 'voltage')

function filterOf(given: SurgeGiven): { filter: FittedFilter } | { missing: readonly string[] } {
  const topology = (given.topology ?? 'none') as Topology | 'none'
  if (topology === 'none') return { filter: NO_FILTER }
  const missing = [
    ...(hasCapacitor(topology) && given.capacitanceF === undefined ? ['the capacitance of the filter'] : []),
    ...(hasInductor(topology) && given.inductanceH === undefined ? ['the inductance of the filter'] : []),
  ]
  if (missing.length > 0) return { missing }
  const [farads, henries] = [faradsOf(given.capacitanceF), henriesOf(given.inductanceH)]
  return {
    filter: {
      topology,
      capacitanceF: hasCapacitor(topology) ? farads : 0,
      capacitance2F:
        topology === 'PI' ? (given.capacitance2F === undefined ? farads : faradsOf(given.capacitance2F)) : 0,
      inductanceH: hasInductor(topology) ? henries : 0,
      inductance2H: topology === 'T' ? (given.inductance2H === undefined ? henries : henriesOf(given.inductance2H)) : 0,
      dcrOhm: given.dcrOhm ?? 0,
    },
  }
}

/** The suppressor at the end of its spread that makes most volts, and at the one that makes most current. */
export function variantsOf(part: FittedPart | undefined): readonly (Suppressor | undefined)[] {
  if (!part) return [undefined]
  const { dynamicOhm, bidirectional, capacitanceF, leadH } = part
  const at = (breakdownV: number): Suppressor => ({ breakdownV, dynamicOhm, bidirectional, capacitanceF, leadH })
  return part.leastV === part.mostV ? [at(part.mostV)] : [at(part.mostV), at(part.leastV)]
}

/** The circuit of one run. `sign` turns the generator round; `placement` may differ from the one entered. */
export function circuitOf(
  setup: SurgeSetup,
  suppressor: Suppressor | undefined,
  changed: { readonly sign?: 1 | -1; readonly placement?: 'connector' | 'behind' } = {},
): SurgeCircuit {
  const placement = changed.placement ?? setup.placement
  return {
    source: sourceOf(setup, changed.sign ?? setup.sign, suppressor !== undefined && placement === 'connector'),
    lineOhm: setup.lineOhm,
    lineH: setup.lineH,
    filter: setup.filter,
    ...(suppressor ? { suppressor } : {}),
    placement,
    loadOhm: setup.loadOhm,
    loadF: setup.loadF,
  }
}

/**
 * The discharge current of IEC 61000-4-2 is defined into a short: with a suppressor at the connector it is driven as it
 * stands; otherwise, and where an impedance was entered, that impedance lies across it.
 */
function sourceOf({ pulse }: SurgeSetup, sign: 1 | -1, clampedAtOnce: boolean): SurgeSource {
  if (pulse.row.id === 'iec-esd') {
    const ohm = clampedAtOnce && !pulse.ohmEntered ? Number.POSITIVE_INFINITY : pulse.sourceOhm
    return { form: 'current', peak: sign * pulse.shortCircuitA, ohm }
  }
  return { form: 'voltage', peak: sign * pulse.openCircuitV, ohm: pulse.sourceOhm }
}
