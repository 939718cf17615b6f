/** Test pulses of a plan: which one, and what it upset when it was injected. */
import { CS115_PULSE } from '../../reference/waveforms/military.ts'
import type { Evidence } from '../investigation.ts'
import { seconds } from '../print.ts'
import { readings } from './define.ts'

const CHAPTER = 'Test pulses'

/** Items about injected pulses; they decide how filter and suppressor share the work. */
export const PULSE_EVIDENCE: readonly Evidence[] = [
  {
    id: 'pulse-kind',
    chapter: CHAPTER,
    kind: 'ask',
    about: 'line',
    text: 'Which pulse is in the test plan?',
    why: `Each has its own shape: ${seconds(CS115_PULSE.widthSec)}, a ringing current, or a field that the cable turns into a pulse.`,
    findOut: 'Read method, level and cable in the test plan of the programme.',
    minutes: 1,
    options: readings(
      {
        id: 'cs115',
        label: `CS115: a ${seconds(CS115_PULSE.widthSec)} pulse into the cable`,
        means: 'The edge decides.',
      },
      { id: 'cs116', label: 'CS116: a damped sine into the cable', means: 'The ring frequency decides.' },
      {
        id: 'emp',
        label: 'EMP (electromagnetic pulse), field or cable current',
        means: 'What the cable picks up must be stated.',
      },
      { id: 'dont-know', label: "Don't know", means: 'The plan names it; nothing is sized before.' },
    ),
    note: 'lightning-and-pulses',
  },
  {
    id: 'pulse-inject',
    chapter: CHAPTER,
    kind: 'test',
    about: 'line',
    text: 'Inject into one cable after the other, level rising: what upsets first?',
    why: 'One cable that upsets alone names the connector; damage asks for a suppressor, an upset mostly for a filter.',
    findOut: 'In the test house, by the method: one cable at a time from a tenth of the level, every box watched.',
    minutes: 60,
    when: { answered: [{ evidence: 'pulse-kind', options: ['cs115', 'cs116', 'emp'] }] },
    cautions: ['trial-authority'],
    card: {
      do: [
        'One cable at a time, from a tenth of the level, rising; every box watched.',
        'Note cable, level and effect; function test after each.',
        'Repeat the lowest level that upset: three times.',
      ],
      with: [{ instrument: 'injection probe and monitor probe', setting: 'method, level and calibration of the plan' }],
      expect: 'No upset up to the full level; else one cable upsets first.',
      unit: 'A',
    },
    options: readings(
      {
        id: 'one-cable',
        label: 'One cable upsets first',
        sets: [{ fact: 'noiseMode', text: 'common', why: 'a bundle is driven on all wires alike', assumed: true }],
        means: 'That connector gets the part.',
      },
      {
        id: 'several',
        label: 'Several cables upset',
        sets: [{ fact: 'noiseMode', text: 'common', why: 'a bundle is driven on all wires alike', assumed: true }],
        means: 'Shield, bond or the box itself first.',
      },
      { id: 'damage', label: 'Something broke', means: 'A suppressor is needed; find which contact.' },
      { id: 'passes', label: 'No upset at the full level', means: 'No part is needed for this test.' },
      { id: 'dont-know', label: 'Not injected yet', means: 'Designed from the plan, proven by the test.' },
    ),
    note: 'lightning-and-pulses',
  },
]
