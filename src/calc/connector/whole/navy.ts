/** The Navy line-to-ground rule for every supply contact of the box, with the load of the box. */
import { NAVY_SOURCE, navyWhy } from '../../explain/navy-rule.ts'
import type { Express } from '../../line/fields.ts'
import { navyLimit } from '../../power/navy-rule.ts'
import { parseFlag } from '../../quantity/parse.ts'
import type { ConnectorFinding } from '../finding.ts'
import type { Connector } from '../types.ts'
import { typedNumber } from './given.ts'
import { basisOf, contactsNamed, exact, step } from './said.ts'
import { bySupply, isAllCounted, type PowerContacts, type Supplied } from './supplied.ts'

const HAIR = 1 + 1e-9

/** Nothing where the rule was not chosen. */
export function navyFindings(
  connector: Connector,
  power: PowerContacts,
  express?: Express,
): readonly ConnectorFinding[] {
  const flag = parseFlag(connector.texts.navyRule ?? '')
  if (flag.is === 'refused')
    return [{ id: 'navy-unread', verdict: 'unknown', sentence: `Navy rule: ${flag.message}`, contacts: [] }]
  if (flag.is === 'empty' || !flag.on) return []
  const load = typedNumber(connector.texts.loadW, { quantity: 'power', what: 'load', example: '600 W' }, express)
  if (load.refused !== undefined)
    return [{ id: 'navy-load-unread', verdict: 'unknown', sentence: load.refused, contacts: [] }]
  const groups = bySupply(power.supplied.filter(({ mostF }) => mostF > 0))
  const isWhole = isAllCounted(power)
  if (groups.length === 0 && isWhole)
    return [
      {
        id: 'navy-none',
        sentence: 'The Navy line-to-ground rule binds power contacts with a capacitor; this connector has none.',
        contacts: [],
      },
    ]
  return groups.flatMap((supply, i) => {
    const id = groups.length === 1 ? 'navy-rule' : `navy-rule-${i + 1}`
    return supplyFinding(id, supply, { loadW: load.si, isWhole })
  })
}

/** One conductor on several contacts: the same Line, or the same phase of the same supply. */
type Conductor = { readonly ids: readonly string[]; readonly mostF: number; readonly isNamed: boolean }

function conductorsOf(supply: readonly Supplied[]): readonly Conductor[] {
  const found = new Map<string, Conductor>()
  for (const one of supply) {
    // DC has no phase, whatever was written
    const isNamed = one.supplyHz > 0 && one.phase !== undefined
    const key = isNamed ? `phase ${one.phase}` : `line ${one.lineId}`
    const before = found.get(key)
    found.set(key, { ids: [...(before?.ids ?? []), one.id], mostF: (before?.mostF ?? 0) + one.mostF, isNamed })
  }
  return [...found.values()]
}

/** What may be one conductor: all whose phase is not said, and with them the one phase that makes it most. */
function perhapsOne(conductors: readonly Conductor[]): readonly Conductor[] {
  const unsaid = conductors.filter(({ isNamed }) => !isNamed)
  const [most, ...others] = conductors.filter(({ isNamed }) => isNamed)
  if (unsaid.length === 0 || most === undefined) return unsaid
  return [...unsaid, others.reduce((all, one) => (one.mostF > all.mostF ? one : all), most)]
}

function supplyFinding(
  id: string,
  supply: readonly Supplied[],
  { loadW, isWhole }: { readonly loadW: number | undefined; readonly isWhole: boolean },
): readonly ConnectorFinding[] {
  const [first] = supply
  if (first === undefined) return []
  const { supplyHz } = first
  const limit = navyLimit({ supplyHz, loadW })
  const contacts = supply.map((one) => one.id)
  const rule = navyWhy(limit, { supplyHz, loadW })
  if (limit.limitF === undefined) return [{ id, verdict: 'unknown', sentence: `${first.name}: ${rule}`, contacts }]
  const { limitF } = limit
  const conductors = conductorsOf(supply)
  const worst = conductors.reduce((most, one) => (one.mostF > most.mostF ? one : most))
  const allF = conductors.reduce((sum, one) => sum + one.mostF, 0)
  const basis = basisOf(
    [
      step('C = Σ C·k_high of one line', `${contactsNamed(worst.ids)}`, worst.mostF, 'capacitance'),
      step('limit', rule, limitF, 'capacitance'),
    ],
    ['contacts of one Line, or of one phase of one supply, are one line', 'the load is that of the whole box'],
    [NAVY_SOURCE],
  )
  if (worst.mostF > limitF * HAIR)
    return [
      {
        id,
        verdict: 'fails',
        sentence: `${exact(worst.mostF, 'capacitance')} from ${contactsNamed(worst.ids)} to chassis is over the Navy figure of ${exact(limitF, 'capacitance')}. ${rule}.`,
        contacts: worst.ids,
        basis,
      },
    ]
  const alike = perhapsOne(conductors)
  const alikeF = alike.reduce((sum, one) => sum + one.mostF, 0)
  if (alike.length > 1 && alikeF > limitF * HAIR)
    return [
      {
        id,
        verdict: 'marginal',
        sentence: `Each line stays inside the Navy figure of ${exact(limitF, 'capacitance')} (at most ${exact(worst.mostF, 'capacitance')}), but ${alike.flatMap(({ ids }) => ids).length} contacts of ${first.name} have ${exact(alikeF, 'capacitance')} together: if they are one feed, it is over. ${rule}.`,
        contacts: alike.flatMap(({ ids }) => ids),
        basis,
      },
    ]
  return [
    {
      id,
      verdict: isWhole ? 'ok' : 'unknown',
      sentence: `Each line of ${first.name} has at most ${exact(worst.mostF, 'capacitance')} to chassis (${exact(allF, 'capacitance')} in all${isWhole ? '' : ', contacts left out not counted'}), inside ${exact(limitF, 'capacitance')}. ${rule}.`,
      contacts,
      basis,
    },
  ]
}
