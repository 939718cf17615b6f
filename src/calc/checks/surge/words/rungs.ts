/** The rungs of a surge with their names and workings, and the ladder drawn from them. */
import { BUS_SURGES } from '../../../../reference/bus-surges.ts'
import { COLD_SOAK_C } from '../../../../reference/suppressors.ts'
import { type LadderPicture, ladderPicture } from '../../../explain/ladder.ts'
import { RAIL } from '../../../ladder.ts'
import type { FittedPart } from '../../../surge/part.ts'
import { rivalsOf } from '../../../surge/rungs.ts'
import { breakdownAt, temperatureCoefficient } from '../../../surge/suppressor.ts'
import type { Basis, Rung, RungFigure, Source, Step } from '../../../types.ts'
import type { SurgeFound } from '../figures.ts'
import { show } from './show.ts'

const DERIVED: Source = { id: 'derived', standing: 'derived' }
const ENTERED: Basis = { steps: [], assumptions: ['as entered'], sources: [DERIVED] }

const LABELS: Readonly<Record<string, string>> = {
  'surge-bus': 'Highest line peak',
  'surge-own': 'The line’s own peak',
  'surge-clamp': 'Clamp',
  'surge-load': 'Peak at the load',
  'surge-connector': 'Peak at the connector',
  'surge-capacitor': 'Peak on the filter capacitor',
  'surge-stand-off': 'Stand-off',
  'surge-circuit-withstand': 'Circuit withstands',
  'surge-capacitor-withstand': 'Filter capacitor withstands',
}

/** The rungs as a screen says them. */
export const saidRungs = (rungs: readonly RungFigure[], found: SurgeFound): readonly Rung[] =>
  rungs.map((rung) => ({
    ...rung,
    label: labelOf(rung, found),
    side: RAIL[rung.role],
    basis: basisOf(rung, found),
  }))

const busRow = ({ id }: RungFigure) => BUS_SURGES.find((row) => `bus-${row.id}` === id)

function labelOf(rung: RungFigure, { asked }: SurgeFound): string {
  if (rung.role === 'breakdown')
    return `Breakdown, ${show(COLD_SOAK_C, 'temperature')} to ${show(Math.max(25, asked.ambientC), 'temperature')}`
  return busRow(rung)?.label ?? LABELS[rung.id] ?? rung.id
}

function basisOf(rung: RungFigure, { setup, asked }: SurgeFound): Basis {
  const row = busRow(rung)
  if (row) return { steps: [], assumptions: ['of the category chosen'], sources: [row.source] }
  if (rung.role === 'breakdown' && setup.part) return breakdownBasis(setup.part, Math.max(25, asked.ambientC))
  if (rung.role === 'working-peak' && setup.kind?.ownPeaks)
    return {
      steps: [],
      assumptions: ['highest of either sign, between the two ends of the part'],
      sources: [setup.kind.ownPeaks.source],
    }
  if (rung.role === 'clamp' || rung.role === 'ring-up')
    return {
      steps: [],
      assumptions: ['largest magnitude: with the parts as entered, and over their tolerances'],
      sources: [DERIVED, ...setup.pulse.sources],
    }
  return ENTERED
}

function breakdownBasis(part: FittedPart, hotC: number): Basis {
  const perC = temperatureCoefficient(part.leastV)
  const at = (breakdownV: number, tempC: number): Step => ({
    formula: 'V(T) = V25·(1 + a·(T − 25))',
    withNumbers: `${show(breakdownV, 'voltage', 4)} · (1 + ${perC} · (${tempC} − 25))`,
    si: breakdownAt({ breakdownV, tempC }),
    quantity: 'voltage',
  })
  return {
    steps: [at(part.leastV, COLD_SOAK_C), at(part.mostV, hotC)],
    assumptions: [part.fromClass ? 'spread of a 5 % class from its stand-off' : 'breakdown as entered, at 25 °C'],
    sources: [
      { id: 'T20', clause: 'formula', standing: 'read' },
      perC < 5e-4
        ? { id: 'T22', clause: '6 V part', standing: 'read' }
        : { id: 'T21', clause: 'coefficient at 28 V and above, weak source', standing: 'read' },
      ...(part.fromClass ? ([{ id: 'T23', clause: 'spread of a 28 V class', standing: 'read' }] as const) : []),
    ],
  }
}

const PHRASES: Partial<Readonly<Record<Rung['role'], string>>> = {
  'circuit-withstand': 'the input withstands',
  'capacitor-withstand': 'the filter capacitor withstands',
  'stand-off': 'of stand-off',
  breakdown: 'at which the suppressor breaks down cold',
}

/** Draws them; the load is held against the circuit, the capacitor against its own withstand, the bus against the part. */
export const surgeLadder = (rungs: readonly Rung[]): LadderPicture =>
  ladderPicture({
    title: 'Volts of this surge',
    rungs,
    against: (comes, holds) => rivalsOf(rungs, comes).includes(holds.role),
    phrase: (holds) => PHRASES[holds.role] ?? `of ${holds.label.toLowerCase()}`,
    // what the line brings is what a suppressor has to stand off; what a part lets through is no such thing
    useAs: ({ role }) => (role === 'working-peak' || role === 'bus-surge' ? 'busMaxV' : undefined),
  })
