/** A filter with an inductor in a bond of some inductance: its window, and by an independent nodal solver what less of it leaves. */
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { NO_SERIES, NO_SHUNT } from '../../../src/calc/network/circuit.ts'
import { nodalLossDb } from '../../support/nodal.ts'
import { run } from '../../support/run-check.ts'

export type Bonded = {
  readonly topology: 'LC' | 'CL' | 'PI' | 'T'
  readonly hz: number
  readonly needDb: number
  readonly sourceOhm: number
  readonly sourceH: number
  readonly loadOhm: number
  readonly loadF: number
  readonly seriesH: number
  readonly bondH: number
}

const EXACT = {
  ...{ lineKind: 'discrete-28v', signalOhm: '1k', toleranceFrac: '0', temperatureFrac: '0', biasFrac: '0' },
  ...{ ageingDecades: '0', existingF: '0', suppressorF: '0', eslH: '0', bondOhm: '0', inductorParallelF: '0' },
  saturationFrac: '0',
}

export const windowOf = (one: Bonded) =>
  run(windowCheck, {
    ...EXACT,
    ...{ topology: one.topology, frequencyHz: String(one.hz), neededDb: String(one.needDb) },
    ...{ sourceOhm: String(one.sourceOhm), sourceH: String(one.sourceH), loadOhm: String(one.loadOhm) },
    ...{ loadF: String(one.loadF), inductanceH: String(one.seriesH), bondH: String(one.bondH) },
  })

/** The loss with that mark at each of `points` inductances of the bond, from none to what was entered. */
export function lossesDb(one: Bonded, markedF: number, points: number): readonly number[] {
  const shunt = { capacitanceF: markedF, esrOhm: 0, eslH: 0 }
  const coil = { ...NO_SERIES, inductanceH: one.seriesH }
  return Array.from({ length: points }, (_, k) =>
    nodalLossDb(
      {
        topology: one.topology,
        shunt1: shunt,
        shunt2: one.topology === 'PI' ? shunt : NO_SHUNT,
        series1: coil,
        series2: one.topology === 'T' ? coil : NO_SERIES,
        bondOhm: 0,
        bondH: (one.bondH * k) / (points - 1),
      },
      { ohm: one.sourceOhm, seriesH: one.sourceH },
      { ohm: one.loadOhm, parallelF: one.loadF, parallelH: Number.POSITIVE_INFINITY },
      one.hz,
    ),
  )
}
