/** Drawings of how a source, a bus or an antenna is told apart from the rest. */
import { RADIO_COAX } from '../../reference/field-figures.ts'
import { CAN_LINE } from '../../reference/line-kinds/bus-ends.ts'
import { bare, ohms } from '../print.ts'
import type { Drawing } from './types.ts'

const BREAKERS: Drawing = {
  id: 'breaker-matrix',
  title: 'One, or two together',
  said: 'Two breakers A and B on a bus. Four cells: both off, A alone, B alone, both on. If only the last cell disturbs, two sources together pass the threshold.',
  height: 190,
  marks: [
    {
      line: [
        [10, 24],
        [110, 24],
      ],
      look: 'bar',
    },
    { text: 'bus', at: [10, 14] },
    {
      line: [
        [36, 26],
        [36, 54],
      ],
    },
    {
      line: [
        [36, 54],
        [50, 74],
      ],
    },
    {
      line: [
        [36, 80],
        [36, 104],
      ],
    },
    { box: [16, 104, 40, 30], look: 'case' },
    { text: 'A', at: [36, 124], anchor: 'middle', bold: true },
    {
      line: [
        [90, 26],
        [90, 54],
      ],
    },
    {
      line: [
        [90, 54],
        [104, 74],
      ],
    },
    {
      line: [
        [90, 80],
        [90, 104],
      ],
    },
    { box: [70, 104, 40, 30], look: 'case' },
    { text: 'B', at: [90, 124], anchor: 'middle', bold: true },
    { text: 'B off', at: [214, 24], anchor: 'middle' },
    { text: 'B on', at: [282, 24], anchor: 'middle' },
    { text: 'A off', at: [172, 64], anchor: 'end' },
    { text: 'A on', at: [172, 114], anchor: 'end' },
    { box: [180, 34, 68, 50] },
    { box: [248, 34, 68, 50] },
    { box: [180, 84, 68, 50] },
    { box: [248, 84, 68, 50], look: 'part' },
    { text: 'gone', at: [214, 64], anchor: 'middle' },
    { text: 'gone', at: [282, 64], anchor: 'middle' },
    { text: 'gone', at: [214, 114], anchor: 'middle' },
    { text: 'disturbs', at: [282, 114], anchor: 'middle', bold: true },
    { text: 'Only both: two that together pass a threshold.', at: [8, 164] },
    { text: 'Each cell three times.', at: [8, 182] },
  ],
}

/** A bus of this impedance ends in it at both ends. */
const END_OHM = CAN_LINE.ohm

const BUS: Drawing = {
  id: 'bus-ohms',
  title: 'Ohms of a dead bus',
  said: `A bus of two legs with ${ohms(END_OHM)} at each end and stubs between. Between the legs the meter reads ${ohms(END_OHM / 2)}. ${ohms(END_OHM)} means that one end is missing, ${ohms(END_OHM / 3)} that there is a third. From each leg to chassis it reads the same, and high.`,
  height: 190,
  marks: [
    {
      line: [
        [14, 40],
        [306, 40],
      ],
    },
    {
      line: [
        [14, 80],
        [306, 80],
      ],
    },
    { text: 'H', at: [4, 34], bold: true },
    { text: 'L', at: [4, 74], bold: true },
    { resistor: [30, 40] },
    { resistor: [290, 40] },
    { text: ohms(END_OHM), at: [42, 64] },
    { text: ohms(END_OHM), at: [278, 64], anchor: 'end' },
    { box: [128, 44, 64, 32], look: 'part' },
    { text: ohms(END_OHM / 2), at: [160, 65], anchor: 'middle', bold: true },
    {
      line: [
        [160, 40],
        [160, 44],
      ],
    },
    {
      line: [
        [160, 76],
        [160, 80],
      ],
    },
    { dot: [160, 40] },
    { dot: [160, 80] },
    { text: 'between the legs, power off', at: [160, 24], anchor: 'middle' },
    {
      text: `${bare(ohms(END_OHM))}: one end is missing. ${bare(ohms(END_OHM / 3))}: one too many.`,
      at: [160, 104],
      anchor: 'middle',
    },
    {
      line: [
        [14, 80],
        [14, 148],
      ],
      look: 'open',
    },
    {
      line: [
        [306, 40],
        [306, 148],
      ],
      look: 'open',
    },
    {
      line: [
        [8, 150],
        [312, 150],
      ],
      look: 'bar',
    },
    { text: 'each leg to chassis: equal, and high', at: [160, 134], anchor: 'middle' },
    { text: 'chassis', at: [8, 172] },
  ],
}

const LOAD: Drawing = {
  id: 'dummy-load',
  title: 'The load in two places',
  said: 'A set, its coax and its antenna. The load stands first at the set, in place of the coax. Then it stands at the far end, in place of the antenna. Gone in both places: it is the antenna. Gone only at the set: the coax. Still there at the set: the set itself.',
  height: 176,
  marks: [
    { text: '1 at the set', at: [8, 18], bold: true },
    { box: [8, 28, 56, 36], look: 'case' },
    { text: 'set', at: [36, 51], anchor: 'middle' },
    {
      line: [
        [64, 46],
        [90, 46],
      ],
    },
    { box: [90, 34, 46, 24], look: 'part' },
    { text: ohms(RADIO_COAX.ohm), at: [113, 51], anchor: 'middle' },
    {
      line: [
        [160, 46],
        [280, 46],
      ],
      look: 'open',
    },
    { text: 'coax off', at: [220, 40], anchor: 'middle' },
    {
      line: [
        [280, 46],
        [280, 20],
      ],
      look: 'open',
    },
    { text: '2 at the antenna end', at: [8, 90], bold: true },
    { box: [8, 100, 56, 36], look: 'case' },
    { text: 'set', at: [36, 123], anchor: 'middle' },
    {
      line: [
        [64, 118],
        [230, 118],
      ],
      look: 'shield',
    },
    { text: 'coax', at: [147, 108], anchor: 'middle' },
    { box: [230, 106, 46, 24], look: 'part' },
    { text: ohms(RADIO_COAX.ohm), at: [253, 123], anchor: 'middle' },
    {
      line: [
        [300, 118],
        [300, 88],
      ],
      look: 'open',
    },
    { text: 'antenna off', at: [312, 82], anchor: 'end' },
    { text: 'Gone in 1 and 2: antenna. Only in 1: coax.', at: [8, 162] },
  ],
}

export const FINDING_DRAWINGS: readonly Drawing[] = [BREAKERS, BUS, LOAD]
