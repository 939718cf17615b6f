/** What the resonance check asks; each of its three parts may stay empty. */
import type { Given, Input } from '../../types.ts'
import { FARADS } from '../noise-inputs.ts'

const CABLE = 'A cable'
const PART = 'A capacitor with its lead or harness'
const BOX = 'A box on its strap'

const HENRIES = { is: 'number', quantity: 'inductance', min: 1e-12, max: 100 } as const
const METRES = { is: 'number', quantity: 'length', min: 1e-3, max: 1e4 } as const

export const resonanceInputs = [
  {
    key: 'seenHz',
    fact: 'seenHz',
    label: 'Seen at',
    help: 'Where something peaks. With it, what would resonate there is worked out too.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e11 },
    whenEmpty: { do: 'omit' },
  },
  {
    key: 'cableM',
    fact: 'cableM',
    label: 'Length of the cable',
    help: 'From connector to connector, along the way it runs.',
    type: METRES,
    whenEmpty: { do: 'omit' },
    group: CABLE,
  },
  {
    key: 'ends',
    fact: 'cableEnds',
    label: 'Its ends',
    help: 'The shield, or the wires together, against structure.',
    type: {
      is: 'choice',
      options: [
        { value: 'both-grounded', label: 'both grounded' },
        { value: 'one-grounded', label: 'one grounded' },
        { value: 'open', label: 'both open' },
      ],
    },
    defaultText: 'both-grounded',
    whenEmpty: { do: 'assume', text: 'both-grounded', why: 'a shield closed at both connectors', favourable: false },
    group: CABLE,
  },
  {
    key: 'velocityFrac',
    fact: 'cableVelocityFrac',
    label: 'Speed on it',
    help: 'Against structure 0.9 to 1; inside a cable 0.6 to 0.8.',
    type: { is: 'number', quantity: 'fraction', min: 0.1, max: 1 },
    whenEmpty: { do: 'assume', text: '1', why: 'the outside of a cable in air', favourable: false },
    group: CABLE,
  },
  {
    key: 'spacingM',
    fact: 'cableSpacingM',
    label: 'Spacing of grounds on its way',
    help: 'Where its shield is tied to structure between the ends: each stretch resonates by itself.',
    type: METRES,
    whenEmpty: { do: 'omit' },
    group: CABLE,
  },
  {
    key: 'capacitanceF',
    fact: 'resonantF',
    label: 'Capacitor',
    help: 'As it is in service.',
    type: { ...FARADS, min: 1e-15 },
    whenEmpty: { do: 'omit' },
    group: PART,
  },
  {
    key: 'inductanceH',
    fact: 'resonantH',
    label: 'Lead or harness',
    help: 'About 10 nH for a centimetre of lead, 1 µH for a metre of wire over structure.',
    type: HENRIES,
    whenEmpty: { do: 'omit' },
    group: PART,
  },
  {
    key: 'strapH',
    fact: 'boxStrapH',
    label: 'Strap',
    help: 'A flat one 5 to 10 nH for a centimetre, a wire 10.',
    type: HENRIES,
    whenEmpty: { do: 'omit' },
    group: BOX,
  },
  {
    key: 'chassisF',
    fact: 'boxChassisF',
    label: 'Box to structure',
    help: 'ε·A/d through its feet and mounts: 10 by 10 cm at 1 cm is 9 pF.',
    type: { ...FARADS, min: 1e-15 },
    whenEmpty: { do: 'omit' },
    group: BOX,
  },
] as const satisfies readonly Input[]

export type ResonanceGiven = Given<typeof resonanceInputs>
