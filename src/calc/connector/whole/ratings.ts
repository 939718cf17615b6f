/** Volts of the contacts beside each other: what a common ceramic must stand, and thin air. */
import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import { type Express, numbersIn } from '../../line/fields.ts'
import { crestV, PASCHEN_MINIMUM_V } from '../../power/supply.ts'
import type { Line, Source } from '../../types.ts'
import type { DecidedContact } from '../decided.ts'
import type { ConnectorFinding } from '../finding.ts'
import type { Connector } from '../types.ts'
import { basisOf, contactsNamed, exact, PRACTICE, show, step } from './said.ts'

/** A highest voltage this many times the lowest is a mixture a maker must know of. */
const MIXED = 2
/** From this share of it on a peak is close to the least at which air breaks down. */
const NEAR = 0.9

const PASCHEN: Source = { id: 'S43', standing: 'read' }

export type Zone = 'pressurised' | 'unpressurised'

/** A zone as it is typed: "unpressurised", "no", "bay"; undefined where it says neither. */
export function zoneOf(text: string | undefined): Zone | undefined {
  const word = text?.trim().toLowerCase().replace('pressurized', 'pressurised') ?? ''
  if (/^(un|non|not )-?\s?pressurised|^no$|^false$/u.test(word)) return 'unpressurised'
  return /^pressurised|^yes$|^true$/u.test(word) ? 'pressurised' : undefined
}

type Peak = { readonly id: string; readonly steadyV: number; readonly transientV: number }

/** Highest volts the line itself puts on each filtered contact: those of its kind, and above them those that were entered. */
export function peaksOf(decided: readonly DecidedContact[], express?: Express): readonly Peak[] {
  return decided.flatMap(({ id, kind, line, part }) => {
    if (part === undefined) return []
    const row = kind === undefined ? undefined : lineKindById(kind)
    const ofKind = row?.ownPeaks?.leg ?? (row?.steadyPeakV === undefined ? [] : [row.steadyPeakV])
    const typed = line === undefined ? NONE_TYPED : typedPeaks(line, row, express)
    if (typed === 'unread') return []
    const steady = [...ofKind, ...typed.steadyV].map(Math.abs)
    const passing = [
      ...typed.passingV.map(Math.abs),
      ...(row?.transientPeakV === undefined ? [] : [row.transientPeakV]),
    ]
    // a highest peak alone may be there for ever
    const steadyV = Math.max(...(steady.length > 0 ? steady : typed.passingV.map(Math.abs)))
    return Number.isFinite(steadyV) ? [{ id, steadyV, transientV: Math.max(steadyV, ...passing) }] : []
  })
}

type TypedPeaks = { readonly steadyV: readonly number[]; readonly passingV: readonly number[] }
const NONE_TYPED: TypedPeaks = { steadyV: [], passingV: [] }

/** Volts that were entered on a line: working volts at their crest, and the highest and lowest peak. */
function typedPeaks({ facts }: Line, kind: LineKind | undefined, express: Express | undefined): TypedPeaks | 'unread' {
  const texts = [facts.workingRmsV, facts.busMaxV, facts.busMinV].map((fact) => fact?.text.trim() ?? '')
  const [working, ...peaks] = texts.map((text) => numbersIn(text, 'voltage', express))
  if (texts.some((text, i) => text !== '' && [working, ...peaks][i]?.length === 0)) return 'unread'
  const hzText = facts.supplyHz?.text.trim() ?? ''
  const [hz] = numbersIn(hzText, 'frequency', express)
  // DC only where somebody says so
  const supplyHz = hz ?? (hzText === '' && kind?.supply?.worstHz === 0 ? 0 : 1)
  return {
    steadyV: (working ?? []).map((workingRmsV) => crestV({ workingRmsV, supplyHz })),
    passingV: peaks.flat(),
  }
}

