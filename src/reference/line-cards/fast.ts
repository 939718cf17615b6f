/** Line cards of fast data: LVDS, SpaceWire, USB, Ethernet, IEEE 1394. */
import { DERIVED, memory, PRACTICE, read } from '../line-kinds/cite.ts'
import { ends, notKnown, ohms, open, told } from './told.ts'
import type { CardRow } from './types.ts'

const LEGS = 'each leg to chassis'
const CHOKE_FIRST = told('Never a capacitor before a common-mode choke was tried: the pair has next to no room for it.')
const ONE_LEG = told('Never a part on one leg alone, nor two of different make.')
const FAST_FAULTS: CardRow['faults'] = [
  told('A pair opened too far at a contact: reflections, errors at the highest rate only.'),
  told('A shield left open at one plug: the box radiates and listens there.'),
  told('A suppressor for slow lines fitted in its place.'),
]

const ETHERNET: Pick<CardRow, 'box' | 'line' | 'measure' | 'faults' | 'never'> = {
  box: [ohms('between the legs of a pair: a winding', [undefined, 10]), open(LEGS)],
  line: [ohms('between the legs: the winding of the far box and the wire', [undefined, 30]), open(LEGS)],
  measure: told(
    'The transformers short each pair for a meter. All pairs alike is good; the rest needs a cable tester.',
  ),
  faults: [
    told('Wires of two pairs split at a plug: it links, and loses packets.'),
    told('A shield open or on a pigtail at one plug.'),
    told('A pair with one leg open: it falls back to a lower rate.'),
  ],
  never: [
    CHOKE_FIRST,
    ONE_LEG,
    told('Never more than a third of the room of the port: its chip and magnetics use the rest.'),
  ],
}

const LVDS_WAVE = { is: 'balanced', middleV: 1.2, swingV: 0.35, thresholdV: 0.1, edgeShare: 0.25 } as const
const TERMINATED_IN_BOX: Pick<CardRow, 'box' | 'line' | 'measure' | 'faults' | 'never'> = {
  box: [ends('between the legs of the receiving box', 1, memory('R35')), open(LEGS)],
  line: [ends('between the legs, towards the receiving box', 1, memory('R35')), open(LEGS)],
  measure: told(
    'Power off, static protection on. Between the legs first, then each to chassis: the two must be alike.',
  ),
  faults: FAST_FAULTS,
  never: [CHOKE_FIRST, ONE_LEG],
}

const USB: Pick<CardRow, 'line' | 'measure' | 'faults' | 'never'> = {
  line: [
    notKnown('ohms of the far end: its chips switch the ends and need power', 'by another cable and another device'),
  ],
  measure: told('Power off. Each data wire to the ground of the plug: the two must be alike at a host.'),
  faults: [
    told('A worn socket: it drops out when the plug is touched.'),
    told('Cable too long or too thin: the supply sags and the device restarts.'),
    told('A charger beside it that fills the radio bands with noise.'),
  ],
  never: [ONE_LEG, told('Never take its shield for its ground wire.')],
}
const HOST_OHMS = ohms('each data wire to ground, at a host', [14.25e3, 24.8e3], memory('usb-2', 'pull-down'))

