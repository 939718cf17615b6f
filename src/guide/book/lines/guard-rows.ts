/** What the input looks like to noise, which suppressor the line never makes conduct, and how large that one may be. */
import { classOf, inputSpanOhm } from '../../../calc/network/noise-input.ts'
import { formatEstimate, formatExact, formatQuantity } from '../../../calc/quantity/format.ts'
import { leastStandoffV } from '../../../calc/surge/suppressor.ts'
import { capital } from '../../../calc/verdict.ts'
import { type BusSurge, busSurgesOf } from '../../../reference/bus-surges.ts'
import type { LineCard, SuppressorCap } from '../../../reference/line-cards.ts'
import { DERIVED } from '../../../reference/line-kinds/cite.ts'
import type { OwnSwing } from '../../../reference/line-kinds/types.ts'
import type { LineKind } from '../../../reference/line-kinds.ts'
import { noInputWhy, noiseInputOf } from '../../../reference/noise-inputs.ts'
import { FORWARD_STARTS } from '../../../reference/suppressors.ts'
import type { BookRow } from '../types.ts'
import { roomsOf } from './asked.ts'
import { notKnownText } from './ohm-rows.ts'
import { howFound } from './room-rows.ts'

const ohm = (si: number): string => formatQuantity(si, 'resistance')
const farads = (si: number): string => formatQuantity(si, 'capacitance')
const volts = (si: number): string => formatExact(si, 'voltage')

/** Where the input is looked at: the low and the high end of usual noise, and between. */
const NOISE_AT_HZ = [1e6, 30e6, 120e6] as const

const between = (least: string, most: string): string => (least === most ? least : `${least} to ${most}`)
function noiseRow(kind: LineKind): BookRow {
  const label = 'Seen by noise'
  const input = noiseInputOf(kind)
  if (input === undefined) {
    const why = noInputWhy(kind) ?? 'No figure of its input against the case was found.'
    return {
      label,
      text: `Not known. ${why} Measure it so: a clamp ferrite of known ohms, and how much it lowers the noise.`,
    }
  }
  const at = NOISE_AT_HZ.map((hz) => {
    const { least, most } = inputSpanOhm(input, { least: hz, most: hz })
    return { hz: formatQuantity(hz, 'frequency'), class: between(classOf(least), classOf(most)) }
  })
  // classes that stay the same are said once
  const runs = at.filter((each, i) => each.class !== at[i - 1]?.class)
  const classes = runs.map((run, i) => {
    const last = at[at.indexOf(runs[i + 1] ?? run) - 1]
    const until = runs[i + 1] === undefined ? at.at(-1) : last
    return `${run.class} ${until === run || until === undefined ? `at ${run.hz}` : `from ${run.hz} to ${until.hz}`}`
  })
  const counted = `${between(ohm(input.ohm.least), ohm(input.ohm.most))} with ${between(farads(input.farad.least), farads(input.farad.most))} across it`
  return { label, text: `${capital(classes.join(', '))}. Counted as ${counted}.`, source: input.source }
}

/** Highest volts of a swing of either sign, and whether a part that conducts forward would clip its lower side. */
const reachOf = ([lowV, highV]: OwnSwing): { readonly mostV: number; readonly isBothWays: boolean } => {
  const isBothWays = lowV <= -FORWARD_STARTS.value
  return { mostV: isBothWays ? Math.max(highV, -lowV) : highV, isBothWays }
}

function standoffText(swing: OwnSwing, where: string): string {
  const { mostV, isBothWays } = reachOf(swing)
  const standoffV = leastStandoffV(mostV)
  const reached = `the line reaches ${volts(mostV)} by itself`
  if (standoffV === undefined) return `No usual step ${where}: ${reached}.`
  return `${volts(standoffV)} or more ${where}, ${isBothWays ? 'bidirectional' : 'unidirectional'}: ${reached}.`
}

