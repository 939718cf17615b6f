/** What the window says about itself. */
import { hasCapacitor } from '../network/circuit.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Finding, Verdict } from '../types.ts'
import type { WindowSetup } from './facts.ts'
import type { WindowRow } from './row.ts'

const farads = (x: number) => formatQuantity(x, 'capacitance', 3)
const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const dB = (x: number) => formatQuantity(x, 'decibel', 3)

/** The answer in one sentence, margins or what is missing included. */
export function headlineOf(row: WindowRow, setup: WindowSetup, verdict: Verdict): string {
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
  const under = upper
    ? `, ${(upper.markedF / proposal.valueF).toFixed(1)}× under the most`
    : `, no ceiling known${setup.asks.length > 0 ? `: enter ${listed(setup.missing)}` : ''}`
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

/** Words joined as a sentence lists them. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** Reasons, collisions, what opens a shut window, and what the figures rest on. */
export function findingsOf(
  row: WindowRow,
  setup: WindowSetup,
  openers: readonly string[],
  wasAsked: boolean,
): Finding[] {
  const out: Finding[] = []
  const { leastF, upper } = row
  // An open window shows its bounds under the strip; a collision is said here, both sides.
  if (row.least.is === 'found' && leastF !== undefined && upper && leastF > upper.markedF) {
    const { need, source } = row.least.at
    const from = `${formatQuantity(source.ohm, 'resistance', 3)}${setup.isPair ? ' a leg' : ''}`
    out.push(
      {
        verdict: 'fails',
        sentence: `At least ${farads(leastF)}: ${dB(need.db)} at ${hertz(need.hz)} from ${from}, worst part.`,
      },
      { verdict: 'fails', sentence: `At most ${farads(upper.markedF)}: ${upper.why}.` },
    )
  }
  if (!upper && hasCapacitor(row.topology)) {
    out.push({
      verdict: 'unknown',
      sentence: setup.works ? `No ceiling: ${setup.works.why}` : 'No ceiling known until the line is chosen.',
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
  out.push(...openers.map((sentence) => ({ verdict: 'ok' as const, sentence })))
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
