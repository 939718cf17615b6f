/** Every circuit that the readings of a trial allow, from all of them at once: what a capacitor alone has to work against. */
import { cornersOf, type Impedance, type ShuntReading, shuntNeedF } from '../network/trial-region.ts'
import type { TrialLack, TrialReading } from './four-numbers.ts'
import { adapterCount, legFarads, type ReadAt, usableSteps } from './solve.ts'

export type ReadOff = {
  /** what one reading may be off; a fall is the difference of two */
  readonly offDb: number
  /** what an adapter may be off its mark, a share */
  readonly adapterFrac: number
}

/**
 * Extremes of Zs ∥ Zl in ohms (of the pair, for a pair), every reading, adapter and lead anywhere within its error.
 * Undefined where no reading fell by more than it may be off, empty where no passive circuit gives them all.
 */
export function circuitsOf(reading: TrialReading, at: ReadAt, off: ReadOff): readonly Impedance[] | undefined {
  const w = 2 * Math.PI * at.hz
  const count = adapterCount(reading, at.isPair)
  const readings = usableSteps(reading, at.hz, at.leadH).map(({ farads, fallDb = 0 }): ShuntReading => {
    const mostF = farads * (1 + off.adapterFrac)
    return {
      leastS: count * w * farads * (1 - off.adapterFrac),
      // its lead takes from its reactance, and may be shorter than stated
      mostS: (count * w * mostF) / (1 - w * w * at.leadH * mostF),
      leastDb: fallDb - 2 * off.offDb,
      mostDb: fallDb + 2 * off.offDb,
    }
  })
  return cornersOf(readings)
}

/** Without these the fall may be the doing of something else, and nothing is built on it. */
const MUST_BE_THERE: readonly TrialLack[] = ['bare-first', 'bare-last', 'empty', 'bare-reading']

/**
 * Whether the window may be worked out on them: a trial that is void or lacks its bare line or empty adapter carries
 * nothing, and what stood to chassis says nothing of differential noise, nor the other way about.
 */
export function isCarried({ voids, lacks, place }: TrialReading, mode: 'common' | 'differential' | undefined): boolean {
  if (voids.length > 0 || lacks.some((lack) => MUST_BE_THERE.includes(lack))) return false
  return (place === 'between') === (mode === 'differential')
}

/** The least capacitance of one leg, without leads, that takes `neededDb` off in every one of these circuits. Farads. */
export function neededPerLegF(
  circuits: readonly Impedance[],
  neededDb: number,
  { hz, isPair }: Pick<ReadAt, 'hz' | 'isPair'>,
  reading: TrialReading,
): number {
  const farads = shuntNeedF(circuits, neededDb, hz) / adapterCount(reading, isPair)
  return legFarads({ farads, place: reading.place })
}
