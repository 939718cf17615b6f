/** From what was asked to the pulse, the suppressor and the circuit, or to what is still missing. */
import { type LineKind, lineKindById } from '../../reference/line-kinds.ts'
import { hasCapacitor, hasInductor } from '../network/circuit.ts'
import type { Topology } from '../terms.ts'
import type { SurgeAsked } from './asked.ts'
import { type FittedFilter, NO_FILTER, type Suppressor, type SurgeCircuit, type SurgeSource } from './circuit.ts'
import { betweenLegs, type FittedPart, faradsOf, henriesOf, partOf } from './part.ts'
import { type Pulse, pulseOf } from './pulse.ts'
import { type Refusing, refuse, type Waiting, type Wanted } from './wanted.ts'

export type SurgeSetup = {
  readonly pulse: Pulse
  readonly kind: LineKind | undefined
  /** the part between its own two ends */
  readonly part: FittedPart | undefined
  /** the part as the surge meets it; undefined: it is not in the way */
  readonly met: FittedPart | undefined
  /** as the surge meets it: per leg in common mode, between the legs in differential mode */
  readonly filter: FittedFilter
  readonly mode: 'common' | 'differential'
  /** what the load is held against: between the legs, where that was entered, in differential mode */
  readonly withstandV: number | undefined
  readonly placement: 'connector' | 'behind'
  readonly lineOhm: number
  readonly lineH: number
  readonly loadOhm: number
  readonly loadF: number
  readonly sign: 1 | -1
  /** volts the line may hold when the surge comes: both crests of an AC supply, on and off of a DC one */
  readonly restV: readonly [number, ...number[]]
}

export type SetupAnswer = { readonly is: 'setup'; readonly setup: SurgeSetup } | Waiting | Refusing

/** Everything a run needs. */
export function setUpSurge(asked: SurgeAsked): SetupAnswer {
  const pulse = pulseOf(asked)
  if (pulse.is === 'refused') return pulse
  const part = partOf(asked)
  if (part.is === 'refused') return part
  const kind = asked.lineKind === undefined ? undefined : lineKindById(asked.lineKind)
  const mode = asked.surgeMode === 'differential' ? 'differential' : 'common'
  if (kind && !kind.isPair && part.is === 'part' && part.part.place === 'pair')
    return refuse({ code: 'not-a-pair', key: 'suppressorPlace', lineName: kind.name })
  if (kind && !kind.isPair && mode === 'differential')
    return refuse({ code: 'not-a-pair', key: 'surgeMode', lineName: kind.name })
  const filter = filterOf(asked)
  if (pulse.is === 'missing' || part.is === 'missing' || 'wanted' in filter)
    return {
      is: 'missing',
      wanted: [
        ...(pulse.is === 'missing' ? pulse.wanted : []),
        ...(part.is === 'missing' ? part.wanted : []),
        ...('wanted' in filter ? filter.wanted : []),
      ],
    }
  const own = part.is === 'part' ? part.part : undefined
  return {
    is: 'setup',
    setup: {
      pulse: pulse.pulse,
      kind,
      part: own,
      met: own && metBy(mode, own),
      filter: mode === 'differential' ? filterBetweenLegs(filter.filter) : filter.filter,
      mode,
      withstandV: mode === 'differential' ? (asked.pairWithstandV ?? asked.withstandV) : asked.withstandV,
      placement: asked.placement === 'behind' ? 'behind' : 'connector',
      lineOhm: asked.lineOhm ?? 0,
      lineH: henriesOf(asked.lineH),
      loadOhm: asked.loadOhm,
      loadF: faradsOf(asked.loadF),
      sign: asked.polarity === 'negative' ? -1 : 1,
      restV: restOf({ asked, kind, mode, isClamped: own !== undefined && metBy(mode, own) !== undefined }),
    },
  }
}

/** Across the pair it does nothing for what both legs carry alike; between the legs two leg parts stand in series. */
function metBy(mode: SurgeSetup['mode'], part: FittedPart): FittedPart | undefined {
  if (mode === 'common') return part.place === 'pair' ? undefined : part
  return part.place === 'pair' ? part : betweenLegs(part)
}

/**
 * Where no kind tells what the line holds by itself: the peaks that were typed. They include its longest surge, which a
 * suppressor must stand off and is judged for on its own; a clamped pulse then starts from 0 V.
 */
function restOf(q: {
  readonly asked: SurgeAsked
  readonly kind: LineKind | undefined
  readonly mode: SurgeSetup['mode']
  readonly isClamped: boolean
}): readonly [number, ...number[]] {
  const { kind, mode, isClamped } = q
  const { busMaxV = 0, busMinV = 0 } = q.asked
  const own = kind?.ownPeaks
  if (!own) return isClamped || (busMaxV === 0 && busMinV === 0) ? [0] : [busMaxV, busMinV]
  if (!own.isPowered || mode === 'differential') return [0]
  const [lowV, highV] = own.leg
  return [highV, lowV]
}

