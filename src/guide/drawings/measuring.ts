/** Drawings of tests: where the leads, the clamp and the loads go. */
import type { Drawing } from './types.ts'

const BOND: Drawing = {
  id: 'bond-four-wire',
  title: 'Four wires at a bond',
  said: 'A box stands over structure, joined by a short wide strap. Two current leads clamp far outside, one on the case and one on the structure. Two voltage leads touch close to the two ends of the strap. The meter divides volts by amperes, so its own leads fall out.',
  height: 180,
  marks: [
    { box: [20, 50, 100, 66], look: 'case' },
    { text: 'case', at: [70, 88], anchor: 'middle' },
    {
      line: [
        [10, 150],
        [310, 150],
      ],
      look: 'bar',
    },
    { text: 'structure', at: [12, 170] },
    {
      line: [
        [120, 108],
        [150, 148],
      ],
      look: 'bar',
    },
    { text: 'strap', at: [128, 142], anchor: 'end' },
    { box: [206, 24, 104, 60], look: 'part' },
    { text: 'milliohms', at: [258, 44], anchor: 'middle', bold: true },
    { text: 'V', at: [222, 74], anchor: 'middle' },
    { text: 'I', at: [294, 74], anchor: 'middle' },
    {
      line: [
        [60, 50],
        [60, 14],
        [270, 14],
        [270, 24],
      ],
    },
    { text: 'current', at: [66, 10] },
    {
      line: [
        [118, 96],
        [160, 60],
        [206, 60],
      ],
    },
    {
      line: [
        [154, 148],
        [190, 74],
        [206, 74],
      ],
    },
    { text: 'volts', at: [150, 56] },
    {
      line: [
        [290, 84],
        [290, 148],
      ],
    },
    { text: 'current', at: [286, 130], anchor: 'end' },
    { dot: [60, 50] },
    { dot: [118, 96] },
    { dot: [154, 148] },
    { dot: [290, 148] },
    { text: 'at most five times as long as wide', at: [100, 170] },
  ],
}

const CLAMP: Drawing = {
  id: 'clamp-places',
  title: 'Where the clamp goes',
  said: 'Three places on a cable of two wires. First over both wires: if that helps, the noise is alike on both, common mode. Then over each wire alone: if each alone helps and both together do nothing, it is differential. Then everything again a quarter wave along the cable.',
  height: 210,
  marks: [
    { text: '1 whole cable', at: [8, 20], bold: true },
    { box: [252, 32, 60, 40], look: 'case' },
    { text: 'victim', at: [282, 57], anchor: 'middle' },
    {
      line: [
        [8, 46],
        [252, 46],
      ],
    },
    {
      line: [
        [8, 58],
        [252, 58],
      ],
    },
    { ring: [216, 52, 8, 18] },
    { text: 'helps: common', at: [8, 86] },
    { text: '2 each wire alone', at: [8, 114], bold: true },
    { box: [252, 124, 60, 40], look: 'case' },
    { text: 'victim', at: [282, 149], anchor: 'middle' },
    {
      line: [
        [8, 138],
        [252, 138],
      ],
    },
    {
      line: [
        [8, 154],
        [252, 154],
      ],
    },
    { ring: [216, 138, 8, 9] },
    { ring: [190, 154, 8, 9] },
    { text: 'each helps, both nothing: differential', at: [8, 180] },
    { text: '3 all of it again a quarter wave away', at: [8, 202], bold: true },
    { ring: [96, 52, 8, 18] },
    {
      line: [
        [208, 82],
        [104, 82],
      ],
      look: 'path',
    },
    { text: 'λ/4', at: [156, 98], anchor: 'middle' },
  ],
}

const BATTERY: Drawing = {
  id: 'battery-test',
  title: 'The box on its own battery',
  said: 'The feed of the ship to the box is open. A battery with a fuse at its plus feeds the box. First its minus goes to the minus of the box only, off the airframe. Then the minus is joined to the airframe as well. Gone both times: the supply. Back with the minus on the airframe: the ground.',
  height: 200,
  marks: [
    { box: [190, 40, 100, 92], look: 'case' },
    { text: 'victim', at: [240, 90], anchor: 'middle', bold: true },
    { text: '+', at: [196, 62] },
    { text: '−', at: [196, 122] },
    { text: 'ship’s feed, open', at: [8, 18] },
    {
      line: [
        [8, 32],
        [60, 32],
      ],
    },
    {
      line: [
        [60, 32],
        [84, 20],
      ],
    },
    {
      line: [
        [90, 32],
        [160, 32],
        [160, 58],
      ],
    },
    { dot: [60, 32] },
    { dot: [90, 32] },
    { box: [14, 70, 60, 44], look: 'part' },
    { text: 'battery', at: [44, 97], anchor: 'middle' },
    {
      line: [
        [74, 78],
        [96, 78],
      ],
    },
    { box: [96, 70, 34, 16], look: 'part' },
    { text: 'fuse', at: [113, 64], anchor: 'middle' },
    {
      line: [
        [130, 78],
        [160, 78],
        [160, 58],
        [190, 58],
      ],
    },
    {
      line: [
        [74, 106],
        [160, 106],
        [160, 118],
        [190, 118],
      ],
    },
    { text: '1 minus off the airframe', at: [8, 142] },
    {
      line: [
        [160, 118],
        [160, 166],
      ],
      look: 'open',
    },
    { text: '2 then joined to it', at: [168, 156] },
    {
      line: [
        [8, 168],
        [312, 168],
      ],
      look: 'bar',
    },
    { text: 'airframe', at: [8, 190] },
  ],
}

export const MEASURING_DRAWINGS: readonly Drawing[] = [BOND, CLAMP, BATTERY]
