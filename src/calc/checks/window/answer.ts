/** Puts the rows of a window into an answer: verdict, figures, bounds, findings and the strip. */
import type { LineKind } from '../../../reference/line-kinds.ts'
import { ELEMENT_COUNT, TOPOLOGIES } from '../../network/circuit.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Cell, Opener, Picture, Progress, Result, SaidBound, Verdict } from '../../types.ts'
import { VERDICT_RANK } from '../../verdict.ts'
import { leastBasis, mostBasis, proposalBasis } from '../../window/basis.ts'
import { pairNeeds, setUp, type WindowSetup } from '../../window/facts.ts'
import { openersOf } from '../../window/openers.ts'
import { type WindowRow, windowRow } from '../../window/row.ts'
import { stripOf, topologyTable } from '../../window/strip.ts'
import { findingsOf, headlineOf, listed } from '../../window/words.ts'
import type { WindowGiven } from './inputs.ts'

const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const dB = (x: number) => formatQuantity(x, 'decibel', 3)

/** A line that never gets a part: no figures, the reason in full. */
export function barredAnswer(name: string, why: string): Result {
  return {
    ok: true,
    verdict: 'fails',
    headline: `No filter advice for this line. ${why}`,
    findings: [{ verdict: 'fails', sentence: `${name} is never fitted with a trial part.` }],
    outputs: {},
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: ['no-trial', 'permanent-approved'],
  }
}

/** Share of the work the six rows are; the rest is what would open a shut window. */
const ROWS_FRAC = 0.7

/** Rows one by one (yielding between them), then the answer for the topology asked for, or the simplest that works. */
export function* answerWindow(given: WindowGiven, kind: LineKind | undefined): Generator<Progress, Result> {
  const needs = pairNeeds(given.frequencyHz ?? [], given.neededDb ?? [])
  if ('code' in needs) return { ok: false, issues: [needs] }
  const setup = setUp(given, kind, needs)
  const rows: WindowRow[] = []
  for (const topology of TOPOLOGIES) {
    rows.push(windowRow(topology, setup.facts))
    yield { doneFrac: (ROWS_FRAC * rows.length) / TOPOLOGIES.length }
  }
  const row = rows.find((r) => r.topology === given.topology) ?? simplestThatWorks(rows)
  const asked = openersOf(row, rows, setup.facts, setup.taken)
  for (;;) {
    const step = asked.next()
    if (step.done) return answerFor(row, rows, setup, { openers: step.value, wasAsked: given.topology !== undefined })
    yield { doneFrac: ROWS_FRAC }
  }
}

/** Best verdict, then fewest parts, then the wider window. */
export function simplestThatWorks(rows: readonly WindowRow[]): WindowRow {
  const width = (r: WindowRow) => (r.upper && r.leastF ? r.upper.markedF / r.leastF : 0)
  const sorted = [...rows].sort(
    (a, b) =>
      VERDICT_RANK[a.verdict] - VERDICT_RANK[b.verdict] ||
      ELEMENT_COUNT[a.topology] - ELEMENT_COUNT[b.topology] ||
      width(b) - width(a) ||
      TOPOLOGIES.indexOf(a.topology) - TOPOLOGIES.indexOf(b.topology),
  )
  return sorted[0] as WindowRow
}

type Asked = { readonly openers: readonly Opener[]; readonly wasAsked: boolean }

function answerFor(row: WindowRow, rows: readonly WindowRow[], setup: WindowSetup, asked: Asked): Result {
  const { openers, wasAsked } = asked
  const verdict: Verdict = setup.inBandHz === undefined ? row.verdict : 'fails'
  const pictures: Picture[] = [stripOf(rows, row, verdict)]
  if (setup.facts.around) pictures.push(topologyTable(rows, row))
  return {
    ok: true,
    verdict,
    headline: headlineOf(row, setup, verdict),
    findings: findingsOf(
      row,
      setup,
      openers.map((o) => o.sentence),
      wasAsked,
    ),
    outputs: outputsOf(row, setup),
    bounds: boundsOf(row, setup, openers),
    rungs: [],
    pictures,
    asks: setup.asks,
    cautions: cautionsOf(setup),
  }
}

