/** How much capacitance a kind of line stands: by physics (works), and by a document's own figure (permitted). Numbers only. */
import type { Citation, LineKind, LoadingRule } from '../../reference/line-kinds.ts'
import type { Bound, BoundBy } from '../types.ts'
import { faradsForLoss, faradsForPhase } from './band.ts'
import { bandCrossingFarads, canFarads, faradsForImpedance, i2cFarads } from './buses.ts'
import { faradsForRise, faradsForSlowest } from './edge.ts'
import { faradsForMask, maskReferences } from './return-loss.ts'
import { bitSecOf, lineOhmOf, type SignalFacts, signalOhmOf, usefulHzOf } from './signal.ts'

/** The criterion that decides a ceiling, with the values it was worked out from. SI units, dB, degrees. */
export type Criterion =
  | { readonly rule: 'terminal-impedance'; readonly leastOhm: number; readonly atHz: number }
  | { readonly rule: 'slew'; readonly bandV: number; readonly driverA: number; readonly crossingSec: number }
  | {
      readonly rule: 'own-edge' | 'can-recessive'
      readonly ohm: number
      readonly shareOfInterval: number
      readonly bitSec: number
      readonly limitSec: number
    }
  | { readonly rule: 'i2c-rise'; readonly ohm: number; readonly riseSec: number }
  | { readonly rule: 'fixed-edge'; readonly ohm: number; readonly mostSec: number }
  | {
      readonly rule: 'edge-rss'
      readonly ohm: number
      readonly driverEdgeSec: number
      readonly isDriverStated: boolean
      readonly slowestEdgeSec: number
    }
  | {
      readonly rule: 'return-loss'
      readonly ohm: number
      readonly db: number
      readonly hz: number
      readonly referenceOhm: number
    }
  | {
      readonly rule: 'band-loss'
      readonly ohm: number
      readonly hz: number
      readonly mostDb: number
      readonly isOwn: boolean
    }
  | {
      readonly rule: 'phase'
      readonly ohm: number
      readonly hz: number
      readonly mostDeg: number
      readonly isOwn: boolean
    }
  | { readonly rule: 'own-farads' }

/** The field that would tell a ceiling. */
export type CeilingAsk = 'bitRateHz' | 'signalOhm' | 'usefulHz'

/** `farads`: most capacitance in all the signal may see (differential on pairs). `ask` absent = the kind has no criterion. */
export type Works =
  | { readonly farads: number; readonly criterion: Criterion }
  | { readonly farads: undefined; readonly ask?: CeilingAsk }

/** A document's figure: above it = marginal. `per` says what its farads are counted of. */
export type PermittedCeiling = {
  readonly id: string
  readonly farads: number
  readonly per: 'leg' | 'pair'
  readonly source: Citation
}

/** One thing that sets a ceiling: the criterion of the kind, or a figure of the user's own. */
export type NamedWorks = { readonly id: string; readonly by: BoundBy; readonly works: Works }

export type LoadingCeiling = {
  readonly works: Works
  readonly permitted: readonly PermittedCeiling[]
  /** fields without which a limit of the user's own cannot be worked out: never ignored */
  readonly lacks: readonly CeilingAsk[]
}

/**
 * Both ceilings of a kind. Rates > 0 Hz, seconds and ohms > 0. Sources: the kind's own citation for the criterion;
 * the arithmetic is derived.
 */
export function loadingCeiling(facts: SignalFacts): LoadingCeiling {
  const permitted = facts.kind.permitted.map(
    ({ id, farads, counts, source }): PermittedCeiling => ({
      id,
      farads,
      per: counts === 'dm' ? perOf(facts.kind) : 'leg',
      source,
    }),
  )
  const all = worksList(facts)
  const lacking = all.flatMap(({ id, works }) =>
    id !== KIND_WORKS && works.farads === undefined && works.ask !== undefined ? [works.ask] : [],
  )
  return { works: leastWorks(all), permitted: [...permitted, ...cornerOf(facts)], lacks: [...new Set(lacking)] }
}

