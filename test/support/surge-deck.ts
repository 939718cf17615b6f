/** The circuit of a golden deck as the solver takes it, and the solver run to its end. */
import { NO_FILTER, type SurgeCircuit } from '../../src/calc/surge/circuit.ts'
import { type Shape, shapeOf } from '../../src/calc/surge/shape.ts'
import { type SolveOptions, solveSurge } from '../../src/calc/surge/solve.ts'
import { integral, peakOf, powerOf, type Trace } from '../../src/calc/surge/trace.ts'
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

/** Worst today: 0.0093 % on volts (R6b, where the golden digits themselves move by 0.005 %), 0.013 % on energy. */
const VOLTS_AMPERES = 2e-4
const ENERGY = 2e-4

export type DeckFigures = {
  clampV: number
  peakA: number
  otherA: number
  energyJ: number
  connectorV: number
  loadV: number
}

/** The node ahead of a coupling capacitor is not watched: the source less its own drop. */
function aheadOfCoupling(deck: Deck, trace: Trace): number {
  const { ohm = 0, peak, loadOhm = 10e3 } = deck.circuit
  const shape = shapeOfDeck(deck)
  const volts = trace.sec.map((sec, i) => {
    const amps = (trace.clampA[i] ?? 0) + (trace.loadV[i] ?? 0) / loadOhm
    return peak * shape.at(sec) - ohm * amps
  })
  return peakOf(trace.sec, volts).value
}

/** What the solver says where the deck measures. */
export function deckFigures(deck: Deck, options?: SolveOptions): DeckFigures {
  const trace = runSurge(circuitOfDeck(deck), shapeOfDeck(deck), options)
  const { sec } = trace
  return {
    clampV: peakOf(sec, trace.clampV).value,
    peakA: peakOf(sec, trace.clampA).value,
    otherA: -peakOf(
      sec,
      trace.clampA.map((amps) => Math.min(0, amps)),
    ).value,
    energyJ: integral(sec, powerOf(trace)),
    connectorV:
      deck.circuit.couplingF === undefined ? peakOf(sec, trace.connectorV).value : aheadOfCoupling(deck, trace),
    loadV: peakOf(sec, trace.loadV).value,
  }
}

export const DECK_KEYS = ['clampV', 'peakA', 'otherA', 'energyJ', 'connectorV', 'loadV'] as const

/** Relative error allowed: three or four printed digits round by more than the solver errs. */
export function deckTolerance(key: (typeof DECK_KEYS)[number], wanted: number): number {
  const printed = key === 'otherA' || (key === 'energyJ' && wanted < 1e-3) ? 3e-4 : 0
  return (key === 'energyJ' ? ENERGY : VOLTS_AMPERES) + printed
}
