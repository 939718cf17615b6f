/** How each figure named in the golden files of lines is calculated by the program. */
import { bandLossDb, phaseLagDeg } from '../../src/calc/loading/band.ts'
import { bandCrossingSec, canDecaySec, i2cFarads, i2cRiseSec } from '../../src/calc/loading/buses.ts'
import { loadingCeiling } from '../../src/calc/loading/ceiling.ts'
import { combinedEdgeSec, riseSec } from '../../src/calc/loading/edge.ts'
import { innerEyeFrac, jitterFrac } from '../../src/calc/loading/nrz.ts'
import { faradsForMask, faradsForReturnLoss, maskDb, returnLossDb } from '../../src/calc/loading/return-loss.ts'
import { leastSpacingM, loadedDelaySecPerM, loadedImpedanceOhm } from '../../src/calc/loading/spacing.ts'
import { type LineKind, type LoadingRule, lineKindById } from '../../src/reference/line-kinds.ts'
import { bandsAt } from '../../src/reference/radio-bands.ts'
import type { Figure, Given, Numbers } from './golden-rows.ts'

function kindOf(id: string): LineKind {
  const kind = lineKindById(id)
  if (kind === undefined) throw new Error(`no line kind ${id}`)
  return kind
}

function ruleOf<R extends LoadingRule['rule']>(id: string, rule: R): Extract<LoadingRule, { rule: R }> {
  const { loading: found } = kindOf(id)
  if (found.rule !== rule) throw new Error(`${id} follows ${found.rule}`)
  return found as Extract<LoadingRule, { rule: R }>
}

const optional = (given: Given, key: string): number | undefined => {
  const value = given[key]
  return typeof value === 'number' ? value : undefined
}

function worksFarads(kindId: string, given: Given): number {
  const { works } = loadingCeiling({
    kind: kindOf(kindId),
    bitRateHz: optional(given, 'bitRateHz'),
    signalOhm: optional(given, 'signalOhm'),
  })
  if (works.farads === undefined) throw new Error(`${kindId} has no ceiling`)
  return works.farads
}

const line = (n: Numbers) => ({
  z0Ohm: n('z0Ohm'),
  faradsPerM: n('faradsPerM'),
  loadF: n('loadF'),
  spacingM: n('spacingM'),
})

export const LOADING_FIGURES: Readonly<Record<string, Figure>> = {
  ceiling: (_n, w, given) => worksFarads(w('kind'), given),
  plainMask: (_n, w) => {
    const { mask, referenceOhm } = ruleOf(w('kind'), 'return-loss')
    return faradsForMask(mask, { loadOhm: referenceOhm, referenceOhm }).farads
  },
  corner: (_n, w) => {
    const corner = loadingCeiling({ kind: kindOf(w('kind')) }).permitted.find((p) => p.id.endsWith('-corner'))
    if (corner === undefined) throw new Error('no corner figure')
    return corner.farads
  },
  totalEdge: (n) => combinedEdgeSec([n('driverEdgeSec'), riseSec({ ohm: n('ohm'), farads: n('farads') })]),
  rise: (n) => riseSec({ ohm: n('ohm'), farads: n('farads') }),
  tau: (n) => riseSec({ ohm: n('ohm'), farads: n('farads') }) / Math.log(9),
  returnLossFarads: (n) =>
    faradsForReturnLoss({ db: n('db'), hz: n('hz'), loadOhm: n('loadOhm'), referenceOhm: n('referenceOhm') }),
  returnLoss: (n) =>
    returnLossDb({ farads: n('farads'), loadOhm: n('loadOhm'), referenceOhm: n('referenceOhm') }, n('hz')),
  bandLoss: (n) => bandLossDb({ ohm: n('ohm'), farads: n('farads'), hz: n('hz') }),
  phase: (n) => phaseLagDeg({ ohm: n('ohm'), farads: n('farads'), hz: n('hz') }),
  eye: (n) => innerEyeFrac({ bitSec: n('bitSec'), tauSec: n('tauSec') }),
  jitter: (n) => jitterFrac({ bitSec: n('bitSec'), tauSec: n('tauSec') }) ?? Number.NaN,
  canDecay: (n) => canDecaySec({ ohm: n('ohm'), farads: n('farads') }),
  bandCrossing: (n) => bandCrossingSec({ bandV: n('bandV'), farads: n('farads'), driverA: n('driverA') }),
  i2cRise: (n) => i2cRiseSec({ pullUpOhm: n('pullUpOhm'), farads: n('farads') }),
  i2cFarads: (n) => i2cFarads({ pullUpOhm: n('pullUpOhm'), riseSec: n('riseSec') }),
  loadedImpedance: (n) => loadedImpedanceOhm(line(n)),
  loadedDelay: (n) => loadedDelaySecPerM({ ...line(n), delaySecPerM: n('delaySecPerM') }),
  loadPerLength: (n) => n('loadF') / n('spacingM'),
  cableLength: (n) => n('farads') / n('faradsPerM'),
  spacing: (n) => leastSpacingM({ loadF: n('loadF'), faradsPerM: n('faradsPerM'), ratio: n('ratio') }),
  mask: (n, w) => {
    const segment = ruleOf(w('kind'), 'return-loss').mask[n('segment')]
    if (segment === undefined) throw new Error('no such segment')
    return maskDb(segment, n('hz'))
  },
  edgeRatio: (_n, w) => ruleOf(w('slow'), 'edge-rss').driverEdgeSec / ruleOf(w('fast'), 'edge-rss').driverEdgeSec,
  harmonicBand: (n, w) => {
    const hz = n('order') * n('hz')
    if (!bandsAt(hz).some((band) => band.id === w('band'))) throw new Error(`${hz} Hz is outside ${w('band')}`)
    return hz
  },
}
