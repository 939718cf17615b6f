/** What a trial showed of a line, as the window takes it over: four capacitances per leg, each of which may be missing. */
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
] as const satisfies readonly Input[]
