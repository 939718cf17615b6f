/** What the window says about itself. */
import type { Reason } from '../../bounds/intersect.ts'
import { askedWord } from '../../explain/ceiling.ts'
import { HELD_WORDS } from '../../explain/held-words.ts'
import { coilClauses } from '../../explain/loading.ts'
import { listed } from '../../explain/sentence.ts'
import { nameOf } from '../../line/missing.ts'
import { hasCapacitor, hasInductor, TOPOLOGY_LABEL } from '../../network/circuit.ts'
import { CONVERSION } from './conversion.ts'
import { conversionClause } from './conversion-words.ts'
import { type WindowGiven, windowInputs } from './inputs.ts'
import type { LineReason, WindowRow } from './row.ts'
import type { WindowSetup } from './setup.ts'
import { signalOf } from './signal-side.ts'
import { missingWindowInputs } from './trace-needs.ts'

/** Everything the window waits for, as a sentence names it. */
export function missingOf(given: WindowGiven, { asks, signal }: WindowSetup): readonly string[] {
  return [
    ...missingWindowInputs(windowInputs, given).map(nameOf),
    ...(signal ? asks.map((ask) => askedWord(signal, ask)) : []),
  ]
}

/** Why a row is no better than it is, all reasons, in a few words each. */
export function noteOf(row: WindowRow, setup: WindowSetup): string {
  const said = row.reasons.flatMap((reason) =>
    reason === 'signal' ? coilWords(row, setup) : [reasonWord(reason, row, setup)],
  )
  return said.length === 0 ? 'nothing against it' : said.join('; ')
}

/** What the coils do to the signal, and what the legs turn into it, clause by clause. */
export function coilWords(row: WindowRow, setup: WindowSetup): readonly string[] {
  const judged = signalOf(row, setup)
  const converted = conversionClause(row, setup)
  return [...(judged ? coilClauses(judged) : []), ...(converted === undefined ? [] : [converted])]
}

function reasonWord(reason: Exclude<Reason | LineReason, 'signal'>, row: WindowRow, setup: WindowSetup): string {
  switch (reason) {
    case 'in-band':
      return 'noise inside the signal band'
    case 'rule-lacks':
      return 'a chosen rule lacks a fact'
    case 'not-shown':
      return 'computed, not shown by the trial'
    case 'carried':
    case 'unproved':
      return HELD_WORDS[reason] ?? ''
    case 'refuted':
      return 'a trial refutes what is computed'
    case 'untried':
      return 'not every row of the trace was tried'
    case 'one-wire':
      return 'a core around one wire'
    case 'cross-on-single':
      return 'a line-to-line capacitor on one wire'
    case 'balance':
      return 'what unequal beads or damping turn into signal is not counted'
    case 'element':
      return 'the inductor is not known'
    case 'no-room':
      return 'no room left'
    case 'never':
      return hasCapacitor(row.topology) ? 'no capacitor is large enough' : 'this inductor alone is too small'
    case 'shut':
      return 'the least is above the most'
    case 'no-need':
      return setup.isTraceOpen ? 'what the trace needs is not known' : 'needs the noise ends and the need'
    case 'no-ceiling':
      return 'no ceiling known'
    case 'nothing-needed':
      return doesIt(metBy(row, setup)) ?? 'nothing needed'
    case 'no-value':
      return 'no standard value between its limits'
    case 'narrow':
      return 'narrow'
    case 'resonance':
      if (row.upper?.id === CONVERSION) return 'a larger capacitor would turn too much into signal'
      return 'a larger capacitor would lose the need again'
    case 'over-permitted':
      return 'more than is allowed'
  }
}

/** What meets a need without the capacitor of the row; undefined where nothing has to. */
export function metBy({ topology, need }: WindowRow, { needs, choke, around }: WindowSetup): Met | undefined {
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

/** What keeps a need from being met by any capacitor. */
export function limitWords({ around, tried }: WindowSetup): string {
  const parts = around ?? tried?.parts
  if (!parts) return ''
  if (parts.bondOhm > 0 || parts.bondH > 0) return 'The bond sets the limit.'
  if (parts.eslH > 0 || parts.esrOhm > 0) return 'The capacitor’s own lead sets the limit.'
  return 'The noise ends leave a capacitor nothing to work against here.'
}

const doesIt = (met: Met | undefined): string | undefined => met && `${met.subject} ${met.does} it`
export const labelOf = ({ topology, need }: WindowRow): string =>
  need.is === 'choke-alone' ? 'Choke alone' : TOPOLOGY_LABEL[topology]
