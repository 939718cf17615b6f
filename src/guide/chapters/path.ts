/** Which way in: antenna or audio path, which cable, common or differential, bond and shield. */
import type { Question } from '../types.ts'

const NOT_PROBED = 'not probed; radio noise on a pair is mostly common above about 1 MHz'

/** The questions that name the path. */
export const PATH_CHAPTER: readonly Question[] = [
  {
    is: 'question',
    id: 'path',
    chapter: 'Antenna or audio path',
    text: 'With a 50 Ω dummy load for its antenna, what is left?',
    why: 'What comes in by the antenna cannot be stopped at a connector; what comes in after the volume control is no radio noise.',
    findOut:
      'Put a 50 Ω load on the receiver’s antenna input. Turn volume to zero, then squelch, then change channel. Walk 6 m away with a handheld on the same channel.',
    options: [
      { id: 'gone', label: 'Gone on the dummy load', next: 'antenna-noise' },
      { id: 'weak', label: 'Only weak signals suffer, or the squelch opens', next: 'antenna-noise' },
      { id: 'handheld', label: 'A handheld 6 m away hears it too', next: 'radiated-outside' },
      { id: 'everything', label: 'Every system hears it', next: 'radiated-outside' },
      { id: 'tuning', label: 'It moves with tuning, or sits on some channels', next: 'measure-birdie' },
      { id: 'volume', label: 'Heard even with the volume at zero', next: 'bond' },
      { id: 'no-antenna', label: 'It has no antenna, or nothing changes', next: 'cable' },
      { id: 'dont-know', label: "Don't know", next: 'cable' },
    ],
  },
  {
    is: 'question',
    id: 'cable',
    chapter: 'Which cable',
    text: 'Which cable carries it, and where does a clamp ferrite help?',
    why: 'The clamp shows two things at once: the cable it comes in by, and whether it is on all its wires alike.',
    findOut:
      'Clamp a ferrite on one cable at a time, close to the victim: first over the whole cable, then over one wire. Or unplug what may be unplugged, one at a time. A current probe does the same with a number.',
    options: [
      {
        id: 'whole',
        label: 'Over one whole cable: it helps',
        hint: 'common mode: alike on all wires',
        sets: [{ fact: 'noiseMode', text: 'common' }],
        next: 'bond',
      },
      {
        id: 'one-wire',
        label: 'Over one wire only: it helps',
        hint: 'differential: out on one wire, back on another',
        sets: [{ fact: 'noiseMode', text: 'differential' }],
        next: 'bond',
      },
      { id: 'unplug', label: 'Unplugging one cable cures it; no clamp tried', next: 'mode' },
      { id: 'none', label: 'No cable makes a difference', next: 'box-upset' },
      {
        id: 'dont-know',
        label: "Don't know",
        hint: 'common mode is assumed and marked',
        sets: [{ fact: 'noiseMode', text: 'common', why: NOT_PROBED, assumed: true }],
        next: 'bond',
      },
    ],
    cautions: ['power-off'],
  },
  {
    is: 'question',
    id: 'mode',
    chapter: 'Common or differential',
    text: 'Probe both legs together, then one leg alone: which is more?',
    why: 'Noise alike on both legs goes to chassis through two capacitors; noise between the legs needs one across them.',
    findOut:
      'Current probe over both legs, then over one. Pure common mode reads 6 dB more over both than over one; pure differential cancels over both. No probe: a clamp ferrite over both, then over one, tells the same by ear. Move the probe along the cable: it reads most towards the source.',
    options: [
      {
        id: 'common',
        label: 'Both together read as much or more: common',
        sets: [{ fact: 'noiseMode', text: 'common' }],
        next: 'kind',
      },
      {
        id: 'differential',
        label: 'One leg reads, both together cancel: differential',
        sets: [{ fact: 'noiseMode', text: 'differential' }],
        next: 'kind',
      },
      { id: 'single', label: 'It is a single wire with chassis return', next: 'kind' },
      {
        id: 'dont-know',
        label: "Don't know",
        hint: 'common is assumed and marked',
        sets: [{ fact: 'noiseMode', text: 'common', why: NOT_PROBED, assumed: true }],
        next: 'kind',
      },
    ],
  },
  {
    is: 'question',
    id: 'bond',
    chapter: 'Bond, shield and return',
    text: 'How good are the box bond, the shield and the return?',
    why: 'A filter works only against the bond it stands on, and repairing a bond is cheaper than any part.',
    findOut:
      'Milliohm meter from the box case to structure: at most 2.5 mΩ. Look at both ends of the shield: all round, or a pigtail. Look where the signal return goes.',
    options: [
      { id: 'good', label: 'Measured good: 2.5 mΩ or less, shield all round', next: 'kind' },
      { id: 'poor', label: 'Bond above 2.5 mΩ, painted, loose or corroded', next: 'bond-first' },
      { id: 'shield', label: 'Shield open, or on a pigtail over 50 mm', next: 'shield-first' },
      { id: 'shared', label: 'Signal or audio return shared with power', next: 'shared-return' },
      { id: 'dont-know', label: "Don't know", next: 'kind' },
    ],
  },
]
