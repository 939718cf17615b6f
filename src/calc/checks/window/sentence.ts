/** The answer of the window in one sentence: the part that does it with both limits, what stands against it, or what is missing. */
import { askedWord } from '../../explain/ceiling.ts'
import { lackField } from '../../explain/elements.ts'
import { listed, notKnown, type Said } from '../../explain/sentence.ts'
import { overPermittedWords, tightestPermitted } from '../../explain/whole.ts'
import { loadingCeiling } from '../../loading/ceiling.ts'
import { CAPACITOR_COUNT, hasCapacitor, TOPOLOGY_LABEL } from '../../network/circuit.ts'
import { counted } from '../../quantity/counted.ts'
import { formatEstimate, formatExact } from '../../quantity/format.ts'
import type { Verdict } from '../../types.ts'
import { capital, VERDICT_WORDS } from '../../verdict.ts'
import { READ, READ_UP_TO } from '../trial/bounds.ts'
import { whyOf } from './bounds.ts'
import { CONVERSION } from './conversion.ts'
import { type Lift, liftClause } from './gain.ts'
import { type WindowGiven, windowInputs } from './inputs.ts'
import { refutedLeastF, type WindowRow } from './row.ts'
import { isBalanceUncounted, sharesOf, type WindowSetup } from './setup.ts'
import { missingWindowInputs } from './trace-needs.ts'
import { isOfTrial, triedWhy } from './tried.ts'
import { coilWords, limitWords, metBy, missingOf, noteOf } from './words.ts'

const least = (si: number): string => formatEstimate(si, 'capacitance', 'least')
const most = (si: number): string => formatEstimate(si, 'capacitance', 'most')
const dB = (si: number): string => formatEstimate(si, 'decibel', 'most')

export type WindowQuestion = {
  readonly given: WindowGiven
  readonly row: WindowRow
  readonly setup: WindowSetup
  readonly verdict: Verdict
  /** what opens it where it is shut, best first, in a few words each */
  readonly openers: readonly string[]
  /** where the part lifts the noise instead */
  readonly lift: Lift | undefined
}

export function windowSaid(q: WindowQuestion): Said {
  const { row, setup, verdict } = q
  if (setup.inBandHz !== undefined)
    return {
      headline: `No: the noise is inside the signal band (up to ${formatEstimate(setup.inBandHz, 'frequency')}), and no low-pass filter can cure it.`,
    }
  const { upper, need } = row
  if (need.is === 'unknown' && verdict !== 'fails') return missingSaid(q)
  if (row.reasons.includes('element')) return elementSaid(setup)
  if (row.reasons.includes('no-room') && upper)
    return refused(`No room is left for a capacitor: ${whyOf(upper.id, setup)}`, q)
  if (need.is === 'never')
    return refused(`No capacitor is large enough: ${dB(-need.at.db)} short even without limit. ${limitWords(setup)}`, q)
  if (isShut(row)) return refused(shutWords(row, setup), q)
  if (verdict === 'unknown') return lackingSaid(q)
  return { headline: `${whoDoes(row, setup)}: ${VERDICT_WORDS[verdict]}. ${capital(becauseOf(q))}.` }
}

const isShut = ({ need, least: from, upper, reasons }: WindowRow): boolean =>
  need.is === 'found' &&
  (reasons.includes('shut') || (from !== undefined && upper !== undefined && from.markedF > upper.markedF))

/** No part does it: what opens it stands behind, at most two ways. */
function refused(sentence: string, { openers }: WindowQuestion): Said {
  const ways = openers.slice(0, 2).join(', or ')
  return { headline: `${sentence.replace(/\.$/u, '')}.${ways === '' ? '' : ` What opens it: ${ways}.`}` }
}

function shutWords({ topology, least: from, upper }: WindowRow, setup: WindowSetup): string {
  const who =
    CAPACITOR_COUNT[topology] === 1 && topology === 'C'
      ? 'No single capacitor does both'
      : `No ${TOPOLOGY_LABEL[topology]} does both`
  const needed =
    from !== undefined && Number.isFinite(from.markedF)
      ? `the noise needs ${least(from.markedF)}`
      : 'the noise needs more than any has'
  return upper ? `${who}: ${needed}, ${standsWords(upper, setup)}` : `${who}: ${needed}`
}

