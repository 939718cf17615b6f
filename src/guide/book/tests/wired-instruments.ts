/** Instruments with leads: the meter, the milliohm meter, the oscilloscope. */
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { BOND_NOTE } from '../../../reference/constructions.ts'
import { BOND_TESTER, HAND_METER, RISE_BANDWIDTH, SCOPE_PROBE, WIRE_H_PER_M } from '../../../reference/instruments.ts'
import { STEADY_28_VDC } from '../../../reference/supply-steady.ts'
import { factOf } from '../../figures.ts'
import { hertz, metres, ohms, seconds } from '../../print.ts'
import { drawing, type Instrument, waveform } from './instrument.ts'
import { coilAtSwitchOff, edgeBySpringAndLead, leadRingsAtHz, supplyAtStart } from './scope-pictures.ts'

function meter(): Instrument {
  // two ends side by side
  const whole = factOf('can', 'z0Ohm') / 2
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
    cautions: ['power-off', 'no-back-probing'],
    sources: [factOf('can', 'signalOhm').source],
    links: [{ page: 'bus-first-aid' }, { page: 'audio-ground' }],
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
      `With two wires its own leads are in it: some ${ohms(BOND_TESTER.leadsOhm)}, as much as ${Math.round(BOND_TESTER.leadsOhm / BOND_NOTE.ohm)} good bonds.`,
      `At ${hertz(1e7)} a plain wire of ${metres(0.05)} is ${ohms(2 * Math.PI * 1e7 * WIRE_H_PER_M.henriesPerM * 0.05)} whatever the milliohms say.`,
      'Another bolt in parallel hides the bad joint: read it with that path open where the manual allows.',
    ],
    never: ['Near fuel vapour, except with a tester approved for that zone.'],
    cautions: ['power-off', 'milliohm-fuel'],
    sources: BOND_NOTE.sources,
    links: [{ page: 'bond-four-wire' }, { page: 'lead-and-bond' }],
  }
}

function oscilloscope(): Instrument {
  const ringHz = leadRingsAtHz(SCOPE_PROBE.groundLeadM)
  const springHz = leadRingsAtHz(SCOPE_PROBE.springM)
  const [good, bad] = edgeBySpringAndLead(5)
  const { leastV, basis } = STEADY_28_VDC
  const { nominalRmsV: nominalV } = factOf('power-28-vdc', 'supply')
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
        `Rise time ${RISE_BANDWIDTH.product} over bandwidth: ${hertz(1e8)} shows edges down to ${seconds(RISE_BANDWIDTH.product / 1e8, 2)}. For a dip of the supply switch the limit on.`,
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
      `A ground lead of ${metres(SCOPE_PROBE.groundLeadM)} rings at ${hertz(ringHz, 3)} with the probe’s ${formatQuantity(SCOPE_PROBE.inputF, 'capacitance', 2)}. With a spring it would be ${hertz(springHz, 3)}.`,
      'Probe tip and clip on the same point: whatever still shows is picked up by the lead.',
      'The probe itself loads a fast pair and may cure the fault while it is there.',
      'A mains scope grounds what its clip touches: use a battery one on a floating return.',
    ],
    never: [
      'A probe on ignition, strobe high voltage or any lethal supply.',
      'At a coil, a probe that is not rated for its kick.',
      'A probe on flight- or engine-control lines in service.',
    ],
    cautions: ['power-off', 'no-back-probing'],
    sources: [basis],
    links: [{ page: 'bus-dip' }, { check: 'surge' }],
  }
}

export const WIRED_INSTRUMENTS = (): readonly Instrument[] => [meter(), bondTester(), oscilloscope()]
