/** The circuit of a golden deck as the solver takes it, and the solver run to its end. */
import { NO_FILTER, type SurgeCircuit } from '../../src/calc/surge/circuit.ts'
import { type Shape, shapeOf } from '../../src/calc/surge/shape.ts'
import { type SolveOptions, solveSurge } from '../../src/calc/surge/solve.ts'
import type { Trace } from '../../src/calc/surge/trace.ts'
import { waveformById } from '../../src/reference/waveforms.ts'
import golden from '../golden/surge-decks.json' with { type: 'json' }

export type Deck = {
  readonly id: string
  readonly circuit: {
    readonly waveform: string
    readonly ringHz?: number
    readonly decayQ?: number
    readonly form?: string
    readonly peak: number
    readonly ohm?: number
    readonly couplingF?: number
    readonly loadOhm?: number
    readonly placement?: string
    readonly suppressor?: SurgeCircuit['suppressor']
    readonly filter?: Partial<SurgeCircuit['filter']>
  }
  readonly expected: {
    readonly clampV?: number
    readonly peakA?: number
    readonly otherA?: number
    readonly energyJ?: number
    readonly connectorV: number
    readonly loadV: number
  }
}

export const DECKS = golden.circuits as readonly Deck[]

export function shapeOfDeck({ circuit }: Deck): Shape {
  const spec = waveformById(circuit.waveform)?.shape
  if (!spec) throw new Error(`no shape ${circuit.waveform}`)
  return shapeOf(spec, { hz: circuit.ringHz ?? 1e6, q: circuit.decayQ ?? 15 })
}

export function circuitOfDeck({ circuit }: Deck): SurgeCircuit {
  return {
    source: {
      form: circuit.form === 'current' ? 'current' : 'voltage',
      peak: circuit.peak,
      ohm: circuit.ohm ?? Number.POSITIVE_INFINITY,
    },
    lineOhm: 0,
    lineH: 0,
    ...(circuit.couplingF === undefined ? {} : { couplingF: circuit.couplingF }),
    filter: { ...NO_FILTER, ...circuit.filter },
    ...(circuit.suppressor === undefined ? {} : { suppressor: circuit.suppressor }),
    placement: circuit.placement === 'behind' ? 'behind' : 'connector',
    loadOhm: circuit.loadOhm ?? 10e3,
    loadF: 0,
  }
}

export function runSurge(circuit: SurgeCircuit, shape: Shape, options?: SolveOptions): Trace {
  const running = solveSurge(circuit, shape, options)
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
  }
}
