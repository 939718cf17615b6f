/** How much capacitance a kind of line stands: by physics (works), and by a document's own figure (permitted). */
import type { Citation, LineKind, LoadingRule } from '../../reference/line-kinds.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Basis, Step } from '../types.ts'
import { faradsForLoss, faradsForPhase } from './band.ts'
import { bandCrossingFarads, canFarads, faradsForImpedance, i2cFarads } from './buses.ts'
import { faradsForRise, faradsForSlowest } from './edge.ts'
import { faradsForMask } from './return-loss.ts'

/** What the user entered about the signal; absent = the kind's own figure. */
export type SignalFacts = {
  readonly kind: LineKind
  readonly bitRateHz?: number | undefined
  readonly driverEdgeSec?: number | undefined
  readonly signalOhm?: number | undefined
}

/** `farads`: most capacitance in all the signal may see (differential on pairs); undefined = not known, `why` says what to enter. */
export type Works =
  | { readonly farads: number; readonly why: string; readonly basis: Basis }
  | {
      readonly farads: undefined
      readonly why: string
      readonly basis: Basis
      /** the field that would answer it; absent = the kind has no criterion */
      readonly ask?: 'bitRateHz' | 'signalOhm'
    }

export type PermittedCeiling = {
  readonly id: string
  readonly label: string
  readonly farads: number
  readonly counts: 'dm' | 'leg'
  readonly source: Citation
}

export type LoadingCeiling = { readonly works: Works; readonly permitted: readonly PermittedCeiling[] }

/** Resistance the signal sees in Ω: as entered, else the kind's own; undefined when neither is known. */
export const signalOhmOf = ({ kind, signalOhm }: SignalFacts): number | undefined => signalOhm ?? kind.signalOhm?.ohm

/** Bit time in s: of the rate entered, else of the kind's only rate; undefined when neither is known. */
export function bitSecOf({ kind, bitRateHz }: SignalFacts): number | undefined {
  const rate = bitRateHz ?? kind.bitRateHz
  return rate === undefined ? undefined : 1 / rate
}

/** What the line is terminated in, in Ω: twice the signal resistance of a matched line. */
export const lineOhmOf = (facts: SignalFacts): number | undefined => {
  const ohm = signalOhmOf(facts)
  return ohm === undefined ? undefined : 2 * ohm
}

/**
 * Both ceilings of a kind. Rates > 0 Hz, seconds and ohms > 0. Sources: the kind's own citation for the criterion;
 * the arithmetic is derived.
 */
export function loadingCeiling(facts: SignalFacts): LoadingCeiling {
  return { works: worksOf(facts), permitted: [...facts.kind.permitted, ...cornerOf(facts)] }
}

type Found = { readonly farads: number; readonly why: string; readonly steps: readonly Step[] }
type Wanting = { readonly ask?: 'bitRateHz' | 'signalOhm'; readonly why: string }

function worksOf(facts: SignalFacts): Works {
  const found = byRule(facts, facts.kind.loading)
  const basis: Basis = {
    steps: 'steps' in found ? found.steps : [],
    assumptions: assumptionsOf(facts),
    sources: [facts.kind.loadingSource, { id: 'derived', standing: 'derived' }],
  }
  if ('farads' in found) return { farads: found.farads, why: found.why, basis }
  return {
    farads: undefined,
    why: found.why,
    basis,
    ...(found.ask === undefined ? {} : { ask: found.ask }),
  }
}

function assumptionsOf({ kind, signalOhm }: SignalFacts): readonly string[] {
  if (signalOhm !== undefined || kind.signalOhm === undefined) return []
  return [`signal resistance ${show(kind.signalOhm.ohm, 'resistance')}: ${kind.signalOhm.why}`]
}

const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)
const ohms = (si: number) => show(si, 'resistance')
const secs = (si: number) => show(si, 'time')
const pick = (formula: string, withNumbers: string, si: number): Step => ({
  formula,
  withNumbers,
  si,
  quantity: 'capacitance',
})

const ASK_RATE: Wanting = { ask: 'bitRateHz', why: 'Enter the bit rate: what this line can stand depends on it.' }
const askOhm = (what: string): Wanting => ({
  ask: 'signalOhm',
  why: `Enter ${what}: what this line can stand depends on it.`,
})