/**
 * The same ceilings as bounds: on the pair of wires or on one leg, before tolerance, with everything that is on the
 * line counted in.
 */
export function loadingBounds(facts: SignalFacts): readonly Bound[] {
  const { permitted } = loadingCeiling(facts)
  const most = { side: 'most', topology: 'any' } as const
  const per = perOf(facts.kind)
  return [
    ...worksList(facts).flatMap(({ id, by, works: { farads } }): readonly Bound[] =>
      farads === undefined ? [] : [{ ...most, id, by, nature: 'works', farads, per }],
    ),
    ...permitted.map(
      ({ id, farads, per, source }): Bound => ({
        ...most,
        id: `permitted-${id}`,
        by: { is: 'document', document: source.id },
        nature: 'permitted',
        farads,
        per,
      }),
    ),
  ]
}

/** What the signal of a kind is counted on: a pair between its wires, any other line to chassis. */
const perOf = ({ isPair }: LineKind): 'leg' | 'pair' => (isPair ? 'pair' : 'leg')

const KIND_WORKS = 'loading-works'

/** The criterion of the kind, then what the user's own specification says. */
export function worksList(facts: SignalFacts): readonly NamedWorks[] {
  const { ceilingF, mostLossDb, mostPhaseDeg } = facts.own ?? {}
  const user = (fact: 'ownCeilingF' | 'ownLossDb' | 'ownPhaseDeg'): BoundBy => ({ is: 'user', fact })
  return [
    { id: KIND_WORKS, by: { is: 'check', check: 'loading' }, works: worksOf(facts) },
    ...(ceilingF === undefined
      ? []
      : [
          {
            id: 'own-ceiling',
            by: user('ownCeilingF'),
            works: { farads: ceilingF, criterion: { rule: 'own-farads' } } as const,
          },
        ]),
    ...(mostLossDb === undefined
      ? []
      : [
          {
            id: 'own-loss',
            by: user('ownLossDb'),
            works: atUsefulHz(facts, { rule: 'band-loss', mostDb: mostLossDb }, true),
          },
        ]),
    ...(mostPhaseDeg === undefined
      ? []
      : [
          {
            id: 'own-phase',
            by: user('ownPhaseDeg'),
            works: atUsefulHz(facts, { rule: 'phase', mostDeg: mostPhaseDeg }, true),
          },
        ]),
  ]
}

/** The tightest that is known; where none is, what to ask for. */
function leastWorks(all: readonly NamedWorks[]): Works {
  const known = all.flatMap(({ works }) => (works.farads === undefined ? [] : [works]))
  const [first, ...rest] = known
  if (first === undefined)
    return all.find(({ works }) => works.farads === undefined && works.ask)?.works ?? { farads: undefined }
  return rest.reduce((least, works) => (works.farads < least.farads ? works : least), first)
}

const ASK_RATE: Works = { farads: undefined, ask: 'bitRateHz' }
const ASK_OHM: Works = { farads: undefined, ask: 'signalOhm' }
const ASK_HZ: Works = { farads: undefined, ask: 'usefulHz' }

function worksOf(facts: SignalFacts): Works {
  const rule = facts.kind.loading
  switch (rule.rule) {
    case 'none':
      return { farads: undefined }
    case 'terminal-impedance': {
      const { leastOhm, atHz } = rule
      return {
        farads: faradsForImpedance({ leastOhm, hz: atHz }),
        criterion: { rule: rule.rule, leastOhm, atHz },
      }
    }
    case 'slew':
      return slew(facts, rule)
    case 'own-edge':
    case 'can-recessive':
      return ofBit(facts, rule)
    default:
      return behindOhm(facts, rule)
  }
}

type RuleOf<R extends LoadingRule['rule']> = Extract<LoadingRule, { rule: R }>

function slew(facts: SignalFacts, rule: RuleOf<'slew'>): Works {
  const bitSec = bitSecOf(facts)
  if (bitSec === undefined) return ASK_RATE
  const { bandV, driverA } = rule
  const crossingSec = Math.min(rule.shareOfInterval * bitSec, rule.mostSec)
  return {
    farads: bandCrossingFarads({ bandV, driverA, crossingSec }),
    criterion: { rule: 'slew', bandV, driverA, crossingSec },
  }
}

