/** Field notes about permission, safety, tests and standards. */
import { PASCHEN_MINIMUM_V } from '../../calc/power/supply.ts'
import { AC_BUS, ALTITUDE_PRESSURES, HIGH_MAINS, PASCHEN_MINIMUM } from '../../reference/field-figures.ts'
import { DERIVED, PRACTICE } from '../../reference/line-kinds/cite.ts'
import { volts } from '../print.ts'
import type { FieldNote } from '../types.ts'
import {
  bleedExample,
  gapRows,
  highBusV,
  highPotExample,
  INSULATION_V,
  mainsV,
  navyFigures,
  peaksExample,
  storedExample,
  supplySources,
} from './safety-worked.ts'

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
      `Explosives, fire bottles and ejection. Fuel quantity and tanks. Engine control and governor speed pick-ups. Flight control. Stall warning and shaker. Magneto and exciter. Strobe high voltage. Antenna coax. Live ${mainsV()} AC and ${highBusV()} DC. Fire detection. Intrinsically safe circuits.`,
      'Look at every contact of the connector: an adapter sits on all of them.',
      'Stop, write it down, hand it over. That is a result too.',
    ],
    sources: [PRACTICE, ...supplySources()],
    related: [{ note: 'may-i-fly' }],
  },
  {
    id: 'insulation-tests',
    title: 'Insulation tests and stored charge',
    paragraphs: [
      'Isolate filtered and suppressed contacts before insulation or high-pot tests, unless the procedure says otherwise. A suppressor conducts at its breakdown and reads as a false fault. A healthy filter reads low and drifts up while it charges.',
      highPotExample(),
      storedExample(),
      `Discharge each pin through a resistor, never a short. Measure it dead. ${bleedExample()}`,
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
      `Air breaks down at ${volts(PASCHEN_MINIMUM_V)} peak at the worst product of pressure and gap, and not below it.`,
      peaksExample(),
      `A part that passes ${volts(INSULATION_V)} at sea level can flash over in an unpressurised bay. Solid-filled parts, spacing, and a test at height.`,
    ],
    table: {
      head: ['pressure', 'about', 'gap at the minimum'],
      rows: gapRows(),
    },
    sources: [
      { id: 'S43', standing: 'read' },
      { id: 'S44', standing: 'read' },
      PASCHEN_MINIMUM.basis,
      ALTITUDE_PRESSURES.basis,
      HIGH_MAINS.basis,
      AC_BUS.basis,
      ...supplySources(),
      DERIVED,
    ],
    related: [{ check: 'power' }],
  },
  {
    id: 'navy-rule',
    title: 'MIL-STD-461 4.2.2: when it applies',
    paragraphs: [
      'The clause asks for as little capacitance to chassis as possible, because it drives current through structure. It is for Navy procurements; it is off in the app unless you choose it.',
      navyFigures(),
      'Everywhere else the contract and the power check decide: current to chassis, inrush, ground-fault devices.',
    ],
    sources: [
      { id: 'S30', clause: '4.2.2', standing: 'read' },
      { id: 'R37', clause: '4.2.2', standing: 'memory' },
      AC_BUS.basis,
    ],
    related: [{ check: 'power' }, { check: 'window' }],
  },
]
