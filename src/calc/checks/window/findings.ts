/** Reasons, collisions, what opens a shut window, and what its figures rest on, sentence by sentence. */

import { mostShare } from '../../bounds/worst-case.ts'
import { worksWhy } from '../../explain/ceiling.ts'
import { lackSentence } from '../../explain/elements.ts'
import { CROSS_ON_SINGLE, coilSentence, driverFindings, isCoil, ownLacksSentence } from '../../explain/loading.ts'
import { navyWhy } from '../../explain/navy-rule.ts'
import { loadingCeiling } from '../../loading/ceiling.ts'
import { CAPACITOR_COUNT, hasCapacitor, hasInductor } from '../../network/circuit.ts'
import { lineCurrentRmsA } from '../../power/supply.ts'
import { formatEstimate, formatQuantity } from '../../quantity/format.ts'
import type { Finding, Opener } from '../../types.ts'
import { whyOf } from './bounds.ts'
import { chokeFindings, chokeOpens, chokeWords } from './choke-words.ts'
import type { Conversion } from './conversion.ts'
import { conversionFinding } from './conversion-words.ts'
import type { OpenWindow } from './figures.ts'
import { type Lift, liftFinding } from './gain.ts'
import type { WindowOpener } from './openers.ts'
import type { WindowRow } from './row.ts'
import { isBalanceUncounted, type WindowSetup } from './setup.ts'
import { signalOf } from './signal-side.ts'
import { isOfTrial, triedFindings, triedWhy } from './tried.ts'
import { triedCircuitFindings } from './tried-circuits.ts'
import { labelOf, limitWords } from './words.ts'

const farads = (x: number) => formatQuantity(x, 'capacitance', 3)
const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const dB = (x: number) => formatQuantity(x, 'decibel', 3)

/** An opener in words; its numbers are those of the row worked out anew. */
export function openerOf(opener: WindowOpener): Opener {
  switch (opener.is) {
    case 'topology':
      return {
        id: `topology-${opener.row.topology}`,
        sentence:
          opener.row.need.is === 'found'
            ? `${labelOf(opener.row)} opens it: ${rangeOf(opener.row)}.`
            : `${labelOf(opener.row)}${opener.row.need.is === 'choke-alone' ? '' : ' alone'} meets the need.`,
      }
    case 'inductance': {
      const henries = formatQuantity(opener.inductanceH, 'inductance', 3)
      return {
        id: `inductance-${opener.row.topology}`,
        sentence: `${labelOf(opener.row)} with ${henries} opens it: ${rangeOf(opener.row)}.`,
      }
    }
    case 'damping': {
      const { row, ohm, farads: besideF } = opener
      const values = `${formatQuantity(ohm, 'resistance', 3)} and ${farads(besideF)}`
      const of = row.proposal ? ` of ${farads(row.proposal.valueF)}` : ''
      const at = CAPACITOR_COUNT[row.topology] > 1 ? 'load-side capacitor' : 'capacitor'
      const opens = row.verdict === 'ok' ? 'opens it' : 'opens it, marginally'
      return {
        id: `damping-${row.topology}`,
        sentence: `${labelOf(row)}${of} with ${values} in series across its ${at} ${opens}: enter them as its damping.`,
      }
    }
    case 'part':
      return { id: 'part', sentence: `A 5 % C0G capacitor opens it: ${rangeOf(opener.row)}.` }
    case 'bond':
      return { id: 'bond', sentence: `A perfect bond opens it: ${rangeOf(opener.row)}.` }
    case 'lead':
      return { id: 'lead', sentence: `Feed-through parts on a perfect bond open it: ${rangeOf(opener.row)}.` }
    case 'suppressor':
      return { id: 'suppressor', sentence: `A suppressor of ${farads(opener.farads)} or less per leg opens it.` }
    case 'existing':
      return { id: 'existing', sentence: `Taking ${farads(opener.farads)} off what is already on the line opens it.` }
    case 'choke':
      return { id: 'choke', sentence: chokeOpens(opener) }
    case 'cross':
      return {
        id: 'cross',
        sentence: `A line-to-line capacitor of ${farads(opener.farads)} opens it: ${besideOf(opener.row)}.`,
      }
    case 'need':
      return { id: 'need', sentence: `${dB(opener.db)} less at the source (or by bond, shield or choke) opens it.` }
  }
}

