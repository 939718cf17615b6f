/** Power and switched drives beside fast data, by where the contacts stand on the face. */
import { type LineKind, lineKindById } from '../../../reference/line-kinds.ts'
import type { DecidedContact } from '../decided.ts'
import { faceOf } from '../face.ts'
import type { ConnectorFinding } from '../finding.ts'
import type { Connector } from '../types.ts'
import { basisOf, PRACTICE, step } from './said.ts'

/** Neighbours are one distance apart; rows of a staggered pattern 1.14. */
const NEXT_TO = 1.3
/** A signal is fast from here on: its edges couple through a picofarad. */
const FAST_HZ = 1e6

const LOUD: ReadonlySet<LineKind['family']> = new Set(['power-dc', 'power-ac', 'drive'])
const DATA: ReadonlySet<LineKind['family']> = new Set(['data-pair', 'data-single', 'video'])

/** Fast by its highest useful frequency, or by a rate that is at least that. */
export const isFast = ({ family, usefulHz, bitRateHz, loading }: LineKind): boolean =>
  DATA.has(family) && ((usefulHz?.hz ?? 0) >= FAST_HZ || (bitRateHz ?? 0) >= FAST_HZ || loading.rule === 'return-loss')

export type Neighbours = { readonly loud: string; readonly fast: string; readonly distance: number }

/** Every pair of neighbours of which one is loud and the other fast. */
export function loudBesideFast(connector: Connector, decided: readonly DecidedContact[]): readonly Neighbours[] {
  const { places } = faceOf(
    connector.contacts.map(({ id }) => id),
    connector.shape,
  )
  const kindOf = new Map(
    decided.flatMap(({ id, kind }) => (kind === undefined ? [] : [[id, lineKindById(kind)] as const])),
  )
  const of = (is: (kind: LineKind) => boolean) =>
    places.filter(({ id }) => {
      const kind = kindOf.get(id)
      return kind !== undefined && is(kind)
    })
  const fast = of(isFast)
  return of(({ family }) => LOUD.has(family)).flatMap((loud) =>
    fast.flatMap((other) => {
      const distance = Math.hypot(loud.x - other.x, loud.y - other.y)
      return distance <= NEXT_TO ? [{ loud: loud.id, fast: other.id, distance }] : []
    }),
  )
}

export function neighbourFindings(
  connector: Connector,
  decided: readonly DecidedContact[],
): readonly ConnectorFinding[] {
  const found = loudBesideFast(connector, decided)
  if (found.length === 0) return []
  const shown = found.slice(0, 4).map(({ loud, fast }) => `${loud} beside ${fast}`)
  const more = found.length > shown.length ? ` and ${found.length - shown.length} more` : ''
  return [
    {
      id: 'power-beside-data',
      verdict: 'marginal',
      sentence: `Power or a switched drive stands next to fast data: ${shown.join(', ')}${more}. Put ground or spare contacts between them, or give the capacitance between the two to have it worked out.`,
      contacts: [...new Set(found.flatMap(({ loud, fast }) => [loud, fast]))],
      basis: basisOf(
        found
          .slice(0, 12)
          .map(({ loud, fast, distance }) =>
            step('distance on the face', `${loud} to ${fast}, in steps of the pattern`, distance, 'number'),
          ),
        [
          'fast: data or video with useful frequencies from 1 MHz; next to: within 1.3 steps of the pattern',
          connector.shape === 'rectangular'
            ? 'the pattern of rectangular shells'
            : 'plain rings stand for the insert, whose true pattern may differ',
        ],
        [PRACTICE],
      ),
    },
  ]
}
