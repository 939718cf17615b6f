/** How far the connector is decided: what is open, barred, and left bare among filtered contacts. */
import { capital } from '../../verdict.ts'
import type { DecidedContact } from '../decided.ts'
import type { ConnectorFinding } from '../finding.ts'
import { contactsNamed } from './said.ts'

export type Counts = {
  readonly contacts: number
  readonly filtered: number
  readonly bare: readonly string[]
  readonly undecided: readonly string[]
  /** without a part, because none would do */
  readonly refused: readonly string[]
  readonly barred: readonly string[]
  readonly ground: number
  readonly spare: number
  readonly feedThrough: number
}

const isRefused = ({ by, part, window }: DecidedContact): boolean =>
  by === 'nobody' && part === undefined && window?.verdict === 'fails'

export function countsOf(decided: readonly DecidedContact[]): Counts {
  const lines = decided.filter(({ type }) => type === 'line')
  const ids = (is: (contact: DecidedContact) => boolean) => lines.filter(is).map(({ id }) => id)
  const count = (type: DecidedContact['type']) => decided.filter((one) => one.type === type).length
  return {
    contacts: decided.length,
    filtered: lines.filter(({ part }) => part !== undefined).length,
    bare: ids(({ by, part }) => part === undefined && (by === 'user' || by === 'proposed')),
    undecided: ids((contact) => contact.by === 'nobody' && !isRefused(contact)),
    refused: ids(isRefused),
    barred: ids(({ by }) => by === 'barred'),
    ground: count('ground'),
    spare: count('spare'),
    feedThrough: count('feed-through'),
  }
}

export function openFindings(counts: Counts): readonly ConnectorFinding[] {
  const { undecided, refused, barred, bare, filtered, contacts, ground, spare, feedThrough } = counts
  const others = [
    [ground, 'ground'],
    [spare, 'spare'],
    [feedThrough, 'feed-through'],
  ] as const
  const told = others.flatMap(([many, word]) => (many === 0 ? [] : [`${many} ${word}`]))
  return [
    ...(undecided.length === 0
      ? []
      : [
          {
            id: 'undecided',
            verdict: 'unknown' as const,
            sentence: `${undecided.length} of ${contacts} contacts ${undecided.length === 1 ? 'is' : 'are'} undecided (${contactsNamed(undecided)}): no sum over the connector counts them.`,
            contacts: undecided,
          },
        ]),
    ...(bare.length === 0 || filtered === 0
      ? []
      : [
          {
            id: 'bare-among-filtered',
            verdict: 'marginal' as const,
            sentence: `${capital(contactsNamed(bare))} ${bare.length === 1 ? 'is' : 'are'} bare among ${filtered} filtered contacts, a hole in the wall: noise that comes in there couples to the others behind the filters.`,
            contacts: bare,
          },
        ]),
    ...(barred.length === 0
      ? []
      : [
          {
            id: 'barred',
            sentence: `${capital(contactsNamed(barred))} ${barred.length === 1 ? 'is' : 'are'} barred by a safety question or by the kind of line, and ${barred.length === 1 ? 'gets' : 'get'} no part.`,
            contacts: barred,
          },
        ]),
    {
      id: 'contact-counts',
      sentence: `${contacts} contacts: ${filtered} filtered, ${bare.length} bare, ${undecided.length} undecided, ${refused.length === 0 ? '' : `${refused.length} for which no part would do, `}${barred.length} barred${told.length === 0 ? '' : `, ${told.join(', ')}`}.`,
      contacts: [],
    },
  ]
}