export function ratingFindings(
  connector: Connector,
  decided: readonly DecidedContact[],
  express?: Express,
): readonly ConnectorFinding[] {
  const peaks = peaksOf(decided, express)
  return [...mixed(peaks), ...thinAir(connector, peaks), ...unrated(decided, peaks)]
}

function mixed(peaks: readonly Peak[]): readonly ConnectorFinding[] {
  if (peaks.length < 2) return []
  const high = peaks.reduce((most, one) => (one.steadyV > most.steadyV ? one : most))
  const low = peaks.reduce((least, one) => (one.steadyV < least.steadyV ? one : least))
  if (high.steadyV < MIXED * low.steadyV) return []
  const atTop = peaks.filter(({ steadyV }) => steadyV === high.steadyV).map(({ id }) => id)
  return [
    {
      id: 'mixed-ratings',
      sentence: `Volts from ${exact(low.steadyV, 'voltage')} (contact ${low.id}) to ${exact(high.steadyV, 'voltage')} stand beside each other: a plane they share has the thickness of the highest, set by ${contactsNamed(atTop)}.`,
      contacts: peaks.map(({ id }) => id),
      basis: basisOf(
        [
          step('highest of its own peaks', contactsNamed(atTop), high.steadyV, 'voltage'),
          step('lowest of them', `contact ${low.id}`, low.steadyV, 'voltage'),
        ],
        ['one ceramic a plane has one thickness for all its contacts'],
        [PRACTICE],
      ),
    },
  ]
}

function thinAir(connector: Connector, peaks: readonly Peak[]): readonly ConnectorFinding[] {
  const zones = new Map(connector.contacts.map(({ id, texts }) => [id, zoneOf(texts.zone)]))
  const near = peaks.filter(({ transientV }) => transientV >= NEAR * PASCHEN_MINIMUM_V)
  const basis = basisOf(
    near
      .slice(0, 12)
      .map(({ id, transientV }) => step('highest of its own peaks', `contact ${id}`, transientV, 'voltage')),
    [`air breaks down from ${exact(PASCHEN_MINIMUM_V, 'voltage')} at the worst product of gap and pressure`],
    [PASCHEN],
  )
  const found = (zone: Zone | undefined) => near.filter(({ id }) => zones.get(id) === zone).map(({ id }) => id)
  const [bare, unsaid] = [found('unpressurised'), found(undefined)]
  const most = near.reduce((all, { transientV }) => Math.max(all, transientV), 0)
  return [
    ...(bare.length === 0
      ? []
      : [
          {
            id: 'unpressurised',
            verdict: 'marginal' as const,
            sentence: `In an unpressurised zone, ${contactsNamed(bare)} reach up to ${show(most, 'voltage', 'least')}, close to or above the ${exact(PASCHEN_MINIMUM_V, 'voltage')} at which thin air breaks down: solid filling and more spacing.`,
            contacts: bare,
            basis,
          },
        ]),
    ...(unsaid.length === 0
      ? []
      : [
          {
            id: 'zone-missing',
            verdict: 'unknown' as const,
            sentence: `Whether the zone is pressurised is not said for ${contactsNamed(unsaid)}, which reach ${show(most, 'voltage', 'least')}: thin air breaks down from ${exact(PASCHEN_MINIMUM_V, 'voltage')}.`,
            contacts: unsaid,
            basis,
          },
        ]),
  ]
}

function unrated(decided: readonly DecidedContact[], peaks: readonly Peak[]): readonly ConnectorFinding[] {
  const known = new Set(peaks.map(({ id }) => id))
  const missing = decided.filter(({ id, part }) => part !== undefined && !known.has(id)).map(({ id }) => id)
  if (missing.length === 0) return []
  return [
    {
      id: 'volts-missing',
      verdict: 'unknown',
      sentence: `What volts ${contactsNamed(missing)} ${missing.length === 1 ? 'carries' : 'carry'} is not known, so that the rating of a common plane is not: choose the kind of line, or enter its highest peak.`,
      contacts: missing,
    },
  ]
}
