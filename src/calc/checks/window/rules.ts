/** Rules and limits of the user's own as bounds: the Navy rule, the current into the chassis, what fits the contact. */
import type { LineKind } from '../../../reference/line-kinds.ts'
import { chassisBound } from '../../power/judge.ts'
import { navyBound, navyLimit } from '../../power/navy-rule.ts'
import { chassisFarads } from '../../power/supply.ts'
import type { Bound } from '../../types.ts'
import type { WindowGiven } from './inputs.ts'
import type { WindowSetup } from './setup.ts'

export function navyOf(given: WindowGiven, kind: LineKind | undefined): WindowSetup['navy'] {
  if (!given.navyRule || !kind) return undefined
  if (!kind.supply) return 'not-power'
  const supply = { supplyHz: kind.supply.nominalHz, loadW: given.loadW }
  return { limit: navyLimit(supply), ...supply }
}

export function navyBounds(navy: WindowSetup['navy']): readonly Bound[] {
  return navy === undefined || navy === 'not-power' || navy.limit.limitF === undefined
    ? []
    : [navyBound(navy.limit.limitF)]
}

export function chassisBounds(given: WindowGiven, acSupply: WindowSetup['acSupply']): readonly Bound[] {
  return acSupply && given.chassisLimitA !== undefined
    ? [chassisBound(chassisFarads(acSupply, given.chassisLimitA))]
    : []
}

/**
 * What fits the contact. On a DC power line, which has no signal to ask and no steady current into the chassis, it stands
 * as the ceiling.
 */
export function buildableBounds(given: WindowGiven, kind: LineKind | undefined): readonly Bound[] {
  if (given.maxBuildableF === undefined) return []
  return [
    {
      id: 'buildable',
      by: { is: 'user', fact: 'maxBuildableF' },
      side: 'most',
      nature: 'fits',
      farads: given.maxBuildableF,
      per: 'capacitor',
      topology: 'any',
      ...(kind?.family === 'power-dc' ? { alone: true } : {}),
    },
  ]
}