/** What ends the window from above, by who sets it: "the signal stands 11.6 nF". */
function standsWords({ id, markedF }: NonNullable<WindowRow['upper']>, { signal, bounds }: WindowSetup): string {
  const shown = most(markedF)
  if (id === 'buildable') return `the contact takes ${shown}`
  if (id === 'navy-4.2.2') return `the Navy rule allows ${shown}`
  if (id === 'chassis-current') return `the chassis current allowed leaves ${shown}`
  if (id === READ) return `above ${shown} a resonance loses it again`
  if (id === READ_UP_TO) return `above ${shown} its lead makes it an inductor, of which the readings say nothing`
  if (isOfTrial(id)) return triedWhy(id, bounds)
  if (id === CONVERSION) return `above ${shown} too much of the common mode becomes signal`
  if (id === 'need-least') return `above ${shown} a resonance loses it again`
  if (id.startsWith('own-')) return `your own limit leaves ${shown}`
  return signal === undefined ? `at most ${shown}` : `the signal stands ${shown}`
}

/** The part, or what does it without one. */
function whoDoes(row: WindowRow, setup: WindowSetup): string {
  const { need, proposal, topology } = row
  if (need.is === 'inductor-only') return 'The inductor alone'
  if (need.is === 'choke-alone') return 'The choke alone'
  const met = metBy(row, setup)
  const part = proposal && formatExact(proposal.valueF, 'capacitance')
  if (need.is === 'none-needed')
    return part === undefined ? capital(met?.subject ?? 'Without a part') : `${part} beside ${met?.subject ?? 'it'}`
  if (part === undefined) return TOPOLOGY_LABEL[topology]
  return topology === 'C' ? part : `${TOPOLOGY_LABEL[topology]} with ${part}`
}

/** Both limits, what stands against it, and what it does elsewhere. */
function becauseOf(q: WindowQuestion): string {
  const { row, setup, verdict, lift } = q
  const against = verdict === 'ok' ? undefined : againstWords(q)
  const limits = limitsWords(row, setup)
  // beside what it does to the signal it is told among the findings
  const lifts = lift === undefined || row.reasons.includes('signal') ? '' : `; but ${liftClause(lift)}`
  return against === undefined ? `${limits}${lifts}` : verdict === 'fails' ? against : `${against}; ${limits}${lifts}`
}

function limitsWords(row: WindowRow, setup: WindowSetup): string {
  const { need, least: from, upper } = row
  if (need.is === 'inductor-only' || need.is === 'choke-alone')
    return need.at.db < 0
      ? `${formatEstimate(-need.at.db, 'decibel', 'least')} short${wouldDo(need)}`
      : `${dB(need.at.db)} to spare at its worst`
  const stands = upper ? `, ${standsWords(upper, setup)}` : ''
  if (need.is === 'none-needed')
    return `${metBy(row, setup) ? 'it meets the need' : 'nothing needs to come off at these frequencies'}${stands}`
  return `the noise needs ${least(from?.markedF ?? 0)}${stands}`
}

const wouldDo = (need: WindowRow['need']): string =>
  need.is === 'inductor-only' && need.leastH !== undefined
    ? `; ${formatEstimate(need.leastH, 'inductance', 'least')} would do`
    : ''

function againstWords({ row, setup }: WindowQuestion): string | undefined {
  const { reasons, proposal, need } = row
  if (need.is === 'inductor-only' && need.at.db < 0) return undefined
  if (reasons.includes('signal')) return coilWords(row, setup).join('; ')
  if (reasons.includes('no-value')) return 'no standard value lies between its limits'
  if (reasons.includes('over-permitted') && setup.signal) {
    const tightest = tightestPermitted(loadingCeiling(setup.signal), setup.taken)
    const largestF = (proposal?.valueF ?? 0) * CAPACITOR_COUNT[row.topology] * sharesOf(setup).most
    if (tightest) return overPermittedWords(setup.signal.kind, tightest, largestF)
  }
  // what does it without a part is named as the subject
  const against = reasons.filter((reason) => reason !== 'nothing-needed')
  return against.length === 0 ? undefined : noteOf({ ...row, reasons: against }, setup)
}

