/** The answer of the filter check in one sentence. */
import { HELD_WORDS } from '../../explain/held-words.ts'
import { notKnown, type Said, waitingFor } from '../../explain/sentence.ts'
import { missingInputs } from '../../line/missing.ts'
import { hasCapacitor, hasInductor, TOPOLOGY_LABEL } from '../../network/circuit.ts'
import { formatEstimate, formatExact } from '../../quantity/format.ts'
import type { Topology } from '../../types.ts'
import { capital, VERDICT_WORDS } from '../../verdict.ts'
import { type Filtered, type FilterFigures, gainVerdict, PRACTICAL_CEILING_DB, type Worst } from './figures.ts'
import { type FilterGiven, filterInputs } from './inputs.ts'

/** What comes off at least is cut down. */
const atLeast = (db: number): string => formatEstimate(db, 'decibel', 'most')

export function filterSaid(given: FilterGiven, { verdict }: FilterFigures, q: Filtered): Said {
  const worst = q.boxWorst ?? q.worst
  if (worst === undefined) return benchSaid(given, q, verdict === 'fails')
  if (verdict === 'unknown')
    return notKnown(
      filterInputs,
      'chokeWires',
      'every wire of the circuit through the choke. Around one wire it is an inductor.',
    )
  const off = offWords(q, worst)
  const rings = ringsWords(q)
  if (q.neededDb === undefined)
    return verdict === 'ok'
      ? { headline: `${capital(off)}.`, answers: 'number' }
      : { headline: `${partsOf(given)}: ${VERDICT_WORDS[verdict]}. ${capital(rings)}; ${off}.` }
  const needed = `${formatExact(q.neededDb, 'decibel')} needed`
  const isShort = worst.db < q.neededDb
  const nominal =
    isShort && q.boxWorst && q.worst && q.worst.db >= q.neededDb ? `; as entered ${atLeast(q.worst.db)}` : ''
  const against = [rings, isShort ? '' : heldWords(q)].filter((words) => words !== '').join('; ')
  const rest = verdict === 'ok' ? '' : against === '' ? ceilingWords(q.neededDb) : `; but ${against}`
  return { headline: `${partsOf(given)}: ${VERDICT_WORDS[verdict]}. ${capital(off)}, ${needed}${nominal}${rest}.` }
}

/** Without both ends and a frequency only the bench says anything, and that little. */
function benchSaid(given: FilterGiven, q: Filtered, hasFailed: boolean): Said {
  if (hasFailed) return { headline: `${partsOf(given)}: no. ${capital(ringsWords(q))}.` }
  const open = missingInputs(filterInputs, given).filter(({ key }) => ENDS.includes(key))
  const bench = q.bench
    ? ` On the 50 Ω bench ${atLeast(q.bench.db)} come off at ${formatExact(q.bench.hz, 'frequency')}, which says little of your circuit.`
    : ''
  return q.hasShortedDc
    ? notKnown(filterInputs, 'frequencyHz', `a frequency above DC: the inductance across the load shorts it.${bench}`)
    : waitingFor(open, bench)
}

const ENDS: readonly string[] = ['sourceOhm', 'loadOhm', 'frequencyHz']

/** "45.3 dB come off at 12 MHz from 50 Ω in each leg with the worst part". */
function offWords({ boxWorst, mode, neededDb }: Filtered, { db, hz, source }: Worst): string {
  const leg = mode === undefined ? '' : ' in each leg'
  const part = boxWorst ? ' with the worst part' : neededDb === undefined ? '' : ' with the parts as entered'
  const at = `at ${formatExact(hz, 'frequency')} from ${formatEstimate(source.ohm, 'resistance')}${leg}${part}`
  return db < 0 ? `${formatEstimate(-db, 'decibel', 'least')} are added ${at}` : `${atLeast(db)} come off ${at}`
}

function ringsWords({ boxGain }: Filtered): string {
  if (boxGain === undefined || gainVerdict(boxGain) === 'ok') return ''
  const { gainDb, atHz, sourceOhm } = boxGain
  const from = sourceOhm === undefined ? '' : ` from ${formatEstimate(sourceOhm, 'resistance')}`
  return `it amplifies by ${formatEstimate(gainDb, 'decibel', 'least')} at ${formatEstimate(atHz, 'frequency')}${from}`
}

const heldWords = ({ boxWorst }: Filtered): string => (boxWorst && HELD_WORDS[boxWorst.held]) ?? ''

const ceilingWords = (neededDb: number): string =>
  neededDb > PRACTICAL_CEILING_DB ? '; above about 100 dB leakage past the connector governs' : ''

/** "Pi of 4.7 nF and 10 µH"; a capacitor or an inductor alone by its value. */
function partsOf({ topology, capacitanceF, inductanceH, chokeH }: FilterGiven): string {
  const shape = (topology ?? 'C') as Topology
  const parts = [
    ...(capacitanceF !== undefined && hasCapacitor(shape) ? [formatExact(capacitanceF, 'capacitance')] : []),
    ...(inductanceH !== undefined && hasInductor(shape) ? [formatExact(inductanceH, 'inductance')] : []),
    ...(chokeH ? [`a choke of ${formatExact(chokeH, 'inductance')}`] : []),
  ].join(' and ')
  return shape === 'C' || shape === 'L' ? capital(parts) : `${TOPOLOGY_LABEL[shape]} of ${parts}`
}
