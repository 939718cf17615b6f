/** What each outcome of a trial means, and what comes next, one sentence or two. */

import type { TrialLack, VoidReason } from '../../trial/four-numbers.ts'
import type { Refuted, TrialOutcome } from '../../trial/outcomes.ts'
import type { Verdict } from '../../types.ts'

type Meaning = { readonly verdict: Verdict; readonly means: string; readonly next: string }

export const OUTCOME_WORDS: Readonly<Record<TrialOutcome, Meaning>> = {
  contact: {
    verdict: 'unknown',
    means: 'The empty adapter alone changed it: a contact was wiped or a shield improved, not the noise filtered.',
    next: 'Look at the contact, the backshell and the shield end; then begin the trial anew.',
  },
  'repeat-differs': {
    verdict: 'unknown',
    means: 'A repeated step came out otherwise, so none of it counts: a loose contact, timing or heat.',
    next: 'Stop. Find out what else changes, and whether it can be brought about three times alike.',
  },
  'bare-differs': {
    verdict: 'unknown',
    means:
      'The bare line was not the same again, so none of it counts: something else changed, or re-seating cured it.',
    next: 'Re-seat the bare connector and listen; then begin anew.',
  },
  'between-wires': {
    verdict: 'ok',
    means: 'A capacitor to chassis did nothing, one between the wires did: the noise is differential.',
    next: 'Filter between the wires: supply ripple, load, or pick-up of the pair itself.',
  },
  worse: {
    verdict: 'unknown',
    means:
      'A capacitor made it worse: the chassis carries the noise, it resonates with the harness, or the legs are unequal.',
    next: 'Mend bond or ground first; fit both legs alike; a resistor or ferrite in series damps a resonance.',
  },
  'cleared-first': {
    verdict: 'ok',
    means: 'The smallest value tried already cleared it: the line picks up radio frequency at high impedance.',
    next: 'A smaller one may do; take the smallest with the shortest leads.',
  },
  'cleared-between': {
    verdict: 'ok',
    means: 'Cleared by one value and not by the next smaller: the noise is conducted on this line, in this mode.',
    next: 'What is needed lies between the two; twice that is comfortable where the next larger does no harm.',
  },
  levelled: {
    verdict: 'unknown',
    means:
      'A larger capacitor did no more than the one before it: its leads have made an inductor of it, or another path is left.',
    next: 'Shorter leads or a feed-through part; then another cable.',
  },
  improved: {
    verdict: 'unknown',
    means: 'Better, not cleared: the right line and mode, or one path of several.',
    next: 'The next larger value where the signal stands it, an inductor in series, or a second path.',
  },
  'no-change': {
    verdict: 'unknown',
    means:
      'Nothing changed with any value: it needs more, or the noise is not on this line, in this mode, before this place.',
    next: 'A ferrite or a resistor in series, the other lines, a dummy load at the antenna, its own battery.',
  },
  degraded: {
    verdict: 'ok',
    means: 'The signal was degraded: the capacitance it stands ends below that value.',
    next: 'Less capacitance, or an inductor or common-mode choke beside it.',
  },
  'window-empty': {
    verdict: 'unknown',
    means: 'What cleared the noise also degraded the signal.',
    next: 'A Pi or LC with less capacitance, a common-mode choke, the shield, or a suppressor with less capacitance.',
  },
  'larger-loses': {
    verdict: 'unknown',
    means:
      'A larger value did less for the noise, or more for the signal, than a smaller one: a resonance, or something else changed.',
    next: 'Repeat both values with the shortest leads; until then no number counts.',
  },
}

export const REFUTED_WORDS: Readonly<Record<Refuted, string>> = {
  path: 'The trial refutes the path: on the impedances entered, its largest capacitor would have taken 10 dB and more, and nothing changed. The noise does not come along this line there.',
  mode: 'The trial refutes the mode: only a capacitor between the wires did something. Work it out in differential mode.',
  impedance:
    'The trial refutes the impedance: what the readings give and what was entered have no value in common. Take those of the readings.',
  lead: 'The trial refutes the lead: the larger part gave less than the smaller foresaw. What was tried was no capacitor any more there, or a second path is left.',
}

/** The same in a few words, behind "It refutes". */
export const REFUTED_NAMES: Readonly<Record<Refuted, string>> = {
  path: 'the path that was supposed',
  mode: 'the mode that was supposed',
  impedance: 'the impedances that were entered',
  lead: 'the capacitor: its lead governs there, or a second path is left',
}

export const VOID_WORDS: Readonly<Record<VoidReason, string>> = {
  'bare-differs': 'the bare line was not the same again',
  'repeat-differs': 'a repeated step came out otherwise',
  contact: 'the empty adapter alone changed it',
  units: 'its readings are in different units',
  'signal-bare': 'the signal is degraded on the bare line',
  'not-monotonic': 'a larger value did less than a smaller one',
}

export const LACK_WORDS: Readonly<Record<TrialLack, { readonly name: string; readonly key: string }>> = {
  'bare-first': { name: 'the bare line first', key: 'steps' },
  'bare-last': { name: 'the bare line again at the end', key: 'noise' },
  empty: { name: 'the empty adapter', key: 'noise' },
  noise: { name: 'what the noise did with a capacitor', key: 'noise' },
  signal: { name: 'what the signal did', key: 'signal' },
  'bare-reading': { name: 'a reading on the bare line first', key: 'noise' },
  near: { name: 'a larger value that clears it by more than its readings may be off', key: 'noise' },
}
