/** Drawings of hardware: a filtered contact cut open, and a filter at a rack tray. General construction, no maker's. */
import type { Drawing } from './types.ts'

const PLANAR: Drawing = {
  id: 'planar-contact',
  title: 'A contact through a planar array, cut open',
  said: 'A contact runs from left to right through a ceramic plate that carries a capacitor around every hole. The inner electrode meets the contact, the outer one runs to the shell all round. A second plate and a ferrite sleeve between the two make a Pi. One crack in the plate, and contacts beside each other suffer together.',
  height: 226,
  marks: [
    { box: [20, 24, 280, 18], look: 'metal' },
    { text: 'shell', at: [34, 18] },
    { box: [20, 160, 280, 18], look: 'metal' },
    { box: [90, 42, 22, 44], look: 'part' },
    { box: [90, 116, 22, 44], look: 'part' },
    { box: [208, 42, 22, 44], look: 'part' },
    { box: [208, 116, 22, 44], look: 'part' },
    { box: [124, 72, 72, 14], look: 'case' },
    { box: [124, 116, 72, 14], look: 'case' },
    { text: 'ferrite', at: [160, 64], anchor: 'middle' },
    {
      line: [
        [10, 101],
        [310, 101],
      ],
      look: 'bar',
    },
    { text: 'contact', at: [24, 94] },
    { text: 'ceramic', at: [101, 196], anchor: 'middle' },
    { text: 'ceramic', at: [219, 196], anchor: 'middle' },
    {
      line: [
        [101, 184],
        [101, 150],
      ],
      look: 'path',
    },
    {
      line: [
        [219, 184],
        [219, 150],
      ],
      look: 'path',
    },
    { text: 'shut all round to the shell', at: [160, 218], anchor: 'middle' },
  ],
}

const TRAY: Drawing = {
  id: 'rack-tray',
  title: 'At a rack tray',
  said: 'A box slides into a tray and mates with a connector fixed at its back. An adapter between box and tray does not fit: the box would stand out. The part goes into the tray’s own connector or into the cable behind it. Its case stands on the tray.',
  height: 176,
  marks: [
    { box: [20, 36, 130, 74], look: 'case' },
    { text: 'box', at: [85, 78], anchor: 'middle' },
    {
      line: [
        [40, 124],
        [132, 124],
      ],
      look: 'path',
    },
    { text: 'slides in', at: [86, 142], anchor: 'middle' },
    { box: [150, 56, 16, 34], look: 'part' },
    { box: [178, 56, 16, 34], look: 'part' },
    { text: 'connector', at: [152, 30], anchor: 'middle' },
    { box: [194, 28, 10, 92], look: 'metal' },
    { text: 'tray', at: [199, 20], anchor: 'middle' },
    { box: [204, 58, 40, 30], look: 'part' },
    { text: 'part', at: [224, 104], anchor: 'middle' },
    {
      line: [
        [244, 73],
        [310, 73],
      ],
    },
    { text: 'cable', at: [284, 66], anchor: 'middle' },
    {
      line: [
        [10, 116],
        [204, 116],
      ],
      look: 'bar',
    },
    { text: 'case of the part on the tray', at: [160, 166], anchor: 'middle' },
  ],
}

export const HARDWARE_DRAWINGS: readonly Drawing[] = [PLANAR, TRAY]
