/** What the window says about itself. */
import type { Reason } from '../../bounds/intersect.ts'
import { askedWord } from '../../explain/ceiling.ts'
import { coilClauses } from '../../explain/loading.ts'
import { missingNames } from '../../line/missing.ts'
import { hasCapacitor, hasInductor, TOPOLOGY_LABEL } from '../../network/circuit.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Verdict } from '../../types.ts'
import { whyOf } from './bounds.ts'
import { aloneHeadline } from './choke-words.ts'
import { type WindowGiven, windowInputs } from './inputs.ts'
import { type LineReason, signalOf, type WindowRow } from './row.ts'
import type { WindowSetup } from './setup.ts'

const farads = (x: number) => formatQuantity(x, 'capacitance', 3)
const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const dB = (x: number) => formatQuantity(x, 'decibel', 3)

/** Everything the window waits for, as a sentence names it. */
export function missingOf(given: WindowGiven, { asks, signal }: WindowSetup): readonly string[] {
  return [...missingNames(windowInputs, given), ...(signal ? asks.map((ask) => askedWord(signal, ask)) : [])]
}

/** Why a row is no better than it is, all reasons, in a few words each; "open" when nothing is against it. */
export function noteOf(row: WindowRow, setup: WindowSetup): string {
  const said = row.reasons.flatMap((reason) =>
    reason === 'signal' ? signalWords(row, setup) : [reasonWord(reason, row, setup)],
  )
  return said.length === 0 ? 'open' : said.join('; ')
}

/** What the inductor does to the signal, clause by clause. */
function signalWords(row: WindowRow, setup: WindowSetup): readonly string[] {
  const judged = signalOf(row, setup)
  return judged ? coilClauses(judged) : []
}

function reasonWord(reason: Exclude<Reason | LineReason, 'signal'>, row: WindowRow, setup: WindowSetup): string {
  switch (reason) {
    case 'in-band':
      return 'noise inside the signal band'
    case 'rule-lacks':
      return 'a chosen rule lacks a fact'
    case 'one-wire':
      return 'a core around one wire'
    case 'cross-on-single':
      return 'a line-to-line capacitor on one wire'
    case 'no-room':
      return 'no room left'
    case 'never':
      return hasCapacitor(row.topology) ? 'no capacitor is large enough' : 'this inductor alone is too small'
    case 'shut':
      return 'shut'
    case 'no-need':
      return 'needs the noise ends and the need'
    case 'no-ceiling':
      return 'no ceiling known'
    case 'nothing-needed':
      return doesIt(metBy(row, setup)) ?? 'nothing needed'
    case 'no-value':
      return 'open, but no standard value'
    case 'narrow':
      return 'narrow'
    case 'resonance':
      return 'a larger capacitor would lose the need again'
    case 'over-permitted':
      return 'above the permitted figure'
  }
}

/** What meets a need without the capacitor of the row; undefined where nothing has to. */
function metBy({ topology, need }: WindowRow, { needs, choke, around }: WindowSetup): Met | undefined {
  if (needs.every(({ db }) => db <= 0)) return undefined
  const met = [
    ...(choke === undefined ? [] : ['the choke']),
    ...(hasInductor(topology) && need.is !== 'choke-alone' ? ['the inductor'] : []),
    ...(around?.crossF ? ['the line-to-line capacitor'] : []),
  ]
  const [first, ...others] = met
  if (first === undefined) return undefined
  return others.length === 0
    ? { subject: `${first} alone`, does: 'does', meets: 'meets' }
    : { subject: listed(met), does: 'do', meets: 'meet' }
}
type Met = { readonly subject: string; readonly does: 'do' | 'does'; readonly meets: 'meet' | 'meets' }

/** The answer in one sentence, margins or what is missing included. */
export function headlineOf(row: WindowRow, setup: WindowSetup, missing: readonly string[], verdict: Verdict): string {
  if (setup.inBandHz !== undefined)
    return `Differential noise inside the signal band (up to ${hertz(setup.inBandHz)}): no low-pass filter can cure it.`
  const { least, upper, proposal, need, reasons } = row
  if (need.is === 'unknown' && missing.length > 0) {
    const most = upper ? ` The signal stands ${farads(upper.markedF)}.` : ''
    return `Enter ${listed(missing)}.${most}`
  }
  const against = verdict === 'fails' && reasons.includes('signal') ? ` But ${signalWords(row, setup).join('; ')}.` : ''
  if (need.is === 'inductor-only') {
    if (need.at.db < 0)
      return `The inductor alone is ${dB(-need.at.db)} short${need.leastH === undefined ? '' : `; ${formatQuantity(need.leastH, 'inductance', 3)} would do`}.`
    if (reasons.includes('no-room') && upper) return fullWords(upper.id, setup)
    return `The inductor alone does it, with ${dB(need.at.db)} to spare.${against}`
  }
  if (need.is === 'never')
    return `No capacitor is large enough: ${dB(-need.at.db)} short even without limit. ${limitWords(setup)}`
  if (reasons.includes('no-room') && upper) return fullWords(upper.id, setup)
  if (need.is === 'none-needed' && proposal)
    return `${capital(meetsNeed(metBy(row, setup)))}; ${farads(proposal.valueF)} beside it keeps the signal.${verdict === 'marginal' ? ` But: ${noteOf(row, setup)}.` : against}`
  if (need.is === 'choke-alone') return `${aloneHeadline(need.at.db)}${against}`
  if (need.is === 'none-needed') {
    const met = doesIt(metBy(row, setup))
    return met === undefined ? 'Nothing needs to come off at these frequencies.' : `${capital(met)}.${against}`
  }
  if (upper && least && least.markedF > upper.markedF) {
    return `Shut: needs ${farads(least.markedF)}, stands ${farads(upper.markedF)}.`
  }
  const leastF = least?.markedF ?? 0
  if (!proposal)
    return `Open from ${farads(leastF)} to ${upper ? farads(upper.markedF) : '…'}, but no standard value lies inside.`
  const over = (proposal.valueF / leastF).toFixed(1)
  const under = upper
    ? `, ${(upper.markedF / proposal.valueF).toFixed(1)}× under the most`
    : `, no ceiling known${setup.asks.length > 0 ? `: enter ${listed(missing)}` : ''}`
  const tail = against === '' && verdict === 'marginal' ? ` But: ${noteOf(row, setup)}.` : against
  return `${over}× over the least${under}.${tail}`
}

function fullWords(id: string, setup: WindowSetup): string {
  return `No room left for a capacitor: ${whyOf(id, setup)} is already used up.`
}

/** What keeps a need from being met by any capacitor. */
export function limitWords({ around }: WindowSetup): string {
  if (!around) return ''
  if (around.bondOhm > 0 || around.bondH > 0) return 'The bond sets the limit.'
  if (around.eslH > 0 || around.esrOhm > 0) return 'The capacitor’s own lead sets the limit.'
  return 'The noise ends leave a capacitor nothing to work against here.'
}

/** Words joined as a sentence lists them. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

const doesIt = (met: Met | undefined): string | undefined => met && `${met.subject} ${met.does} it`
const meetsNeed = (met: Met | undefined): string => (met ? `${met.subject} ${met.meets} the need` : 'nothing is needed')

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

export const labelOf = ({ topology, need }: WindowRow): string =>
  need.is === 'choke-alone' ? 'Choke alone' : TOPOLOGY_LABEL[topology]
