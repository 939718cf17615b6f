/** One page an instrument: how it is set, where it is put, what a good and a bad picture look like, and what fools people. */
import { clampFallDb } from '../../../calc/network/clamp.ts'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { BOND_NOTE } from '../../../reference/constructions.ts'
import {
  BOND_TESTER,
  CLAMP_FERRITE,
  CURRENT_PROBE,
  HAND_METER,
  HANDHELD,
  PHONE_AUDIO,
  RISE_BANDWIDTH,
  SCOPE_PROBE,
  WIRE_H_PER_M,
} from '../../../reference/instruments.ts'
import { LINE_KINDS } from '../../../reference/line-kinds.ts'
import { STEADY_28_VDC } from '../../../reference/supply-steady.ts'
import type { DrawingId } from '../../drawing-ids.ts'
import type { BookDrawingId } from '../../drawings/book-ids.ts'
import type { Tool } from '../../investigation.ts'
import type { Block, BookLink, BookPage } from '../types.ts'
import { coilAtSwitchOff, edgeBySpringAndLead, leadRingsAtHz, supplyAtStart } from './scope-pictures.ts'

const PRACTICE = { id: 'practice', standing: 'practice' } as const
const DERIVED = { id: 'derived', standing: 'derived' } as const

const ohms = (si: number): string => formatQuantity(si, 'resistance', 3)
const hertz = (si: number): string => formatQuantity(si, 'frequency', 3)
const decibels = (si: number): string => formatQuantity(si, 'decibel', 3)
const seconds = (si: number): string => formatQuantity(si, 'time', 2)
const metres = (si: number): string => formatQuantity(si, 'length', 2)

/** Volts of the wires against each other: current over both is twice that of one, in decibels. */
const BOTH_OVER_ONE_DB = 20 * Math.log10(2)

type Instrument = {
  readonly tools: readonly Tool[]
  readonly id: string
  readonly title: string
  readonly inShort: string
  readonly words: readonly string[]
  readonly set: readonly (readonly [label: string, text: string])[]
  readonly pictures: readonly Block[]
  readonly fools: readonly string[]
  readonly never?: readonly string[]
  readonly links: readonly BookLink[]
}

const waveform = (one: Extract<Block, { is: 'waveform' }>['waveform']): Block => ({ is: 'waveform', waveform: one })
const drawing = (id: DrawingId | BookDrawingId): Block => ({ is: 'drawing', drawing: id })

/** Ohms of the ends of a two-wire bus that is whole: half its line's impedance. */
function busOhm(kindId: string): number {
  const z0Ohm = LINE_KINDS.find(({ id }) => id === kindId)?.z0Ohm
  if (z0Ohm === undefined) throw new RangeError(`no impedance of "${kindId}"`)
  return z0Ohm / 2
}

function meter(): Instrument {
  const whole = busOhm('can')
  return {
    tools: ['multimeter'],
    id: 'test-with-multimeter',
    title: 'The meter',
    inShort: 'Ohms on a dead line, millivolts between grounds. Never a proof at radio frequencies.',
    words: ['multimeter', 'ohmmeter', 'DMM', 'continuity', 'millivolts', 'resistance'],
    set: [
      ['Range', 'Lowest ohms for a bus or a joint; millivolts, direct and then alternating, between grounds.'],
      [
        'Bandwidth',
        `Alternating ranges see up to some ${hertz(HAND_METER.alternatingToHz[0])} to ${hertz(HAND_METER.alternatingToHz[1])}. Above that they show nothing or anything.`,
      ],
      ['Coupling', 'Direct first: it names the line. Alternating second: it names the hum.'],
      [
        'Where',
        'Ohms only with the line dead, at the connector pins, both ways round. Millivolts with everything running.',
      ],
    ],
    pictures: [
      drawing('bus-ohms'),
      {
        is: 'rows',
        rows: [
          {
            label: 'Good',
            text: `A whole two-wire bus reads ${ohms(whole)}: two ends of ${ohms(2 * whole)} side by side.`,
          },
          {
            label: 'Bad',
            text: `${ohms(2 * whole)}: one end is off. Much less than ${ohms(whole)}: one end too many, or a short.`,
          },
        ],
      },
    ],
    fools: [
      `Its leads read ${ohms(HAND_METER.leadsOhm[0])} to ${ohms(HAND_METER.leadsOhm[1])}: hold the tips together and take that off.`,
      'Fingers on both tips read as a leak.',
      'Two ways round give two readings: a diode or a film of corrosion, not a resistor.',
      'A radio keyed nearby makes it show volts that are not there.',
      'A good reading at rest says nothing of a joint that opens when shaken.',
    ],
    never: ['Ohms on a live line.', 'Ohms on pyrotechnic or fuel-quantity lines.'],
    links: [{ page: 'bus-tests' }, { page: 'audio-ground' }],
  }
}

