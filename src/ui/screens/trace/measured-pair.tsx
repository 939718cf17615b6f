import { useMemo, useState } from 'preact/hooks'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { oneLeg, type PairPorts, pairModes } from '../../../calc/touchstone/mixed-mode.ts'
import type { Network } from '../../../calc/touchstone/types.ts'
import type { Desk } from '../../../state/desk.ts'
import { Parts } from './fitted-parts.tsx'
import { Losses } from './losses.tsx'

const ORDERS: readonly { readonly id: string; readonly label: string; readonly ports: PairPorts }[] = [
  { id: '12-34', label: '1 and 2 in, 3 and 4 out', ports: { near: [1, 2], far: [3, 4] } },
  { id: '13-24', label: '1 and 3 in, 2 and 4 out', ports: { near: [1, 3], far: [2, 4] } },
]

type PairGiven = { readonly desk: Desk; readonly network: Network; readonly name: string }

/** A pair by its four ports, mode by mode, or why not. */
export function Pair({ network, name, desk }: PairGiven) {
  const [order, setOrder] = useState<string>()
  const modes = useMemo(() => pairModes(network, ORDERS.find(({ id }) => id === order)?.ports), [network, order])
  // the same objects as long as the file is: what was fitted belongs to one of them
  const legs = useMemo(
    () =>
      modes.ok
        ? { common: oneLeg(modes.common, 'common'), differential: oneLeg(modes.differential, 'differential') }
        : undefined,
    [modes],
  )
  return (
    <>
      {!modes.ok && <p class="notice">{modes.message}</p>}
      {((!modes.ok && modes.asks === 'pairs') || order !== undefined) && (
        <div class="actions">
          {ORDERS.map(({ id, label }) => (
            <button key={id} type="button" class="button" aria-pressed={id === order} onClick={() => setOrder(id)}>
              {label}
            </button>
          ))}
        </div>
      )}
      {modes.ok && legs && (
        <>
          <h4>Common mode</h4>
          <Losses network={modes.common} name={`${name}, common mode`} desk={desk} leg={legs.common} />
          <Parts network={legs.common} mode="common" desk={desk} />
          <h4>Differential mode</h4>
          <Losses
            network={modes.differential}
            name={`${name}, differential mode`}
            desk={desk}
            leg={legs.differential}
          />
          <Parts network={legs.differential} mode="differential" desk={desk} />
          {modes.conversionDb !== undefined && (
            <p class="muted small">
              From one mode to the other passes {formatQuantity(modes.conversionDb, 'decibel', 3)} at most; it is not in
              the curves.
            </p>
          )}
        </>
      )}
    </>
  )
}
