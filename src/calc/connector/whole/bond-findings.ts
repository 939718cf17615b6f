/** What the shared bond takes from the contacts, in sentences. */
import { PROVED_DB } from '../../bounds/box.ts'
import { ROUNDING_DB } from '../../checks/window/row-need.ts'
import { listed } from '../../explain/sentence.ts'
import type { Verdict } from '../../types.ts'
import { capital, worse } from '../../verdict.ts'
import type { ConnectorFinding } from '../finding.ts'
import { USUAL_BOND } from '../plate/bond.ts'
import { type Bond, type BondRow, isMet } from './bond.ts'
import { basisOf, contactsNamed, DERIVED, exact, PRACTICE, show, step } from './said.ts'

/** Of one contact at one frequency: certain, found short, or not known while it is neither. */
export function bondVerdict(row: BondRow): Verdict {
  if (row.isBare) return 'ok'
  if (isMet(row)) return 'ok'
  return (row.foundDb ?? row.markedDb) < row.neededDb - PROVED_DB ? 'fails' : 'unknown'
}

function receivedVerdict({ isBare, isDifferential, neededDb, receivedDb, receivedAsMarkedDb }: BondRow): Verdict {
  if (isBare || isDifferential || receivedDb <= -neededDb + ROUNDING_DB) return 'ok'
  return receivedAsMarkedDb > -neededDb + ROUNDING_DB ? 'fails' : 'unknown'
}

const isTyped = ({ typed }: Bond): boolean => typed.ohm && typed.henries

/** No bond is without inductance: one that was entered so says nothing of the one that is there. */
const isNone = ({ bondH }: Bond): boolean => bondH === 0

/** Where nobody entered the bond, a no that a better bond would cure is not known, nor a yes that a strap would undo. */
const unlessTyped = (verdict: Verdict, bond: Bond): Verdict =>
  !isTyped(bond) || (verdict === 'ok' && isNone(bond)) ? 'unknown' : verdict

/** What is missing where it would be a yes with the bond that was taken. */
const untypedWords = (verdict: Verdict, bond: Bond): string =>
  verdict !== 'ok'
    ? ''
    : !isTyped(bond)
      ? ' With this bond it would do; a strap has a hundred times the inductance: enter the resistance and inductance of the bond.'
      : isNone(bond)
        ? ' No bond is without inductance: enter what it has.'
        : ''

/** Worst contact alone and together, who is short, what a quiet one receives, which bond would do, what is not counted. */
export function bondFindings(bond: Bond): readonly ConnectorFinding[] {
  return [
    ...bond.refused.map((sentence, i) => ({
      id: `bond-unread-${i + 1}`,
      verdict: 'unknown' as const,
      sentence,
      contacts: [],
    })),
    ...uncounted(bond),
    ...unknownBeads(bond),
    ...together(bond),
    ...received(bond),
  ]
}

const bondWords = (bond: Bond): string => {
  const { bondOhm, bondH } = bond
  return `${exact(bondOhm, 'resistance')} and ${exact(bondH, 'inductance')}${isTyped(bond) ? '' : ' (taken: not all of it is entered)'}`
}

function uncounted({ uncounted: ids }: Bond): readonly ConnectorFinding[] {
  if (ids.length === 0) return []
  return [
    {
      id: 'bond-uncounted',
      verdict: 'unknown',
      sentence: `${capital(contactsNamed(ids))} ${ids.length === 1 ? 'puts' : 'put'} noise on the shared bond that cannot be counted: enter frequency, attenuation needed, source and load of the noise.`,
      contacts: ids,
    },
  ]
}

function unknownBeads({ unknownBeads: all }: Bond): readonly ConnectorFinding[] {
  if (all.length === 0) return []
  const ids = [...new Set(all.flatMap((one) => one.ids))]
  const at = listed(all.map(({ hz }) => exact(hz, 'frequency')))
  return [
    {
      id: 'bond-bead-unknown',
      verdict: 'unknown',
      sentence: `The bead of ${contactsNamed(ids)} has no impedance at ${at}, so that nothing is known of the shared bond there: enter points of its curve on both sides of it.`,
      contacts: ids,
    },
  ]
}

