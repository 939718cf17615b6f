/** One invented complaint in an invented fleet, so that a newcomer sees the whole path. Removable like any other. */
import { RULES_EDITION } from '../calc/edition.ts'
import type { Fact, Line } from '../calc/types.ts'
import { eventsFrom } from '../guide/investigate/events.ts'
import type { Answers } from '../guide/types.ts'
import type { Complaint } from './complaint.ts'
import { newId } from './ids.ts'
import { newComplaint } from './new-complaint.ts'

/** The guide's version these answers were written for. */
const WRITTEN_FOR_GUIDE = 5

const ANSWERS: Answers = {
  'gate-danger': 'none',
  'gate-lines': 'none',
  wrong: 'reading',
  when: 'transmit',
  extent: 'one-box',
  'antenna-port': 'no',
  'key-list': 'some',
  ptt: 'gone-cable',
  cable: 'whole',
  'cable-trial': 'less',
  bond: 'good',
  'shield-ends': 'good',
  'move-away': 'same',
  kind: 'synchro',
  frequency: 'vhf',
  box: 'no',
}

const TITLE = 'Example: heading pointer swings on ship 3 while the second radio transmits'

const AIRCRAFT = 'Lantern Two (invented type), ship 3'

const NOTE = `Invented example, fleet "Lantern", ship 3. Remove it whenever you like.

Reported: the heading pointer swings some degrees each time the second radio is keyed, worst near 121 MHz. New since that radio's antenna was moved aft.
Found: with a dummy load at both ends of the coax it is gone. A clamp over the whole heading synchro cable, contacts 7, 8 and 9, helps. Bond and shield were measured good.
Wanted: 20 dB at 118 and 137 MHz. The box cannot be opened, so it has to go into the cable side.`

const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })

function demoLine(): Line {
  return {
    id: newId(),
    name: 'Heading synchro, contacts 7, 8 and 9',
    gate: 'clear',
    trials: [],
    facts: {
      lineKind: typed('synchro'),
      noiseMode: typed('common'),
      noiseHz: typed('118 MHz; 137 MHz'),
      measuredDb: typed('64 dBµV'),
      limitDb: typed('50 dBµV'),
      marginDb: typed('6 dB'),
      noiseSourceOhm: typed('50; 150'),
      noiseLoadOhm: typed('75'),
      toleranceFrac: typed('20 %'),
    },
  }
}

/** A fresh copy of the example, with ids of its own. */
export function demoComplaint(): Complaint {
  const line = demoLine()
  return newComplaint({
    isDemo: true,
    title: TITLE,
    aircraft: AIRCRAFT,
    note: NOTE,
    answers: ANSWERS,
    events: eventsFrom(ANSWERS, new Date().toISOString()),
    guideVersion: WRITTEN_FOR_GUIDE,
    lines: [line],
    checks: [{ check: 'need', lineId: line.id, rules: RULES_EDITION }],
  })
}
