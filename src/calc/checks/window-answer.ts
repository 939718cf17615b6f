/** Puts the rows of a window into an answer: verdict, figures, bounds, findings and the strip. */
import type { LineKind } from '../../reference/line-kinds.ts'
import { TOPOLOGIES } from '../network/circuit.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Bound, Cell, Finding, Picture, Progress, Result, Topology, Verdict } from '../types.ts'
import { leastBasis, mostBasis, proposalBasis } from '../window/basis.ts'
import { pairNeeds, setUp, type WindowSetup } from '../window/facts.ts'
import { openersOf } from '../window/openers.ts'
import { type WindowRow, windowRow } from '../window/row.ts'
import { stripOf, topologyTable } from '../window/strip.ts'
import type { WindowGiven } from './window.ts'

const farads = (x: number) => formatQuantity(x, 'capacitance', 3)
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

/** Rows one by one (yielding between them), then the answer for the topology asked for, or the simplest that works. */
export function* answerWindow(given: WindowGiven, kind: LineKind | undefined): Generator<Progress, Result> {
  const needs = pairNeeds(given.frequencyHz ?? [], given.neededDb ?? [])
  if ('code' in needs) return { ok: false, issues: [needs] }
  const setup = setUp(given, kind, needs)
  const rows: WindowRow[] = []
  for (const topology of TOPOLOGIES) {
    rows.push(windowRow(topology, setup.facts))
    yield { doneFrac: rows.length / TOPOLOGIES.length }
  }
  const row = rows.find((r) => r.topology === given.topology) ?? simplestThatWorks(rows)
  return answerFor(row, rows, setup, given.topology !== undefined)
}

const RANK: Readonly<Record<Verdict, number>> = { ok: 0, marginal: 1, unknown: 2, fails: 3 }
/** Fewest parts first; among equals the order a shop would try them. */
const SIMPLICITY: readonly Topology[] = ['C', 'L', 'LC', 'CL', 'PI', 'T']

/** Best verdict, then fewest parts, then the wider window. */
export function simplestThatWorks(rows: readonly WindowRow[]): WindowRow {
  const width = (r: WindowRow) => (r.upper && r.leastF ? r.upper.markedF / r.leastF : 0)
  const parts = (r: WindowRow) =>
    r.topology.length === 1 && r.topology !== 'T' ? 1 : r.topology.length === 2 && r.topology !== 'PI' ? 2 : 3
  const sorted = [...rows].sort(
    (a, b) =>
      RANK[a.verdict] - RANK[b.verdict] ||
      parts(a) - parts(b) ||
      width(b) - width(a) ||
      SIMPLICITY.indexOf(a.topology) - SIMPLICITY.indexOf(b.topology),
  )
  return sorted[0] as WindowRow
}

function answerFor(row: WindowRow, rows: readonly WindowRow[], setup: WindowSetup, wasAsked: boolean): Result {
  const openers = openersOf(row, rows, setup.facts, setup.taken)
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
    cautions: cautionsOf(setup),
  }
}

function headlineOf(row: WindowRow, setup: WindowSetup, verdict: Verdict): string {
  if (setup.inBandHz !== undefined)
    return `Differential noise inside the signal band (up to ${hertz(setup.inBandHz)}): no low-pass filter can cure it.`
  const { leastF, upper, proposal, least } = row
  if (least.is === 'unknown' && setup.missing.length > 0) {
    const most = upper ? ` The signal stands ${farads(upper.markedF)}.` : ''
    return `Enter ${listed(setup.missing)}.${most}`
  }
  if (least.is === 'inductor-only') {
    return least.at.db >= 0
      ? `The inductor alone meets the need with ${dB(least.at.db)} to spare.`
      : `The inductor alone is ${dB(-least.at.db)} short${least.leastH === undefined ? '' : `; ${formatQuantity(least.leastH, 'inductance', 3)} would do`}.`
  }
  if (least.is === 'never')
    return `No capacitor is large enough: ${dB(-least.at.db)} short even without limit. ${limitWords(setup)}`
  if (least.is === 'none-needed') return 'Nothing needs to come off at these frequencies.'
  if (upper && upper.markedF <= 0) return `No room left for a capacitor: ${upper.why} is already used up.`
  if (upper && leastF !== undefined && leastF > upper.markedF) {
    return `Shut: needs ${farads(leastF)}, stands ${farads(upper.markedF)}.`
  }
  if (!proposal)
    return `Open from ${farads(leastF ?? 0)} to ${upper ? farads(upper.markedF) : '…'}, but no standard value lies inside.`
  const over = (proposal.valueF / (leastF ?? proposal.valueF)).toFixed(1)
  const under = upper ? `, ${(upper.markedF / proposal.valueF).toFixed(1)}× under the most` : ', no ceiling known'
  const tail = verdict === 'marginal' ? ` But: ${row.note}.` : ''
  return `${over}× over the least${under}.${tail}`
}

