/** Drawings of filters as circuits: the six topologies, what stands in series with a capacitor, and how one rings. */
import { lossDb } from '../../calc/network/chain.ts'
import {
  ELEMENT_COUNT,
  type FilterCircuit,
  NO_SERIES,
  NO_SHUNT,
  type NoiseLoad,
  type NoiseSource,
} from '../../calc/network/circuit.ts'
import { formatQuantity } from '../../calc/quantity/format.ts'
import { resonantHz } from '../../calc/resonance/resonances.ts'
import { curve, type Frame, foot } from './curves.ts'
import type { Drawing, Mark } from './types.ts'

type Part = 'coil' | 'capacitor'

const COIL_WIDTH = 40
const WIRE_DOWN = 34
const CAPACITOR_DOWN = 40

/** One topology in a cell 150 wide: noise comes from the left, metal is below. */
function topology(x: number, y: number, name: string, parts: readonly Part[]): readonly Mark[] {
  const [from, to, wire] = [x + 8, x + 142, y + WIRE_DOWN]
  const widths: readonly number[] = parts.map((part) => (part === 'coil' ? COIL_WIDTH : 0))
  const room = to - from - widths.reduce((sum, width) => sum + width, 0)
  const gap = room / (parts.length + 1)
  const marks: Mark[] = [{ text: name, at: [x + 8, y + 16], bold: true }]
  let at = from
  for (const [i, part] of parts.entries()) {
    const next = at + gap
    marks.push({
      line: [
        [at, wire],
        [next, wire],
      ],
    })
    marks.push(part === 'coil' ? { coil: [next, wire] } : { capacitor: [next, wire] })
    at = next + (widths[i] ?? 0)
  }
  marks.push({
    line: [
      [at, wire],
      [to, wire],
    ],
  })
  const metal = wire + CAPACITOR_DOWN
  marks.push({
    line: [
      [from, metal],
      [to, metal],
    ],
    look: 'bar',
  })
  return marks
}

const SIX: Drawing = {
  id: 'six-topologies',
  title: 'Six topologies, noise from the left',
  said: 'Six small circuits over metal, the noise coming from the left. C: one capacitor to metal. L: one inductor in the line. LC: inductor first, then the capacitor. CL: capacitor first, then the inductor. Pi: capacitor, inductor, capacitor. T: inductor, capacitor, inductor.',
  height: 268,
  marks: [
    ...topology(5, 0, 'C', ['capacitor']),
    ...topology(165, 0, 'L', ['coil']),
    ...topology(5, 88, 'LC', ['coil', 'capacitor']),
    ...topology(165, 88, 'CL', ['capacitor', 'coil']),
    ...topology(5, 176, 'Pi', ['capacitor', 'coil', 'capacitor']),
    ...topology(165, 176, 'T', ['coil', 'capacitor', 'coil']),
  ],
}

const LEAD: Drawing = {
  id: 'lead-and-bond',
  title: 'What stands in series with a capacitor',
  said: 'A line with a capacitor to metal. Above the capacitor lies the inductance of its own lead, below it that of its lead to the case. Below the case come resistance and inductance of the bond, and then structure. The noise sees all of it in series, and that is the floor of the filter.',
  height: 236,
  marks: [
    {
      line: [
        [10, 30],
        [310, 30],
      ],
      look: 'path',
    },
    { text: 'noise', at: [14, 20] },
    {
      line: [
        [110, 30],
        [110, 50],
      ],
    },
    { box: [92, 50, 36, 24], look: 'part' },
    { text: 'its lead', at: [140, 66] },
    { capacitor: [110, 74] },
    { text: 'the capacitor', at: [140, 98] },
    { box: [92, 114, 36, 24], look: 'part' },
    { text: 'its other lead', at: [140, 130] },
    { box: [40, 138, 140, 26], look: 'case' },
    { text: 'case', at: [60, 155], anchor: 'middle' },
    { resistor: [110, 164] },
    { text: 'bond: ohms and henries', at: [140, 188] },
    {
      line: [
        [10, 206],
        [310, 206],
      ],
      look: 'bar',
    },
    { text: 'structure', at: [12, 226] },
  ],
}

/** A series inductor and a shunt capacitor between a low and a high impedance: the example of the drawing. */
const EXAMPLE: FilterCircuit = {
  topology: 'LC',
  shunt1: { capacitanceF: 10e-9, esrOhm: 0, eslH: 0 },
  shunt2: NO_SHUNT,
  series1: { ...NO_SERIES, inductanceH: 10e-6, dcrOhm: 0.5 },
  series2: NO_SERIES,
  bondOhm: 0,
  bondH: 0,
}
const SOURCE: NoiseSource = { ohm: 2, seriesH: 0 }
const LOAD: NoiseLoad = { ohm: 500, parallelF: 0, parallelH: Number.POSITIVE_INFINITY }

/** Where the example rings, and by how much it makes the noise larger there. */
export const RINGS_AT_HZ = resonantHz(EXAMPLE.shunt1.capacitanceF, EXAMPLE.series1.inductanceH)
export const ringsByDb = (): number => -lossDb(EXAMPLE, SOURCE, LOAD, RINGS_AT_HZ)

/** The part of the axis that is drawn: a decade on either side of the ringing, in decibels from the gain to the loss. */
const SPAN_DB = { low: -30, high: 60 } as const
const RING_FRAME: Frame = { x: 20, y: 30, width: 280, height: 150 }

function ringing(): Drawing {
  const { x, y, width, height } = RING_FRAME
  const up = (db: number) => 1 - (db - SPAN_DB.low) / (SPAN_DB.high - SPAN_DB.low)
  const loss = (share: number) => up(lossDb(EXAMPLE, SOURCE, LOAD, RINGS_AT_HZ * 10 ** (2 * share - 1)))
  const zeroY = Math.round((y + (1 - up(0)) * height) * 10) / 10
  const at = x + width / 2
  return {
    id: 'lc-ringing',
    title: 'An inductor and a capacitor ring',
    said: `The noise behind a filter of one inductor and one capacitor, against frequency. Far below the ringing nothing changes. At ${formatQuantity(RINGS_AT_HZ, 'frequency', 3)} the noise is ${formatQuantity(ringsByDb(), 'decibel', 3)} larger than without the filter. Above it falls by ${formatQuantity(20 * ELEMENT_COUNT.LC, 'decibel')} a decade.`,
    height: 214,
    marks: [
      foot(RING_FRAME),
      {
        line: [
          [x, zeroY],
          [x + width, zeroY],
        ],
        look: 'open',
      },
      { text: 'as without', at: [x + width, zeroY - 6], anchor: 'end' },
      curve(RING_FRAME, loss, 'wire', 240),
      { text: `louder by ${formatQuantity(ringsByDb(), 'decibel', 3)}`, at: [at, 20], anchor: 'middle', bold: true },
      {
        line: [
          [at, y + height],
          [at, y + height + 6],
        ],
      },
      { text: formatQuantity(RINGS_AT_HZ, 'frequency', 3), at: [at, y + height + 22], anchor: 'middle' },
      { text: 'noise behind it', at: [x + 6, y + height - 8] },
    ],
  }
}

export const CIRCUIT_DRAWINGS: readonly Drawing[] = [SIX, LEAD, ringing()]
