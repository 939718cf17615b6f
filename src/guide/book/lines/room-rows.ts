/** How much capacitance a line stands: by document, by physics, and what is usually there; and what is sane to try. */
import { worksWhy } from '../../../calc/explain/ceiling.ts'
import { loadingCeiling } from '../../../calc/loading/ceiling.ts'
import { formatEstimate, formatQuantity } from '../../../calc/quantity/format.ts'
import { capital } from '../../../calc/verdict.ts'
import type { LineCard } from '../../../reference/line-cards.ts'
import { PRACTICE } from '../../../reference/line-kinds/cite.ts'
import { usualLoadOf } from '../../../reference/line-kinds/usual-load.ts'
import type { LineKind } from '../../../reference/line-kinds.ts'
import type { BookRow } from '../types.ts'
import { type Asked, askedOf, firstOver, roomsOf } from './asked.ts'
import { notKnownText } from './ohm-rows.ts'
import { chassisRows, navyRows } from './power-rows.ts'

const farads = (si: number): string => formatQuantity(si, 'capacitance')
const most = (si: number): string => formatEstimate(si, 'capacitance', 'most')
const seen = ({ isPair }: LineKind): string => (isPair ? 'between the legs' : 'to chassis')

/** A clause after a semicolon reads easier as a sentence of its own. */
const asSentences = (clauses: string): string =>
  `${clauses.replace(', an end of', '; that is an end of').split('; ').map(capital).join('. ').replace(/[.]*$/u, '')}.`

/** How a figure that is missing is found: by a trial only where values for one are known and none is ruled out. */
export const howFound = ({ noTrialWhy, trial, supply }: LineKind): string => {
  if (noTrialWhy === undefined && trial !== undefined) return 'a trial in rising steps, the signal watched at each'
  return supply === undefined ? 'ask its maker; nothing is tried in this line' : 'on paper, in the power check'
}

const worksOf = ({ facts }: Asked) => loadingCeiling(facts).works

function physicsRow(card: LineCard, kind: LineKind): BookRow {
  const [label, source] = ['By physics', kind.loadingSource]
  const asked = askedOf(card, kind)
  const known = asked.flatMap((each) => {
    const { farads: worksF } = worksOf(each)
    return worksF === undefined ? [] : [{ ...each, worksF }]
  })
  const last = known.at(-1)
  const [first] = asked
  if (last === undefined)
    return {
      label,
      text: `Not known. ${asSentences(worksWhy(first.facts, worksOf(first)))} Measure it so: ${howFound(kind)}.`,
      source,
    }
  const all = known.map(({ at, worksF }) => `${most(worksF)}${at}`).join(', ')
  const figures =
    known.length === 1
      ? `At most ${all} ${seen(kind)}, all together`
      : `At most, ${seen(kind)} and all together: ${all}`
  return {
    label,
    text: `${figures}. ${asSentences(worksWhy(last.facts, worksOf(last)))}`,
    source,
  }
}

function documentRows({ permitted, isPair }: LineKind): readonly BookRow[] {
  return permitted.map(({ allows, farads: f, counts, source }) => ({
    label: 'By document',
    text: `${capital(allows.by)} allows ${farads(f)} ${allows.of}${counts === 'leg' ? `, ${isPair ? 'from each leg to chassis' : 'to chassis'}` : ''}.`,
    source,
  }))
}

const NO_DOCUMENT: BookRow = { label: 'By document', text: 'No document read here names a figure.' }

function usualRow(kind: LineKind): BookRow {
  const { existingF, why, source } = usualLoadOf(kind)
  return existingF === undefined
    ? {
        label: 'Usually on it',
        text: notKnownText({
          is: 'not-known',
          what: 'what wiring and boxes have already',
          measure: 'a capacitance meter on the dead line, contact to chassis',
        }),
      }
    : { label: 'Usually on it', text: `${farads(existingF)} ${seen(kind)}: ${why}.`, source }
}

/** What a document's figure leaves on a leg; undefined where none names one. */
const documentLegF = ({ isPair, permitted }: LineKind): number | undefined =>
  permitted.length === 0
    ? undefined
    : Math.min(...permitted.map(({ counts, farads: f }) => (counts === 'dm' && isPair ? 2 * f : f)))

/** What of the ladder is more than a document allows, or than the physics leaves beside the usual load. */
function beyondText(card: LineCard, kind: LineKind): string {
  const byDocument = firstOver(kind, documentLegF(kind))
  const document = byDocument === undefined ? '' : ` From ${farads(byDocument)} on it is more than the document allows.`
  const tight = roomsOf(card, kind).reduce<{ at: string; roomF: number } | undefined>(
    (least, room) => (least === undefined || room.roomF < least.roomF ? room : least),
    undefined,
  )
  if (tight === undefined) return document
  if (tight.roomF <= 0)
    return `${document} The usual load alone takes all the physics leaves${tight.at}: work this line out first.`
  const byRoom = firstOver(kind, tight.roomF)
  return byRoom === undefined
    ? document
    : `${document} From ${farads(byRoom)} on it is more than the physics leaves${tight.at}.`
}

function trialRow(card: LineCard, kind: LineKind): BookRow {
  const { trial, noTrialWhy } = kind
  const label = 'Trial ladder'
  if (noTrialWhy !== undefined) return { label, text: noTrialWhy }
  if (trial === undefined)
    return {
      label,
      text: notKnownText({
        is: 'not-known',
        what: 'values that are sane on every such line',
        measure: howFound(kind),
      }),
    }
  const across = trial.counts === 'dm' ? 'across the pair' : kind.isPair ? 'from each leg to chassis' : 'to chassis'
  return {
    label,
    text: `${[trial.lowF, trial.mediumF, trial.highF].map(farads).join(', ')}, ${across}. Smallest first, bare line before and after; with leave, and off again.${beyondText(card, kind)}`,
    source: PRACTICE,
  }
}

/** Document, physics, what is there, and the trial. */
export function roomRows(card: LineCard, kind: LineKind): readonly BookRow[] {
  const documents = [...documentRows(kind), ...navyRows(kind)]
  return [
    ...(documents.length === 0 ? [NO_DOCUMENT] : documents),
    physicsRow(card, kind),
    ...chassisRows(kind),
    usualRow(kind),
    trialRow(card, kind),
  ]
}