function limitWords(setup: WindowSetup): string {
  const around = setup.facts.around
  if (!around) return ''
  if (around.bondOhm > 0 || around.bondH > 0) return 'The bond sets the limit.'
  if (around.eslH > 0 || around.esrOhm > 0) return 'The capacitor’s own lead sets the limit.'
  return 'The noise ends leave a capacitor nothing to work against here.'
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

function findingsOf(row: WindowRow, setup: WindowSetup, openers: readonly string[], wasAsked: boolean): Finding[] {
  const out: Finding[] = []
  const { leastF, upper } = row
  if (leastF !== undefined && leastF > 0 && row.least.is === 'found') {
    const { need, source } = row.least.at
    out.push({
      verdict: upper && leastF > upper.markedF ? 'fails' : 'ok',
      sentence: `At least ${farads(leastF)}: ${dB(need.db)} at ${hertz(need.hz)} from ${formatQuantity(source.ohm, 'resistance', 3)}${setup.isPair ? ' a leg' : ''}, worst part.`,
    })
  }
  if (upper) {
    out.push({
      verdict: leastF !== undefined && leastF > upper.markedF ? 'fails' : 'ok',
      sentence: `At most ${farads(upper.markedF)}: ${upper.why}.`,
    })
  } else if (row.least.is !== 'inductor-only') {
    out.push({
      verdict: 'unknown',
      sentence: setup.ceiling
        ? `No ceiling: ${setup.ceiling.works.why}.`
        : 'No ceiling known until the line is chosen.',
    })
  }
  const permitted = row.permitted
  if (permitted && (row.proposal?.valueF ?? 0) > permitted.markedF) {
    out.push({
      verdict: 'marginal',
      sentence: `${permitted.why} leaves ${farads(permitted.markedF)}: more needs design approval even where the signal works.`,
    })
  }
  if (row.least.is === 'never' && upper) out.push({ verdict: 'fails', sentence: limitWords(setup) })
  out.push(...openers.map((sentence) => ({ verdict: 'ok' as const, sentence: `Opens it: ${sentence}` })))
  if (openers.length === 0 && row.verdict === 'fails' && setup.facts.around) {
    out.push({
      verdict: 'fails',
      sentence:
        'None of these opens it: another topology, a C0G part, a better bond, less on the line, or a smaller need.',
    })
  }
  for (const hole of row.holes) {
    out.push({
      verdict: 'marginal',
      sentence: `Between ${farads(hole[0])} and ${farads(hole[1])} a resonance loses the need again; the least stands above it.`,
    })
  }
  if (row.service && row.service.lossDb > 100) {
    out.push({
      verdict: 'marginal',
      sentence: 'Figures above about 100 dB are mathematics: leakage past the connector governs there.',
    })
  }
  if (setup.isPair) {
    out.push({
      verdict: 'ok',
      sentence: `Computed in ${setup.mode} mode, per leg: ${setup.mode === 'common' ? 'twice' : 'half'} the impedance of the pair. Fit both legs alike.`,
    })
  }
  out.push(...setup.ruleNotes.map((sentence) => ({ verdict: 'unknown' as const, sentence })))
  const around = setup.facts.around
  if (around && (around.bondOhm > 0 || around.bondH > 0)) {
    out.push({
      verdict: 'marginal',
      sentence: 'The bond carries every contact of the connector: a figure for one line alone is optimistic.',
    })
  }
  if (!wasAsked && row.verdict === 'fails') {
    out.push({
      verdict: 'fails',
      sentence: `${row.label} is shown; none of the six topologies is open with these facts.`,
    })
  } else if (!wasAsked && row.verdict !== 'unknown') {
    out.push({ verdict: 'ok', sentence: `${row.label} is shown: the fewest parts with the best verdict.` })
  }
  return out
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
      cell: value(row.most?.markedF, setup.ceiling?.works.why ?? 'choose the line'),
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

function boundsOf(row: WindowRow, setup: WindowSetup, openedBy: Bound['openedBy']): Bound[] {
  const bounds: Bound[] = []
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
      id: `${row.upper.id}-most`,
      side: 'most',
      nature: 'works',
      markedF: row.upper.markedF,
      why: row.upper.why,
      basis: mostBasis(row, setup),
    })
  if (row.permitted) {
    bounds.push({
      ...shared,
      id: `${row.permitted.id}-permitted`,
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