function together(bond: Bond): readonly ConnectorFinding[] {
  const rows = bond.rows.filter(({ isBare, isDifferential }) => !isBare && !isDifferential)
  if (rows.length === 0) return []
  const worst = rows.reduce((least, row) => (marginOf(row) < marginOf(least) ? row : least))
  const verdict = rows.reduce<Verdict>((all, row) => worse(all, bondVerdict(row)), 'ok')
  const said = unlessTyped(verdict, bond)
  const short = idsOf(rows, (row) => bondVerdict(row) === 'fails')
  const open = idsOf(rows, (row) => bondVerdict(row) === 'unknown').filter((id) => !short.includes(id))
  const hertz = show(worst.hz, 'frequency')
  const alone = show(worst.aloneDb, 'decibel', 'most')
  const all = show(worst.certainDb, 'decibel', 'most')
  // the drop over the bond may oppose what a part lets through: then nothing is taken off
  const left =
    worst.certainDb <= worst.aloneDb ? `keeps ${all} of the ${alone} it has alone` : `has ${all}, and ${alone} alone,`
  const need = exact(worst.neededDb, 'decibel')
  const others = short.some((id) => id !== worst.id)
    ? ` ${capital(contactsNamed(short))} ${short.length === 1 ? 'falls' : 'fall'} short.`
    : ''
  const undecided = open.length === 0 ? '' : ` ${undecidedWords(open)}`
  const cured = verdict === 'ok' ? '' : cure(bond)
  const would = cured === '' ? '' : ` ${cured}`
  return [
    {
      id: 'bond-together',
      verdict: said,
      sentence: `Through the shared bond of ${bondWords(bond)}, contact ${worst.id} ${left} at ${hertz}, with every other contact driven alike; it needs ${need}.${others}${undecided}${would}${untypedWords(verdict, bond)}`,
      contacts: verdict === 'ok' ? [worst.id] : [...short, ...open],
      basis: basisOf(
        [
          step(
            'IL alone',
            `contact ${worst.id}, its own current in the bond, least over its tolerances`,
            worst.aloneDb,
            'decibel',
          ),
          step(
            'Vp = Zb·Σα/(1 + Zb·Σβ); IL together',
            'every part as marked, all contacts driven',
            worst.markedDb,
            'decibel',
          ),
          ...(worst.foundDb === undefined
            ? []
            : [step('IL together, found', 'the least of the places tried', worst.foundDb, 'decibel')]),
          step('IL together, certain', 'no point of any tolerance lies below', worst.certainDb, 'decibel'),
        ],
        [
          'every contact is driven by the same volts in common mode at the same moment',
          'ground and spare contacts and the shell carry no part of the current: what they carry only helps',
          ...takenWords(bond),
        ],
        [DERIVED],
      ),
    },
  ]
}

const idsOf = (rows: readonly BondRow[], is: (row: BondRow) => boolean): readonly string[] => [
  ...new Set(rows.filter(is).map(({ id }) => id)),
]

/** What is neither proved nor refuted, and what would decide it. */
const undecidedWords = (ids: readonly string[]): string =>
  `On ${contactsNamed(ids)} it is neither proved nor refuted over all tolerances: parts of a narrower tolerance, a better bond or a lower need decide it.`

const takenWords = (bond: Bond): readonly string[] =>
  isTyped(bond)
    ? []
    : [
        `bond not entered: ${exact(USUAL_BOND.ohm, 'resistance')} and ${exact(USUAL_BOND.henries, 'inductance')} are taken, a metal face all round; a strap has a hundred times the inductance`,
      ]

const marginOf = (row: BondRow): number => row.certainDb - row.neededDb

function cure({ mostBondH, bondOhm, shortAnyhow: short }: Bond): string {
  const anyhow =
    short.length === 0
      ? ''
      : `${capital(contactsNamed(short))} ${short.length === 1 ? 'is' : 'are'} short with no bond at all: the part is too small over its tolerances. `
  if (mostBondH === undefined) return anyhow.trimEnd()
  if (mostBondH === 0)
    return `${anyhow}No inductance is small enough beside ${exact(bondOhm, 'resistance')}: a lower resistance, or more attenuation.`
  const others = short.length === 0 ? '' : ' for the others'
  return Number.isFinite(mostBondH)
    ? `${anyhow}A bond of at most ${show(mostBondH, 'inductance', 'most')} would do${others}.`
    : `${anyhow}The bond takes nothing from the others.`
}

function received(bond: Bond): readonly ConnectorFinding[] {
  const rows = bond.rows.filter(({ isBare, isDifferential }) => !isBare && !isDifferential)
  const bare = [...new Set(bond.rows.filter(({ isBare }) => isBare).map(({ id }) => id))]
  const differential = [...new Set(bond.rows.filter((row) => row.isDifferential).map(({ id }) => id))]
  if (rows.length < 2) return []
  const worst = rows.reduce((most, row) =>
    row.receivedDb + row.neededDb > most.receivedDb + most.neededDb ? row : most,
  )
  const verdict = rows.reduce<Verdict>((all, row) => worse(all, receivedVerdict(row)), 'ok')
  const open = idsOf(rows, (row) => receivedVerdict(row) === 'unknown')
  const undecided = open.length === 0 ? '' : ` ${undecidedWords(open)}`
  const told = [
    ...(bare.length === 0
      ? []
      : [`${contactsNamed(bare)}, bare, take nothing from the plate and let their own noise in`]),
    ...(differential.length === 0
      ? []
      : [`on ${contactsNamed(differential)} it is common to both legs and none of the signal`]),
  ]
  return [
    {
      id: 'bond-received',
      verdict: unlessTyped(verdict, bond),
      sentence: `Quiet itself, contact ${worst.id} receives through the plate at most ${show(worst.receivedDb, 'decibel', 'least')} of what all others are driven with at ${show(worst.hz, 'frequency')}; ${exact(-worst.neededDb, 'decibel')} is what it stands.${told.length === 0 ? '' : ` ${capital(told.join('; '))}.`}${undecided}${untypedWords(verdict, bond)}`,
      contacts: [worst.id],
      basis: basisOf(
        [
          step(
            'V = k·Zb·Σα/(1 + Zb·Σβ), against its bare level',
            'every part as marked',
            worst.receivedAsMarkedDb,
            'decibel',
          ),
          step('the same, at most', 'over all tolerances', worst.receivedDb, 'decibel'),
        ],
        ['the others are driven alike in common mode; its own source is at rest', ...takenWords(bond)],
        [DERIVED, PRACTICE],
      ),
    },
  ]
}
