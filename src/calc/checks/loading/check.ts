/** How much capacitance a signal stands, and what a given one does to it. */
import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import { roomPerLegF, type Taken } from '../../bounds/room.ts'
import { seenFarads } from '../../loading/budget.ts'
import { loadingCeiling } from '../../loading/ceiling.ts'
import { type Figures, type LoadedSignal, loadingFigures } from '../../loading/figures.ts'
import { inductorEffect } from '../../loading/inductor.ts'
import {
  inductorFindings,
  isOver,
  type Judged,
  kindFindings,
  permittedFindings,
  permittedRoomF,
  worksFindings,
} from '../../loading/judge.ts'
import { loadingStrip } from '../../loading/strip.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Basis, Check, Finding, Given, Input, Result, SaidBound, Verdict } from '../../types.ts'
import { worse, worstFirst } from '../../verdict.ts'
import { FARADS, HENRIES } from '../noise-inputs.ts'
import {
  bitRateInput,
  crossInput,
  driverEdgeInput,
  existingInput,
  lineKindInput,
  signalOhmInput,
  suppressorInput,
} from '../signal-inputs.ts'
import { type Told, told } from '../told.ts'

const inputs = [
  lineKindInput,
  {
    key: 'capacitanceF',
    fact: 'legF',
    label: 'Capacitance per leg',
    help: 'All the filter puts from one leg to chassis (both capacitors of a Pi), before tolerance. Empty: only the most it may be.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
  },
  crossInput,
  {
    key: 'inductanceH',
    fact: 'inductanceH',
    label: 'Filter inductance per leg',
    help: 'In series with each leg. With a capacitor it can ring. Empty: none.',
    type: HENRIES,
    whenEmpty: { do: 'omit' },
  },
  suppressorInput,
  existingInput,
  bitRateInput,
  driverEdgeInput,
  signalOhmInput,
] as const satisfies readonly Input[]

type LoadingGiven = Given<typeof inputs>

const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)
const PRACTICE_BASIS: Basis = { steps: [], assumptions: [], sources: [{ id: 'practice', standing: 'practice' }] }

function compute(given: LoadingGiven): Result {
  if (given.lineKind === undefined)
    return stopped('Choose the line: what it carries decides how much it stands.', 'unknown')
  const kind = lineKindById(given.lineKind)
  if (kind === undefined)
    return {
      ok: false,
      issues: [
        { key: 'lineKind', code: 'unknown-choice', message: 'This line is not in the list; choose one from it.' },
      ],
    }
  if (kind.barredWhy !== undefined) return stopped(kind.barredWhy, 'fails', ['no-trial', 'screening'])
  return answer(given, kind)
}

function stopped(sentence: string, verdict: Verdict, cautions: readonly string[] = []): Result {
  return {
    ok: true,
    verdict,
    headline: sentence,
    findings: [],
    outputs: { mostCapacitanceF: { cell: { is: 'none', why: sentence }, basis: PRACTICE_BASIS } },
    bounds: [],
    rungs: [],
    pictures: [],
    cautions,
  }
}

function answer(given: LoadingGiven, kind: LineKind): Result {
  const { bitRateHz, driverEdgeSec, signalOhm } = given
  const facts = { kind, bitRateHz, driverEdgeSec, signalOhm }
  const taken: Taken = {
    isPair: kind.isPair,
    existingF: given.existingF ?? 0,
    crossF: given.crossF ?? 0,
    suppressorF: given.suppressorF ?? 0,
  }
  const ceiling = loadingCeiling(facts)
  const legF = given.capacitanceF ?? 0
  const farads = seenFarads({ ...taken, legF })
  const inductor = inductorEffect({ ...facts, inductanceH: given.inductanceH ?? 0, signalF: farads })
  const signal: LoadedSignal = { facts, farads, inductor }
  const judged: Judged = { signal, legF, taken, ceiling }
  const entered = given.capacitanceF !== undefined
  const findings = findingsOf(judged, given)
  const judgedVerdict = findings.reduce<Verdict>((worst, { verdict: v }) => worse(worst, v), 'ok')
  const verdict = entered || judgedVerdict === 'fails' ? judgedVerdict : 'unknown'
  const bounds = boundsOf(judged)
  const strip = loadingStrip({
    bounds,
    askedF: given.capacitanceF,
    isPair: kind.isPair,
    suppressorF: taken.suppressorF,
    verdict,
  })
  return {
    ok: true,
    verdict,
    headline: headlineOf(judged, entered, verdict),
    findings,
    outputs: { ...(entered ? enteredFigures(signal, taken, legF) : {}), ...mostOutput(judged) },
    bounds,
    rungs: [],
    pictures: strip ? [strip] : [],
    asks: ceiling.works.farads === undefined && ceiling.works.ask ? [ceiling.works.ask] : [],
    cautions: [...(kind.isPair ? ['matched-legs'] : []), 'chassis-capacitance', 'ok-bounds', 'screening'],
  }
}

