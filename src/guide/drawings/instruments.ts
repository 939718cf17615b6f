/** Drawings of what instruments show and where they are carried. */
import { curve, type Frame, foot } from './curves.ts'
import type { Drawing, Mark } from './types.ts'

const PROBE: Drawing = {
  id: 'probe-readings',
  title: 'The probe over both, and over one',
  said: 'Two pictures of a pair with arrows for the current. On the left both arrows point the same way: the probe over both reads twice one, and that is common. On the right they point against each other: the probe over both reads nothing, and that is differential.',
  height: 150,
  marks: [
    { text: 'common', at: [76, 16], anchor: 'middle', bold: true },
    {
      line: [
        [10, 50],
        [142, 50],
      ],
      look: 'path',
    },
    {
      line: [
        [10, 70],
        [142, 70],
      ],
      look: 'path',
    },
    { ring: [60, 60, 14, 24] },
    { text: 'both: twice one', at: [76, 112], anchor: 'middle' },
    { text: 'one: half of it', at: [76, 132], anchor: 'middle' },
    { text: 'differential', at: [244, 16], anchor: 'middle', bold: true },
    {
      line: [
        [178, 50],
        [310, 50],
      ],
      look: 'path',
    },
    {
      line: [
        [310, 70],
        [178, 70],
      ],
      look: 'path',
    },
    { ring: [228, 60, 14, 24] },
    { text: 'both: nothing', at: [244, 112], anchor: 'middle' },
    { text: 'one: all of it', at: [244, 132], anchor: 'middle' },
  ],
}

const WALK: Drawing = {
  id: 'receiver-walk',
  title: 'The walk around',
  said: 'An aircraft from above with a dashed path around it, well outside the propeller. Stops are marked at the cowling, at each wing tip lamp, at the tail lamp and towards the hangar. Louder at one stop is the way to go.',
  height: 236,
  marks: [
    { box: [146, 40, 28, 150], look: 'case' },
    { box: [40, 88, 106, 26], look: 'case' },
    { box: [174, 88, 106, 26], look: 'case' },
    { box: [120, 176, 80, 14], look: 'case' },
    {
      line: [
        [122, 38],
        [198, 38],
      ],
      look: 'bar',
    },
    { text: 'keep clear', at: [160, 26], anchor: 'middle', bold: true },
    {
      line: [
        [96, 58],
        [26, 76],
        [14, 122],
        [88, 146],
        [92, 214],
        [228, 214],
        [232, 146],
        [306, 122],
        [294, 76],
        [224, 58],
      ],
      look: 'open',
    },
    { dot: [96, 58] },
    { text: 'cowling', at: [88, 52], anchor: 'end' },
    { dot: [14, 122] },
    { text: 'lamp', at: [30, 162] },
    { dot: [306, 122] },
    { text: 'lamp', at: [290, 162], anchor: 'end' },
    { dot: [160, 214] },
    { text: 'tail lamp', at: [160, 230], anchor: 'middle' },
    { dot: [232, 180] },
    { text: 'hangar', at: [242, 184] },
  ],
}

const SHAPES: readonly { readonly name: string; readonly says: string; readonly height: (share: number) => number }[] =
  [
    { name: 'one line', says: 'a clock, a carrier', height: (share) => floor(share) + peak(share, 0.5) },
    {
      name: 'equal steps',
      says: 'a converter',
      height: (share) => floor(share) + [0.12, 0.31, 0.5, 0.69, 0.88].reduce((sum, at) => sum + peak(share, at), 0),
    },
    { name: 'floor raised', says: 'sparks, lamps, static', height: (share) => 0.5 + ripple(share) },
    {
      name: 'a hill that stays',
      says: 'a cable in resonance',
      height: (share) => floor(share) + 0.6 / (1 + ((share - 0.5) / 0.09) ** 2),
    },
  ]

/** Small unevenness, the same each time. */
const ripple = (share: number): number => 0.03 * Math.sin(share * 97) + 0.03 * Math.sin(share * 61 + 1)
const floor = (share: number): number => 0.1 + ripple(share)
const peak = (share: number, at: number): number => 0.75 * Math.exp(-(((share - at) / 0.012) ** 2))

function shapeMarks(index: number): readonly Mark[] {
  const shape = SHAPES[index]
  if (shape === undefined) return []
  const frame: Frame = { x: index % 2 === 0 ? 8 : 168, y: index < 2 ? 24 : 140, width: 144, height: 60 }
  const middle = frame.x + frame.width / 2
  return [
    { text: shape.name, at: [middle, frame.y - 8], anchor: 'middle', bold: true },
    foot(frame),
    curve(frame, shape.height, 'wire', 200),
    { text: shape.says, at: [middle, frame.y + frame.height + 18], anchor: 'middle' },
  ]
}

const SPECTRUM: Drawing = {
  id: 'spectrum-shapes',
  title: 'Four shapes of a spectrum',
  said: 'Four small spectra. One narrow line over a low floor: a clock or a carrier. Lines at equal steps: a converter. The whole floor raised: sparks, lamps or static. One broad hill that stays where it is: a cable in resonance.',
  height: 232,
  marks: SHAPES.flatMap((_, index) => shapeMarks(index)),
}

export const INSTRUMENT_DRAWINGS: readonly Drawing[] = [PROBE, WALK, SPECTRUM]
