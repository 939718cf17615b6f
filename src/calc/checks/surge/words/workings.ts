/** Each figure of a surge with its working. */
import type { Quantity } from '../../../quantity/quantity.ts'
import type { FittedPart } from '../../../surge/part.ts'
import type { Pulse } from '../../../surge/pulse.ts'
import type { RunFigures } from '../../../surge/runs.ts'
import type { Usage } from '../../../surge/usage.ts'
import type { Basis, Cell, Source, Step, Verdict } from '../../../types.ts'
import { VERDICT_WORDS } from '../../../verdict.ts'
import type { SurgeFigures, SurgeFound } from '../figures.ts'
import { placeWords } from './place.ts'
import { takenWords } from './remarks.ts'
import { show as print } from './show.ts'
import { signalFigure } from './signal.ts'

type Figure = { readonly cell: Cell; readonly basis: Basis }
type Said = Readonly<Record<string, Figure>>

const SOLVER: Source = {
  id: 'derived',
  clause: 'exact steps of the piecewise-linear circuit; 13 ngspice circuits agree within 0.02 %',
  standing: 'derived',
}
const show = (si: number, quantity: Quantity) => print(si, quantity, 4)
const none = (why: string): Cell => ({ is: 'none', why })
const step = (formula: string, withNumbers: string, value: number, quantity: Quantity): Step => ({
  formula,
  withNumbers,
  si: value,
  quantity,
})

const VERDICTS = ['circuitVerdict', 'suppressorVerdict', 'capacitorVerdict', 'signalVerdict'] as const
const OF_PART = ['suppressorPeakV', 'peakA', 'energyJ', 'usedFrac'] as const

/** Every output with its working; one that does not apply is left out, one that does not exist says why. */
export function saidOutputs({ values }: SurgeFigures, found: SurgeFound): Said {
  const { runs, setup, judged, worst } = found
  const { run } = runs
  const basis = runBasis(found)
  const said: Record<string, Figure> = {}
  const bare = setup.part ? 'this surge passes it by' : 'no suppressor'
  if (!setup.met) for (const key of OF_PART) said[key] = { cell: none(bare), basis }
  for (const [key, si] of Object.entries(values)) said[key] = { cell: { is: 'si', si }, basis }
  if (setup.met) {
    said['suppressorPeakV'] = withStep(said['suppressorPeakV'], clampStep(run, setup.met))
    said['usedFrac'] = usedFigure(judged.usage)
    if (values['worstUsedFrac'] !== undefined) said['worstUsedFrac'] = usedFigure(judged.usage, values['worstUsedFrac'])
  }
  if (run.excess?.isOpen) said['heldAfterSec'] = { cell: none('still above at the end of the run'), basis }
  for (const key of ['worstLoadPeakV', 'worstCapacitanceF', 'worstInductanceH', 'worstRingHz'])
    if (said[key]) said[key] = { cell: said[key].cell, basis: worstBasis(basis, placeWords(worst.load.at)) }
  if (worst.capacitor && said['worstCapacitorPeakV'])
    said['worstCapacitorPeakV'] = {
      cell: said['worstCapacitorPeakV'].cell,
      basis: worstBasis(basis, placeWords(worst.capacitor.at)),
    }
  return { ...said, ...verdictFigures(found) }
}

const withStep = (figure: Figure | undefined, more: Step): Figure => ({
  cell: figure?.cell ?? none(''),
  basis: figure
    ? { ...figure.basis, steps: [...figure.basis.steps, more] }
    : { steps: [more], assumptions: [], sources: [SOLVER] },
})

const worstBasis = (basis: Basis, place: string): Basis => ({
  ...basis,
  assumptions: [
    place === '' ? 'nothing has a tolerance here' : `worst at ${place}`,
    'searched over the tolerances of the filter, 30 to 100 % of the suppressor’s capacitance and the frequencies its document allows',
    ...basis.assumptions,
  ],
})

function runBasis({ setup }: SurgeFound): Basis {
  return {
    steps: [pulseStep(setup.pulse)],
    assumptions: [
      setup.pulse.row.note,
      ...takenWords(setup),
      setup.restV.some((volts) => volts !== 0)
        ? 'starts from the volts the line holds by itself'
        : 'starts at rest: no supply on the line, nothing charged',
      ...MODEL,
      ...(setup.part ? partWords(setup.part) : []),
    ],
    sources: [SOLVER, ...setup.pulse.sources],
  }
}