function findingsOf(judged: Judged, given: LoadingGiven): readonly Finding[] {
  return worstFirst([
    ...worksFindings(judged),
    ...permittedFindings(judged),
    ...inductorFindings(judged),
    ...crossFinding(judged),
    ...kindFindings(judged),
    ...notEntered(given, judged),
  ])
}

function crossFinding({ taken }: Judged): readonly Finding[] {
  if (taken.isPair || taken.crossF === 0) return []
  return [
    {
      verdict: 'unknown',
      sentence:
        'A line-to-line capacitor has no meaning on a single line and was not counted: enter it as already on the line.',
    },
  ]
}

function notEntered(given: LoadingGiven, { taken }: Judged): readonly Finding[] {
  const missing = [
    given.suppressorF === undefined ? 'suppressor capacitance' : undefined,
    given.existingF === undefined ? 'what is already on the line' : undefined,
    taken.isPair && given.crossF === undefined ? 'a line-to-line capacitor' : undefined,
  ].filter((word) => word !== undefined)
  return missing.length === 0
    ? []
    : [{ verdict: 'ok', sentence: `Not entered and counted as none: ${missing.join(', ')}.` }]
}

function headlineOf(judged: Judged, entered: boolean, verdict: Verdict): string {
  const { ceiling, taken, legF } = judged
  const { works } = ceiling
  if (works.farads === undefined) return works.why
  const room = Math.max(0, roomPerLegF(works.farads, taken))
  const leg = taken.isPair ? ' per leg' : ''
  if (!entered)
    return room === 0 ? 'No room is left on this line.' : `This line stands up to ${show(room, 'capacitance')}${leg}.`
  const has = `${show(legF, 'capacitance')}${leg}`
  if (isOver(legF, room))
    return `${has} is too much: ${room === 0 ? 'no room is left' : `it works up to ${show(room, 'capacitance')}${leg}`}.`
  return `${has} is inside the ${show(room, 'capacitance')}${leg} that work${reservation(judged, verdict)}.`
}

/** What keeps a capacitance inside its room from being ok, in half a sentence. */
function reservation({ ceiling, taken, legF, signal }: Judged, verdict: Verdict): string {
  if (verdict === 'ok') return ''
  const exceeded = ceiling.permitted.map((figure) => permittedRoomF(figure, taken)).filter((room) => isOver(legF, room))
  if (verdict === 'marginal' && exceeded.length > 0)
    return `, but over the ${show(Math.max(0, Math.min(...exceeded)), 'capacitance')} a document permits`
  if (signal.inductor?.hurts !== undefined) return `, but the inductor: ${signal.inductor.hurts}`
  return ', but not with everything else that was entered'
}

function enteredFigures(signal: LoadedSignal, taken: Taken, legF: number): Figures {
  const figures = loadingFigures(signal)
  if (!taken.isPair) return figures
  const { crossF, suppressorF, existingF } = taken
  return {
    differentialF: {
      cell: { is: 'si', si: signal.farads },
      basis: {
        steps: [
          {
            formula: 'C_dm = Cx + (C + C_suppressor)/2 + existing',
            withNumbers: `${show(crossF, 'capacitance')} + (${show(legF, 'capacitance')} + ${show(suppressorF, 'capacitance')})/2 + ${show(existingF, 'capacitance')}`,
            si: signal.farads,
            quantity: 'capacitance',
          },
        ],
        assumptions: ['equal legs'],
        sources: [{ id: 'derived', standing: 'derived' }],
      },
    },
    ...figures,
  }
}

