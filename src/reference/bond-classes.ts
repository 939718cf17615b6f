/** What a bond is for, and the ohms that belong to it. Direct current; at radio frequencies its shape decides. */
import { memory, PRACTICE } from './line-kinds/cite.ts'
import type { Citation } from './line-kinds/types.ts'

export type BondClass = {
  readonly id: string
  /** letter of the old military specification, where it has one */
  readonly letter?: string
  readonly purpose: string
  /** most ohms; absent: sized by drop or by geometry */
  readonly mostOhm?: number
  readonly note: string
  readonly source: Citation
}

export const BOND_CLASSES: readonly BondClass[] = [
  {
    id: 'antenna',
    letter: 'A',
    purpose: 'Antenna to the surface it works against',
    note: 'A low-impedance face all round, not a strap.',
    source: memory('mil-b-5087', 'class A'),
  },
  {
    id: 'current-return',
    letter: 'C',
    purpose: 'Return of supply current through structure',
    note: 'Sized by the drop its current may make, not by a fixed figure.',
    source: memory('mil-b-5087', 'class C'),
  },
  {
    id: 'shock',
    letter: 'H',
    purpose: 'No shock from a faulty case',
    mostOhm: 0.1,
    note: 'It must carry the fault current until the breaker opens.',
    source: memory('mil-b-5087', 'class H'),
  },
  {
    id: 'lightning',
    letter: 'L',
    purpose: 'Lightning current across a joint',
    note: 'By the volts its current may make, and without sparks.',
    source: memory('mil-b-5087', 'class L'),
  },
  {
    id: 'radio',
    letter: 'R',
    purpose: 'Box, filter or shield to structure at radio frequencies',
    mostOhm: 2.5e-3,
    note: 'Proves a clean joint. The inductance of the way decides above some hundred kilohertz.',
    source: memory('mil-b-5087', 'class R'),
  },
  {
    id: 'static',
    letter: 'S',
    purpose: 'Static charge runs off panels and pipes',
    mostOhm: 1,
    note: 'Composites and paint need their own figures by the manual.',
    source: memory('mil-b-5087', 'class S'),
  },
  {
    id: 'jumper',
    purpose: 'Bonding jumper on a light aircraft',
    mostOhm: 3e-3,
    note: 'As short as it can be, a strap rather than a wire.',
    source: memory('ac-43-13', 'bonding jumpers'),
  },
  {
    id: 'shell',
    purpose: 'Connector shell to its box',
    mostOhm: 2.5e-3,
    note: 'By the connector’s own specification where that gives a figure.',
    source: PRACTICE,
  },
]

/** Most ohms of a class; undefined where drop or geometry decides. An id that is none of them is a fault of ours. */
export function mostBondOhm(id: string): number | undefined {
  const one = BOND_CLASSES.find((each) => each.id === id)
  if (one === undefined) throw new RangeError(`no bond class "${id}"`)
  return one.mostOhm
}