function standoffRows({ ownPeaks, isPair }: LineKind): readonly BookRow[] {
  const label = 'Stand-off'
  if (ownPeaks === undefined)
    return [
      {
        label,
        text: notKnownText({
          is: 'not-known',
          what: 'the highest volts of the line itself',
          measure: 'a scope or peak meter on a good line, by procedure, through every switching',
        }),
      },
    ]
  const { leg, pair, surgesOf, source } = ownPeaks
  const swings = [
    standoffText(leg, isPair ? 'from each leg to chassis' : 'to chassis'),
    ...(pair === undefined ? [] : [standoffText(pair, 'between the legs')]),
  ]
  return [{ label, text: swings.join(' '), source }, ...surgeRows(surgesOf)]
}

const highestOf = (surges: readonly BusSurge[]): BusSurge | undefined =>
  surges.reduce<BusSurge | undefined>((top, row) => (top === undefined || row.peakV > top.peakV ? row : top), undefined)

/** The highest long surge of the supply that reaches the line, and the stand-off that lets it pass. */
function surgeRows(surgesOf: string | undefined): readonly BookRow[] {
  const highest = highestOf(surgesOf === undefined ? [] : busSurgesOf(surgesOf))
  if (highest === undefined) return []
  const standoffV = leastStandoffV(highest.peakV)
  const passes = standoffV === undefined ? 'No usual step lets it pass' : `${volts(standoffV)} or more lets it pass`
  return [
    {
      label: 'Long surges',
      text: `${passes}: ${formatQuantity(highest.peakV, 'voltage')} for ${formatQuantity(highest.forSec, 'time')}, the highest of its supply. A milder category asks for less.`,
      source: highest.source,
    },
  ]
}

const atRate = ({ farads: f, rateHz }: SuppressorCap): string =>
  rateHz === undefined ? farads(f) : `${farads(f)} up to ${formatQuantity(rateHz, 'bitRate', 5)}`

/** "At most 5 pF on each leg", or for several: "At most, on each leg: 5 pF up to …, 2 pF up to …". */
const counted = (words: string, where: string, figures: readonly string[]): string =>
  figures.length === 1 ? `${words} ${figures[0]}${where}.` : `${words}${where && `,${where}`}: ${figures.join(', ')}.`

function practiceRows(caps: readonly SuppressorCap[], leg: string): readonly BookRow[] {
  const [first] = caps
  if (first === undefined) return []
  const text = counted('As a rule at most', first.ofPair ? ' for the pair' : leg, caps.map(atRate))
  return [{ label: 'Its capacitance', text, source: first.source }]
}

function leftRows(card: LineCard, kind: LineKind, leg: string): readonly BookRow[] {
  const rooms = roomsOf(card, kind)
  if (rooms.length === 0) return []
  const left = rooms.map(
    ({ at, roomF }) => `${roomF > 0 ? formatEstimate(roomF, 'capacitance', 'most') : 'nothing'}${at}`,
  )
  return [
    {
      label: 'Left for it',
      text: `${counted('Beside the usual load the physics leaves', leg, left)} Filter and suppressor share it.`,
      source: DERIVED,
    },
  ]
}

function capacitanceRows(card: LineCard, kind: LineKind): readonly BookRow[] {
  const leg = kind.isPair ? ' on each leg' : ''
  const known = [...practiceRows(card.suppressor ?? [], leg), ...leftRows(card, kind, leg)]
  if (known.length > 0) return known
  const what = 'how much capacitance it may have here'
  return [{ label: 'Its capacitance', text: notKnownText({ is: 'not-known', what, measure: howFound(kind) }) }]
}

/** The input as noise sees it, and the suppressor: stand-off, long surges, capacitance. */
export const guardRows = (card: LineCard, kind: LineKind): readonly BookRow[] => [
  noiseRow(kind),
  ...standoffRows(kind),
  ...capacitanceRows(card, kind),
]
