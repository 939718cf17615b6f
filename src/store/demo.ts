/** One invented complaint in an invented fleet, so that a newcomer sees the whole path. Removable like any other. */
import type { Line } from '../calc/types.ts'
import { type Complaint, newComplaint, newId } from './complaint.ts'

const typed = (text: string) => ({ text, origin: { by: 'user' } as const })

function demoLine(): Line {
  return {
    id: newId(),
    name: 'Marker lamp output, contact 14',
    gate: 'clear',
    trials: [],
    facts: {
      lineKind: typed('arinc-429-high'),
      noiseMode: typed('common'),
      noiseHz: typed('125 MHz'),
      neededDb: typed('15 dB'),
      noiseSourceOhm: typed('50'),
      noiseLoadOhm: typed('75'),
    },
  }
}

/** A fresh copy of the example. */
export function demoComplaint(): Complaint {
  return newComplaint({
    isDemo: true,
    title: 'Example: bearing pointer twitches when COM 2 keys',
    note: '',
    lines: [demoLine()],
  })
}
