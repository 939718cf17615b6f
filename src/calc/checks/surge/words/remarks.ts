/** What follows from the numbers without being a verdict. */
import { MOST_BREAKDOWN_RATIO } from '../../../../reference/suppressors.ts'
import type { RunFigures } from '../../../surge/runs.ts'
import type { SurgeSetup } from '../../../surge/setup.ts'
import { inParallelA } from '../../../surge/suppressor.ts'
import type { Finding } from '../../../types.ts'
import type { SurgeFound } from '../figures.ts'
import { A, comes, percent, share, show, V, volts } from './show.ts'
import { noTableWords } from './sizing.ts'

const note = (sentence: string): Finding => ({ verdict: 'ok', sentence })

/** In the order in which they matter. */
export function remarks(found: SurgeFound): readonly Finding[] {
  const { setup, runs, judged, sizes } = found
  const { run, other, swapped } = runs
  return [
    ...(judged.isWhole
      ? []
      : [
          {
            verdict: 'unknown',
            sentence: 'The circuit rings too fast and too long to be followed to the end.',
          } as const,
        ]),
    ...(other ? polarityRemarks(run, other, setup.sign) : []),
    ...stackRemarks(found),
    ...restRemarks(setup),
    ...overshootRemarks(run),
    ...(swapped ? [note(placementWords(setup, run, swapped))] : []),
    ...(judged.usage?.otherTrains ?? []).map(({ repeats, usedFrac }) =>
      note(
        `Estimate for ${repeats.words} (${repeats.of === 'bundle' ? 'a cable-bundle test' : 'pin injection'}): ${share(usedFrac)} of the rating.`,
      ),
    ),
    ...(sizes === undefined || sizes.length === 0 ? [note(noTableWords(found))] : []),
    ...bundleRemarks(setup),
    ...takenWords(setup).map(note),
  ]
}

/** Larger by less than this is not worse. */
const WORSE = 1.01

/** Names what the other polarity makes worse. */
function polarityRemarks(run: RunFigures, other: RunFigures, sign: 1 | -1): readonly Finding[] {
  const words = [
    ...(other.load.value > WORSE * run.load.value ? [`${volts(other.load.value)} at the load`] : []),
    ...(other.amps.value > WORSE * run.amps.value
      ? [`${comes(other.amps.value, 'current')} through the suppressor`]
      : []),
    ...(other.energyJ > WORSE * run.energyJ ? [`${comes(other.energyJ, 'energy')} in it`] : []),
  ]
  if (words.length === 0) return []
  return [note(`The ${sign === 1 ? 'negative' : 'positive'} polarity is worse in: ${words.join(', ')}.`)]
}

function restRemarks({ restV }: SurgeSetup): readonly Finding[] {
  const held = restV.filter((volts) => volts !== 0)
  if (held.length === 0) return []
  const words = held.length === 2 ? `${V(held[0] ?? 0)} and from ${V(held[1] ?? 0)}` : V(held[0] ?? 0)
  return [note(`The pulse starts from the line’s own volts: from ${words}, the worse counted.`)]
}

const overshootRemarks = ({ overshoot, clamp }: RunFigures): readonly Finding[] =>
  overshoot && overshoot.volts > 0.01 * clamp.value
    ? [
        note(
          `The suppressor’s lead adds ${volts(overshoot.volts)} for ${show(overshoot.sec, 'time')} in all while the current changes: shorten it.`,
        ),
      ]
    : []

/** Both sides of the filter, from two runs. */
function placementWords(setup: SurgeSetup, run: RunFigures, other: RunFigures): string {
  const isAhead = setup.placement === 'connector'
  const here = isAhead ? 'At the connector' : 'Behind the filter'
  const there = isAhead ? 'behind the filter' : 'at the connector'
  const words = (r: RunFigures) =>
    `${comes(r.amps.value, 'current')} through the suppressor, load ${volts(r.load.value)}${r.capacitor ? `, filter capacitor ${volts(r.capacitor.value)}` : ''}`
  const front = setup.filter.topology === 'CL' || setup.filter.topology === 'PI'
  const [behind, ahead] = isAhead ? [other, run] : [run, other]
  const rings = !front
    ? ''
    : behind.amps.value > ahead.amps.value
      ? ' The front capacitor rings through the inductor: here the suppressor behind the filter carries more, not less.'
      : ' The front capacitor can ring through the inductor into a suppressor behind it; here it does not carry more there.'
  return `${here}: ${words(run)}. It would be ${words(other)} ${there}.${rings}`
}

/** What a stack amounts to, and how two parts in parallel would share the current that one cannot carry. */
function stackRemarks({ asked, setup, runs, judged }: SurgeFound): readonly Finding[] {
  const { part } = setup
  if (!part) return []
  const series =
    asked.seriesCount > 1
      ? [
          note(
            `${asked.seriesCount} equal parts in series: together ${V(part.mostV)} breakdown and ${show(part.dynamicOhm, 'resistance')}; each takes an equal share of the power.`,
          ),
        ]
      : []
  if (!((judged.usage?.totalFrac ?? 0) > 1)) return series
  const totalA = Math.abs(runs.run.amps.value)
  const least = part.fromClass ? part.leastV : part.mostV / MOST_BREAKDOWN_RATIO.value
  const [first, second] = inParallelA({ totalA, breakdownV: [least, part.mostV], dynamicOhm: part.dynamicOhm }).map(A)
  return [
    ...series,
    note(
      `Two such parts in parallel would not halve it: over the spread of their breakdown they share ${A(totalA)} as ${first} and ${second}. Parts in series, or one larger part, share surely.`,
    ),
  ]
}

function bundleRemarks({ pulse }: SurgeSetup): readonly Finding[] {
  const { bundle, row, shortCircuitA, openCircuitV } = pulse
  if (bundle)
    return [
      note(
        `${percent(bundle.shareFrac)} of the bundle’s ${A(bundle.bundleA)} is ${A(shortCircuitA)} on this contact, driven by at most ${V(openCircuitV)}. The share is yours: a broken shield or an open return moves it.`,
      ),
    ]
  return row.isBundleOnly ? [note('A cable-bundle waveform: never size one pin from a bundle current.')] : []
}

/** Figures of the row taken because none were entered. */
export function takenWords({ pulse }: SurgeSetup): readonly string[] {
  const { row, ring, taken, sourceOhm } = pulse
  return [
    ...(taken.ohm && row.sourceOhm
      ? [`Source impedance taken as ${show(sourceOhm, 'resistance')}: ${row.sourceOhm.why}.`]
      : []),
    ...(ring && taken.hz ? [`Ring frequency taken as ${show(ring.hz, 'frequency')}.`] : []),
    ...(ring && taken.q && row.ring ? [`Decay taken as Q = ${ring.q}, the ${row.ring.why}.`] : []),
  ]
}
