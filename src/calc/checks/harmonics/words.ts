/** What the harmonics check says: which product lands where, how far from a channel, how strong, and what avoids it. */
import { RADIO_BANDS } from '../../../reference/radio-bands.ts'
import { waitingFor } from '../../explain/sentence.ts'
import { type Landing, LEAST_LEVEL_DB, MOST_UNKNOWN, type Unlisted } from '../../harmonics/spectrum.ts'
import { missingInputs } from '../../line/missing.ts'
import { formatExact, formatQuantity } from '../../quantity/format.ts'
import type { Basis, Cell, Finding, Picture, Source, Success } from '../../types.ts'
import { capital, VERDICT_WORDS } from '../../verdict.ts'
import type { HarmonicsFigures } from './figures.ts'
import { type HarmonicsGiven, harmonicsInputs } from './inputs.ts'

/** Enough digits that a channel is told from the next. */
const hertz = (si: number): string => formatQuantity(si, 'frequency', 7)
const away = (si: number): string => formatQuantity(Math.abs(si), 'frequency', 4)
const none = (why: string): Cell => ({ is: 'none', why })

const MOST_ROWS = 40

export function explainHarmonics(given: HarmonicsGiven, figures: HarmonicsFigures): Success {
  const verdict = figures.verdict ?? 'unknown'
  const said =
    figures.fundamentals.length === 0
      ? waitingFor(missingInputs(harmonicsInputs, given))
      : { headline: headlineOf(figures) }
  return {
    ok: true,
    verdict,
    ...said,
    findings: findingsOf(given, figures),
    outputs: outputsOf(figures),
    bounds: [],
    rungs: [],
    pictures: figures.landings.length === 0 ? [] : [tableOf(figures)],
    cautions: [],
  }
}

const bandOf = (id: string) => RADIO_BANDS.find((band) => band.id === id)

const listeningName = ({ isForChannel }: HarmonicsFigures, id: string): string =>
  isForChannel ? `the channel on ${formatExact(Number(id), 'frequency')}` : (bandOf(id)?.system ?? id)

/** "13 × 121.175 MHz", "2 × 100 kHz − 1 × 121 MHz". */
function productWords({ terms }: Landing, { fundamentals }: HarmonicsFigures): string {
  return terms
    .map(({ of, times }, i) => {
      const size = `${Math.abs(times)} × ${formatExact(fundamentals[of]?.hz ?? 0, 'frequency')}`
      return i === 0 ? `${times < 0 ? '−' : ''}${size}` : `${times < 0 ? '−' : '+'} ${size}`
    })
    .join(' ')
}

function headlineOf(figures: HarmonicsFigures): string {
  const { worst, isForChannel, landings, unlisted } = figures
  if (worst === undefined && unlisted !== undefined) {
    const hz = unlisted.times * (figures.fundamentals[unlisted.of]?.hz ?? 0)
    const product = `${unlisted.times} × ${formatExact(figures.fundamentals[unlisted.of]?.hz ?? 0, 'frequency')} is ${hertz(hz)}`
    const where = isForChannel ? 'in' : 'in the band of'
    return `With care: ${product}, ${where} ${listeningName(figures, unlisted.listening)}: ${UNLISTED_WHY[unlisted.why]}.`
  }
  if (worst === undefined)
    return isForChannel
      ? `${capitalYes}: no harmonic and no product of the third order lies in that channel, ${overWords(figures)}.`
      : `${capitalYes}: none lies in a band of the table, ${overWords(figures)}.`
  const where = `${productWords(worst, figures)} is ${hertz(worst.hz)}`
  const off =
    worst.fromChannelHz === undefined ? '' : `, ${away(worst.fromChannelHz)} from ${channelWords(figures, worst)}`
  if (isForChannel) return `No: ${where}${off}, inside the width of that receiver.`
  const more =
    landings.length === 1 ? '' : `; ${landings.length - 1} more ${landings.length === 2 ? 'lies' : 'lie'} in bands`
  return `With care: ${where}${off === '' ? `, in the band of ${listeningName(figures, worst.listening)}` : off}${more}.`
}

