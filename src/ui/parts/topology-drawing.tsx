import type { Topology } from '../../calc/types.ts'

/** A capacitor from the line down to the chassis. */
const shunt = (x: number) => `M${x} 6V11M${x - 4} 11h8M${x - 4} 14h8M${x} 14V20M${x - 3} 20h6`
/** An inductor in the line, 12 wide. */
const coil = (x: number) => `M${x} 6a3 3 0 0 1 6 0a3 3 0 0 1 6 0`
/** A piece of the line itself. */
const wire = (from: number, to: number) => `M${from} 6H${to}`

const DRAWINGS: Readonly<Record<Topology, readonly string[]>> = {
  C: [wire(2, 38), shunt(20)],
  L: [wire(2, 14), coil(14), wire(26, 38)],
  LC: [wire(2, 9), coil(9), wire(21, 38), shunt(29)],
  CL: [wire(2, 19), shunt(11), coil(19), wire(31, 38)],
  PI: [wire(2, 14), shunt(8), coil(14), wire(26, 38), shunt(32)],
  T: [wire(2, 5), coil(5), wire(17, 23), shunt(20), coil(23), wire(35, 38)],
}

const isTopology = (value: string): value is Topology => value in DRAWINGS

/** A topology as a circuit diagram, source on the left; nothing for any other choice. */
export function TopologyDrawing({ value }: { readonly value: string }) {
  if (!isTopology(value)) return null
  return (
    <svg class="topology" viewBox="0 0 40 22" aria-hidden="true">
      <path d={DRAWINGS[value].join('')} />
    </svg>
  )
}
