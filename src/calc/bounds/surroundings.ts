/** What stands around the part that is looked for, and what is asked of it. Service values, SI units. */

import type { Bead } from '../network/bead.ts'
import {
  type FilterCircuit,
  NO_SERIES,
  NO_SHUNT,
  type NoiseLoad,
  type NoiseSource,
  type SeriesPart,
} from '../network/circuit.ts'
import { lossBetween, type NodeFarads } from '../network/nodes.ts'
import type { Topology } from '../types.ts'

export type Need = { readonly hz: number; readonly db: number }

/** Least and most a part can be. */
export type Span = { readonly least: number; readonly most: number }

/**
 * Capacitance to chassis at one end of the filter that is not there to filter. It earns nothing: the loss counts with it
 * and without it, the lower of the two. `inBare` = the line had it before the filter came (existing, not a suppressor).
 */
export type NodeSpan = Span & { readonly inBare: boolean }

/** A choke in series with each leg, before or behind everything else: `part` but for its inductance, which is in `spanH`. */
export type LegChoke = { readonly part: SeriesPart; readonly side: 'source' | 'load'; readonly spanH: Span }

/** Everything that stands around the capacitor, in service values. */
export type Surroundings = {
  readonly topology: Topology
  readonly needs: readonly Need[]
  readonly sources: readonly NoiseSource[]
  readonly load: NoiseLoad
  readonly esrOhm: number
  readonly eslH: number
  readonly bondOhm: number
  readonly bondH: number
  /** inductances from least to most; the ends span the box, a T's two coils vary apart */
  readonly inductancesH: readonly number[]
  /** capacitance of the load side of a Pi over that of its source side, and inductances of the load side of a T; as the others when absent */
  readonly shunt2Share?: number
  readonly inductances2H?: readonly number[]
  /** a capacitor from line to line as one leg meets it, beside the load-side capacitor (2·Cx in differential mode) */
  readonly crossF?: Span
  /** a common-mode choke as one leg meets it; absent = none */
  readonly choke?: LegChoke
  /** winding resistance, self-capacitance and loss resistance of each inductor; 0, 0 and none when absent */
  readonly dcrOhm?: number
  readonly inductorParallelF?: number
  readonly inductorParallelOhm?: number
  readonly sourceNodeF?: NodeSpan
  readonly loadNodeF?: NodeSpan
  /** a bead instead of every inductor; the needs lie where it is known */
  readonly bead?: Bead
  /** a resistor and a capacitor in series across the last capacitor, in service values */
  readonly damper?: { readonly farads: Span; readonly ohm: Span }
}

/** Coils and capacitors of one point of the box. A Pi has `shunt2F`, a T `series2H`; elsewhere they repeat the first. */
export type PlainParts = {
  readonly shunt1F: number
  readonly shunt2F: number
  readonly series1H: number
  readonly series2H: number
  readonly sourceNodeF: number
  readonly loadNodeF: number
  readonly crossF: number
  readonly chokeH: number
}

/** The parts of one point of the box. */
export type Parts = PlainParts & {
  /** resistance and reactance of a bead on either side; absent = coils */
  readonly bead1?: readonly [ohm: number, reactanceOhm: number]
  readonly bead2?: readonly [ohm: number, reactanceOhm: number]
  readonly damper?: { readonly farads: number; readonly ohm: number }
}

/** What decides the margin at one capacitance. */
export type Margin = {
  readonly db: number
  readonly lossDb: number
  readonly need: Need
  readonly source: NoiseSource
  readonly inductanceH: number
  /** the parts of that corner, or of that point inside the box */
  readonly parts: Parts
}

/** The filter with these parts. */
export function circuitOf(around: Surroundings, parts: Parts): FilterCircuit {
  const shunt = { ...NO_SHUNT, esrOhm: around.esrOhm, eslH: around.eslH }
  const coil = {
    ...NO_SERIES,
    dcrOhm: around.dcrOhm ?? 0,
    parallelF: around.inductorParallelF ?? 0,
    parallelOhm: around.inductorParallelOhm ?? NO_SERIES.parallelOhm,
  }
  return {
    topology: around.topology,
    shunt1: { ...shunt, capacitanceF: parts.shunt1F },
    shunt2: { ...shunt, capacitanceF: parts.shunt2F },
    series1: parts.bead1 ? beadOf(parts.bead1) : { ...coil, inductanceH: parts.series1H },
    series2: parts.bead2 ? beadOf(parts.bead2) : { ...coil, inductanceH: parts.series2H },
    bondOhm: around.bondOhm,
    bondH: around.bondH,
    ...(parts.crossF > 0
      ? { cross: { capacitanceF: parts.crossF, esrOhm: around.esrOhm / 2, eslH: around.eslH / 2 } }
      : {}),
    ...(around.choke
      ? { choke: { part: { ...around.choke.part, inductanceH: parts.chokeH }, side: around.choke.side } }
      : {}),
    ...(parts.damper
      ? { damper: { capacitanceF: parts.damper.farads, esrOhm: parts.damper.ohm, eslH: around.eslH } }
      : {}),
  }
}

const beadOf = (ohms: readonly [number, number]): SeriesPart => ({ ...NO_SERIES, impedance: () => ohms })

/** Parts when every capacitor has `capacitanceF`, every inductor `inductanceH`, all else its least, and nothing stands at the nodes. */
export function equalParts(around: Surroundings, capacitanceF: number, inductanceH: number): Parts {
  return {
    shunt1F: capacitanceF,
    shunt2F: capacitanceF,
    series1H: inductanceH,
    series2H: inductanceH,
    sourceNodeF: 0,
    loadNodeF: 0,
    crossF: around.crossF?.least ?? 0,
    chokeH: around.choke?.spanH.least ?? 0,
  }
}

/** Loss over need for one need, one source and one set of parts, on the chain matrix. */
export function marginOf(around: Surroundings, need: Need, source: NoiseSource, parts: Parts): Margin {
  const nodes: NodeFarads = {
    sourceF: parts.sourceNodeF,
    loadF: parts.loadNodeF,
    sourceInBare: around.sourceNodeF?.inBare ?? false,
    loadInBare: around.loadNodeF?.inBare ?? false,
  }
  const loss = lossBetween(circuitOf(around, parts), source, around.load, need.hz, nodes)
  return { db: loss - need.db, lossDb: loss, need, source, inductanceH: parts.series1H, parts }
}

/** Lowest margin (loss − need) over all frequencies, sources and the inductances listed, equal capacitors. */
export function marginAt(around: Surroundings, capacitanceF: number): Margin {
  let worst: Margin | undefined
  for (const inductanceH of around.inductancesH) {
    const parts = equalParts(around, capacitanceF, inductanceH)
    for (const source of around.sources) {
      for (const need of around.needs) {
        const margin = marginOf(around, need, source, parts)
        if (!worst || margin.db < worst.db) worst = margin
      }
    }
  }
  if (!worst) throw new RangeError('needs at least one frequency, one source and one inductor corner')
  return worst
}