function byRule(facts: SignalFacts, rule: LoadingRule): Found | Wanting {
  switch (rule.rule) {
    case 'none':
      return { why: rule.why }
    case 'terminal-impedance':
      return impedance(rule)
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

function impedance({ leastOhm, atHz }: RuleOf<'terminal-impedance'>): Found {
  const farads = faradsForImpedance({ leastOhm, hz: atHz })
  return {
    farads,
    why: `the terminal must stay at or above ${ohms(leastOhm)} up to ${show(atHz, 'frequency')}, transformer and wiring of the box included`,
    steps: [pick('C = 1 / (2π·f·|Z|)', `1 / (2π · ${show(atHz, 'frequency')} · ${ohms(leastOhm)})`, farads)],
  }
}

function slew(facts: SignalFacts, rule: RuleOf<'slew'>): Found | Wanting {
  const bitSec = bitSecOf(facts)
  if (bitSec === undefined) return ASK_RATE
  const crossingSec = Math.min(rule.shareOfInterval * bitSec, rule.mostSec)
  const farads = bandCrossingFarads({ bandV: rule.bandV, driverA: rule.driverA, crossingSec })
  return {
    farads,
    why: `the ±${show(rule.bandV / 2, 'voltage')} band must be crossed within ${secs(crossingSec)} by a driver of ${show(rule.driverA, 'current')}`,
    steps: [
      pick(
        'C = I · t / V',
        `${show(rule.driverA, 'current')} · ${secs(crossingSec)} / ${show(rule.bandV, 'voltage')}`,
        farads,
      ),
    ],
  }
}

function ofBit(facts: SignalFacts, rule: RuleOf<'own-edge'> | RuleOf<'can-recessive'>): Found | Wanting {
  const bitSec = bitSecOf(facts)
  const ohm = signalOhmOf(facts)
  if (bitSec === undefined) return ASK_RATE
  if (ohm === undefined) return askOhm('the resistance the signal sees at the capacitor')
  const limitSec = rule.shareOfInterval * bitSec
  const share = show(rule.shareOfInterval, 'fraction')
  if (rule.rule === 'can-recessive') {
    const farads = canFarads({ ohm, decaySec: limitSec })
    return {
      farads,
      why: `the recessive edge (2.0 → 0.5 V) may take ${secs(limitSec)}, ${share} of a bit, through ${ohms(ohm)}`,
      steps: [pick('C = share · T / (ln 4 · R)', `${share} · ${secs(bitSec)} / (1.386 · ${ohms(ohm)})`, farads)],
    }
  }
  const farads = faradsForRise({ ohm, edgeSec: limitSec })
  return {
    farads,
    why: `its own edge (10–90 %) may take ${secs(limitSec)}, ${share} of a bit, through ${ohms(ohm)}`,
    steps: [pick('C = share · T / (ln 9 · R)', `${share} · ${secs(bitSec)} / (2.197 · ${ohms(ohm)})`, farads)],
  }
}

type OhmRule = RuleOf<'edge-rss' | 'i2c-rise' | 'return-loss' | 'band-loss' | 'phase' | 'fixed-edge'>

function behindOhm(facts: SignalFacts, rule: OhmRule): Found | Wanting {
  const ohm = signalOhmOf(facts)
  if (ohm === undefined) {
    return askOhm(rule.rule === 'i2c-rise' ? 'the pull-up as the signal resistance' : 'the resistance the signal sees')
  }
  switch (rule.rule) {
    case 'edge-rss':
      return slowestEdge(facts, rule, ohm)
    case 'i2c-rise': {
      const farads = i2cFarads({ pullUpOhm: ohm, riseSec: rule.riseSec })
      return {
        farads,
        why: `the rise (30–70 %) may take ${secs(rule.riseSec)} through a pull-up of ${ohms(ohm)}`,
        steps: [pick('C = t / (0.8473 · R)', `${secs(rule.riseSec)} / (0.8473 · ${ohms(ohm)})`, farads)],
      }
    }
    case 'fixed-edge': {
      const farads = faradsForRise({ ohm, edgeSec: rule.mostSec })
      return {
        farads,
        why: `the edge may take ${secs(rule.mostSec)} through ${ohms(ohm)} (common practice for a discrete)`,
        steps: [pick('C = t / (ln 9 · R)', `${secs(rule.mostSec)} / (2.197 · ${ohms(ohm)})`, farads)],
      }
    }
    case 'return-loss':
      return mask(rule, ohm)
    default:
      return atUsefulHz(facts, rule, ohm)
  }
}

function slowestEdge(facts: SignalFacts, rule: RuleOf<'edge-rss'>, ohm: number): Found {
  const driverEdgeSec = facts.driverEdgeSec ?? rule.driverEdgeSec
  const { slowestEdgeSec } = rule
  const farads = faradsForSlowest({ ohm, driverEdgeSec, slowestEdgeSec })
  const said = facts.driverEdgeSec === undefined ? 'the nominal' : 'the stated'
  return {
    farads,
    why:
      farads === 0
        ? `${said} driver edge of ${secs(driverEdgeSec)} already takes the whole ${secs(slowestEdgeSec)} the standard allows`
        : `the edge may slow from ${said} ${secs(driverEdgeSec)} to ${secs(slowestEdgeSec)} through ${ohms(ohm)}`,
    steps: [
      pick(
        'C = √(t_max² − t0²) / (ln 9 · R)',
        `√(${secs(slowestEdgeSec)}² − ${secs(driverEdgeSec)}²) / (2.197 · ${ohms(ohm)})`,
        farads,
      ),
    ],
  }
}

function mask(rule: RuleOf<'return-loss'>, ohm: number): Found {
  const found = faradsForMask(rule.mask, { loadOhm: 2 * ohm, referenceOhm: rule.referenceOhm })
  return {
    farads: found.farads,
    why: `return loss must stay at or above ${show(found.db, 'decibel', 4)} at ${show(found.hz, 'frequency')}, against ${ohms(rule.referenceOhm)}; the mask is for the whole port`,
    steps: [
      pick(
        'C = 2g / (ω · Z0 · √(1 − g²)), g = 10^(−RL/20)',
        `RL ${show(found.db, 'decibel', 4)} at ${show(found.hz, 'frequency')}, line ${ohms(2 * ohm)}`,
        found.farads,
      ),
    ],
  }
}

function atUsefulHz(facts: SignalFacts, rule: RuleOf<'band-loss' | 'phase'>, ohm: number): Found | Wanting {
  const hz = facts.kind.usefulHz?.hz
  if (hz === undefined) return { why: 'The highest useful frequency of this line is not known.' }
  const at = `${show(hz, 'frequency')} · ${ohms(ohm)}`
  if (rule.rule === 'phase') {
    const farads = faradsForPhase({ ohm, deg: rule.mostDeg, hz })
    return {
      farads,
      why: `the carrier, up to ${show(hz, 'frequency')}, may turn by ${show(rule.mostDeg, 'angle')} through ${ohms(ohm)} (common practice)`,
      steps: [pick('C = tan φ / (2π·f·R)', `tan ${show(rule.mostDeg, 'angle')} / (2π · ${at})`, farads)],
    }
  }
  const farads = faradsForLoss({ ohm, db: rule.mostDb, hz })
  return {
    farads,
    why: `the signal may lose ${show(rule.mostDb, 'decibel')} at ${show(hz, 'frequency')} through ${ohms(ohm)} (common practice)`,
    steps: [
      pick('C = √(10^(dB/10) − 1) / (2π·f·R)', `√(10^(${show(rule.mostDb, 'decibel')}/10) − 1) / (2π · ${at})`, farads),
    ],
  }
}

/** The mask judged against its worst test impedance: stricter than the plain reference, so it stands as a permitted figure. */
function cornerOf(facts: SignalFacts): readonly PermittedCeiling[] {
  const rule = facts.kind.loading
  const lineOhm = lineOhmOf(facts)
  if (rule.rule !== 'return-loss' || rule.cornerOhm === undefined || lineOhm === undefined) return []
  const { farads } = faradsForMask(rule.mask, { loadOhm: lineOhm, referenceOhm: rule.cornerOhm })
  return [
    {
      id: `${facts.kind.id}-corner`,
      label: `return-loss mask with its ${ohms(rule.cornerOhm)} corner, whole port`,
      farads,
      counts: 'dm',
      source: facts.kind.loadingSource,
    },
  ]
}
