/** What a row does to the signal: by its coils as `loading` judges them, and by what its legs turn into signal. */
import { exactly, type SignalFilter } from '../../loading/box.ts'
import { coilFails, coilReasons, judgeLoading, type LoadingJudgement, type LoadingReason } from '../../loading/judge.ts'
import { hasInductor } from '../../network/circuit.ts'
import type { Topology, Verdict } from '../../types.ts'
import { worse } from '../../verdict.ts'
import { convertsTooMuch } from './conversion.ts'
import type { WindowRow } from './row.ts'
import { sharesOf, type WindowSetup } from './setup.ts'

/**
 * What the proposal of a row (or the coils alone) does to the signal, as `loading` judges it; undefined without a line,
 * or where nothing but the ceilings counts.
 */
export function signalOf(
  { topology, proposal, need, least }: WindowRow,
  setup: WindowSetup,
): LoadingJudgement | undefined {
  const { signal, taken } = setup
  if (!signal || !hasCoil(topology, setup)) return undefined
  // Without a standard value, as the least that would do.
  const shownF = need.is === 'found' && Number.isFinite(least?.markedF) ? (least?.markedF ?? 0) : 0
  return judgeLoading({ facts: signal, taken, filter: filterOf(topology, setup, proposal?.valueF ?? shownF) })
}

const hasCoil = (topology: Topology, { choke }: WindowSetup): boolean => hasInductor(topology) || choke !== undefined

/** What stands in the way of the signal, every part over its box. */
function filterOf(topology: Topology, setup: WindowSetup, markedF: number): SignalFilter {
  const { inductanceH, coil, choke, elements } = setup
  const { least, most } = sharesOf(setup)
  return {
    topology,
    capacitorF: { least: markedF * least, most: markedF * most },
    inductanceH,
    coil,
    ...(elements.damper === undefined ? {} : { damper: elements.damper }),
    ...(choke === undefined ? {} : { chokeH: choke.loopH, chokeCoil: choke.loop }),
  }
}

/**
 * What a mark does to the signal: by its coils, and by what its legs turn into signal. `others`: what else is to be true
 * of it, asked between the two, since the last costs most.
 */
export function sideVerdict(
  setup: WindowSetup,
  topology: Topology,
  markedF: number,
  others: () => Verdict = () => 'ok',
): Verdict {
  const coils = signalVerdict(setup, topology, markedF)
  const verdict = coils === 'fails' ? coils : worse(coils, others())
  return verdict !== 'fails' && convertsTooMuch(topology, setup, markedF) ? 'fails' : verdict
}

/**
 * The verdict of that judgement on what the coils turn. A part as marked that fails lies in the box: nothing else has to
 * be looked at then.
 */
function signalVerdict(setup: WindowSetup, topology: Topology, markedF: number): Verdict {
  const { signal, taken } = setup
  if (!signal || !hasCoil(topology, setup)) return 'ok'
  const box = filterOf(topology, setup, markedF)
  const one = { ...box, capacitorF: exactly(markedF), inductanceH: exactly(box.inductanceH.least) }
  if (coilFails(signal, taken, one)) return 'fails'
  return worstOfReasons(coilReasons(signal, taken, box))
}

const worstOfReasons = (reasons: readonly LoadingReason[]): Verdict =>
  reasons.reduce<Verdict>((worst, { verdict }) => worse(worst, verdict), 'ok')
