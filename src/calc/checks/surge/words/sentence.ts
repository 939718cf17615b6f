/** The answer of the surge check in one sentence: does the circuit survive, and if something does not, what. */

import { askedWord } from '../../../explain/ceiling.ts'
import { listed, notKnown, type Said } from '../../../explain/sentence.ts'
import type { CeilingAsk } from '../../../loading/ceiling.ts'
import { formatEstimate } from '../../../quantity/format.ts'
import type { CircuitReason, SuppressorReason } from '../../../surge/judge.ts'
import type { SignalAnswer } from '../../../surge/signal.ts'
import type { Finding, Verdict } from '../../../types.ts'
import { VERDICT_RANK, VERDICT_WORDS, worstFirst } from '../../../verdict.ts'
import type { SurgeFound } from '../figures.ts'
import { surgeInputs } from '../inputs.ts'
import { capacitorFindings, circuitFindings, suppressorFindings } from './findings.ts'
import { wordOf } from './refusals.ts'
import { share, volts } from './show.ts'
import { signalFindings } from './signal.ts'

/** One thing that must live: how it is called, how it fares, why, and the field it may lack. */
type Judged = {
  readonly who: string
  readonly verdict: Verdict
  readonly because: string
  readonly needs: string | undefined
}

export function surgeSaid(found: SurgeFound, verdict: Verdict): Said {
  const all = judgedOf(found)
  const [deciding] = [...all].sort((a, b) => VERDICT_RANK[b.verdict] - VERDICT_RANK[a.verdict])
  const { load, isWhole } = found.judged
  if (verdict === 'ok' || deciding === undefined)
    return {
      headline: `${liveWords(found)}: ${VERDICT_WORDS[verdict]}. ${peakWords(found)}.`,
    }
  if (verdict !== 'unknown') {
    const { circuit } = found.judged
    const [first] = circuit.reasons
    // of the load only where the load is what decides, not what stands between the legs
    const isPeak = deciding === all[0] && first?.is === 'load' && first.verdict === circuit.verdict
    const because = isPeak ? `${peakWords(found)}.` : deciding.because
    return { headline: `${deciding.who}: ${VERDICT_WORDS[verdict]}. ${because}` }
  }
  const open = all.find((one) => one.verdict === 'unknown' && one.needs !== undefined)
  const peak = `The load peaks at ${volts(load.worst)}.`
  if (open?.needs !== undefined) return notKnown(surgeInputs, open.needs, `${needWords(open.needs, found)}. ${peak}`)
  return {
    headline: isWhole
      ? `Not known: ${deciding.because}`
      : 'Not known: the circuit rings too fast and too long to be followed to the end.',
  }
}

/** What is judged here, the circuit first. */
function judgedOf({ judged, setup }: SurgeFound): readonly Judged[] {
  const { circuit, suppressor, capacitor, signal } = judged
  const one = (who: string, verdict: Verdict, findings: readonly Finding[], needs: string | undefined): Judged => ({
    who,
    verdict,
    because: worstFirst(findings)[0]?.sentence ?? '',
    needs,
  })
  return [
    one(
      'The circuit survives',
      circuit.verdict,
      circuitFindings(circuit.reasons),
      firstOf(circuit.reasons.map(circuitNeeds)),
    ),
    ...(suppressor
      ? [
          one(
            'The suppressor survives',
            suppressor.verdict,
            suppressorFindings(suppressor.reasons),
            firstOf(suppressor.reasons.map(partNeeds)),
          ),
        ]
      : []),
    ...(capacitor
      ? [
          one(
            'The filter capacitor survives',
            capacitor.verdict,
            capacitorFindings(capacitor.reasons),
            capacitor.reasons.some(({ is }) => is === 'way-unknown') ? 'lineH' : 'capacitorWithstandV',
          ),
        ]
      : []),
    ...(signal.is === 'none'
      ? []
      : [one('The signal passes', signal.verdict, signalFindings(signal, setup.part?.standoffV), signalNeeds(signal))]),
  ]
}

const firstOf = (keys: readonly (string | undefined)[]): string | undefined => keys.find((key) => key !== undefined)

function circuitNeeds(reason: CircuitReason): string | undefined {
  const { is, verdict } = reason
  if (verdict !== 'unknown') return undefined
  if (is === 'rest-unknown') return 'lineKind'
  if (is === 'way-unknown') return 'lineH'
  if (is === 'legs-unjudged') return reason.lacks === 'pair-line' ? 'lineKind' : undefined
  return is === 'insulation' ? 'insulationWithstandV' : is === 'between-legs' ? 'pairWithstandV' : 'withstandV'
}

const PART_NEEDS: Readonly<Partial<Record<SuppressorReason['is'], string>>> = {
  'rating-missing': 'ratedPulseW',
  'line-unknown': 'lineKind',
  'low-unknown': 'busMinV',
  'category-missing': 'supplyCategory',
  'category-empty': 'busMaxV',
  'below-own': 'busMaxV',
  'holding-missing': 'holdingA',
}

const partNeeds = ({ is, verdict }: SuppressorReason): string | undefined =>
  verdict === 'unknown' ? PART_NEEDS[is] : undefined

function signalNeeds(signal: Exclude<SignalAnswer, { is: 'none' }>): string | undefined {
  if (signal.is === 'suppressor-unknown') return 'suppressorF'
  const { works, lacks } = signal.judgement.ceiling
  return (works.farads === undefined ? works.ask : undefined) ?? lacks[0]
}

const ASKED: readonly CeilingAsk[] = ['bitRateHz', 'signalOhm', 'usefulHz']

function needWords(key: string, { judged: { signal } }: SurgeFound): string {
  const ask = ASKED.find((one) => one === key)
  return ask !== undefined && signal.is === 'judged' ? askedWord(signal.facts, ask) : wordOf(key)
}

/** "Circuit and suppressor survive, the signal passes": what was judged, and nothing else. */
function liveWords({ judged: { suppressor, capacitor, signal } }: SurgeFound): string {
  const parts = [...(suppressor ? ['suppressor'] : []), ...(capacitor ? ['filter capacitor'] : [])]
  const live = parts.length === 0 ? 'The circuit survives' : `${listed(['Circuit', ...parts])} survive`
  return signal.is === 'none' ? live : `${live}, the signal passes`
}

/** "The load peaks at 54 V, the circuit withstands 80 V; the suppressor uses 40 % of its rating". */
function peakWords({ judged: { load, usedFrac }, setup: { withstandV } }: SurgeFound): string {
  const holds = withstandV === undefined ? '' : `, the circuit withstands ${formatEstimate(withstandV, 'voltage')}`
  const used = usedFrac === undefined ? '' : `; the suppressor uses ${share(usedFrac.worst)} of its rating`
  return `The load peaks at ${volts(load.worst)}${holds}${used}`
}
