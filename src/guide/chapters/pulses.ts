/** Outcomes for conducted test pulses and the electromagnetic pulse: nanoseconds, so edge and lead decide, not energy. */
import { TRIAL_LEAD } from '../../reference/field-figures.ts'
import { CS115_PULSE, CS116_ENVELOPE } from '../../reference/waveforms/military.ts'
import { wireH } from '../figures.ts'
import { amperes, bare, henries, hertz, seconds } from '../print.ts'
import type { Outcome } from '../types.ts'
import { FILTER_CAUTIONS } from './filters.ts'

const PRACTICE = { id: 'practice', standing: 'practice' } as const

const checks = (waveform: string): Outcome['checks'] => [
  {
    check: 'surge',
    prefill: { waveform },
    why: 'whether suppressor, capacitor and circuit live; enter line voltage and what the input stands',
  },
  { check: 'window', prefill: {}, why: 'the suppressor’s capacitance comes off the room of this signal' },
  { check: 'filter', prefill: {}, why: 'what the filter leaves of the edge, and whether it rings' },
]

const pulse = (
  part: Pick<Outcome, 'id' | 'headline' | 'reason' | 'sources' | 'steps' | 'nextMeasurement'> & { waveform: string },
): Outcome => {
  const { waveform, ...rest } = part
  return {
    is: 'outcome',
    class: 'suppressor',
    noiseFrom: 'cable',
    rules: ['surge-facts', 'suppressor', 'sharing', 'filter-side', 'trial'],
    checks: checks(waveform),
    cautions: FILTER_CAUTIONS,
    ...rest,
  }
}

/** One outcome for each pulse of a test plan, and one where the plan is not known. */
export const PULSE_OUTCOMES: readonly Outcome[] = [
  pulse({
    id: 'pulses-cs115',
    waveform: 'cs115',
    headline: 'CS115: filter against the edge, suppressor only where the input needs it',
    reason: `CS115 drives ${amperes(CS115_PULSE.currentA)} for ${seconds(CS115_PULSE.widthSec)} into the whole bundle. It does so ${CS115_PULSE.perSec} times a second for ${seconds(CS115_PULSE.forSec)}. Its energy is small and its edge is ${seconds(CS115_PULSE.edgeSec)}. A filter slows the edge. A suppressor with ${henries(wireH(TRIAL_LEAD.mostM))} of lead overshoots before it clamps.`,
    sources: [
      { id: 'T14', clause: 'CS115', standing: 'read' },
      { id: 'mil-std-461', clause: '5.13', standing: 'memory' },
      PRACTICE,
    ],
    steps: [
      'Shield closed all round at both ends first: it keeps most of the current off the wires.',
      'Open the surge check with the level empty. One contact sees at most the pulse of the bundle.',
      'Open the window check: the filter has to fit the signal beside the suppressor’s capacitance.',
      'Inject again with the part fitted, both ends of the cable watched.',
    ],
    nextMeasurement: `Current of one contact while the bundle is driven, and what the input stands for ${seconds(CS115_PULSE.widthSec)}.`,
  }),
  pulse({
    id: 'pulses-cs116',
    waveform: 'cs116',
    headline: 'CS116: a ringing current; damp it at its worst frequency',
    reason: `CS116 rings at six frequencies from ${hertz(CS116_ENVELOPE.lowHz)} to ${hertz(CS116_ENVELOPE.highHz)}, up to ${amperes(CS116_ENVELOPE.flatA)} from ${bare(hertz(CS116_ENVELOPE.flatFromHz))} to ${hertz(CS116_ENVELOPE.flatToHz)}. A filter with little loss can ring with it and show a gain.`,
    sources: [
      { id: 'T15', clause: 'Q = 15 ± 5', standing: 'read' },
      { id: 'mil-std-461', clause: '5.14', standing: 'memory' },
    ],
    steps: [
      'List the frequency at which it upset; that one is entered as ring frequency.',
      'Open the surge check there; then at the frequencies beside it.',
      'Open the filter check: the peak of its gain must not lie on a frequency of the test.',
      'Choke or ferrite on the whole cable where no signal room is left.',
    ],
    nextMeasurement: 'The lowest current that upsets, at each of the six frequencies.',
  }),
  pulse({
    id: 'pulses-emp',
    waveform: 'rs105',
    headline: 'Electromagnetic pulse: first state what the cable picks up',
    reason:
      'The electromagnetic pulse (EMP) is a field that rises in nanoseconds. What a cable makes of it depends on its length and shield. So a level must be stated for this cable.',
    sources: [{ id: 'mil-std-461', clause: '5.23', standing: 'memory' }, PRACTICE],
    steps: [
      'Shield and bond of cable and box come first, all round at both ends.',
      'Take open-circuit volts and source impedance of this cable from the programme; nobody can guess them.',
      'Enter both in the surge check. Suppressor at the shell, shortest lead; filter behind it.',
      'A long line may need a stage at its entry and one at the box.',
    ],
    nextMeasurement: 'Current induced in this cable by the specified field, from the programme’s analysis or a test.',
  }),
  {
    is: 'outcome',
    id: 'pulses-passed',
    class: 'not-a-filter',
    headline: 'No part: it stood the test pulse at the full level',
    reason: 'What passes at the full level, on every cable, needs nothing. A part would load the signal for no gain.',
    sources: [PRACTICE],
    rules: [],
    steps: ['Write cable, level and function test into the report.', 'Keep shield ends and bonds as they were tested.'],
    checks: [],
    cautions: [],
    nextMeasurement: 'The same test after any change of cable, shield or bond.',
  },
  {
    is: 'outcome',
    id: 'measure-pulses',
    class: 'measure',
    headline: 'Take the pulse from the test plan before a part is chosen',
    reason: 'A pulse of nanoseconds and one of milliseconds need opposite parts. Without the plan no part is sized.',
    sources: [PRACTICE],
    rules: ['surge-facts'],
    steps: [
      'Ask the programme for the test methods, levels and cables.',
      'Shield and bond of each cable: look and measure meanwhile.',
      'Come back and name the pulse.',
    ],
    checks: [],
    cautions: [],
    nextMeasurement: 'The paragraph of the test plan that names method, level and cable.',
  },
]