function ofBit(facts: SignalFacts, rule: RuleOf<'own-edge'> | RuleOf<'can-recessive'>): Works {
  const bitSec = bitSecOf(facts)
  const ohm = signalOhmOf(facts)
  if (bitSec === undefined) return ASK_RATE
  if (ohm === undefined) return ASK_OHM
  const { shareOfInterval } = rule
  const limitSec = shareOfInterval * bitSec
  return {
    farads:
      rule.rule === 'can-recessive'
        ? canFarads({ ohm, decaySec: limitSec })
        : faradsForRise({ ohm, edgeSec: limitSec }),
    criterion: { rule: rule.rule, ohm, shareOfInterval, bitSec, limitSec },
  }
}

type OhmRule = RuleOf<'edge-rss' | 'i2c-rise' | 'return-loss' | 'band-loss' | 'phase' | 'fixed-edge'>

function behindOhm(facts: SignalFacts, rule: OhmRule): Works {
  const ohm = signalOhmOf(facts)
  if (ohm === undefined) return ASK_OHM
  switch (rule.rule) {
    case 'edge-rss': {
      const { slowestEdgeSec } = rule
      const driverEdgeSec = facts.driverEdgeSec ?? rule.driverEdgeSec
      const isDriverStated = facts.driverEdgeSec !== undefined
      return {
        farads: faradsForSlowest({ ohm, driverEdgeSec, slowestEdgeSec }),
        criterion: { rule: rule.rule, ohm, driverEdgeSec, isDriverStated, slowestEdgeSec },
      }
    }
    case 'i2c-rise': {
      const { riseSec } = rule
      return { farads: i2cFarads({ pullUpOhm: ohm, riseSec }), criterion: { rule: rule.rule, ohm, riseSec } }
    }
    case 'fixed-edge': {
      const { mostSec } = rule
      return { farads: faradsForRise({ ohm, edgeSec: mostSec }), criterion: { rule: rule.rule, ohm, mostSec } }
    }
    case 'return-loss': {
      const rooms = maskReferences(rule).map((referenceOhm) => ({
        referenceOhm,
        ...faradsForMask(rule.mask, { loadOhm: 2 * ohm, referenceOhm }),
      }))
      const { farads, ...at } = rooms.reduce((least, room) => (room.farads < least.farads ? room : least))
      return { farads, criterion: { rule: rule.rule, ohm, ...at } }
    }
    default:
      return atUsefulHz(facts, rule, false)
  }
}

function atUsefulHz(facts: SignalFacts, rule: RuleOf<'band-loss' | 'phase'>, isOwn: boolean): Works {
  const hz = usefulHzOf(facts)
  const ohm = signalOhmOf(facts)
  if (ohm === undefined) return ASK_OHM
  if (hz === undefined) return ASK_HZ
  if (rule.rule === 'phase') {
    const { mostDeg } = rule
    return { farads: faradsForPhase({ ohm, deg: mostDeg, hz }), criterion: { rule: 'phase', ohm, hz, mostDeg, isOwn } }
  }
  const { mostDb } = rule
  return { farads: faradsForLoss({ ohm, db: mostDb, hz }), criterion: { rule: 'band-loss', ohm, hz, mostDb, isOwn } }
}

/** The mask judged against its worst test impedance: stricter than the plain reference, so it stands as a permitted figure. */
function cornerOf(facts: SignalFacts): readonly PermittedCeiling[] {
  const { kind } = facts
  const rule = kind.loading
  const lineOhm = lineOhmOf(facts)
  if (rule.rule !== 'return-loss' || rule.cornerOhm === undefined || lineOhm === undefined) return []
  const { farads } = faradsForMask(rule.mask, { loadOhm: lineOhm, referenceOhm: rule.cornerOhm })
  return [{ id: `${kind.id}-corner`, farads, per: perOf(kind), source: kind.loadingSource }]
}
