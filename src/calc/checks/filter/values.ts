/** The outputs of the filter check as numbers by key. */
import { chokeConversionRatio } from '../../network/choke.ts'
import type { FilterCircuit } from '../../network/circuit.ts'
import { localSlopeDbPerDecade } from '../../network/shape.ts'
import { ratioDb } from '../../pair.ts'
import type { Topology } from '../../types.ts'
import { asymptoteDbPerDecade } from '../slope.ts'
import type { Filtered } from './figures.ts'

/** Common mode that unequal windings turn into signal at the governing frequency, in dB; undefined for equal ones. */
function conversionDbOf({ choke, ends, worst }: Pick<Filtered, 'choke' | 'ends' | 'worst'>): number | undefined {
  if (choke?.current !== 'common' || ends === undefined || worst === undefined) return undefined
  const legs = { sourceOhm: worst.source.ohm, loadOhm: ends.load.ohm }
  const ratio = chokeConversionRatio(choke.choke, legs, worst.hz)
  return ratio > 0 ? ratioDb(ratio) : undefined
}

const ENDS_IN_COIL = { source: ['L', 'LC', 'T'], load: ['L', 'CL', 'T'] } as const satisfies Record<
  string,
  readonly Topology[]
>

/** A choke beside a coil is one element with it; beside a capacitor it is one more. */
function asymptoteOf({ topology, shunt1, choke }: FilterCircuit): number {
  if (choke === undefined) return asymptoteDbPerDecade(topology)
  if (topology === 'C' && shunt1.capacitanceF === 0) return asymptoteDbPerDecade('L')
  const isOneWithCoil = ENDS_IN_COIL[choke.side].some((one) => one === topology)
  return asymptoteDbPerDecade(topology) + (isOneWithCoil ? 0 : asymptoteDbPerDecade('L'))
}

/** Every output that exists; corners are searched for only when they are read. */
export function valuesOf({
  circuit,
  choke,
  worst,
  boxWorst,
  bench,
  curve,
  ends,
  gain,
}: Filtered): Readonly<Record<string, number>> {
  const chokeConversionDb = conversionDbOf({ choke, ends, worst })
  const values: Record<string, number> = {
    ...(chokeConversionDb === undefined ? {} : { chokeConversionDb }),
    ...(worst === undefined ? {} : { insertionLossDb: worst.db }),
    ...(boxWorst === undefined ? {} : { worstInsertionLossDb: boxWorst.db }),
    ...(bench === undefined ? {} : { benchInsertionLossDb: bench.db }),
    ...(worst === undefined || ends === undefined
      ? {}
      : { localSlopeDbPerDecade: localSlopeDbPerDecade(circuit, { ...ends, source: worst.source }, worst.hz) }),
    asymptoteDbPerDecade: asymptoteOf(circuit),
    ...(gain === undefined ? {} : { peakGainDb: gain.gainDb, peakHz: gain.atHz }),
  }
  // Read like the others, searched for only then; undefined like one that does not exist.
  Object.defineProperty(values, 'firstCornerHz', { enumerable: true, get: () => curve().corners?.firstHz })
  Object.defineProperty(values, 'cornerHz', { enumerable: true, get: () => curve().corners?.lastingHz })
  return values
}
