/** The answer of the loading check in one sentence, and the one fact it may lack. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import { roomPerLegF } from '../../bounds/room.ts'
import { askedWord, worksWhy } from '../../explain/ceiling.ts'
import { coilClauses } from '../../explain/loading.ts'
import { notKnown, type Said } from '../../explain/sentence.ts'
import {
  allowsWords,
  isPort,
  isTaken,
  overPermittedWords,
  standsWords,
  tightestPermitted,
  wholeOf,
} from '../../explain/whole.ts'
import { formatEstimate, formatExact } from '../../quantity/format.ts'
import type { Resting, Verdict } from '../../types.ts'
import { capital, VERDICT_WORDS } from '../../verdict.ts'
import { hasSpread, type Loaded, type LoadingFigures } from './figures.ts'
import { type LoadingGiven, loadingInputs } from './inputs.ts'

const most = (si: number): string => formatEstimate(si, 'capacitance', 'most')

const lacking = (what: string, key: string): Said => notKnown(loadingInputs, key, what)

/** No line, or one that never gets a part. */
export function stoppedSaid({ lineKind }: LoadingGiven): Said {
  const kind = lineKindById(lineKind ?? '')
  return kind?.barredWhy === undefined
    ? lacking('the line. What it carries decides how much it stands.', 'lineKind')
    : { headline: `${kind.name}: no. ${kind.barredWhy}` }
}

export function loadingSaid(given: LoadingGiven, { verdict }: LoadingFigures, loaded: Loaded): Said {
  if (verdict === 'unknown') return lackingSaid(loaded)
  if (!loaded.isEntered) return ceilingSaid(loaded)
  return { headline: `${partWords(given, loaded, verdict)}: ${VERDICT_WORDS[verdict]}. ${capital(becauseOf(loaded))}.` }
}

/** What transceiver and magnetics take of a port was not entered: below the whole of it a part is neither yes nor no. */
export function restingLoading(
  given: LoadingGiven,
  { loaded }: LoadingFigures,
  keys: readonly string[],
): Resting | undefined {
  if (loaded === undefined || !loaded.isEntered || !isPort(loaded.signal.facts.kind)) return undefined
  if (!keys.includes('existingF') || keys.some((key) => key !== 'existingF' && key !== 'suppressorF')) return undefined
  const { works } = loaded.ceiling
  const wholeF = works.farads === undefined ? 0 : roomPerLegF(works.farads, loaded.taken)
  const headline = `${partWords(given, loaded, 'marginal')}: with care. Shared with transceiver and magnetics: the whole port stands ${most(wholeF)} a leg, and what they take of it was not entered.`
  return { verdict: 'marginal', headline }
}

/** What was fitted: "10 nF"; a yes says that it is for the part as entered, where no tolerance was. */
function partWords(given: LoadingGiven, { legF, choke }: Loaded, verdict: Verdict): string {
  const part = formatExact(legF, 'capacitance')
  const coil = given.inductanceH ? `${formatExact(given.inductanceH, 'inductance')}` : undefined
  const names = [
    ...(legF > 0 || (coil === undefined && choke === undefined) ? [part] : []),
    ...(coil === undefined ? [] : [coil]),
    ...(choke === undefined ? [] : [legF > 0 || coil !== undefined ? 'the choke' : 'The choke alone']),
  ]
  return `${names.join(' with ')}${hasSpread(given) ? ' over its tolerance' : verdict === 'ok' ? ' as entered' : ''}`
}

/** The most a part may be, where none was entered: the number is the answer. */
function ceilingSaid({ ceiling, taken, signal, judgement }: Loaded): Said {
  const { kind } = signal.facts
  const roomF = ceiling.works.farads === undefined ? 0 : roomPerLegF(ceiling.works.farads, taken)
  const stands = standsWords(kind, roomF, taken)
  const tightest = tightestPermitted(ceiling, taken)
  const allowed = tightest === undefined || isPort(kind) ? '' : `; ${allowsWords(kind, tightest.figure)}`
  if (roomF <= 0) return { headline: `No: ${stands}. ${capital(worksWhy(signal.facts, ceiling.works))}.` }
  const upTo = `Up to ${most(roomF)}${kind.isPair ? ' per leg' : ''}`
  const { word, whole, less } = wholeOf(kind)
  const open = isPort(kind) ? `: leave room for transceiver and magnetics` : less
  const scope = isTaken(taken) ? ` beside what is on the ${word}` : less === '' ? '' : ` for the ${whole}${open}`
  if (judgement.verdict === 'marginal' && tightest !== undefined)
    return { headline: `${upTo}${scope}: with care. ${capital(overPermittedWords(kind, tightest, 0))}.` }
  return { headline: `${upTo}${scope}${allowed}.`, answers: 'number' }
}

function lackingSaid({ judgement, signal, ceiling, choke, taken }: Loaded): Said {
  const { facts } = signal
  const { works } = ceiling
  if (works.farads === undefined)
    return works.ask === undefined
      ? lacking(`a limit of your own. ${worksWhy(facts, works)}`, 'ownCeilingF')
      : lacking(`${askedWord(facts, works.ask)}: what this line stands depends on it.`, works.ask)
  const stands = `${capital(standsWords(facts.kind, roomPerLegF(works.farads, taken), taken))}.`
  if (choke?.isOneWire)
    return lacking('every wire of the circuit through the choke. Around one wire it is an inductor.', 'chokeWires')
  for (const reason of judgement.reasons) {
    if (reason.is === 'own-lacks')
      return lacking(`${askedWord(facts, reason.ask)}, for your own limit. ${stands}`, reason.ask)
    if (reason.is === 'resistance-unknown')
      return lacking(`${askedWord(facts, 'signalOhm')}: with the inductor the line may ring. ${stands}`, 'signalOhm')
    if (reason.is === 'cross-on-single')
      return lacking(
        'the line-to-line capacitor as already on the line: a single line has no second wire.',
        'existingF',
      )
  }
  return lacking(stands, 'capacitanceF')
}

/** The reason that decides, with the limit in it. */
function becauseOf({ judgement, ceiling, taken, signal, legF }: Loaded): string {
  const { kind } = signal.facts
  const { verdict, reasons } = judgement
  const works = reasons.find((reason) => reason.is === 'works')
  const roomF = works?.roomF ?? 0
  const tightest = tightestPermitted(ceiling, taken)
  const allowed = tightest === undefined || isPort(kind) ? '' : `; ${allowsWords(kind, tightest.figure)}`
  const limit = `${standsWords(kind, roomF, taken)}${allowed}`
  const largestF = works?.legF ?? legF
  if (works?.verdict === 'fails')
    return legF <= roomF ? `${formatEstimate(largestF, 'capacitance', 'least')} at its largest; ${limit}` : limit
  const coil = coilClauses(judgement)[0]
  const isOver = reasons.some(({ is }) => is === 'permitted')
  if (verdict === 'marginal' && isOver && tightest !== undefined) return overPermittedWords(kind, tightest, largestF)
  return coil === undefined || verdict === 'ok' ? limit : coil
}