function filterOf(asked: SurgeAsked): { filter: FittedFilter } | { wanted: readonly Wanted[] } {
  const topology = asked.topology as Topology | 'none'
  if (topology === 'none') return { filter: NO_FILTER }
  const wanted: Wanted[] = [
    ...(hasCapacitor(topology) && asked.capacitanceF === undefined ? [['capacitanceF'] as const] : []),
    ...(hasInductor(topology) && asked.inductanceH === undefined ? [['inductanceH'] as const] : []),
  ]
  if (wanted.length > 0) return { wanted }
  const [farads, henries] = [faradsOf(asked.capacitanceF), henriesOf(asked.inductanceH)]
  return {
    filter: {
      topology,
      capacitanceF: hasCapacitor(topology) ? farads : 0,
      capacitance2F:
        topology === 'PI' ? (asked.capacitance2F === undefined ? farads : faradsOf(asked.capacitance2F)) : 0,
      inductanceH: hasInductor(topology) ? henries : 0,
      inductance2H: topology === 'T' ? (asked.inductance2H === undefined ? henries : henriesOf(asked.inductance2H)) : 0,
      dcrOhm: asked.dcrOhm,
    },
  }
}

/** Equal legs: half of each capacitor and twice each coil stand between the wires. Derived. */
const filterBetweenLegs = (leg: FittedFilter): FittedFilter => ({
  topology: leg.topology,
  capacitanceF: leg.capacitanceF / 2,
  capacitance2F: leg.capacitance2F / 2,
  inductanceH: 2 * leg.inductanceH,
  inductance2H: 2 * leg.inductance2H,
  dcrOhm: 2 * leg.dcrOhm,
})

export type Changed = {
  readonly sign?: 1 | -1
  readonly placement?: 'connector' | 'behind'
  readonly restV?: number
  /** of the generator, against the pulse entered */
  readonly driveShare?: number
}

/** The circuit of one run. `sign` turns the generator round; `placement` may differ from the one entered. */
export function circuitOf(setup: SurgeSetup, suppressor: Suppressor | undefined, changed: Changed = {}): SurgeCircuit {
  const placement = changed.placement ?? setup.placement
  const restV = restWithin(suppressor, changed.restV ?? setup.restV[0])
  return {
    source: sourceOf(setup, suppressor, placement, (changed.sign ?? setup.sign) * (changed.driveShare ?? 1)),
    lineOhm: setup.lineOhm,
    lineH: setup.lineH,
    filter: setup.filter,
    ...(suppressor ? { suppressor } : {}),
    placement,
    loadOhm: setup.loadOhm,
    loadF: setup.loadF,
    ...(restV === 0 ? {} : { restV }),
  }
}

/** A part that conducts at the line's own volts holds them down: the pulse then starts from its knee. */
function restWithin(suppressor: Suppressor | undefined, restV: number): number {
  if (!suppressor) return restV
  const lowV = suppressor.bidirectional ? suppressor.breakdownV : 1
  return Math.min(KNEE * suppressor.breakdownV, Math.max(-KNEE * lowV, restV))
}

const KNEE = 0.999

/**
 * A discharge is defined by its current into a short. Into a clamp at the connector it is driven as it stands, as long
 * as the volts there stay below the charge; otherwise through V/I, so that the open volts are those of the charge. An
 * impedance that was entered lies across it, if it lets no more through.
 */
function sourceOf(
  { pulse, lineOhm, lineH }: SurgeSetup,
  suppressor: Suppressor | undefined,
  placement: 'connector' | 'behind',
  share: number,
): SurgeSource {
  if (pulse.row.amperePerVolt === undefined)
    return { form: 'voltage', peak: share * pulse.openCircuitV, ohm: pulse.sourceOhm }
  const { openCircuitV, shortCircuitA, shape } = pulse
  const openOhm = openCircuitV / shortCircuitA
  const peak = share * shortCircuitA
  if (!pulse.taken.ohm) return { form: 'current', peak, ohm: Math.min(openOhm, pulse.sourceOhm) }
  const clampedAtOnce = suppressor !== undefined && placement === 'connector' && lineOhm === 0 && lineH === 0
  const aheadV = suppressor
    ? suppressor.breakdownV + shortCircuitA * (suppressor.dynamicOhm + suppressor.leadH / shape.riseSec)
    : Number.POSITIVE_INFINITY
  return { form: 'current', peak, ohm: clampedAtOnce && aheadV < openCircuitV ? Number.POSITIVE_INFINITY : openOhm }
}
