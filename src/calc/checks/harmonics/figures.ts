/** The harmonics check in numbers: what lands in which band or channel, the nearest, and the shift that avoids it. */
import { RADIO_BANDS } from '../../../reference/radio-bands.ts'
import {
  avoidingShift,
  cornerHz,
  type Fundamental,
  type Landing,
  type Listening,
  landingOf,
  thirdOrder,
  type Unlisted,
  unlistedIn,
  WAVEFORMS,
  type Waveform,
} from '../../harmonics/spectrum.ts'
import type { Figures, Issue, Refused, Verdict } from '../../types.ts'
import type { HarmonicsGiven } from './inputs.ts'

export type HarmonicsFigures = Figures & {
  readonly fundamentals: readonly Fundamental[]
  readonly listenings: readonly Listening[]
  /** harmonics first, then products of the third order; nearest to a channel first */
  readonly landings: readonly Landing[]
  /** the one that decides */
  readonly worst: Landing | undefined
  /** where nothing is listed: a harmonic that lies there all the same, and in which stretch */
  readonly unlisted: (Unlisted & { readonly listening: string }) | undefined
  readonly isForChannel: boolean
  /** half of what the receiver listens over */
  readonly halfHz: number
}

const MOST_FUNDAMENTALS = 8

export function harmonicsFigures(given: HarmonicsGiven): HarmonicsFigures | Refused {
  const { fundamentalHz = [], victimHz, widthHz } = given
  const issues = [
    ...(fundamentalHz.length > MOST_FUNDAMENTALS
      ? [
          {
            key: 'fundamentalHz',
            code: 'too-many',
            message: `${fundamentalHz.length} fundamentals; give at most ${MOST_FUNDAMENTALS}.`,
          },
        ]
      : []),
    ...lengthIssue('offFrac', given.offFrac.length, fundamentalHz.length),
    ...lengthIssue('waveforms', given.waveforms.length, fundamentalHz.length),
    ...lengthIssue('riseSec', given.riseSec?.length ?? 0, fundamentalHz.length),
  ]
  if (issues.length > 0) return { ok: false, issues }
  const fundamentals = fundamentalHz.map((hz, i): Fundamental => {
    const word = given.waveforms[i] ?? given.waveforms[0]
    return {
      hz,
      offFrac: given.offFrac[i] ?? given.offFrac[0] ?? 0,
      waveform: WAVEFORMS.find((one): one is Waveform => word?.is === 'word' && one === word.word) ?? 'pulse',
      riseSec: given.riseSec?.[i] ?? given.riseSec?.[0],
    }
  })
  const halfHz = widthHz / 2
  const isForChannel = victimHz !== undefined
  const listenings = isForChannel
    ? victimHz.map(
        (hz): Listening => ({ id: String(hz), fromHz: Math.max(0, hz - halfHz), toHz: hz + halfHz, channelHz: hz }),
      )
    : RADIO_BANDS
  const landings = landingsOf(fundamentals, listenings, isForChannel)
  const [worst] = landings
  const [unlisted] = landings.length > 0 ? [] : unlistedOf(fundamentals, listenings)
  const verdict: Verdict =
    fundamentals.length === 0 ? 'unknown' : unlisted === undefined ? verdictOf(landings, isForChannel) : 'marginal'
  return {
    verdict,
    fundamentals,
    listenings,
    landings,
    worst,
    unlisted,
    isForChannel,
    halfHz,
    values: valuesOf(fundamentals, landings, worst, { halfHz, listenings }),
    bounds: [],
    rungs: [],
  }
}

function lengthIssue(key: string, count: number, wanted: number): readonly Issue[] {
  if (count <= 1 || wanted === 0 || count === wanted) return []
  return [
    {
      key,
      code: 'length-mismatch',
      message: `${count} for ${wanted === 1 ? '1 fundamental' : `${wanted} fundamentals`}; give one for all, or one for each, separated by “;”.`,
    },
  ]
}

function landingsOf(
  fundamentals: readonly Fundamental[],
  listenings: readonly Listening[],
  isForChannel: boolean,
): readonly Landing[] {
  const found = listenings.flatMap((listening) => [
    ...fundamentals.flatMap((fundamental, of) => landingOf(fundamental, of, listening) ?? []),
    ...thirdOrder(fundamentals, listening),
  ])
  const away = ({ fromChannelHz }: Landing) =>
    fromChannelHz === undefined ? Number.POSITIVE_INFINITY : Math.abs(fromChannelHz)
  const level = ({ levelDb }: Landing) => levelDb ?? 0
  const isSent = ({ terms: [one, ...others] }: Landing) =>
    others.length === 0 && one?.times === 1 && fundamentals[one.of]?.waveform === 'transmitter'
  // sent on purpose: the fundamental itself in its own band is no finding; in the channel that suffers it is the strongest
  return found
    .filter((landing) => isForChannel || !isSent(landing))
    .sort((a, b) => Number(a.terms.length > 1) - Number(b.terms.length > 1) || away(a) - away(b) || level(b) - level(a))
}

/** Sent on purpose in its own band is no finding; every other harmonic that lies there is, the strongest kind first. */
const unlistedOf = (fundamentals: readonly Fundamental[], listenings: readonly Listening[]) =>
  listenings
    .flatMap((listening) =>
      fundamentals.flatMap((fundamental, of) => {
        const found = unlistedIn(fundamental, of, listening)
        return found === undefined ? [] : [{ ...found, listening: listening.id }]
      }),
    )
    .sort((a, b) => UNLISTED.indexOf(a.why) - UNLISTED.indexOf(b.why))
const UNLISTED: readonly Unlisted['why'][] = ['even', 'far', 'weak']

/** In the channel that suffers: no. In a band somewhere: with care. */
const verdictOf = (landings: readonly Landing[], isForChannel: boolean): Verdict =>
  landings.length === 0 ? 'ok' : isForChannel ? 'fails' : 'marginal'

function valuesOf(
  fundamentals: readonly Fundamental[],
  landings: readonly Landing[],
  worst: Landing | undefined,
  { halfHz, listenings }: { readonly halfHz: number; readonly listenings: readonly Listening[] },
): Readonly<Record<string, number>> {
  const [term, ...more] = worst?.terms ?? []
  const isHarmonic = term !== undefined && more.length === 0
  const fundamental = term && fundamentals[term.of]
  const channelHz = listenings.find(({ id }) => id === worst?.listening)?.channelHz
  const shift =
    isHarmonic && fundamental !== undefined && channelHz !== undefined
      ? avoidingShift(fundamental, channelHz, halfHz)
      : undefined
  const values: Readonly<Record<string, number | undefined>> = {
    landingCount: fundamentals.length === 0 ? undefined : landings.length,
    productHz: worst?.hz,
    fromChannelHz: worst?.fromChannelHz,
    order: isHarmonic ? term.times : undefined,
    levelDb: worst?.levelDb,
    exactHz: isHarmonic && channelHz !== undefined ? channelHz / term.times : undefined,
    shiftHz: shift,
    cornerHz: fundamental?.riseSec === undefined ? undefined : cornerHz(fundamental.riseSec),
  }
  return Object.fromEntries(Object.entries(values).filter((entry): entry is [string, number] => entry[1] !== undefined))
}