function bondTester(): Instrument {
  return {
    tools: ['milliohm meter'],
    id: 'test-with-milliohm-meter',
    title: 'The milliohm meter',
    inShort: 'Four wires at a bond. It proves the joint, not the path.',
    words: ['bond tester', 'bonding meter', 'milliohm', 'four wire', 'Kelvin'],
    set: [
      ['Range', `Lowest, ${formatQuantity(BOND_TESTER.leastA, 'current', 1)} or more: less does not break the film.`],
      ['Coupling', 'Both polarities, and the mean of the two.'],
      ['Where', 'Current clips far outside, voltage tips close to the joint, on bare metal.'],
      ['While it reads', 'Flex the strap and knock the joint. A good one does not move.'],
    ],
    pictures: [
      drawing('bond-four-wire'),
      {
        is: 'rows',
        rows: [
          {
            label: 'Good',
            text: `${ohms(BOND_NOTE.ohm)} or less where that is called for, steady; the manual’s limit wins.`,
          },
          { label: 'Bad', text: 'It jumps when flexed, or differs with polarity.' },
        ],
      },
    ],
    fools: [
      `With two wires its own leads are in it: some ${ohms(BOND_TESTER.leadsOhm)}, forty bonds’ worth.`,
      `At ${hertz(1e7)} a strap of ${metres(0.05)} is ${ohms(2 * Math.PI * 1e7 * WIRE_H_PER_M.henriesPerM * 0.05)} whatever the milliohms say.`,
      'Another bolt in parallel hides the bad joint: read it with that path open where the manual allows.',
    ],
    never: ['Near fuel vapour, except with a tester approved for that zone.'],
    links: [{ page: 'bond-four-wire' }, { page: 'lead-and-bond' }],
  }
}

function oscilloscope(): Instrument {
  const ringHz = leadRingsAtHz(SCOPE_PROBE.groundLeadM)
  const springHz = leadRingsAtHz(SCOPE_PROBE.springM)
  const [good, bad] = edgeBySpringAndLead(5)
  const { nominalV, leastV } = STEADY_28_VDC
  const [dipGood, dipBad] = supplyAtStart({ busV: nominalV, leastV, spanSec: 0.5 })
  const [coilGood, coilBad] = coilAtSwitchOff({ busV: nominalV, kickV: nominalV * 10, heldV: nominalV + 1 })
  return {
    tools: ['oscilloscope'],
    id: 'test-with-oscilloscope',
    title: 'The oscilloscope',
    inShort: 'Dips, kicks and edges, single shot, at the pins of the box that suffers.',
    words: ['scope', 'oscilloscope', 'single shot', 'trigger', 'probe', 'ringing'],
    set: [
      ['Range', `Probe dividing by ${SCOPE_PROBE.divides}; rated for the kick of a coil.`],
      [
        'Bandwidth',
        `Rise time ${RISE_BANDWIDTH.product} over bandwidth: ${hertz(1e8)} shows edges down to ${seconds(RISE_BANDWIDTH.product / 1e8)}. For a dip of the supply switch the limit on.`,
      ],
      [
        'Coupling',
        'Direct for dips and levels, alternating for ripple. Its clip is on chassis: use two probes and subtract for a pair.',
      ],
      ['Trigger', 'Single shot on the thing that happens, a little below or above normal.'],
      ['Where', 'At the pins of the victim, ground to the victim’s own return.'],
    ],
    pictures: [
      waveform(good),
      waveform(bad),
      waveform(dipGood),
      waveform(dipBad),
      waveform(coilGood),
      waveform(coilBad),
    ],
    fools: [
      `A ground lead of ${metres(SCOPE_PROBE.groundLeadM)} rings at ${hertz(ringHz)} with the probe’s ${formatQuantity(SCOPE_PROBE.inputF, 'capacitance', 2)}. With a spring it would be ${hertz(springHz)}.`,
      'Probe tip and clip on the same point: whatever still shows is picked up by the lead.',
      'The probe itself loads a fast pair and may cure the fault while it is there.',
      'A mains scope grounds what its clip touches: use a battery one on a floating return.',
    ],
    never: [
      'Unrated probes on ignition, strobe or coil circuits.',
      'A probe on flight- or engine-control lines in service.',
    ],
    links: [{ page: 'bus-dip' }, { check: 'surge' }],
  }
}

