/** What a trial showed of a line, as the window takes it over: four capacitances per leg, and the circuits its readings allow. */
import type { Input } from '../types.ts'
import { FARADS } from './noise-inputs.ts'

const SHOWN = 'Shown by a trial'

export const shownByTrialInputs = [
  {
    key: 'trialLeastF',
    fact: 'trialLeastF',
    label: 'Cleared from',
    help: 'Per leg: what a trial cleared the noise with. The trial check hands it over.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: SHOWN,
  },
  {
    key: 'trialMostF',
    fact: 'trialMostF',
    label: 'Harmless up to',
    help: 'Per leg: the largest that did the signal no harm.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: SHOWN,
  },
  {
    key: 'trialBelowF',
    fact: 'trialBelowF',
    label: 'Did not clear',
    help: 'Per leg: the largest that did not clear the noise. Nothing up to it is proposed as a capacitor alone.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: SHOWN,
  },
  {
    key: 'trialFromF',
    fact: 'trialFromF',
    label: 'Degraded from',
    help: 'Per leg: the smallest that degraded the signal. Nothing from it up is proposed.',
    type: FARADS,
    whenEmpty: { do: 'omit' },
    group: SHOWN,
  },
  {
    key: 'sideReOhm',
    fact: 'trialSideReOhm',
    label: 'Side by side: resistance',
    help: 'Source and load side by side (of the pair, for a pair) at the noise frequency: the extremes that the readings of a trial allow. The trial check hands them over. A capacitor alone needs no more.',
    type: { is: 'number', quantity: 'resistance', min: 0, max: 1e12, many: true },
    whenEmpty: { do: 'omit' },
    group: SHOWN,
  },
  {
    key: 'sideImOhm',
    fact: 'trialSideImOhm',
    label: 'Side by side: reactance',
    help: 'One for each of them; positive = inductive, negative = capacitive.',
    type: { is: 'number', quantity: 'resistance', min: -1e12, max: 1e12, many: true },
    whenEmpty: { do: 'omit' },
    group: SHOWN,
  },
] as const satisfies readonly Input[]
