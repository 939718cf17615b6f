/** Drawings of how shields, grounds and parts are fitted. */
import { TAIL, tailOhm } from '../figures.ts'
import { hertz, metres } from '../print.ts'
import type { Drawing, Mark } from './types.ts'

const wire = (
  ...line: readonly [readonly [number, number], readonly [number, number], ...(readonly [number, number])[]]
): Mark => ({
  line,
})

const SHIELD: Drawing = {
  id: 'shield-ends',
  title: 'A tail, and all round',
  said: `Above, a shield that ends before the plug and goes to the shell by a thin tail. At ${hertz(TAIL.hz)}, ${metres(TAIL.metres)} of tail are ${tailOhm()}. The current of the shield couples into the wires. Below, the shield meets the back-shell all round, and the current stays outside.`,
  height: 204,
  marks: [
    { text: `A tail of ${metres(TAIL.metres)}: ${tailOhm()} at ${hertz(TAIL.hz)}`, at: [8, 18], bold: true },
    { box: [236, 30, 76, 52], look: 'metal' },
    { text: 'shell', at: [274, 60], anchor: 'middle' },
    { box: [8, 40, 130, 32], look: 'part' },
    { text: 'shield', at: [16, 34] },
    wire([8, 56], [236, 56]),
    {
      line: [
        [138, 70],
        [170, 88],
        [210, 80],
        [236, 76],
      ],
      look: 'wire',
    },
    { text: 'tail', at: [176, 100] },
    {
      line: [
        [60, 92],
        [130, 92],
      ],
      look: 'path',
    },
    { text: 'current', at: [8, 96] },
    { text: 'All round: the current stays outside', at: [8, 128], bold: true },
    { box: [236, 138, 76, 52], look: 'metal' },
    { text: 'shell', at: [274, 168], anchor: 'middle' },
    { box: [8, 148, 200, 32], look: 'part' },
    {
      line: [
        [208, 148],
        [236, 142],
      ],
      look: 'bar',
    },
    {
      line: [
        [208, 180],
        [236, 186],
      ],
      look: 'bar',
    },
    wire([8, 164], [236, 164]),
    {
      line: [
        [60, 196],
        [196, 196],
      ],
      look: 'path',
    },
  ],
}

const AUDIO: Drawing = {
  id: 'audio-ground',
  title: 'One ground for the audio',
  said: 'An audio panel with the only audio ground, and a jack in the skin. The jack stands on insulating washers. If its frame touches the skin, power current in the skin flows through the audio return: a loop.',
  height: 200,
  marks: [
    { box: [8, 34, 84, 60], look: 'case' },
    { text: 'audio panel', at: [50, 68], anchor: 'middle' },
    wire([92, 48], [236, 48]),
    { text: 'signal', at: [164, 40], anchor: 'middle' },
    wire([92, 80], [236, 80]),
    { text: 'return', at: [164, 74], anchor: 'middle' },
    { box: [236, 36, 50, 56], look: 'part' },
    { text: 'jack', at: [261, 68], anchor: 'middle' },
    wire([50, 94], [50, 150]),
    { dot: [50, 150] },
    { text: 'the one ground', at: [58, 118] },
    {
      line: [
        [8, 152],
        [312, 152],
      ],
      look: 'bar',
    },
    { text: 'skin', at: [8, 172] },
    {
      line: [
        [261, 92],
        [261, 150],
      ],
      look: 'open',
    },
    { text: 'never here', at: [254, 128], anchor: 'end', bold: true },
    {
      line: [
        [240, 140],
        [90, 140],
      ],
      look: 'path',
    },
    { text: 'power current in the skin would take the return', at: [8, 192] },
    { text: 'washers', at: [294, 30], anchor: 'end' },
  ],
}