/** The same in a few words, behind "What opens it:". */
export function openerWords(opener: WindowOpener): string {
  switch (opener.is) {
    case 'topology':
      return opener.row.need.is === 'found' ? `${labelOf(opener.row)} (${rangeOf(opener.row)})` : labelOf(opener.row)
    case 'inductance':
      return `${labelOf(opener.row)} with ${formatQuantity(opener.inductanceH, 'inductance', 3)}`
    case 'damping':
      return `${labelOf(opener.row)} damped by ${formatQuantity(opener.ohm, 'resistance', 3)} and ${farads(opener.farads)}`
    case 'part':
      return 'a 5 % C0G part'
    case 'bond':
      return 'a perfect bond'
    case 'lead':
      return 'feed-through parts on a perfect bond'
    case 'suppressor':
      return `a suppressor of at most ${formatEstimate(opener.farads, 'capacitance', 'most')} a leg`
    case 'existing':
      return `${formatEstimate(opener.farads, 'capacitance', 'least')} less on the line`
    case 'choke':
      return chokeWords(opener)
    case 'cross':
      return `${farads(opener.farads)} from line to line`
    case 'need':
      return `${formatEstimate(opener.db, 'decibel', 'least')} less at the source`
  }
}

const besideOf = (row: WindowRow): string =>
  row.need.is === 'none-needed' ? 'no capacitor to chassis beside it' : `${rangeOf(row)} to chassis beside it`

function rangeOf({ least, upper }: WindowRow): string {
  const from = formatEstimate(least?.markedF ?? 0, 'capacitance', 'least')
  return upper ? `${from} to ${formatEstimate(upper.markedF, 'capacitance', 'most')}` : `${from} or more`
}

export function findingsOf(
  { row, setup, wasAsked }: OpenWindow,
  openers: readonly Opener[],
  converted: Conversion | undefined,
  lift: Lift | undefined,
): readonly Finding[] {
  return [
    ...collision(row, setup),
    ...ceilingFindings(row, setup),
    ...ownLacksFindings(setup),
    ...chokeFindings(row, setup),
    ...crossFinding(setup),
    ...triedFindings(setup, {
      topology: row.topology,
      isShown: !row.reasons.includes('not-shown'),
      proposedF: row.proposal?.valueF,
    }),
    ...triedCircuitFindings(setup, row.topology),
    ...elementFindings(row, setup),
    ...balanceFinding(setup),
    ...signalFindings(row, setup),
    ...liftFinding(lift),
    ...(setup.signal ? driverFindings(setup.signal) : []),
    ...conversionFinding(converted, setup),
    ...permittedFinding(row, setup),
    ...chassisFinding(row, setup),
    ...(row.need.is === 'never' && row.upper ? [{ verdict: 'fails', sentence: limitWords(setup) } as const] : []),
    ...openers.map(({ sentence }): Finding => ({ verdict: 'ok', sentence })),
    ...(openers.length === 0 && row.verdict === 'fails' && setup.around && setup.inBandHz === undefined
      ? [
          {
            verdict: 'fails',
            sentence:
              'None of these opens it: another topology, a C0G part, a better bond, less on the line, or a smaller need.',
          } as const,
        ]
      : []),
    ...holeFindings(row),
    ...restsOn(row, setup),
    ...shownBecause(row, wasAsked),
  ]
}

/** An open window shows its bounds under the strip; a collision is said here, both sides. */
function collision({ need, least, upper }: WindowRow, setup: WindowSetup): readonly Finding[] {
  if (need.is !== 'found' || !least || !upper || least.markedF <= upper.markedF) return []
  const from = `${formatQuantity(need.at.source.ohm, 'resistance', 3)}${setup.isPair ? ' a leg' : ''}`
  const why = isOfTrial(least.id)
    ? triedWhy(least.id, setup.bounds)
    : `${dB(need.at.need.db)} at ${hertz(need.at.need.hz)} from ${from}, worst part`
  return [
    {
      verdict: 'fails',
      sentence: `At least ${formatEstimate(least.markedF, 'capacitance', 'least')}: ${why}.`,
    },
    {
      verdict: 'fails',
      sentence: `At most ${formatEstimate(upper.markedF, 'capacitance', 'most')}: ${whyOf(upper.id, setup)}.`,
    },
  ]
}

function ceilingFindings(row: WindowRow, { signal, bounds }: WindowSetup): readonly Finding[] {
  if (row.upper || !hasCapacitor(row.topology) || bounds.some(({ nature }) => nature !== 'permitted')) return []
  const sentence = signal
    ? `No ceiling: ${worksWhy(signal, loadingCeiling(signal).works)}`
    : 'No ceiling known until the line is chosen.'
  return [{ verdict: 'unknown', sentence }]
}

function ownLacksFindings({ signal, ownLacks }: WindowSetup): readonly Finding[] {
  return signal ? ownLacks.map((ask): Finding => ({ verdict: 'unknown', sentence: ownLacksSentence(signal, ask) })) : []
}

function crossFinding({ hasCrossOnSingle }: WindowSetup): readonly Finding[] {
  return hasCrossOnSingle ? [CROSS_ON_SINGLE] : []
}