function outputsOf(row: WindowRow, setup: WindowSetup) {
  const outputs: Record<string, { cell: Cell; basis: ReturnType<typeof leastBasis> }> = {}
  const value = (si: number | undefined, why: string): Cell =>
    si === undefined ? { is: 'none', why } : { is: 'si', si }
  const least = leastBasis(row, setup)
  if (row.least.is === 'inductor-only') {
    outputs['leastInductanceH'] = {
      cell: value(row.least.leastH, 'no inductor up to 1 H meets the need'),
      basis: least,
    }
    outputs['leastCapacitanceF'] = { cell: value(undefined, 'this topology has no capacitor'), basis: least }
  } else {
    const whyNone = row.least.is === 'never' ? 'no capacitor is large enough' : `enter ${listed(setup.missing)}`
    outputs['leastCapacitanceF'] = { cell: value(row.leastF, whyNone), basis: least }
    outputs['mostCapacitanceF'] = {
      cell: value(row.most?.markedF, setup.works?.why ?? 'choose the line'),
      basis: mostBasis(row, setup),
    }
    const noProposal =
      row.leastF === undefined
        ? whyNone
        : row.least.is === 'none-needed'
          ? 'nothing needed'
          : 'no standard value inside'
    outputs['proposedF'] = { cell: value(row.proposal?.valueF, noProposal), basis: proposalBasis(row) }
  }
  outputs['topologyUsed'] = { cell: { is: 'word', word: row.label }, basis: proposalBasis(row) }
  if (row.service) outputs['worstLossDb'] = { cell: { is: 'si', si: row.service.lossDb }, basis: least }
  if (row.proposal && row.leastF)
    outputs['overLeastRatio'] = { cell: { is: 'si', si: row.proposal.valueF / row.leastF }, basis: proposalBasis(row) }
  if (row.proposal && row.upper)
    outputs['underMostRatio'] = {
      cell: { is: 'si', si: row.upper.markedF / row.proposal.valueF },
      basis: proposalBasis(row),
    }
  if (row.permitted)
    outputs['permittedF'] = { cell: { is: 'si', si: row.permitted.markedF }, basis: mostBasis(row, setup) }
  return outputs
}

function boundsOf(row: WindowRow, setup: WindowSetup, openedBy: SaidBound['openedBy']): SaidBound[] {
  const bounds: SaidBound[] = []
  const shared = { topology: row.topology, appliesTo: 'one capacitor as marked', openedBy }
  if (row.least.is === 'found' && row.leastF !== undefined) {
    const { need } = row.least.at
    bounds.push({
      ...shared,
      id: 'need-least',
      side: 'least',
      nature: 'need',
      markedF: row.leastF,
      why: `${dB(need.db)} at ${hertz(need.hz)}`,
      basis: leastBasis(row, setup),
    })
  }
  if (row.upper)
    bounds.push({
      ...shared,
      id: row.upper.id,
      side: 'most',
      nature: 'works',
      markedF: row.upper.markedF,
      why: row.upper.why,
      basis: mostBasis(row, setup),
    })
  if (row.permitted) {
    bounds.push({
      ...shared,
      id: row.permitted.id,
      side: 'most',
      nature: 'permitted',
      markedF: row.permitted.markedF,
      why: row.permitted.why,
      basis: mostBasis(row, setup),
    })
  }
  return bounds
}

function cautionsOf(setup: WindowSetup): string[] {
  const family = setup.kind?.family
  const isPower = family === 'power-ac' || family === 'power-dc'
  return [
    'ok-bounds',
    ...(setup.isPair ? ['matched-legs'] : []),
    ...(isPower ? ['stored-charge', 'chassis-capacitance'] : []),
    ...(setup.kind?.noTrialWhy === undefined ? ['trial-not-for-flight'] : ['lethal-voltage', 'no-trial']),
    'permanent-approved',
    'lightning-hirf-fuel',
    'hipot',
  ]
}
