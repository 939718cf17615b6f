/** Lines that are left alone, and the stops that say so. */
import {
  ANTENNA_MATCH,
  HIGH_DIRECT,
  HIGH_MAINS,
  KILLS_ABOVE,
  MAGNETO_PRIMARY,
  STROBE_LAMP,
} from '../../reference/field-figures.ts'
import { bandById, channelHz } from '../../reference/radio-bands.ts'
import { factOf, matchSpentF } from '../figures.ts'
import { bare, decibels, megahertz, volts, withUnit } from '../print.ts'
import type { Outcome } from '../types.ts'

const MAINS = factOf('power-115-vac-400', 'supply')
const HIGH_BUS = factOf('power-270-vdc', 'supply')

const KILLS = `${volts(KILLS_ABOVE.dcV)} DC or ${volts(KILLS_ABOVE.acRmsV)} AC rms`

/** In picofarads also below one: the two are compared. */
const spent = (hz: number): string =>
  `${withUnit(Number((1e12 * matchSpentF(hz)).toPrecision(2)), 'pF')} at ${megahertz(hz, hz < 1e9 ? 3 : 4)}`

/** Lines that never get a trial part: option id, label, hint, and the stop with its reason. */
export const BARRED_LINES: readonly {
  readonly id: string
  readonly label: string
  readonly hint?: string
  readonly headline: string
  readonly reason: string
  readonly step: string
  readonly sources: Outcome['sources']
  readonly cautions?: readonly string[]
}[] = [
  {
    id: 'pyrotechnic',
    label: 'Squib, fire bottle, ejection or other explosive',
    headline: 'Stop: an explosive circuit',
    reason:
      'A meter, an adapter or stored charge can fire it, and an added part changes the no-fire margin that was proven for it.',
    step: 'Leave it connected as it is. Only the design authority and trained armament or safety staff work here.',
    sources: [{ id: 'R37', standing: 'memory' }],
  },
  {
    id: 'fuel-quantity',
    label: 'Fuel quantity or anything in a tank',
    headline: 'Stop: fuel-tank wiring',
    reason:
      'Energy into the tank is limited by design, and the wiring is under configuration control. A picofarad also changes the reading: the gauge measures capacitance.',
    step: 'Work only by the fuel-system manual and its critical-design limitations.',
    sources: [{ id: 'ac-25-981', standing: 'memory' }],
  },
  {
    id: 'engine-control',
    label: 'Engine control or a governor speed pick-up',
    headline: 'Stop: engine control',
    reason:
      'Added capacitance can raise or lower the speed the controller counts, and the controller then moves the engine.',
    step: 'Report it to the engine and airframe design authority. Ground the aircraft if the engine was affected.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
  {
    id: 'flight-control',
    label: 'Flight control or autopilot servo',
    headline: 'Stop: flight control',
    reason: 'Its wiring carries a proven safety case; a part in line voids it, and an upset moves a surface.',
    step: 'Report it to the design authority. No adapter, no probe that breaks the line.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
  {
    id: 'stall-warning',
    label: 'Stall warning or stick shaker',
    headline: 'Stop: stall warning',
    reason: 'A trial part can silence the warning or make it false, and nobody would see it before it is needed.',
    step: 'Work only by the maintenance manual, and prove the warning afterwards.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
  {
    id: 'magneto',
    label: 'Magneto lead or ignition exciter',
    headline: 'Stop: ignition lead',
    reason: `An open magneto lead leaves the magneto live, and capacitance on the primary changes spark energy and timing. It carries ${bare(volts(MAGNETO_PRIMARY.volts[0]))} to ${volts(MAGNETO_PRIMARY.volts[1])}, the secondary kilovolts.`,
    step: 'Only shield and bond are worked on here, by the manual, with the propeller clear.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
  {
    id: 'strobe',
    label: 'Strobe high voltage',
    headline: 'Stop: strobe high voltage',
    reason: `The flash supply keeps ${bare(volts(STROBE_LAMP.volts[0]))} to ${volts(STROBE_LAMP.volts[1])} after it is switched off.`,
    cautions: ['no-trial', 'stored-charge'],
    step: 'Leave the lamp lead alone. The low-voltage supply of the strobe is another line: answer for that one.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
  {
    id: 'antenna-coax',
    label: 'Antenna coax',
    headline: 'Stop: antenna coax',
    reason: `A connector filter destroys the match: ${spent(bandById('vhf-com').fromHz)} or ${spent(channelHz('gnss-l1'))} already spends a ${decibels(ANTENNA_MATCH.returnLossDb)} return loss. Transmit power would also heat it.`,
    step: 'Ask for a coaxial filter approved for that radio, or treat the source. The rest of the radio can be triaged: answer for its other lines.',
    sources: [
      bandById('vhf-com').source,
      bandById('gnss-l1').source,
      { id: 'derived', standing: 'derived' },
      { id: 'practice', standing: 'practice' },
    ],
  },
  {
    id: 'live-power',
    label: `Any live supply above ${KILLS}`,
    hint: `${bare(volts(MAINS.nominalRmsV))} and ${volts(HIGH_MAINS.volts)} AC, ${bare(volts(HIGH_BUS.nominalRmsV))}, ${bare(volts(HIGH_DIRECT.volts[0]))} and ${volts(HIGH_DIRECT.volts[1])} DC`,
    headline: 'Stop: live power that can kill',
    cautions: ['no-trial', 'lethal-voltage', 'power-off'],
    reason: `No adapter is fitted to, and no connector opened on, a live line above ${KILLS}. A filter there is a question of design on paper.`,
    step: 'Power off, tag, discharge through a resistor, measure dead. What is left is a design on paper, by approved data.',
    sources: [MAINS.source, HIGH_MAINS.basis, HIGH_BUS.source, { id: 'practice', standing: 'practice' }],
  },
  {
    id: 'voltage-unknown',
    label: 'The voltage of the line is not known',
    headline: 'Stop: no trial on an unknown voltage',
    reason: 'A line whose voltage nobody knows is treated as one that kills.',
    step: 'Read the wiring diagram. Nothing is opened or fitted until the voltage is written down.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
  {
    id: 'misleading',
    label: 'Attitude, air data, ILS or radio height without a flag',
    hint: 'ILS: instrument landing system',
    headline: 'Stop: a reading that can mislead',
    reason: 'A trial part can make it wrong without a flag, and the crew would follow it.',
    step: 'Work only by the maintenance manual, with the full test of the system afterwards.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
  {
    id: 'gear-and-brakes',
    label: 'Landing gear, brakes or steering',
    headline: 'Stop: landing gear, brakes, steering',
    reason: 'A disturbed line here moves or releases something heavy.',
    step: 'Report it to the design authority. Look for a mandatory modification first.',
    sources: [{ id: 'D51', standing: 'read' }],
  },
  {
    id: 'reverser',
    label: 'Thrust reverser or propeller pitch',
    headline: 'Stop: thrust reverser or propeller pitch',
    reason: 'Its interlocks keep reverse thrust out of flight, and an added part can defeat them.',
    step: 'Report it to the design authority. No trial, no probe in line.',
    sources: [{ id: 'D51', standing: 'read' }],
  },
  {
    id: 'electric-trim',
    label: 'Electric trim',
    headline: 'Stop: electric trim',
    reason: 'A trim that runs away is a control that acts by itself; sticking relays do it too.',
    step: 'Trim cut-out by the book, then the manual and the bench.',
    sources: [{ id: 'D59', standing: 'read' }],
  },
  {
    id: 'fire-detection',
    label: 'Fire or overheat detection',
    headline: 'Stop: fire detection',
    reason: 'A trial part can hide a fire or give a false one; the loop measures resistance and capacitance itself.',
    step: 'Work only by the maintenance manual, with the loop test afterwards.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
  {
    id: 'intrinsically-safe',
    label: 'An intrinsically safe circuit',
    headline: 'Stop: intrinsically safe circuit',
    reason: 'Its safety is a limit on stored energy, and every capacitor stores some.',
    step: 'Only the holder of its certificate may add anything.',
    sources: [{ id: 'practice', standing: 'practice' }],
  },
]

const stop = (
  part: Pick<Outcome, 'id' | 'headline' | 'reason' | 'steps' | 'nextMeasurement'> & Partial<Outcome>,
): Outcome => ({
  is: 'outcome',
  class: 'stop',
  sources: [{ id: 'practice', standing: 'practice' }],
  rules: [],
  checks: [],
  cautions: [],
  ...part,
})

const NO_MEASUREMENT = 'None by you. Write down what was seen, when, and in which configuration.'

/** Outcomes of class `stop`. */
export const STOPS: readonly Outcome[] = [
  stop({
    id: 'stop-smoke',
    headline: 'Stop: power off and find the heat',
    reason: 'Smoke or heat is a fault, not interference. A filter would only hide it.',
    steps: [
      'Power off and pull the supply by the manual.',
      'Ground the aircraft and write the entry.',
      'Find and repair the fault by the maintenance manual before any noise question.',
    ],
    nextMeasurement: NO_MEASUREMENT,
  }),
  stop({
    id: 'stop-uncommanded',
    headline: 'Stop: ground it and report it',
    reason:
      'A control, engine or release that acts by itself is a safety event. The cause may well be radio energy on a line, and that is for the design authority to prove and cure.',
    steps: [
      'Ground the aircraft and write the entry.',
      'Record place, height, heading, transmitters near, and what was switched on.',
      'Report to the design authority and, where the rules ask for it, to the authorities.',
    ],
    nextMeasurement:
      'Map the place and time against known transmitters. Nothing is fitted and nothing is probed in line.',
  }),
  stop({
    id: 'stop-danger-open',
    headline: 'Stop until you know',
    reason: 'Whether there was smoke, heat or an uncommanded action decides everything that follows.',
    steps: [
      'Read the log entry and speak to the crew who saw it.',
      'With the power off, look at, smell and feel the equipment and its connectors.',
      'Come back and answer the first question.',
    ],
    nextMeasurement: 'The answer to the first question.',
  }),
  stop({
    id: 'stop-lines-open',
    headline: 'Stop until the connector is known',
    reason: 'Without the list of contacts, nobody can say that no protected line is in this connector.',
    steps: [
      'Get the wiring diagram for this tail and this modification state.',
      'Read every contact of the connector against the list.',
      'Come back and answer the second question.',
    ],
    nextMeasurement: 'The answer to the second question.',
  }),
  ...BARRED_LINES.map((line) =>
    stop({
      id: `stop-${line.id}`,
      headline: line.headline,
      reason: line.reason,
      sources: line.sources,
      steps: [line.step, 'Write the complaint down with the line named, and hand it to the certifying staff.'],
      cautions: line.cautions ?? ['no-trial'],
      nextMeasurement: NO_MEASUREMENT,
    }),
  ),
  stop({
    id: 'stop-kind',
    headline: 'Stop: this kind of line never gets a trial part',
    reason: 'The kind of line you chose is on the list of lines that are left alone.',
    rules: ['barred-kind'],
    cautions: ['no-trial'],
    steps: [
      'Leave the line as it is.',
      'Write the complaint down with the line named, and hand it to the certifying staff.',
    ],
    nextMeasurement: NO_MEASUREMENT,
  }),
  stop({
    id: 'stop-source-listed',
    cautions: ['no-trial', 'breakers'],
    headline: 'Source found, and it is a protected line',
    reason:
      'The breaker or switch named the source, but the source is on the list of lines that never get a trial part. That is a repair by the manual, not a filter.',
    steps: [
      'Write down which breaker stopped the noise, three times out of three.',
      'Inspect its switch, wiring and bond by the maintenance manual; no adapter, no added part.',
      'Close and prove the system by the manual.',
    ],
    nextMeasurement: 'The repeat of the on/off test, for the record.',
  }),
]