function balanceFinding(setup: WindowSetup): readonly Finding[] {
  if (!isBalanceUncounted(setup)) return []
  const sentence =
    'What a bead or a damping branch that differs between the legs turns into signal is not counted: the balance asked for is not shown. Use coils without damping, or take the requirement off.'
  return [{ verdict: 'unknown', sentence }]
}

function elementFindings({ topology }: WindowRow, { elements }: WindowSetup): readonly Finding[] {
  if (!hasInductor(topology)) return []
  return elements.lacks.map((lack): Finding => ({ verdict: 'unknown', sentence: lackSentence(lack) }))
}

/** Everything the coils do to the signal, each with its numbers. */
function signalFindings(row: WindowRow, setup: WindowSetup): readonly Finding[] {
  const signal = row.reasons.includes('signal') ? signalOf(row, setup) : undefined
  if (!signal) return []
  const hasOwn = hasInductor(row.topology)
  const coil = setup.choke === undefined ? 'the inductor' : hasOwn ? 'inductor and choke' : 'the leakage of the choke'
  return signal.reasons
    .filter(isCoil)
    .map((reason) => ({ verdict: reason.verdict, sentence: coilSentence(reason, coil) }))
}

function permittedFinding({ permitted, reasons }: WindowRow, setup: WindowSetup): readonly Finding[] {
  if (!permitted || !reasons.includes('over-permitted')) return []
  return [
    {
      verdict: 'marginal',
      sentence: `${whyOf(permitted.id, setup)}; as marked ${farads(permitted.markedF)}. More needs design approval even where the signal stands it.`,
    },
  ]
}

/** What the proposal (or the largest that fits) puts into the chassis of an AC line; without a limit that is not judged. */
function chassisFinding(
  { proposal, upper, topology }: WindowRow,
  { acSupply, bounds, spread, elements }: WindowSetup,
): readonly Finding[] {
  const marked = proposal?.valueF ?? upper?.markedF
  if (!acSupply || marked === undefined || !hasCapacitor(topology)) return []
  const largestF = CAPACITOR_COUNT[topology] * marked * mostShare(spread) + (elements.damper?.farads.most ?? 0)
  const rmsA = lineCurrentRmsA({ ...acSupply, farads: largestF })
  const puts = `${farads(marked)} at its largest puts ${formatEstimate(rmsA, 'current', 'least')} into the chassis at ${formatQuantity(acSupply.workingRmsV, 'voltage', 3)} and ${hertz(acSupply.supplyHz)}`
  return bounds.some(({ nature }) => nature === 'works')
    ? [{ verdict: 'ok', sentence: `${puts}.` }]
    : [
        {
          verdict: 'unknown',
          sentence: `${puts}: enter the chassis current allowed, or choose the rule that limits it.`,
        },
      ]
}

function holeFindings({ holes }: WindowRow): readonly Finding[] {
  return holes
    .filter(([, to]) => Number.isFinite(to))
    .map(([from, to]) => ({
      verdict: 'marginal',
      sentence: `Between ${farads(from)} and ${farads(to)} a resonance loses the need again; the least stands above it.`,
    }))
}

function restsOn({ service }: WindowRow, { isPair, mode, navy, around }: WindowSetup): readonly Finding[] {
  const said: Finding[] = []
  if (service && service.lossDb > 100)
    said.push({
      verdict: 'marginal',
      sentence: 'Figures above about 100 dB are mathematics: leakage past the connector governs there.',
    })
  if (isPair)
    said.push({
      verdict: 'ok',
      sentence: `Computed in ${mode} mode, per leg: ${mode === 'common' ? 'twice' : 'half'} the impedance of the pair. Fit both legs alike.`,
    })
  if (navy === 'not-power')
    said.push({
      verdict: 'ok',
      sentence: 'The Navy line-to-ground rule is for power lines; it does not apply to this line.',
    })
  else if (navy && navy.limit.limitF === undefined)
    said.push({ verdict: 'unknown', sentence: navyWhy(navy.limit, navy) })
  if (around && (around.bondOhm > 0 || around.bondH > 0))
    said.push({
      verdict: 'marginal',
      sentence: 'The bond carries every contact of the connector: a figure for one line alone is optimistic.',
    })
  return said
}

function shownBecause(row: WindowRow, wasAsked: boolean): readonly Finding[] {
  if (wasAsked || row.verdict === 'unknown') return []
  return row.verdict === 'fails'
    ? [
        {
          verdict: 'fails',
          sentence: `${labelOf(row)} is shown; none of the six topologies does with these facts.`,
        },
      ]
    : [{ verdict: 'ok', sentence: `${labelOf(row)} is shown: the fewest parts with the best verdict.` }]
}