const WAY: Drawing = {
  id: 'way-round',
  title: 'Which way round',
  said: 'The inductor faces the lower impedance, the capacitor the higher. Above, noise from a low impedance into a high one: inductor first, then the capacitor to the shell, LC. Below, noise from a high impedance into a low one: capacitor first, then the inductor, CL.',
  height: 220,
  marks: [
    { text: 'LC: from a low into a high impedance', at: [8, 18], bold: true },
    { box: [8, 34, 64, 40], look: 'case' },
    { text: 'low', at: [40, 59], anchor: 'middle' },
    wire([72, 54], [110, 54]),
    { coil: [110, 54] },
    wire([150, 54], [248, 54]),
    { capacitor: [200, 54] },
    { box: [248, 34, 64, 40], look: 'case' },
    { text: 'high', at: [280, 59], anchor: 'middle' },
    {
      line: [
        [8, 96],
        [312, 96],
      ],
      look: 'bar',
    },
    { text: 'shell', at: [8, 114] },
    {
      line: [
        [78, 34],
        [108, 34],
      ],
      look: 'path',
    },
    { text: 'noise', at: [112, 38] },
    { text: 'CL: from a high into a low impedance', at: [8, 136], bold: true },
    { box: [8, 150, 64, 40], look: 'case' },
    { text: 'high', at: [40, 175], anchor: 'middle' },
    wire([72, 170], [170, 170]),
    { capacitor: [110, 170] },
    { coil: [170, 170] },
    wire([210, 170], [248, 170]),
    { box: [248, 150, 64, 40], look: 'case' },
    { text: 'low', at: [280, 175], anchor: 'middle' },
    {
      line: [
        [8, 212],
        [312, 212],
      ],
      look: 'bar',
    },
    {
      line: [
        [78, 152],
        [104, 152],
      ],
      look: 'path',
    },
  ],
}

const SIDE: Drawing = {
  id: 'suppressor-side',
  title: 'Ahead of the filter, or behind it',
  said: 'Above, the suppressor stands at the cable side ahead of the filter, with the shortest lead to the shell. The capacitor sees the clamp and its ring-up. Below, it stands behind the filter at the circuit. The circuit is clamped, and the capacitor at the connector sees the whole surge.',
  height: 224,
  marks: [
    { text: 'Ahead: the filter sees the clamp', at: [8, 18], bold: true },
    { text: 'cable', at: [8, 46] },
    wire([8, 54], [150, 54]),
    { suppressor: [70, 54] },
    { coil: [150, 54] },
    wire([190, 54], [260, 54]),
    { capacitor: [220, 54] },
    { box: [260, 36, 52, 36], look: 'case' },
    { text: 'circuit', at: [286, 58], anchor: 'middle' },
    {
      line: [
        [8, 96],
        [312, 96],
      ],
      look: 'bar',
    },
    { text: 'shortest lead', at: [84, 80] },
    { text: 'shell', at: [8, 114] },
    { text: 'Behind: the capacitor sees the surge', at: [8, 138], bold: true },
    { text: 'cable', at: [8, 162] },
    wire([8, 170], [120, 170]),
    { capacitor: [70, 170] },
    { coil: [120, 170] },
    wire([160, 170], [260, 170]),
    { suppressor: [220, 170] },
    { box: [260, 152, 52, 36], look: 'case' },
    { text: 'circuit', at: [286, 174], anchor: 'middle' },
    {
      line: [
        [8, 212],
        [312, 212],
      ],
      look: 'bar',
    },
  ],
}

const PLACES: Drawing = {
  id: 'placements',
  title: 'Where a part can stand',
  said: 'From left to right along one cable. First at the end of the source, then as a choke around the whole cable. Then an adapter in line on the cable side. Then the back-shell of the plug, the receptacle of the box, and a plate or board right behind it. The nearer to the case wall, the better the part works.',
  height: 196,
  marks: [
    { box: [4, 60, 46, 56], look: 'case' },
    { text: 'source', at: [27, 92], anchor: 'middle' },
    {
      line: [
        [50, 88],
        [150, 88],
      ],
      look: 'shield',
    },
    { ring: [96, 88, 8, 18] },
    { box: [150, 72, 30, 32], look: 'part' },
    {
      line: [
        [180, 88],
        [196, 88],
      ],
      look: 'shield',
    },
    { box: [196, 70, 22, 36], look: 'part' },
    { box: [218, 66, 12, 44], look: 'part' },
    { box: [230, 40, 86, 96], look: 'case' },
    { box: [236, 62, 10, 52], look: 'part' },
    { text: 'box', at: [284, 92], anchor: 'middle', bold: true },
    { text: '1', at: [44, 52], anchor: 'middle', bold: true },
    { text: '2', at: [96, 62], anchor: 'middle', bold: true },
    { text: '3', at: [165, 62], anchor: 'middle', bold: true },
    { text: '4', at: [206, 62], anchor: 'middle', bold: true },
    { text: '5', at: [223, 60], anchor: 'middle', bold: true },
    { text: '6', at: [241, 58], anchor: 'middle', bold: true },
    { text: '1 source end, 2 choke on the whole cable,', at: [4, 156] },
    { text: '3 adapter in line, 4 back-shell,', at: [4, 172] },
    { text: '5 receptacle, 6 plate or board behind it', at: [4, 188] },
  ],
}

export const FITTING_DRAWINGS: readonly Drawing[] = [SHIELD, AUDIO, WAY, SIDE, PLACES]
