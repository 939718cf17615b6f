/** Asks one random window the way a screen does, and tries to refute the answer. */
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { windowInputs } from '../../../src/calc/checks/window/inputs.ts'
import { TOPOLOGIES, TOPOLOGY_LABEL } from '../../../src/calc/network/circuit.ts'
import type { Success, Topology, Verdict } from '../../../src/calc/types.ts'
import { usualLoadOf } from '../../../src/reference/line-kinds/usual-load.ts'
import { lineKindById } from '../../../src/reference/line-kinds.ts'
import { run, si } from '../../support/run-check.ts'
import type { WindowFacts } from './facts.ts'
import { CORNERS, FULL, noiseMargin, refuteNo, refuteYes } from './judge.ts'
import { followedOf, refusedOpener } from './openers.ts'
import type { Emptiable, RandomWindow } from './random-window.ts'
import { isInBand } from './signal.ts'

export type Fought = {
  readonly verdict: Verdict
  readonly topology: Topology
  readonly isInBand: boolean
  /** a part was proposed (or the coil alone does it) */
  readonly isFitted: boolean
  readonly doubts: number
  /** a choke did it with no capacitor beside it */
  readonly isChokeAlone: boolean
  /** sentences that were followed to a window of their own, and those of them that named a choke or a line-to-line capacitor */
  readonly openers: number
  readonly modeOpeners: number
  readonly refutation: string | undefined
}

export function fight(window: RandomWindow): Fought {
  const { facts, texts, next } = window
  const answer = run(windowCheck, texts)
  const topology = topologyOf(answer)
  const markedF = si(answer, 'proposedF') ?? 0
  const verdict = answer.verdict ?? 'unknown'
  const isYes = verdict === 'ok' || (verdict === 'marginal' && si(answer, 'proposedF') !== undefined)
  const isChokeAlone = isYes && wordOf(answer) === 'Choke alone'
  const fought = {
    verdict,
    topology,
    isInBand: isInBand(facts),
    isFitted: isYes && (markedF > 0 || topology === 'L' || isChokeAlone),
    isChokeAlone,
    openers: 0,
    modeOpeners: 0,
  }
  if (verdict === 'fails') {
    const topologies = facts.topology === undefined ? TOPOLOGIES : [facts.topology]
    const followed = followedOf(answer, texts)
    return {
      ...fought,
      doubts: 0,
      openers: followed.length,
      modeOpeners: followed.filter(({ sentence }) => /choke of|line-to-line/.test(sentence)).length,
      refutation: refuteNo(facts, topologies, next) ?? refusedOpener(followed),
    }
  }
  if (!isYes) return { ...fought, doubts: 0, refutation: undefined }
  const doubts = verdict === 'ok' ? doubtsOf(facts, texts) : []
  const said = verdict === 'ok' ? 'ok' : 'marginal'
  return {
    ...fought,
    doubts: doubts.length,
    refutation:
      refuteYes(facts, topology, markedF, said, FULL, next) ??
      overstated(facts, answer, topology, markedF, next) ??
      doubts.flatMap(({ why, other }) => {
        // What is usually on a line is its wiring: it takes room, and is no lump at an end of the filter.
        const lumped = { ...other, existingF: facts.existingF }
        const refuted = refuteYes(other, topology, markedF, said, CORNERS, next, lumped)
        return refuted === undefined ? [] : [`${refuted} with ${why}`]
      })[0],
  }
}

function wordOf(answer: Success): string {
  const cell = answer.outputs['topologyUsed']?.cell
  return cell?.is === 'word' ? cell.word : ''
}

function topologyOf(answer: Success): Topology {
  const word = wordOf(answer)
  if (word === 'Choke alone') return 'C'
  const found = TOPOLOGIES.find((topology) => TOPOLOGY_LABEL[topology] === word)
  if (!found) throw new RangeError(`no topology “${word}”`)
  return found
}

/** The worst attenuation that is shown may not be better than the worst that is found. */
function overstated(
  facts: WindowFacts,
  answer: Success,
  topology: Topology,
  markedF: number,
  next: () => number,
): string | undefined {
  const shownDb = si(answer, 'worstLossDb')
  const [need, ...others] = facts.needs
  if (shownDb === undefined || need === undefined || others.length > 0) return undefined
  const foundDb = noiseMargin({ ...facts, needs: [{ hz: need.hz, db: 0 }] }, topology, markedF, FULL, next)
  return foundDb < shownDb - 0.01 ? `${shownDb.toFixed(3)} dB shown, ${foundDb.toFixed(3)} found` : undefined
}

/** Every empty field whose assumption flatters, with its contrary; all of them together at the end. */
function doubtsOf(
  facts: WindowFacts,
  texts: Readonly<Record<string, string>>,
): readonly { readonly why: string; readonly other: WindowFacts }[] {
  const kind = lineKindById(facts.lineKind)
  const usual = kind ? usualLoadOf(kind) : undefined
  const contraries: Partial<Record<Emptiable, number>> = {}
  for (const { key, whenEmpty } of windowInputs) {
    if (texts[key] !== '' || whenEmpty.do !== 'assume' || !whenEmpty.favourable) continue
    if (key === 'chokeF' && facts.chokeH === 0) continue
    if (key === 'suppressorF' || key === 'existingF') {
      const farads = usual?.[key]
      if (farads !== undefined) contraries[key] = farads
    } else if (hasContrary(key)) contraries[key] = CONTRARY[key]
  }
  const each = Object.entries(contraries).map(([key, value]) => ({
    why: `${key} ${value}`,
    other: { ...facts, [key]: value },
  }))
  return each.length > 1 ? [...each, { why: 'all of them', other: { ...facts, ...contraries } }] : each
}

const hasContrary = (key: string): key is keyof typeof CONTRARY => key in CONTRARY

/** What a flattering assumption may turn out to be: a class R bond with the inductance of a good contact, a mounted feed-through. */
const CONTRARY = {
  inductanceH: 0.1e-6,
  eslH: 0.05e-9,
  bondOhm: 2.5e-3,
  bondH: 0.5e-9,
  inductorParallelF: 2e-12,
  chokeF: 2e-12,
} as const
