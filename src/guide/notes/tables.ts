/** Field notes that are tables of src/reference, read by people: real parts, spacing along a bus, limit lines. */
import { leastSpacingM, loadedDelaySecPerM, loadedImpedanceOhm } from '../../calc/loading/spacing.ts'
import { formatQuantity } from '../../calc/quantity/format.ts'
import { CONSTRUCTIONS, ESR_RANGES } from '../../reference/constructions.ts'
import { SUPPLY_NETWORK } from '../../reference/field-figures.ts'
import { CE102_RELAXATION, LIMIT_LINES, limitDbAt } from '../../reference/limit-lines.ts'
import { henries, ohms } from '../print.ts'
import type { FieldNote } from '../types.ts'

const range = (least: string, most: string): string => (least === most ? least : `${least} to ${most}`)

/** A cable of 120 Ω: 50 pF/m and, as Z0 = delay / capacitance, 6 ns/m. */
const CABLE = { z0Ohm: 120, faradsPerM: 50e-12, delaySecPerM: 6e-9 } as const
/** Share of its impedance a line keeps when its nodes stand at the least spacing: CAN rule, RS-485 rule. */
const CAN_RATIO = 0.711
const RS485_RATIO = 0.4

/** Frequencies at which the limit lines are printed: their corners. */
const LIMIT_HZ = [10e3, 150e3, 500e3, 1e6, 10e6, 30e6] as const

export const TABLE_NOTES: readonly FieldNote[] = [
  {
    id: 'inductance-as-built',
    title: 'Series inductance and resistance of real capacitors',
    paragraphs: [
      'Typical ranges, not limits: measure the part in its place where it matters. Mounting and leads come on top.',
      `Series resistance at self-resonance: ${ESR_RANGES.map(
        ({ name, leastOhm, mostOhm }) => `${name}: ${range(ohms(leastOhm), ohms(mostOhm))}`,
      ).join('. ')}.`,
    ],
    table: {
      head: ['As built', 'Inductance', ''],
      rows: CONSTRUCTIONS.map(({ name, leastEslH, mostEslH, note }) => [
        name,
        range(henries(leastEslH), henries(mostEslH)),
        note,
      ]),
    },
    sources: [
      { id: 'S21', standing: 'read' },
      { id: 'S47', standing: 'memory' },
      { id: 'ott', standing: 'memory' },
      { id: 'paul', standing: 'memory' },
      { id: 'terman', standing: 'memory' },
    ],
    related: [{ note: 'lead-and-bond' }, { check: 'filter' }],
  },
  {
    id: 'node-spacing',
    title: 'A filter at every node of a bus: how far apart',
    paragraphs: [
      'Capacitance again and again along a line lowers its impedance and slows it: Z0/√(1 + C/(d·C′)). Here d is the spacing and C′ the capacitance of a metre of cable. True while the spacing is short against the edge.',
      `The spacing rules keep ${CAN_RATIO} (CAN) and ${RS485_RATIO} (RS-485) of the impedance. What counts is all a node adds: filter, suppressor, transceiver and stub.`,
      `The table: ${ohms(CABLE.z0Ohm)}, ${formatQuantity(CABLE.faradsPerM, 'capacitance')} and ${formatQuantity(CABLE.delaySecPerM, 'time')} a metre.`,
    ],
    table: {
      head: ['Each node adds', 'CAN: apart', 'RS-485: apart', 'Every metre leaves', 'and takes'],
      rows: [22e-12, 47e-12, 100e-12, 220e-12, 470e-12].map((loadF) => {
        const line = { ...CABLE, loadF, spacingM: 1 }
        const apart = (ratio: number) => `${leastSpacingM({ ...CABLE, loadF, ratio }).toFixed(2)} m`
        return [
          formatQuantity(loadF, 'capacitance'),
          apart(CAN_RATIO),
          apart(RS485_RATIO),
          ohms(loadedImpedanceOhm(line)),
          `${formatQuantity(loadedDelaySecPerM(line), 'time', 2)}/m`,
        ]
      }),
    },
    sources: [
      { id: 'R17', standing: 'read' },
      { id: 'R15', standing: 'memory' },
      { id: 'R28', standing: 'read' },
      { id: 'derived', standing: 'derived' },
    ],
    related: [{ check: 'loading' }],
  },
  {
    id: 'limit-lines',
    title: 'Two conducted limits to compare with',
    paragraphs: [
      'The limit of your own test plan counts. The airborne limits of RTCA DO-160 section 21 are not here: enter yours.',
      `CE102 is relaxed by the nominal voltage. ${CE102_RELAXATION.map(
        ({ nominalV, db }) => `${formatQuantity(nominalV, 'voltage')}: ${formatQuantity(db, 'decibel')}`,
      ).join('. ')}. Peak detector, at the ${henries(SUPPLY_NETWORK.militaryH)} network.`,
      'EN 55022 is for mains ports of commercial equipment: a sanity line, not an airborne limit.',
      'Levels in dBµV, straight between the corners over the logarithm of frequency; in a step the lower counts.',
    ],
    table: {
      head: ['Limit', ...LIMIT_HZ.map((hz) => formatQuantity(hz, 'frequency'))],
      rows: LIMIT_LINES.map((line) => [
        line.name,
        ...LIMIT_HZ.map((hz) => {
          const db = limitDbAt(line, hz)
          return db === undefined ? '–' : String(Math.round(db))
        }),
      ]),
    },
    sources: [
      { id: 'mil-std-461', clause: 'CE102', standing: 'memory' },
      SUPPLY_NETWORK.basis,
      { id: 'S35', standing: 'read' },
    ],
    related: [{ check: 'need' }, { note: 'current-probe' }],
  },
]
