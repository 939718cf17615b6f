/** What the loading check says. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import { roomPerLegF } from '../../bounds/room.ts'
import { permittedBasis, permittedLabel, worksBasis, worksWhy } from '../../explain/ceiling.ts'
import { ONE_WIRE, usualLeakage } from '../../explain/choke.ts'
import { judgementFindings, kindFindings } from '../../explain/loading.ts'
import type { Said } from '../../explain/sentence.ts'
import { worksList } from '../../loading/ceiling.ts'
import { permittedRoomF } from '../../loading/judge.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Bound, Finding, SaidBound, Success, Verdict } from '../../types.ts'
import { worstFirst } from '../../verdict.ts'
import { hasSpread, type Loaded, type LoadingFigures } from './figures.ts'
import type { LoadingGiven } from './inputs.ts'
import { loadingSaid, stoppedSaid } from './sentence.ts'
import { loadingStrip } from './strip.ts'
import { saidOutputs } from './workings.ts'

const PRACTICE_BASIS: Basis = { steps: [], assumptions: [], sources: [{ id: 'practice', standing: 'practice' }] }

export function explainLoading(given: LoadingGiven, figures: LoadingFigures): Success {
  const { loaded, verdict } = figures
  if (loaded === undefined) {
    const barredWhy = lineKindById(given.lineKind ?? '')?.barredWhy
    return stopped(stoppedSaid(given), verdict, barredWhy)
  }
  const { taken, signal, ceiling } = loaded
  const bounds = boundsOf(loaded)
  const strip = loadingStrip({
    bounds,
    works: tightest(figures.bounds),
    taken,
    askedF: given.capacitanceF,
    verdict,
  })
  return {
    ok: true,
    verdict,
    ...loadingSaid(given, figures, loaded),
    findings: worstFirst([
      ...judgementFindings(signal.facts, loaded.judgement),
      ...kindFindings(signal.facts, signal.farads),
      ...chokeFindings(loaded),
      ...notEntered(given, loaded),
      ...asEntered(given, loaded),
    ]),
    outputs: saidOutputs(figures, loaded),
    bounds,
    rungs: [],
    pictures: strip ? [strip] : [],
    asks: ceiling.works.farads === undefined && ceiling.works.ask ? [ceiling.works.ask] : ceiling.lacks,
    cautions: [...(taken.isPair ? ['matched-legs'] : []), 'chassis-capacitance', 'ok-bounds', 'screening'],
  }
}

/** The line's own ceiling, nothing taken off: the least of all that work. */
function tightest(bounds: readonly Bound[]): Bound | undefined {
  return bounds
    .filter(({ nature }) => nature === 'works')
    .reduce<Bound | undefined>((least, bound) => (least && least.farads <= bound.farads ? least : bound), undefined)
}

function stopped(said: Said, verdict: Verdict, barredWhy: string | undefined): Success {
  return {
    ok: true,
    verdict,
    ...said,
    findings: [],
    outputs: { mostCapacitanceF: { cell: { is: 'none', why: barredWhy ?? 'needs the line' }, basis: PRACTICE_BASIS } },
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: barredWhy === undefined ? [] : ['no-trial', 'screening'],
  }
}

/** What is left empty and assumed is listed with the fields; this one is neither asked for nor assumed. */
function notEntered(given: LoadingGiven, { taken }: Loaded): readonly Finding[] {
  return taken.isPair && given.crossF === undefined
    ? [{ verdict: 'ok', sentence: 'No line-to-line capacitor was entered, and none is counted.' }]
    : []
}

/** A choke lets the signal through but for its leakage; what was taken of it. */
function chokeFindings({ choke }: Loaded): readonly Finding[] {
  if (choke === undefined) return []
  if (choke.isOneWire) return [ONE_WIRE]
  const loopH = formatQuantity(choke.loopH, 'inductance', 3)
  return [
    {
      verdict: 'ok',
      sentence: `Of the choke the signal meets only the leakage, ${loopH} in its loop, judged as an inductor before or behind the rest. That holds with every wire of the circuit through the core, the return included.`,
    },
    ...(choke.isLeakageStated ? [] : [usualLeakage(loopH)]),
  ]
}

/** A yes holds for what was entered of the part, and says so. */
function asEntered(given: LoadingGiven, { isEntered }: Loaded): readonly Finding[] {
  const said: Finding[] = []
  if (isEntered && !hasSpread(given))
    said.push({
      verdict: 'ok',
      sentence: 'Judged for the part as entered: enter its tolerance, or let the window check count it.',
    })
  if (given.topology === 'C' && (given.inductanceH ?? 0) > 0)
    said.push({ verdict: 'ok', sentence: 'A C has no inductor: the one entered is not counted.' })
  return said
}

/** The bounds as farads of one leg, with what is on the line already taken off. */
function boundsOf({ ceiling, taken, signal }: Loaded): readonly SaidBound[] {
  const { facts } = signal
  const appliesTo = taken.isPair
    ? 'farads of each leg to chassis, before tolerance'
    : 'farads to chassis, before tolerance'
  const { permitted } = ceiling
  const common = { side: 'most', topology: 'any', appliesTo, openedBy: [] } as const
  const physics = worksList(facts).flatMap(({ id, works }): readonly SaidBound[] =>
    works.farads === undefined
      ? []
      : [
          {
            ...common,
            id,
            nature: 'works',
            markedF: Math.max(0, roomPerLegF(works.farads, taken)),
            why: worksWhy(facts, works),
            basis: worksBasis(facts, works),
          },
        ],
  )
  return [
    ...physics,
    ...permitted.map(
      (figure): SaidBound => ({
        ...common,
        id: `permitted-${figure.id}`,
        nature: 'permitted',
        markedF: Math.max(0, permittedRoomF(figure, taken)),
        why: `${permittedLabel(facts.kind, figure)} (${facts.kind.name})`,
        basis: permittedBasis(facts.kind, figure),
      }),
    ),
  ]
}