export const FAST_CARDS: Readonly<Record<string, CardRow>> = {
  lvds: {
    ...TERMINATED_IN_BOX,
    carries: told('Picture or serial data at high rate over a short harness, one way for each pair.', memory('R35')),
    wave: { ...LVDS_WAVE, rateHz: 100e6, source: memory('R35', '247 to 454 mV around 1.2 V') },
    ratesHz: [100e6, 400e6, 655e6],
    suppressor: [
      { farads: 5e-12, rateHz: 100e6, source: DERIVED },
      { farads: 2e-12, rateHz: 400e6, source: DERIVED },
      { farads: 1e-12, rateHz: 655e6, source: DERIVED },
    ],
  },
  spacewire: {
    ...TERMINATED_IN_BOX,
    carries: told('Data and strobe, both ways at once, on four pairs.', memory('ecss-spacewire')),
    wave: { ...LVDS_WAVE, rateHz: 200e6, source: memory('ecss-spacewire', 'LVDS levels') },
    ratesHz: [100e6, 200e6],
    suppressor: [{ farads: 2e-12, rateHz: 400e6, source: DERIVED }],
  },
  'usb-low-speed': {
    ...USB,
    carries: told('Keys and pointers: slow data to one device.', memory('usb-2')),
    wave: {
      is: 'balanced',
      middleV: 1.65,
      swingV: 3.3,
      thresholdV: 0.2,
      rateHz: 1.5e6,
      edgeShare: 0.2,
      source: read('R24'),
    },
    box: [HOST_OHMS],
    suppressor: [{ farads: 20e-12, source: PRACTICE }],
  },
  'usb-full-speed': {
    ...USB,
    carries: told('Data loading and small devices.', memory('usb-2')),
    wave: {
      is: 'balanced',
      middleV: 1.65,
      swingV: 3.3,
      thresholdV: 0.2,
      rateHz: 12e6,
      edgeShare: 0.15,
      source: read('R24'),
    },
    box: [HOST_OHMS],
    suppressor: [{ farads: 20e-12, source: PRACTICE }],
  },
  'usb-high-speed': {
    ...USB,
    carries: told(
      'Data loading, cameras and tablets. It starts slowly, then changes to its high rate.',
      memory('usb-2'),
    ),
    wave: {
      is: 'balanced',
      middleV: 0.2,
      swingV: 0.4,
      thresholdV: 0.1,
      rateHz: 480e6,
      edgeShare: 0.25,
      source: memory('usb-2', '400 mV'),
    },
    box: [HOST_OHMS],
    never: [CHOKE_FIRST, ONE_LEG, told('Never take its shield for its ground wire.')],
    suppressor: [{ farads: 2e-12, source: PRACTICE }],
  },
  'ethernet-10base-t': {
    ...ETHERNET,
    carries: told('Packets, one pair each way.', memory('ieee-802-3')),
    wave: {
      is: 'manchester',
      one: 'up',
      leastSentV: 2.2,
      heardFromV: 0.585,
      edgeSec: 20e-9,
      source: memory('ieee-802-3', '2.2 to 2.8 V peak'),
    },
    suppressor: [{ farads: 5e-12, source: PRACTICE }],
  },
  'ethernet-100base-tx': {
    ...ETHERNET,
    carries: told(
      'Packets, one pair each way, in three levels. On large aircraft as a network with fixed shares.',
      memory('arinc-664'),
    ),
    wave: {
      is: 'steps',
      peakV: 1,
      count: 3,
      rateHz: 125e6,
      edgeSec: 4e-9,
      source: memory('ieee-802-3', '0.95 to 1.05 V, edges 3 to 5 ns'),
    },
    suppressor: [{ farads: 5e-12, source: PRACTICE }],
  },
  'ethernet-1000base-t': {
    ...ETHERNET,
    carries: told('Packets on four pairs, both ways at once on each, in five levels.', memory('ieee-802-3')),
    wave: {
      is: 'steps',
      peakV: 1,
      count: 5,
      rateHz: 125e6,
      edgeSec: 4e-9,
      source: memory('ieee-802-3', '1 V, about 4 ns'),
    },
    suppressor: [{ farads: 3e-12, source: PRACTICE }],
  },
  'ieee-1394': {
    carries: told('Mission and vehicle data in a loop of boxes, two pairs to each neighbour.', memory('ieee-1394')),
    wave: notKnown('its levels and edges', 'see the eye between the legs of a good aircraft with a differential probe'),
    box: [
      notKnown(
        'ohms of the port: with or without a transformer',
        'on a good box: a winding reads a few ohms, a chip some tens',
      ),
    ],
    measure: told('Power off, static protection on. All pairs of the port must be alike.'),
    faults: FAST_FAULTS,
    never: [CHOKE_FIRST, ONE_LEG],
    ratesHz: [122.88e6, 491.52e6],
  },
}
