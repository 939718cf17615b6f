/** The figures of a capacitor on a power line: current, energy, bleed, inrush, withstand. Absent = does not exist. */
import type { InrushPeak } from './inrush.ts'
import {
  acrossLinesV,
  BLED_SHARE,
  bleedSec,
  crestV,
  isThreePhase,
  lineCurrentRmsA,
  type PowerLine,
  phaseLostCurrentRmsA,
  reactiveVar,
  residualCurrentRmsA,
  storedJ,
  TOUCH_V,
  withstandV,
} from './supply.ts'

export type PowerValues = {
  readonly currentRmsA: number
  readonly totalCurrentRmsA: number
  readonly residualCurrentRmsA: number
  readonly phaseLostCurrentRmsA?: number
  readonly reactiveVa?: number
  readonly storedJ: number
  readonly bleedSec?: number
  readonly bleedTo34Sec?: number
  readonly inrushPeakA?: number
  readonly inrushPeakV?: number
  readonly withstandV: number
  /** only with a capacitor from line to line */
  readonly crossCurrentRmsA?: number
  readonly crossStoredJ?: number
  readonly crossWithstandV?: number
}

/** All figures in SI units. Lines of phases in threes count as balanced. */
export function powerValues(line: PowerLine, inrush: InrushPeak | undefined): PowerValues {
  const { workingRmsV, supplyHz, capacitanceF: farads, lineCount, bleedOhm } = line
  const lineA = lineCurrentRmsA({ supplyHz, farads, workingRmsV })
  const fromV = crestV(line)
  const bleedTo = (toV: number) => (bleedOhm === undefined ? 0 : bleedSec({ ohm: bleedOhm, farads, fromV, toV }))
  return {
    currentRmsA: lineA,
    totalCurrentRmsA: lineA * lineCount,
    residualCurrentRmsA: residualCurrentRmsA({ lineA, lineCount }),
    ...(supplyHz > 0 && isThreePhase(lineCount)
      ? { phaseLostCurrentRmsA: phaseLostCurrentRmsA({ lineA, lineCount }) }
      : {}),
    ...(supplyHz > 0 ? { reactiveVa: reactiveVar({ supplyHz, farads, workingRmsV }) } : {}),
    storedJ: storedJ({ farads, crestV: fromV }),
    ...(bleedOhm === undefined ? {} : { bleedSec: bleedTo(BLED_SHARE * fromV), bleedTo34Sec: bleedTo(TOUCH_V) }),
    ...(inrush === undefined ? {} : { inrushPeakA: inrush.peakA, inrushPeakV: inrush.peakV }),
    withstandV: withstandV(line),
    ...crossValues(line),
  }
}

/** Of the capacitor from line to line: its current flows in the lines and not into the chassis. */
function crossValues(line: PowerLine): Pick<PowerValues, 'crossCurrentRmsA' | 'crossStoredJ' | 'crossWithstandV'> {
  if (line.crossF === 0) return {}
  const across = { workingRmsV: acrossLinesV(line), supplyHz: line.supplyHz }
  return {
    crossCurrentRmsA: lineCurrentRmsA({ ...across, farads: line.crossF }),
    crossStoredJ: storedJ({ farads: line.crossF, crestV: crestV(across) }),
    crossWithstandV: withstandV(across),
  }
}
