/** What stands around the part that is looked for, and what is asked of it. Service values, SI units. */

import { type FilterCircuit, NO_SERIES, NO_SHUNT, type NoiseLoad, type NoiseSource } from '../network/circuit.ts'
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
  /** fixed extra shunt capacitance at the load-side capacitor (2·Cx per leg in differential mode) */
  readonly extraF: number
  /** the most that extra can be; as `extraF` when absent */
  readonly extraMostF?: number
  /** winding resistance, self-capacitance and loss resistance of each inductor; 0, 0 and none when absent */
  readonly dcrOhm?: number
  readonly inductorParallelF?: number
  readonly inductorParallelOhm?: number
  readonly sourceNodeF?: NodeSpan
  readonly loadNodeF?: NodeSpan
}

/** The parts of one point of the box. A Pi has `shunt2F`, a T `series2H`; elsewhere they repeat the first. */
export type Parts = {
  readonly shunt1F: number
  readonly shunt2F: number
  readonly series1H: number
  readonly series2H: number
  readonly sourceNodeF: number
  readonly loadNodeF: number
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
    series1: { ...coil, inductanceH: parts.series1H },
    series2: { ...coil, inductanceH: parts.series2H },
    bondOhm: around.bondOhm,
    bondH: around.bondH,
  }
}

/** Parts when every capacitor has `capacitanceF`, every inductor `inductanceH`, and nothing stands at the nodes. */
export function equalParts(around: Surroundings, capacitanceF: number, inductanceH: number): Parts {
  const loadSideF = capacitanceF + around.extraF
  return {
    shunt1F: around.topology === 'PI' ? capacitanceF : loadSideF,
    shunt2F: loadSideF,
    series1H: inductanceH,
    series2H: inductanceH,
    sourceNodeF: 0,
    loadNodeF: 0,
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
