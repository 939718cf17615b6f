/** Filters between random ends, with leads, bonds, real inductors and capacitance at the nodes. */
import fc from 'fast-check'
import type { LegChoke, NodeSpan, Parts, PlainParts, Span, Surroundings } from '../../src/calc/bounds/surroundings.ts'
import { NO_SERIES } from '../../src/calc/network/circuit.ts'
import type { NodeFarads } from '../../src/calc/network/nodes.ts'
import type { Topology } from '../../src/calc/types.ts'
import { logRange } from '../calc/fuzz/log-range.ts'

const maybe = (some: fc.Arbitrary<number>) => fc.oneof(fc.constant(0), some)

const nodeSpan: fc.Arbitrary<NodeSpan> = fc
  .record({ most: logRange(1e-12, 3e-9), share: fc.constantFrom(0, 0.3, 1), inBare: fc.boolean() })
  .map(({ most, share, inBare }) => ({ least: share * most, most, inBare }))

export type Wanted = {
  readonly topologies: readonly Topology[]
  readonly needs: number
  readonly sources: number
  /** most ÷ least inductance */
  readonly coilRatio: number
  readonly withNodes: boolean
}

export function surroundingsOf(wanted: Wanted): fc.Arbitrary<Surroundings> {
  return fc
    .record({
      topology: fc.constantFrom(...wanted.topologies),
      needs: fc.array(
        fc.record({
          hz: logRange(1e4, 1e9),
          db: fc.oneof(fc.integer({ min: 1, max: 80 }), fc.constantFrom(0.1, 1, 3)),
        }),
        { minLength: 1, maxLength: wanted.needs },
      ),
      sources: fc.array(fc.record({ ohm: maybe(logRange(1e-3, 1e4)), seriesH: maybe(logRange(1e-8, 1e-4)) }), {
        minLength: 1,
        maxLength: wanted.sources,
      }),
      load: fc.record({
        ohm: logRange(1, 1e6),
        parallelF: maybe(logRange(1e-12, 1e-7)),
        parallelH: fc.oneof(fc.constant(Number.POSITIVE_INFINITY), logRange(1e-7, 1e-3)),
      }),
      esrOhm: maybe(logRange(1e-4, 0.1)),
      eslH: maybe(logRange(1e-11, 1e-8)),
      bondOhm: maybe(logRange(1e-4, 0.1)),
      bondH: maybe(logRange(1e-11, 2e-8)),
      inductanceH: logRange(2e-8, 1e-4),
      dcrOhm: maybe(logRange(1e-3, 2)),
      inductorParallelF: maybe(logRange(2e-13, 3e-11)),
      inductorParallelOhm: fc.oneof(fc.constant(Number.POSITIVE_INFINITY), logRange(100, 5e4)),
      sourceNodeF: fc.option(nodeSpan, { nil: undefined }),
      loadNodeF: fc.option(nodeSpan, { nil: undefined }),
    })
    .map(({ inductanceH, sourceNodeF, loadNodeF, ...rest }) => ({
      ...rest,
      inductancesH: [inductanceH, wanted.coilRatio * inductanceH],
      ...(wanted.withNodes && sourceNodeF ? { sourceNodeF } : {}),
      ...(wanted.withNodes && loadNodeF ? { loadNodeF } : {}),
    }))
}

const choke: fc.Arbitrary<LegChoke> = fc
  .record({
    side: fc.constantFrom('source' as const, 'load' as const),
    least: logRange(1e-7, 1e-3),
    ratio: fc.constantFrom(1, 1.2, 1.5),
    dcrOhm: maybe(logRange(1e-3, 2)),
    parallelF: maybe(logRange(2e-13, 3e-11)),
  })
  .map(({ side, least, ratio, ...own }) => ({
    part: { ...NO_SERIES, ...own },
    side,
    spanH: { least, most: ratio * least },
  }))

const cross: fc.Arbitrary<Span> = logRange(1e-12, 1e-8).map((least) => ({ least, most: 1.5 * least }))

/** The same with a common-mode choke, a line-to-line capacitor or both, and capacitance at one node at most. */
export const withModes = (wanted: Wanted): fc.Arbitrary<Surroundings> =>
  fc
    .record({
      around: surroundingsOf(wanted),
      choke: fc.option(choke, { nil: undefined, freq: 2 }),
      crossF: fc.option(cross, { nil: undefined, freq: 1 }),
    })
    .map(({ around: { loadNodeF, ...around }, choke, crossF }) => ({
      ...around,
      ...(loadNodeF && !around.sourceNodeF ? { loadNodeF } : {}),
      ...(choke ? { choke } : {}),
      ...(crossF ? { crossF } : {}),
    }))

/** What stands at the nodes, as the solvers take it. */
export function nodesOf(around: Surroundings, parts: Parts): NodeFarads {
  return {
    sourceF: parts.sourceNodeF,
    loadF: parts.loadNodeF,
    sourceInBare: around.sourceNodeF?.inBare ?? false,
    loadInBare: around.loadNodeF?.inBare ?? false,
  }
}

/** Least and most of every part of the box of a marked figure. A part that is not there is 0. */
export function boxOf(around: Surroundings, marked: Span, at: number): Readonly<Record<keyof PlainParts, Span>> {
  const { topology } = around
  const none = { least: 0, most: 0 }
  const isPi = topology === 'PI'
  const shunt = { least: marked.least * at, most: marked.most * at }
  const coil = { least: Math.min(...around.inductancesH), most: Math.max(...around.inductancesH) }
  return {
    shunt1F: topology === 'L' ? none : shunt,
    shunt2F: isPi ? shunt : none,
    series1H: topology === 'C' ? none : topology === 'L' ? shunt : coil,
    series2H: topology === 'T' ? coil : none,
    sourceNodeF: around.sourceNodeF ?? none,
    loadNodeF: around.loadNodeF ?? none,
    crossF: around.crossF ?? none,
    chokeH: around.choke?.spanH ?? none,
  }
}