function mostOutput({ ceiling, taken }: Judged): Figures {
  const { works } = ceiling
  if (works.farads === undefined)
    return { mostCapacitanceF: { cell: { is: 'none', why: works.why }, basis: works.basis } }
  const si = Math.max(0, roomPerLegF(works.farads, taken))
  const c = show(works.farads, 'capacitance')
  const step = {
    formula: taken.isPair ? 'C_leg = 2·(C_works − Cx − existing) − suppressor' : 'C = C_works − existing − suppressor',
    withNumbers: taken.isPair
      ? `2 · (${c} − ${show(taken.crossF, 'capacitance')} − ${show(taken.existingF, 'capacitance')}) − ${show(taken.suppressorF, 'capacitance')}`
      : `${c} − ${show(taken.existingF, 'capacitance')} − ${show(taken.suppressorF, 'capacitance')}`,
    si,
    quantity: 'capacitance' as const,
  }
  return {
    mostCapacitanceF: { cell: { is: 'si', si }, basis: { ...works.basis, steps: [...works.basis.steps, step] } },
  }
}

function boundsOf({ ceiling, taken, signal }: Judged): readonly SaidBound[] {
  const appliesTo = taken.isPair
    ? 'farads of each leg to chassis, before tolerance'
    : 'farads to chassis, before tolerance'
  const { works, permitted } = ceiling
  const common = { side: 'most', topology: 'any', appliesTo, openedBy: [] } as const
  const worksBound: readonly SaidBound[] =
    works.farads === undefined
      ? []
      : [
          {
            ...common,
            id: 'loading-works',
            nature: 'works',
            markedF: Math.max(0, roomPerLegF(works.farads, taken)),
            why: works.why,
            basis: works.basis,
          },
        ]
  return [
    ...worksBound,
    ...permitted.map(
      (figure): SaidBound => ({
        ...common,
        id: `permitted-${figure.id}`,
        nature: 'permitted',
        markedF: Math.max(0, permittedRoomF(figure, taken)),
        why: `${figure.label} (${signal.facts.kind.name})`,
        basis: {
          steps: [
            {
              formula: 'figure of the document',
              withNumbers: figure.label,
              si: figure.farads,
              quantity: 'capacitance',
            },
          ],
          assumptions: [],
          sources: [figure.source],
        },
      }),
    ),
  ]
}

export const loadingCheck: Check<typeof inputs, Told> = {
  id: 'loading',
  title: 'Loading',
  question: 'How much capacitance does this signal stand, and what does this one do to it?',
  inputs,
  outputs: [
    { key: 'mostCapacitanceF', label: 'Most per leg', quantity: 'capacitance', digits: 4, lead: true },
    { key: 'differentialF', label: 'Between the wires', quantity: 'capacitance', digits: 4 },
    { key: 'edgeSec', label: 'Edge', quantity: 'time', digits: 4 },
    { key: 'eyeFrac', label: 'Inner eye', quantity: 'fraction', digits: 3 },
    { key: 'jitterFrac', label: 'Jitter, share of a bit', quantity: 'fraction', digits: 3 },
    { key: 'returnLossDb', label: 'Return loss', quantity: 'decibel', digits: 4 },
    { key: 'bandLossDb', label: 'Loss at the top of the band', quantity: 'decibel', digits: 4 },
    { key: 'phaseDeg', label: 'Phase at the carrier', quantity: 'angle', digits: 3 },
    { key: 'terminalOhm', label: 'Impedance it leaves', quantity: 'resistance', digits: 4 },
    { key: 'damping', label: 'Damping with the inductor', quantity: 'number', digits: 3 },
  ],
  ...told(compute),
}