function currentProbe(): Instrument {
  const [low, high] = CURRENT_PROBE.transferOhm
  return {
    tools: ['current probe'],
    id: 'test-with-current-probe',
    title: 'The current probe',
    inShort: 'Which cable carries it, in which mode, and from which end.',
    words: ['current clamp', 'RF current probe', 'transfer impedance', 'common mode', 'dBµA'],
    set: [
      [
        'Range',
        `Volts divided by its transfer impedance, ${ohms(low)} to ${ohms(high)} in its band; use the curve it came with.`,
      ],
      ['Bandwidth', 'The same each time, written down. Another bandwidth is another reading.'],
      ['Coupling', 'Closed all round, its case touching nothing.'],
      ['Where', 'Over the whole cable, then over both wires, then over one. At the victim, then at the source.'],
    ],
    pictures: [
      drawing('clamp-places'),
      drawing('probe-readings'),
      {
        is: 'rows',
        rows: [
          { label: 'Common', text: `Both wires read ${decibels(BOTH_OVER_ONE_DB)} more than one.` },
          { label: 'Differential', text: 'Both wires together read next to nothing.' },
          { label: 'Direction', text: 'The larger end points to the source; a standing wave can lie: move it.' },
        ],
      },
    ],
    fools: [
      'A large supply current saturates it: try it at small load.',
      'The field of an antenna couples into its lead: turn the probe round; the reading must stay.',
      'Ambient signals: first everything off, then on.',
      'It gives current, not the impedance that made it.',
    ],
    links: [{ page: 'current-probe' }, { page: 'common-or-differential' }, { check: 'need' }],
  }
}

function clamp(): Instrument {
  const [low, high] = CLAMP_FERRITE.ohm
  const falls = (loopOhm: number) => decibels(clampFallDb({ clampOhm: high, loopOhm }))
  return {
    tools: ['clamp ferrite'],
    id: 'test-with-clamp',
    title: 'The clamp ferrite',
    inShort: 'Snapped on without opening anything: it finds the cable and tells the mode.',
    words: ['ferrite', 'clip-on', 'snap-on', 'choke', 'bead', 'core', 'toroid'],
    set: [
      ['Range', `${ohms(low)} to ${ohms(high)} each at ${hertz(CLAMP_FERRITE.atHz)}; several in a row add up.`],
      ['Bandwidth', `From about ${hertz(CLAMP_FERRITE.usefulFromHz)}. Lower needs turns: they count by their square.`],
      [
        'Where',
        'Close to the victim over the whole cable; then legs together; then each leg; then a quarter wave away.',
      ],
    ],
    pictures: [
      drawing('clamp-places'),
      {
        is: 'rows',
        rows: [
          {
            label: 'It helps',
            text: `Around ${ohms(high)} in a loop of 50 Ω takes ${falls(50)}; in a loop of 300 Ω only ${falls(300)}.`,
          },
          {
            label: 'No change',
            text: 'High loop, wrong cable, wrong mode, or below its band. It rules out nothing alone.',
          },
        ],
      },
    ],
    fools: [
      'Where a cable resonates, one place does everything and the next nothing: use two.',
      'Halves that do not close tightly are worth a tenth.',
      'Over one supply wire it saturates. Over supply and return together it does not.',
      'A little worse with it on is a resonance, and still says: this cable.',
    ],
    never: ['Left on afterwards: count them out and in.'],
    links: [{ page: 'clamp-ferrites' }, { check: 'loop' }],
  }
}