function missingSaid({ given, row, setup }: WindowQuestion): Said {
  const missing = missingWindowInputs(windowInputs, given)
  // the readings of a trial stand for a capacitor alone; beside anything in series a clamp is missing
  if (setup.tried !== undefined && missing.every(({ key: one }) => one === 'sourceOhm' || one === 'loadOhm'))
    return notKnown(
      windowInputs,
      'sourceOhm',
      `the reading of a clamp, or the noise source and load apart. What the trial read is enough for a capacitor alone at ${formatEstimate(setup.tried.hz, 'frequency')}.`,
    )
  const key = missing[0]?.key ?? setup.asks[0] ?? 'neededDb'
  const names = missingOf(given, setup)
  const stands = row.upper && hasCapacitor(row.topology) ? ` ${capital(standsWords(row.upper, setup))}.` : ''
  return notKnown(windowInputs, key, `${listed(names.length === 0 ? ['the attenuation needed'] : names)}.${stands}`)
}

function elementSaid({ elements: { lacks } }: WindowSetup): Said {
  const [first = 'line-current', ...rest] = lacks
  const names = [first, ...rest].map((lack) => lackField(lack).name)
  return notKnown(windowInputs, lackField(first).key, `${listed(names)}.`)
}

/** The need is known, and something else is not: the ceiling, a rule, or a part that could not be counted. */
function lackingSaid({ given, row, setup }: WindowQuestion): Said {
  const { signal, asks, ownLacks, navy } = setup
  const tail = `${capital(limitsWords(row, setup))}.`
  if (setup.isOneWire)
    return notKnown(
      windowInputs,
      'chokeWires',
      `every wire of the circuit through the choke. Around one wire it is an inductor.`,
    )
  const refutedF = row.reasons.includes('refuted') ? refutedLeastF(setup) : undefined
  if (refutedF !== undefined)
    return notKnown(
      windowInputs,
      'sourceOhm',
      `path, mode and noise ends as they are: the trial refutes what is computed. ${least(refutedF)} a leg should have cleared it, and more did not.`,
    )
  if (row.reasons.includes('refuted'))
    return notKnown(
      windowInputs,
      'sourceOhm',
      `the noise ends as they are: the readings of the trial refute those entered. With the reading of a clamp the loop check gives both.`,
    )
  if (setup.isTraceOpen)
    return notKnown(
      windowInputs,
      'traceNeedDb',
      `what the trace needs: its own check says what is missing there. ${tail}`,
    )
  if (setup.untriedRows !== undefined)
    return notKnown(
      windowInputs,
      'traceHeldFor',
      `the trace opened. Its ${counted(setup.untriedRows, 'row')} were not all tried under these facts, or not all met. On those in the fields: ${limitsWords(row, setup)}.`,
    )
  if (setup.hasCrossOnSingle)
    return notKnown(
      windowInputs,
      'crossF',
      `the line-to-line capacitor as already on the line: a single line has no second wire. ${tail}`,
    )
  if (isBalanceUncounted(setup))
    return notKnown(
      windowInputs,
      'mostConversionDb',
      `the balance of the pair by measurement: that of beads and damping is not counted. ${tail}`,
    )
  const [ask] = [...asks, ...ownLacks]
  if (signal && ask) return notKnown(windowInputs, ask, `${askedWord(signal, ask)}. ${tail}`)
  if (navy !== undefined && navy !== 'not-power' && navy.limit.limitF === undefined)
    return notKnown(
      windowInputs,
      navy.limit.lacks === 'load' ? 'loadW' : 'chassisLimitA',
      `${navy.limit.lacks === 'load' ? 'the connected load' : 'the chassis current allowed'}. ${tail}`,
    )
  if (given.lineKind === undefined) return notKnown(windowInputs, 'lineKind', `the line. ${tail}`)
  if (row.reasons.includes('signal'))
    return notKnown(windowInputs, 'signalOhm', `the resistance the signal sees. ${tail}`)
  if (setup.acSupply) return notKnown(windowInputs, 'chassisLimitA', `the chassis current allowed. ${tail}`)
  return notKnown(windowInputs, 'ownCeilingF', `a limit of your own. ${tail}`)
}