const isSquare = ({ worst, fundamentals }: HarmonicsFigures): boolean =>
  fundamentals[worst?.terms[0]?.of ?? -1]?.waveform === 'square'

const UNLISTED_WHY: Readonly<Record<Unlisted['why'], string>> = {
  even: 'an even harmonic, and a square has none only while both its halves are equally long',
  far: `beyond the ${MOST_UNKNOWN}th of a sine or a transmitter, and how strong it is only a measurement says`,
  weak: `more than ${-LEAST_LEVEL_DB} dB below its fundamental, which a receiver beside a strong source may still hear`,
}

/** Over what it was looked at: the tolerance of the fundamentals. */
function overWords({ fundamentals }: HarmonicsFigures): string {
  const most = Math.max(...fundamentals.map(({ offFrac }) => offFrac))
  return most > 0
    ? `wherever each fundamental is within ${formatExact(most, 'fraction')}`
    : 'with the fundamental exact'
}

const capitalYes = capital(VERDICT_WORDS.ok)

function channelWords(figures: HarmonicsFigures, { listening }: Landing): string {
  const channelHz = figures.listenings.find(({ id }) => id === listening)?.channelHz
  const name = listeningName(figures, listening)
  return figures.isForChannel || channelHz === undefined ? name : `${name} on ${formatExact(channelHz, 'frequency')}`
}

function findingsOf(given: HarmonicsGiven, figures: HarmonicsFigures): readonly Finding[] {
  const { values, worst, fundamentals, landings } = figures
  const said: Finding[] = []
  if (worst !== undefined && values['exactHz'] !== undefined && worst.fromChannelHz !== 0)
    said.push({ verdict: 'unknown', sentence: `A fundamental of ${hertz(values['exactHz'])} would lie exactly on it.` })
  if (values['shiftHz'] !== undefined && values['shiftHz'] !== 0)
    said.push({
      verdict: 'ok',
      sentence: `${values['shiftHz'] > 0 ? 'Raising' : 'Lowering'} that fundamental by ${away(values['shiftHz'])} keeps every ${isSquare(figures) ? 'odd ' : ''}harmonic of it out of that channel, over its tolerance.`,
    })
  else if (
    worst !== undefined &&
    worst.terms.length === 1 &&
    values['exactHz'] !== undefined &&
    values['shiftHz'] === undefined
  )
    said.push({
      verdict: 'fails',
      sentence: 'Its harmonics lie closer together than the channel is wide: no shift keeps clear of it.',
    })
  if (fundamentals.some(({ waveform }) => waveform === 'sine' || waveform === 'transmitter'))
    said.push({
      verdict: 'unknown',
      sentence: 'How strong harmonics of a sine or a transmitter are, only a measurement says.',
    })
  const corner = values['cornerHz']
  if (corner !== undefined)
    said.push({
      verdict: 'ok',
      sentence: `Above ${formatQuantity(corner, 'frequency', 4)}, 1/(π·tr), levels fall by 40 dB a decade instead of 20.`,
    })
  else if (worst?.levelDb !== undefined && given.riseSec === undefined)
    said.push({ verdict: 'unknown', sentence: 'Without the rise time no corner is counted: true levels are lower.' })
  if (landings.some(({ terms }) => terms.length > 1))
    said.push({
      verdict: 'unknown',
      sentence:
        'Products of two or three need something that mixes: an overdriven input, a corroded joint, one supply.',
    })
  return said
}

/** Where it lies, and how far to either side it may. */
const offWords = ({ hz, offHz }: Landing): string => (offHz > 0 ? `${hertz(hz)} ± ${away(offHz)}` : hertz(hz))

const classOf = (levelDb: number | undefined): string =>
  levelDb === undefined ? 'not known' : levelDb >= -40 ? 'strong' : levelDb >= -70 ? 'middle' : 'weak'

