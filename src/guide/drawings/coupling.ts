/** Drawings of how currents run and how noise gets across: the two modes, the path through a bond, two cables side by side. */
import type { Drawing } from './types.ts'

const MODES: Drawing = {
  id: 'two-modes',
  title: 'Two ways a current runs on a pair',
  said: 'Two boxes joined by two wires, over structure. Above, common mode: both wires carry it the same way, and it comes back through structure. Below, differential mode: out on one wire, back on the other, and structure carries nothing.',
  height: 256,
  marks: [
    { text: 'common', at: [160, 16], anchor: 'middle', bold: true },
    { box: [10, 26, 50, 54], look: 'case' },
    { box: [260, 26, 50, 54], look: 'case' },
    {
      line: [
        [60, 42],
        [260, 42],
      ],
      look: 'path',
    },
    {
      line: [
        [60, 62],
        [260, 62],
      ],
      look: 'path',
    },
    {
      line: [
        [10, 108],
        [310, 108],
      ],
      look: 'bar',
    },
    {
      line: [
        [285, 80],
        [285, 98],
        [35, 98],
        [35, 80],
      ],
      look: 'path',
    },
    { text: 'back through structure', at: [160, 90], anchor: 'middle' },
    { text: 'differential', at: [160, 146], anchor: 'middle', bold: true },
    { box: [10, 156, 50, 54], look: 'case' },
    { box: [260, 156, 50, 54], look: 'case' },
    {
      line: [
        [60, 172],
        [260, 172],
      ],
      look: 'path',
    },
    {
      line: [
        [260, 192],
        [60, 192],
      ],
      look: 'path',
    },
    {
      line: [
        [10, 232],
        [310, 232],
      ],
      look: 'bar',
    },
    { text: 'structure carries nothing', at: [160, 250], anchor: 'middle' },
  ],
}

const BOND: Drawing = {
  id: 'bond-path',
  title: 'The way of the filtered current',
  said: 'Noise comes along a wire to a filter in the wall of a box. The capacitor sends it to the shell and on to the case. From there it goes through the bond to structure. Whatever ohms and henries lie on that way stay common to every contact.',
  height: 206,
  marks: [
    {
      line: [
        [10, 54],
        [96, 54],
      ],
      look: 'path',
    },
    { text: 'noise', at: [12, 44] },
    { box: [96, 30, 40, 50], look: 'part' },
    { text: 'filter', at: [116, 22], anchor: 'middle' },
    { box: [136, 20, 164, 92], look: 'case' },
    { text: 'the box', at: [218, 60], anchor: 'middle' },
    {
      line: [
        [136, 54],
        [180, 54],
      ],
    },
    {
      line: [
        [116, 80],
        [116, 100],
        [150, 104],
        [222, 104],
        [222, 166],
      ],
      look: 'path',
    },
    { text: 'shell to case', at: [106, 108], anchor: 'end' },
    {
      line: [
        [210, 112],
        [210, 168],
      ],
      look: 'bar',
    },
    { text: 'bond', at: [236, 144] },
    {
      line: [
        [10, 170],
        [310, 170],
      ],
      look: 'bar',
    },
    { text: 'structure', at: [12, 192] },
  ],
}

const HARNESS: Drawing = {
  id: 'harness-coupling',
  title: 'Two wires side by side',
  said: 'Above, electric coupling: the volts of one wire drive a current through the capacitance between them. A shield at one end takes it. Below, magnetic coupling: the current of one loop induces volts in the loop beside it. Twisting and distance help, a shield at one end does not.',
  height: 276,
  marks: [
    { text: 'electric: by volts', at: [160, 16], anchor: 'middle', bold: true },
    {
      line: [
        [10, 40],
        [310, 40],
      ],
      look: 'path',
    },
    { text: 'noisy', at: [12, 32] },
    { capacitor: [110, 40] },
    { capacitor: [210, 40] },
    {
      line: [
        [10, 80],
        [310, 80],
      ],
    },
    { text: 'quiet', at: [12, 96] },
    {
      line: [
        [10, 118],
        [310, 118],
      ],
      look: 'bar',
    },
    { text: 'magnetic: by amperes', at: [160, 156], anchor: 'middle', bold: true },
    {
      line: [
        [20, 218],
        [20, 176],
        [300, 176],
        [300, 194],
      ],
      look: 'path',
    },
    { text: 'noisy loop', at: [160, 190], anchor: 'middle' },
    { ring: [90, 206, 22, 26] },
    { ring: [230, 206, 22, 26] },
    {
      line: [
        [20, 244],
        [20, 224],
        [300, 224],
        [300, 244],
      ],
    },
    { text: 'quiet loop', at: [160, 240], anchor: 'middle' },
    {
      line: [
        [10, 256],
        [310, 256],
      ],
      look: 'bar',
    },
  ],
}

export const COUPLING_DRAWINGS: readonly Drawing[] = [MODES, BOND, HARNESS]