function handheld(): Instrument {
  const [near, far] = HANDHELD.walkM
  return {
    tools: ['handheld receiver'],
    id: 'test-with-handheld-receiver',
    title: 'The handheld receiver',
    inShort: 'On its own battery, outside: it hears what radiates, and where from.',
    words: ['portable radio', 'handheld', 'sniffer', 'walk around', 'direction'],
    set: [
      ['Range', 'A weak channel near the one that suffers, squelch open, volume fixed.'],
      ['Bandwidth', 'Same modulation as the victim. Amplitude modulation hears sparks and converters.'],
      ['Coupling', 'Short antenna first, then a probe loop of one turn close to a lamp or a box.'],
      [
        'Where',
        `On a walk around ${metres(near)} to ${metres(far)} from the skin, outside the propeller arc, never under a turning rotor.`,
      ],
    ],
    pictures: [
      drawing('receiver-walk'),
      {
        is: 'rows',
        rows: [
          { label: 'Tells', text: 'Louder to one lamp, to the cowling or to the hangar: that is the way.' },
          { label: 'Does not tell', text: 'The same everywhere: it comes from outside, or it does not radiate.' },
        ],
      },
    ],
    fools: [
      'Its gain control evens out loud and soft: bring it down with a shorter antenna until the noise is just there.',
      'Your body turns the antenna: hold it the same way.',
      'The squelch that closes is not silence.',
    ],
    never: ['Transmitting, or any key on a distress channel.'],
    links: [{ page: 'sound-ignition' }, { page: 'sound-led-lighting' }],
  }
}

function spectrum(): Instrument {
  return {
    tools: ['phone spectrum'],
    id: 'test-with-spectrum',
    title: 'The spectrum view',
    inShort: 'Lines that move with the engine, steps that are equal, a floor that comes up.',
    words: ['spectrum analyser', 'spectrum analyzer', 'phone app', 'FFT', 'waterfall', 'audio spectrum'],
    set: [
      ['Range', 'Top of the screen just above the strongest; pre-amplifier off until you know nothing overloads.'],
      ['Bandwidth', 'The one the limit or the victim has, written down. Narrower lowers noise and leaves a line.'],
      [
        'Audio',
        `A telephone at the headset sees ${hertz(PHONE_AUDIO.fromHz)} to ${hertz(PHONE_AUDIO.toHz)}: two speeds of the engine, two pictures.`,
      ],
      ['Detector', 'Peak to find, the method’s own to judge.'],
      ['Where', 'Probe on the cable, or the antenna input through an attenuator. First everything off.'],
    ],
    pictures: [drawing('spectrum-shapes')],
    fools: [
      'Ten decibels more attenuation and a line falls by more than ten: the analyser made it itself.',
      'A raised floor with everything off is the analyser’s own.',
      'A telephone filters voice: hum and high whistles may be missing.',
      'Two sweeps differ where a source comes and goes: hold the maximum for some time.',
    ],
    links: [{ check: 'trace' }, { check: 'tone' }, { check: 'harmonics' }],
  }
}

const asPage = (one: Instrument): BookPage => ({
  id: one.id,
  shelf: 'tests',
  title: one.title,
  inShort: one.inShort,
  words: one.words,
  blocks: [
    { is: 'rows', rows: one.set.map(([label, text]) => ({ label, text })) },
    ...one.pictures,
    { is: 'heading', text: 'What fools people' },
    { is: 'list', items: one.fools },
    ...(one.never === undefined ? [] : [{ is: 'never', items: one.never } as const]),
  ],
  sources: [PRACTICE, DERIVED],
  related: one.links,
})

const INSTRUMENTS = (): readonly Instrument[] => [
  meter(),
  bondTester(),
  oscilloscope(),
  currentProbe(),
  clamp(),
  handheld(),
  spectrum(),
]

/** A page for each instrument. */
export const instrumentPages = (): readonly BookPage[] => INSTRUMENTS().map(asPage)

/** Which page tells of a tool of the guide. */
export const instrumentPageOf = (tool: Tool): string | undefined =>
  INSTRUMENTS().find(({ tools }) => tools.includes(tool))?.id
