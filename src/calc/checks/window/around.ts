/** What stands around the filter of the window, and what may stand at its ends. */
import { bondFactor, crossPerLegF, legFactor, loadPerLeg, type NoiseMode, sourcePerLeg } from '../../bounds/legs.ts'
import type { Taken } from '../../bounds/room.ts'
import type { Need, Span, Surroundings } from '../../bounds/surroundings.ts'
import { SUPPRESSOR_LEAST_SHARE } from '../../loading/box.ts'
import { acrossCoilF } from '../../network/self-resonance.ts'
import type { Elements } from '../elements.ts'
import type { WindowChoke } from './choke.ts'
import type { WindowGiven } from './inputs.ts'
import type { WindowSetup } from './setup.ts'

export type WindowAround = Omit<Surroundings, 'topology'>

export type AroundQuestion = {
  readonly given: WindowGiven
  readonly needs: readonly Need[]
  readonly isPair: boolean
  readonly mode: NoiseMode
  readonly taken: Taken
  readonly inductanceH: Span
  readonly choke: WindowChoke | undefined
  readonly elements: Elements
}

/** Undefined while the noise ends or the need are unknown. */
export function aroundOf(q: AroundQuestion): WindowAround | undefined {
  const { given, needs, isPair, mode } = q
  const { sourceOhm, loadOhm } = given
  if (needs.length === 0 || sourceOhm === undefined || loadOhm === undefined) return undefined
  const factor = legFactor(isPair, mode)
  return {
    ...partsAround(q),
    needs,
    sources: sourceOhm.map((ohm) => sourcePerLeg({ ohm, seriesH: given.sourceH ?? 0 }, factor)),
    load: loadPerLeg(
      { ohm: loadOhm, parallelF: given.loadF ?? 0, parallelH: given.loadH ?? Number.POSITIVE_INFINITY },
      factor,
    ),
  }
}

/** The same but for the noise ends: what the parts themselves bring along. */
export function partsAround(q: AroundQuestion): Omit<WindowAround, 'needs' | 'sources' | 'load'> {
  const { given, isPair, mode, taken, inductanceH, choke, elements } = q
  const crossF: Span = {
    least: crossPerLegF(taken.crossLeastF ?? taken.crossF, isPair, mode),
    most: crossPerLegF(taken.crossF, isPair, mode),
  }
  return {
    esrOhm: given.esrOhm,
    eslH: given.eslH,
    bondOhm: bondFactor(isPair, mode) * given.bondOhm,
    bondH: bondFactor(isPair, mode) * given.bondH,
    dcrOhm: given.dcrOhm,
    inductorParallelF: acrossCoilF({
      inductanceH: given.inductanceH,
      resonanceHz: given.inductorResonanceHz,
      parallelF: given.inductorParallelF,
    }),
    inductorParallelOhm: given.inductorParallelOhm ?? Number.POSITIVE_INFINITY,
    inductancesH: [inductanceH.least, inductanceH.most],
    ...(crossF.most > 0 ? { crossF } : {}),
    ...(choke === undefined ? {} : { choke: choke.leg }),
    ...(elements.bead === undefined ? {} : { bead: elements.bead }),
    ...(elements.damper === undefined ? {} : { damper: elements.damper }),
  }
}

/**
 * Everything that can stand at the ends of the filter: what is already on the line at either end (with and without the
 * filter) or at neither, and a suppressor at either end, anywhere from 30 % to all of its capacitance at 0 V. Neither earns anything:
 * a filter has to hold in every one of these.
 */
export function placings(
  around: WindowAround,
  { taken, lumpedF, mode }: Pick<WindowSetup, 'taken' | 'lumpedF' | 'mode'>,
): readonly WindowAround[] {
  const acrossF = taken.isPair ? crossPerLegF(lumpedF, true, mode) : lumpedF
  const existing: readonly WindowAround[] =
    acrossF === 0
      ? [around]
      : [
          { ...around, sources: around.sources.map((source) => ({ ...source, shuntF: acrossF })) },
          { ...around, load: { ...around.load, parallelF: around.load.parallelF + acrossF } },
          // behind a length of cable it stands at neither end
          around,
        ]
  if (taken.suppressorF === 0) return existing
  const nodeF = { least: SUPPRESSOR_LEAST_SHARE * taken.suppressorF, most: taken.suppressorF, inBare: false }
  return existing.flatMap((one) => [
    { ...one, sourceNodeF: nodeF },
    { ...one, loadNodeF: nodeF },
  ])
}
