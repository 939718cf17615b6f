/** Drawings that explain the two pictures of every answer: the strip of capacitance and the ladder of volts. */
import type { Drawing } from './types.ts'

const STRIP: Drawing = {
  id: 'strip-explained',
  title: 'How to read the strip',
  said: 'A line of capacitance from small to large. From the left comes the need: below it the noise is not taken down enough. From the right comes the ceiling: above it the signal suffers. What lies between is the window. Where the two cross there is no capacitor that does both.',
  height: 216,
  marks: [
    { text: 'open', at: [10, 18], bold: true },
    {
      line: [
        [20, 60],
        [300, 60],
      ],
    },
    { box: [110, 48, 100, 24], look: 'case' },
    { text: 'window', at: [160, 64], anchor: 'middle' },
    {
      line: [
        [30, 36],
        [108, 36],
      ],
      look: 'path',
    },
    { text: 'need', at: [80, 28], anchor: 'middle' },
    {
      line: [
        [290, 36],
        [212, 36],
      ],
      look: 'path',
    },
    { text: 'ceiling', at: [260, 28], anchor: 'middle' },
    { text: 'small', at: [20, 92] },
    { text: 'large', at: [300, 92], anchor: 'end' },
    { text: 'shut', at: [10, 124], bold: true },
    {
      line: [
        [20, 166],
        [300, 166],
      ],
    },
    {
      line: [
        [30, 142],
        [198, 142],
      ],
      look: 'path',
    },
    { text: 'need', at: [100, 134], anchor: 'middle' },
    {
      line: [
        [290, 156],
        [122, 156],
      ],
      look: 'path',
    },
    { text: 'ceiling', at: [250, 148], anchor: 'middle' },
    { text: 'no capacitor does both', at: [160, 200], anchor: 'middle' },
  ],
}

const LADDER: Drawing = {
  id: 'ladder-explained',
  title: 'How to read the ladder',
  said: 'Two rails of volts, low below and high above. On the left what comes: the line’s own volts, then the supply’s long surge, then the clamp of the suppressor. On the right what holds: the stand-off above line and supply. Then the rating of the capacitor and the withstand of the circuit, above the clamp. Every rung on the left has to lie below the rung on the right that has to hold it.',
  height: 246,
  marks: [
    { text: 'what comes', at: [110, 18], anchor: 'end', bold: true },
    { text: 'what holds', at: [210, 18], bold: true },
    {
      line: [
        [120, 26],
        [120, 226],
      ],
      look: 'bar',
    },
    {
      line: [
        [200, 26],
        [200, 226],
      ],
      look: 'bar',
    },
    {
      line: [
        [104, 206],
        [120, 206],
      ],
    },
    { text: 'line in work', at: [98, 210], anchor: 'end' },
    {
      line: [
        [104, 176],
        [120, 176],
      ],
    },
    { text: 'surge of supply', at: [98, 180], anchor: 'end' },
    {
      line: [
        [104, 96],
        [120, 96],
      ],
    },
    { text: 'clamp at peak', at: [98, 100], anchor: 'end' },
    {
      line: [
        [200, 148],
        [216, 148],
      ],
    },
    { text: 'stand-off', at: [222, 152] },
    {
      line: [
        [200, 70],
        [216, 70],
      ],
    },
    { text: 'capacitor’s', at: [222, 74] },
    {
      line: [
        [200, 42],
        [216, 42],
      ],
    },
    { text: 'circuit’s', at: [222, 46] },
    {
      line: [
        [122, 176],
        [198, 150],
      ],
      look: 'path',
    },
    {
      line: [
        [122, 96],
        [198, 72],
      ],
      look: 'path',
    },
    { text: 'volts', at: [160, 240], anchor: 'middle' },
  ],
}

export const EXPLAINED_DRAWINGS: readonly Drawing[] = [STRIP, LADDER]
