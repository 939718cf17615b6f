/** The row of one contact as texts: one piece for paper, for the file of the table and for what is shared. */
import { dielectricById } from '../../../reference/dielectric-bias.ts'
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Express } from '../../line/fields.ts'
import { resolve } from '../../line/resolver.ts'
import { CAPACITOR_COUNT, hasCapacitor, hasInductor, TOPOLOGY_LABEL } from '../../network/circuit.ts'
import { formatEstimate, formatExact } from '../../quantity/format.ts'
import type { Line, Verdict } from '../../types.ts'
import { VERDICT_WORDS } from '../../verdict.ts'
import { type Build, classAdvised } from '../build.ts'
import type { ContactRow } from '../contact-row.ts'
import type { DecidedContact } from '../decided.ts'
import type { ContactType } from '../types.ts'

export type SheetRow = {
  readonly id: string
  readonly type: ContactType
  readonly verdict?: Verdict
  readonly function: string
  readonly kind: string
  readonly needs: string
  readonly topology: string
  readonly value: string
  /** series, voltage class and class of dielectric, as a maker is asked for it */
  readonly build: string
  /** tolerance, dielectric, and what the marked value becomes over all of it */
  readonly spread: string
  readonly suppressor: string
  readonly place: string
  /** the word of the verdict, or what stands in its place */
  readonly word: string
  readonly why: string
  readonly remark: string
}

const TYPE_WORDS: Readonly<Record<ContactType, string>> = {
  line: 'not named',
  ground: 'ground',
  spare: 'spare',
  'feed-through': 'feed-through',
}

/** What stands where a thing does not exist or is not known. */
export const NONE = '–'

/** The word in place of a verdict where no part may ever be fitted. */
export const NEVER = 'never'

/** The texts of one contact. `express` works out typed calculations. */
export function sheetRow(row: ContactRow, express?: Express): SheetRow {
  const { contact, line, decided } = row
  const { texts, type, id } = contact
  const said = (text: string | undefined): string => text?.trim() || NONE
  return {
    id,
    type,
    ...(row.verdict === undefined ? {} : { verdict: row.verdict }),
    function: said(texts.function ?? line?.name),
    kind: kindWords(decided, line),
    needs: needsWords(decided),
    topology: topologyWords(decided),
    value: valueWords(decided),
    spread: spreadWords(decided, line, express),
    build: buildCell(row.build, dielectricText(line, express) !== ''),
    suppressor: said(texts.chosenSuppressor?.trim() || row.suppressor?.class),
    place: said(texts.chosenPlace?.trim() || row.place),
    word: stateWords(row),
    why: whyWords(row),
    remark: said(texts.remark),
  }
}

/** Headline, reason and findings, none of them twice. */
function whyWords({ headline, why, waits, findings, proposal, suppressor }: ContactRow): string {
  // where the bond they share changed the answer, what the line alone would say is named as such
  const isAlone = why === proposal?.why && why !== headline
  const sentences = [
    headline,
    isAlone ? `The line alone: ${why}` : why,
    waits ?? '',
    suppressor?.class === undefined ? '' : suppressor.why,
    ...findings.map(({ sentence }) => sentence),
  ]
  return sentences
    .reduce((said, sentence) => (said.includes(sentence.trim()) ? said : `${said} ${sentence.trim()}`), '')
    .trim()
}

function kindWords({ kind, type }: DecidedContact, line: Line | undefined): string {
  const id = kind ?? line?.facts.lineKind?.text.trim()
  if (type !== 'line' || id === undefined || id === '') return TYPE_WORDS[type]
  return lineKindById(id)?.name ?? id
}

/** "30 dB at 12 MHz; 30 MHz": what the noise asks of it. */
function needsWords({ type, neededDb, noiseHz }: DecidedContact): string {
  if (type !== 'line') return NONE
  const at = noiseHz.map((hz) => formatExact(hz, 'frequency')).join('; ')
  if (neededDb === undefined) return at === '' ? 'not known' : `not known at ${at}`
  const need = formatEstimate(neededDb, 'decibel', 'least')
  return at === '' ? `${need}, frequency not known` : `${need} at ${at}`
}

function topologyWords({ type, part, by }: DecidedContact): string {
  if (part) return TOPOLOGY_LABEL[part.topology]
  if (type !== 'line') return NONE
  return by === 'barred' ? 'barred' : by === 'user' ? 'bare' : 'open'
}

/** As marked: one capacitor, of a Pi two, and the inductance. */
function valueWords({ part }: DecidedContact): string {
  if (!part) return NONE
  const { topology, capacitanceF, inductanceH } = part
  const count = CAPACITOR_COUNT[topology]
  const farads = formatExact(capacitanceF, 'capacitance')
  return [
    hasCapacitor(topology) && capacitanceF > 0 ? (count > 1 ? `${count} × ${farads}` : farads) : '',
    hasInductor(topology) && inductanceH !== undefined ? formatExact(inductanceH, 'inductance') : '',
  ]
    .filter((text) => text !== '')
    .join(', ')
}

/** The dielectric the line says it has; empty where it says nothing. */
const dielectricText = (line: Line | undefined, express: Express | undefined): string =>
  (line && resolve(line, express).fact('dielectric')?.text.trim()) ?? ''

/** "E6 value, 100 V class, class 2"; the reasons stand beside the window. `isChosen`: the dielectric stands with the spread. */
function buildCell(build: Build | undefined, isChosen: boolean): string {
  if (build === undefined) return NONE
  const { series, ratedV } = build
  const advised = classAdvised(build)
  return [
    series === 'none' ? 'made to order' : `${series} value`,
    ratedV === undefined ? 'voltage class open' : `${formatExact(ratedV, 'voltage')} class`,
    isChosen ? '' : advised === 'neither' ? 'dielectric open' : advised,
  ]
    .filter((text) => text !== '')
    .join(', ')
}

function spreadWords({ part }: DecidedContact, line: Line | undefined, express: Express | undefined): string {
  if (!part || !hasCapacitor(part.topology)) return NONE
  const tolerance = line && resolve(line, express).fact('toleranceFrac')?.text.trim()
  const dielectric = dielectricText(line, express)
  const least = formatEstimate(part.capacitanceF * part.leastFrac, 'capacitance')
  const most = formatEstimate(part.capacitanceF * part.mostFrac, 'capacitance')
  return [
    tolerance ? `tolerance ${tolerance}` : '',
    dielectric ? (dielectricById(dielectric)?.name ?? dielectric) : '',
    `${least} to ${most} over all`,
  ]
    .filter((text) => text !== '')
    .join(', ')
}

function stateWords({ decided: { by, type, part }, verdict }: ContactRow): string {
  if (by === 'barred') return NEVER
  if (verdict !== undefined) return VERDICT_WORDS[verdict]
  if (type !== 'line') return NONE
  return part ? 'not judged' : 'not decided'
}