const MODEL = [
  'suppressor: straight above its breakdown, 0.1 µS below; forward 1 V + 0.02 Ω where unidirectional',
] as const

function partWords(part: FittedPart): readonly string[] {
  const words = part.fromClass
    ? [
        `breakdown ${show(part.leastV, 'voltage')} to ${show(part.mostV, 'voltage')} from its stand-off; the most for volts, the least for current`,
      ]
    : ['breakdown as entered, at 25 °C']
  return part.ohmFromClass ? [...words, 'dynamic resistance of its class, overstated for short pulses'] : words
}

function pulseStep({ row, openCircuitV, shortCircuitA, sourceOhm }: Pulse): Step {
  return row.form === 'current'
    ? step(
        `${row.name}: short-circuit peak`,
        `${show(openCircuitV, 'voltage')}, ${show(sourceOhm, 'resistance')}`,
        shortCircuitA,
        'current',
      )
    : step(
        `${row.name}: open-circuit peak`,
        `${show(sourceOhm, 'resistance')} source, ${show(shortCircuitA, 'current')} into a short`,
        openCircuitV,
        'voltage',
      )
}

const clampStep = (run: RunFigures, part: FittedPart): Step =>
  step(
    'V = Vbr + Rd·I',
    `${show(part.mostV, 'voltage')} + ${show(part.dynamicOhm, 'resistance')} · ${show(run.amps.value, 'current')}`,
    run.clamp.value,
    'voltage',
  )

/** Rating used: of the parts as entered, or the worst over their tolerances. */
function usedFigure(usage: Usage | undefined, worst?: number): Figure {
  const sources: Basis['sources'] = [
    { id: 'T30', clause: 'heat spreads with the square root of time', standing: 'read' },
    { id: 'derived', clause: 'integral over the real power', standing: 'derived' },
  ]
  if (!usage)
    return {
      cell: none('needs the 10/1000 µs pulse power'),
      basis: { steps: [], assumptions: [], sources },
    }
  const { factor, peakW, byPowerFrac, byShapeFrac, deratedFrac, repeatFactor, counted, wearShare } = usage
  const repeatWords = counted.map((r) => r.words).join(', ') || 'a single pulse'
  const si = worst ?? usage.totalFrac
  return {
    cell: si === undefined ? none('no rating left at this temperature') : { is: 'si', si },
    basis: {
      steps: [
        step('by the heat of its real power, against 10/1000 µs', 'max ∫p(τ)/√(t − τ)dτ', byPowerFrac, 'fraction'),
        step(
          'by its peak power: P / (P_rated · factor of the nominal shape)',
          `peak ${show(peakW, 'power')}, factor ${show(factor, 'number')}`,
          byShapeFrac,
          'fraction',
        ),
        step('left of the rating at this temperature', 'straight from 25 °C to its end point', deratedFrac, 'fraction'),
        ...(wearShare < 1 ? [step('left of a part that wears', 'n^−0.3 for n pulses', wearShare, 'fraction')] : []),
        step(`repeats, an estimate: ${repeatWords}`, 'heat left as E/√t, none removed', repeatFactor, 'number'),
      ],
      assumptions: [
        'the larger of both counts, times repeats, over what temperature leaves',
        'the part’s own pulse curve governs where it is known',
      ],
      sources,
    },
  }
}

/** The four verdicts as words; one that does not apply says why. */
function verdictFigures({ judged, setup }: SurgeFound): Said {
  const basis: Basis = { steps: [], assumptions: ['reasons under findings'], sources: [SOLVER] }
  const word = (verdict: Verdict | undefined, why: string): Figure => ({
    cell: verdict ? { is: 'word', word: VERDICT_WORDS[verdict], verdict } : none(why),
    basis,
  })
  const figures: Readonly<Record<(typeof VERDICTS)[number], Figure>> = {
    circuitVerdict: word(judged.circuit.verdict, ''),
    suppressorVerdict: word(judged.suppressor?.verdict, setup.part ? '' : 'no suppressor'),
    capacitorVerdict: word(judged.capacitor?.verdict, 'no filter capacitor'),
    signalVerdict: signalFigure(judged.signal),
  }
  return figures
}
