/** What a capacitance does to a signal, in numbers: edge, eye, return loss, loss, phase. A figure without meaning is absent. */
import { bandLossDb, phaseLagDeg } from './band.ts'
import { bandCrossingSec, canDecaySec, i2cRiseSec } from './buses.ts'
import { combinedEdgeSec, inductorRiseSec, riseSec } from './edge.ts'
import { dampingRatio, type LcSection, lcLossDb, lcPhaseDeg } from './inductor.ts'
import { innerEyeFrac, jitterFrac } from './nrz.ts'
import { leastMaskMargin, type MaskPoint } from './return-loss.ts'
import { bitSecOf, lineOhmOf, type SignalFacts, signalOhmOf, usefulHzOf } from './signal.ts'

/** A capacitance the signal sees, and the section it makes with the coil of the filter if there is one. */
export type LoadedSignal = {
  readonly facts: SignalFacts
  readonly farads: number
  readonly section: LcSection | undefined
}

export type LoadedFigures = {
  readonly edgeSec?: number
  readonly eyeFrac?: number
  readonly jitterFrac?: number
  readonly returnLossDb?: number
  readonly terminalOhm?: number
  readonly bandLossDb?: number
  readonly phaseDeg?: number
  readonly damping?: number
}

/** All figures that exist for this kind and these values. Farads ≥ 0. */
export function loadedFigures(signal: LoadedSignal): LoadedFigures {
  const edgeSec = edgeSecOf(signal)
  const point = maskPointOf(signal)
  const terminalOhm = terminalOhmOf(signal)
  const damping = signal.section && dampingRatio(signal.section)
  return {
    ...(edgeSec === undefined ? {} : { edgeSec }),
    ...eyeOf(signal),
    ...(point === undefined || !Number.isFinite(point.returnLossDb) ? {} : { returnLossDb: point.returnLossDb }),
    ...(terminalOhm === undefined || !Number.isFinite(terminalOhm) ? {} : { terminalOhm }),
    ...bandOf(signal),
    ...(damping === undefined ? {} : { damping }),
  }
}

/** The driver's own edge that counts in s: as stated, else the kind's nominal one where its criterion has one, else 0. */
export function driverEdgeSecOf({ kind, driverEdgeSec }: SignalFacts): number {
  return driverEdgeSec ?? (kind.loading.rule === 'edge-rss' ? kind.loading.driverEdgeSec : 0)
}

/** The coil's own 10–90 % edge in s, ln 9·L/(Rs + Rl); 0 without one. */
export const coilEdgeSecOf = (section: LcSection | undefined): number =>
  section === undefined
    ? 0
    : inductorRiseSec({ henries: section.henries, loopOhm: section.sourceOhm + section.loadOhm })

/** The edge the signal has with this capacitance, in s: the same figure the criterion judges, where there is one. */
function edgeSecOf({ facts, farads, section }: LoadedSignal): number | undefined {
  const rule = facts.kind.loading
  const ohm = signalOhmOf(facts)
  if (rule.rule === 'slew') return bandCrossingSec({ bandV: rule.bandV, farads, driverA: rule.driverA })
  if (ohm === undefined) return undefined
  switch (rule.rule) {
    case 'band-loss':
    case 'phase':
      return undefined
    case 'i2c-rise':
      return i2cRiseSec({ pullUpOhm: ohm, farads })
    case 'can-recessive':
      return canDecaySec({ ohm, farads })
    default:
      return combinedEdgeSec([driverEdgeSecOf(facts), riseSec({ ohm, farads }), coilEdgeSecOf(section)])
  }
}

/** Whether the one-pole eye describes this kind at all. */
export const hasEye = ({ kind }: SignalFacts): boolean => kind.loading.rule === 'own-edge' && kind.loading.nrzEye

function eyeOf({ facts, farads, section }: LoadedSignal): Pick<LoadedFigures, 'eyeFrac' | 'jitterFrac'> {
  const ohm = signalOhmOf(facts)
  const bitSec = bitSecOf(facts)
  if (!hasEye(facts) || ohm === undefined || bitSec === undefined || section !== undefined) return {}
  const tauSec = ohm * farads
  const jitter = jitterFrac({ bitSec, tauSec })
  return { eyeFrac: innerEyeFrac({ bitSec, tauSec }), ...(jitter === undefined ? {} : { jitterFrac: jitter }) }
}

/** Where the mask of the kind is met by least; undefined for a kind without a mask. */
export function maskPointOf({ facts, farads, section }: LoadedSignal): MaskPoint | undefined {
  const rule = facts.kind.loading
  const loadOhm = lineOhmOf(facts)
  if (rule.rule !== 'return-loss' || loadOhm === undefined) return undefined
  return leastMaskMargin(
    { farads, henries: section?.henries ?? 0, loadOhm, referenceOhm: rule.referenceOhm },
    rule.mask,
  )
}

/** What the capacitance leaves of a terminal's impedance in Ω; Infinity without any; undefined for other kinds. */
export function terminalOhmOf({ facts, farads }: LoadedSignal): number | undefined {
  const rule = facts.kind.loading
  return rule.rule === 'terminal-impedance' ? 1 / (2 * Math.PI * rule.atHz * farads) : undefined
}

function bandOf({ facts, farads, section }: LoadedSignal): Pick<LoadedFigures, 'bandLossDb' | 'phaseDeg'> {
  const { rule } = facts.kind.loading
  const ohm = signalOhmOf(facts)
  const hz = usefulHzOf(facts)
  if (hz === undefined || ohm === undefined || rule === 'slew' || rule === 'i2c-rise') return {}
  const loss = section === undefined ? bandLossDb({ ohm, farads, hz }) : lcLossDb(section, hz)
  if (rule !== 'phase') return { bandLossDb: loss }
  return {
    bandLossDb: loss,
    phaseDeg: section === undefined ? phaseLagDeg({ ohm, farads, hz }) : lcPhaseDeg(section, hz),
  }
}
