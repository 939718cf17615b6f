/** Field notes about permission, safety, tests and standards. */
import { DERIVED, PRACTICE } from '../../reference/line-kinds/cite.ts'
import type { FieldNote } from '../types.ts'

/** Notes on what may be done and what may not. */
export const SAFETY_NOTES: readonly FieldNote[] = [
  {
    id: 'may-i-fly',
    title: 'May I fly with this trial?',
    paragraphs: [
      'No. A trial adapter is a test tool. It comes off before flight, and both fitting and removal are recorded.',
      'An adapter that stays is a design change and needs approved data, even if the box is not opened. It changes lightning, radio-field and fuel-safety compliance.',
      'What the trial gives is evidence for that change: four numbers, three repeats, a sheet.',
      'Whose leave: the certifying staff of this aircraft for the trial, the design authority for the change.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'in-line-trial' }],
  },
  {
    id: 'no-trial-lines',
    title: 'Lines that never get a trial part',
    paragraphs: [
      'Explosives, fire bottles and ejection. Fuel quantity and tanks. Engine control and governor speed pick-ups. Flight control. Stall warning and shaker. Magneto and exciter. Strobe high voltage. Antenna coax. Live 115 V AC and 270 V DC. Fire detection. Intrinsically safe circuits.',
      'Look at every contact of the connector: an adapter sits on all of them.',
      'Stop, write it down, hand it over. That is a result too.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'may-i-fly' }],
  },
  {
    id: 'insulation-tests',
    title: 'Insulation tests and stored charge',
    paragraphs: [
      'Isolate filtered and suppressed contacts before insulation or high-pot tests, unless the procedure says otherwise. A suppressor conducts at its breakdown and reads as a false fault. A healthy filter reads low and drifts up while it charges.',
      'AC high-pot drives real current: 100 nF at 1000 V 60 Hz draws 38 mA.',
      'Stored energy is ½·C·V²: 1 µF at 500 V is 0.125 J, 37 pins of 100 nF at 500 V together 0.46 J.',
      'Discharge each pin through a resistor, never a short. Measure it dead. 1 µF through 1 MΩ takes 4.6 s to fall to 1 %.',
    ],
    sources: [DERIVED, PRACTICE],
    related: [{ check: 'power' }],
  },
  {
    id: 'after-a-strike',
    title: 'After a lightning strike',
    paragraphs: [
      'Suspect every suppressor on the affected lines. A shorted one shows; an open one works in every test and protects nothing.',
      'Test leakage and breakdown by approved limits. A meter’s diode range proves no clamping.',
      'Look at bonds, shields and dischargers before parts: the current went through them.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'insulation-tests' }, { note: 'suppressor-facts' }],
  },
  {
    id: 'paschen',
    title: 'Voltage and height: the Paschen minimum',
    paragraphs: [
      'Air breaks down at 327 V peak at the worst product of pressure and gap, and not below it.',
      '115 V rms is 163 V peak and 200 V line to line 283 V peak: below it. 230 V rms is 325 V peak: on it. 270 V DC is below, its transients are not.',
      'A part that passes 500 V at sea level can flash over in an unpressurised bay. Solid-filled parts, spacing, and a test at height.',
    ],
    table: {
      head: ['pressure', 'about', 'gap at the minimum'],
      rows: [
        ['760 torr', 'sea level', '7.5 µm'],
        ['226 torr', '30 000 ft', '25 µm'],
        ['87 torr', '50 000 ft', '65 µm'],
        ['33 torr', '70 000 ft', '172 µm'],
      ],
    },
    sources: [{ id: 'S43', standing: 'read' }, { id: 'S44', standing: 'read' }, DERIVED],
    related: [{ check: 'power' }],
  },
  {
    id: 'navy-rule',
    title: 'MIL-STD-461 4.2.2: when it applies',
    paragraphs: [
      'The clause asks for as little capacitance to chassis as possible, because it drives current through structure. It is for Navy procurements; it is off in the app unless you choose it.',
      'AC: 100 nF a line at 60 Hz, 20 nF at 400 Hz. DC user equipment in submarines and aircraft: 75 nF for each kilowatt of load, and 30 nF below 500 W. Both are ceilings.',
      'Everywhere else the contract and the power check decide: current to chassis, inrush, ground-fault devices.',
    ],
    sources: [
      { id: 'S30', clause: '4.2.2', standing: 'read' },
      { id: 'R37', clause: '4.2.2', standing: 'memory' },
    ],
    related: [{ check: 'power' }, { check: 'window' }],
  },
]