function tableOf(figures: HarmonicsFigures): Picture {
  const { landings } = figures
  const left = landings.length - MOST_ROWS
  return {
    is: 'table',
    title: left > 0 ? `What lands where, the nearest ${MOST_ROWS} of ${landings.length}` : 'What lands where',
    columns: [
      { key: 'product', label: 'Product' },
      { key: 'at', label: 'Lies at' },
      { key: 'where', label: 'Listening there' },
      { key: 'away', label: 'From the channel' },
      { key: 'level', label: 'Below its fundamental', quantity: 'decibel' },
      { key: 'class', label: 'Class' },
      { key: 'count', label: 'In that band', quantity: 'count' },
    ],
    rows: landings.slice(0, MOST_ROWS).map((landing, index) => ({
      id: `landing-${index}`,
      strong: index === 0,
      cells: [
        { is: 'word', word: productWords(landing, figures) },
        { is: 'word', word: offWords(landing) },
        { is: 'word', word: listeningName(figures, landing.listening) },
        landing.fromChannelHz === undefined
          ? none('–')
          : { is: 'word', word: formatQuantity(landing.fromChannelHz, 'frequency', 4) },
        landing.levelDb === undefined ? none('not known') : { is: 'si', si: landing.levelDb },
        { is: 'word', word: classOf(landing.levelDb) },
        { is: 'si', si: landing.count },
      ],
    })),
  }
}

function outputsOf(figures: HarmonicsFigures): Success['outputs'] {
  const { values, worst } = figures
  const basis = basisOf(figures)
  const cell = (key: string, why: string): { readonly cell: Cell; readonly basis: Basis } => {
    const si = values[key]
    return { cell: si === undefined ? none(why) : { is: 'si', si }, basis }
  }
  const noChannel = worst === undefined ? 'nothing lands' : 'that band has no single channel'
  return {
    landingCount: cell('landingCount', 'needs a fundamental'),
    productHz: cell('productHz', 'nothing lands'),
    fromChannelHz: cell('fromChannelHz', noChannel),
    order: cell('order', worst === undefined ? 'nothing lands' : 'a product of several'),
    levelDb: cell('levelDb', 'not known'),
    exactHz: cell('exactHz', noChannel),
    shiftHz: cell('shiftHz', noChannel),
    cornerHz: cell('cornerHz', 'needs the rise time'),
    worstAt: {
      cell: worst === undefined ? none('nothing lands') : { is: 'word', word: listeningName(figures, worst.listening) },
      basis,
    },
  }
}

const TEXTBOOK: Source = { id: 'derived', standing: 'derived' }

function basisOf(figures: HarmonicsFigures): Basis {
  const { worst, isForChannel, values } = figures
  const source = worst === undefined || isForChannel ? undefined : bandOf(worst.listening)?.source
  const [term, ...more] = worst?.terms ?? []
  return {
    steps:
      worst === undefined || term === undefined
        ? []
        : [
            {
              formula: more.length === 0 ? 'n·f' : 'a·f1 ± b·f2 ± c·f3',
              withNumbers: productWords(worst, figures),
              si: worst.hz,
              quantity: 'frequency',
            },
            ...(worst.levelDb === undefined
              ? []
              : [
                  {
                    formula: '−20·log10(n), and 20 dB a decade more above 1/(π·tr)',
                    withNumbers: `n = ${term.times}`,
                    si: worst.levelDb,
                    quantity: 'decibel' as const,
                  },
                ]),
            ...(values['exactHz'] === undefined
              ? []
              : [
                  {
                    formula: 'channel / n',
                    withNumbers: `n = ${term.times}`,
                    si: values['exactHz'],
                    quantity: 'frequency' as const,
                  },
                ]),
          ],
    assumptions: [
      `nothing more than 100 dB below its fundamental is listed${figures.fundamentals.length > 1 ? '; products up to the third order' : ''}`,
      'strong: down to 40 dB below the fundamental, middle: to 70 dB, weak: below; practice',
    ],
    sources: source === undefined ? [TEXTBOOK] : [TEXTBOOK, source],
  }
}
