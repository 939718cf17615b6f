/** Outcomes of full rank where a connector filter will not cure it, with the reason in numbers and what does. */
import { MAINS_HZ, STROBE_CHARGER_HZ, sparksPerSec } from '../../calc/tone/explanations.ts'
import { BOND_NOTE } from '../../reference/constructions.ts'
import {
  AC_BUS,
  BENCH_ENDS,
  CRUISE,
  DISCHARGER,
  DRIVER_BEAD,
  GNSS_CHANNELS,
  INCH_OF_WIRE,
  MOVED,
  NOISE_BANDS,
  PHONE_BURSTS,
  STROBE_LAMP,
} from '../../reference/field-figures.ts'
import { bondFloorDb, HUM, humNeeds, INCH_OF_BOND_SOURCES, rectified, TAIL, tailOhm } from '../figures.ts'
import { bare, decibels, henries, hertz, metres, ohms, seconds, volts, withUnit } from '../print.ts'
import type { Outcome } from '../types.ts'

const not = (
  part: Pick<Outcome, 'id' | 'headline' | 'reason' | 'sources' | 'steps' | 'nextMeasurement'> & Partial<Outcome>,
): Outcome => ({
  is: 'outcome',
  class: 'not-a-filter',
  rules: [],
  checks: [],
  cautions: [],
  ...part,
})

const WHINE_NUMBER = `From a ${ohms(HUM.sourceOhm)} source, ${decibels(HUM.db)} at ${rectified(6)} needs ${humNeeds(6)}, at ${rectified(12)} ${humNeeds(12)}. That is a thousand times what fits a contact.`

/** What an inch of wire leaves of the best capacitor between the ends of the bench. */
const inchLeaves = (hz: number): string => {
  const ends = { sourceOhm: BENCH_ENDS.fixtureOhm, loadOhm: BENCH_ENDS.fixtureOhm }
  return `${decibels(bondFloorDb({ ...ends, bondOhm: 0, bondH: INCH_OF_WIRE.henries, hz }), 2)} at ${hertz(hz)}`
}

const sparks = (cylinders: number): string => String(sparksPerSec(CRUISE.rpm, cylinders))

const PRACTICE = { id: 'practice', standing: 'practice' } as const
const DERIVED = { id: 'derived', standing: 'derived' } as const

/** Outcomes of class `not-a-filter`. */
export const NO_FILTER_OUTCOMES: readonly Outcome[] = [
  not({
    id: 'whine-alternator',
    cautions: ['running-engine', 'breakers'],
    headline: 'A connector filter will not cure alternator whine',
    reason: `The ripple is at audio rate from a source of about an ohm. ${WHINE_NUMBER}`,
    sources: [{ id: 'R40', standing: 'read' }, { id: 'R41', standing: 'read' }, AC_BUS.basis, DERIVED],
    steps: [
      'Switch the alternator field off by the manual, on the ground. Gone proves the alternator.',
      'Check diodes, brushes, the output terminal, the engine-to-structure bond and the field lead.',
      'Separate the audio return from the power return.',
      'A filter would be a large choke and capacitor, at the alternator or at the supply of the box that suffers. That is a design change.',
    ],
    nextMeasurement:
      'Frequency of the whine at two engine speeds. Electrical frequency is poles × rpm / 120, the ripple six times that.',
  }),
  not({
    id: 'whine-regulator',
    cautions: ['running-engine'],
    headline: 'A connector filter will not cure regulator whine',
    reason: `A pitch that moves with load, at constant engine speed, is a switching regulator or a converter at audio rate. ${WHINE_NUMBER}`,
    sources: [{ id: 'R40', standing: 'read' }, AC_BUS.basis, DERIVED],
    steps: [
      'Hold engine speed, switch a landing light. A moving pitch proves the regulator.',
      'Check the regulator ground, its sense lead and the field lead; swap in a good regulator.',
      'Give the audio its own return.',
    ],
    nextMeasurement: 'Pitch with one large load on and off, at the same engine speed.',
  }),
  not({
    id: 'whine-rectifier',
    headline: 'A connector filter will not cure rectifier whine',
    reason: `Rectified ${hertz(AC_BUS.hz)} rings at ${rectified(6)} with six pulses and ${rectified(12)} with twelve, from a bus of about an ohm. ${WHINE_NUMBER} A drop to ${bare(hertz(AC_BUS.hz))} or ${rectified(2)} points to an open diode.`,
    sources: [{ id: 'R36', standing: 'read' }, AC_BUS.basis, DERIVED],
    steps: [
      'Switch the inverter or rectifier unit off, or swap it. Gone proves it.',
      'Compare the pitch with 6, 12 or 18 times the supply frequency.',
      'Repair the unit, the returns and the audio ground. A filter belongs at its output, as a large choke and capacitor.',
    ],
    nextMeasurement: 'Ripple of the DC bus with a scope, AC coupled, at the unit and at the box that suffers.',
  }),
  not({
    id: 'ignition',
    headline: 'A connector filter will not cure ignition noise',
    reason: `Sparks radiate from the harness: ${sparks(4)} a second with four cylinders at ${withUnit(CRUISE.rpm, 'rpm')}, ${sparks(6)} with six. They reach the antenna through the air, and stay with the master switch off.`,
    sources: [{ id: 'derived', standing: 'derived' }, PRACTICE],
    steps: [
      'Listen on a handheld from outside the arc: louder towards the engine means radiated.',
      'One magneto at a time, by the manual, on the ground: note which one changes it. One can stay noisy when grounded.',
      'Inspect shielded leads, plug ends, shield bonds and the lead to the switch. Shield and bond only; no part.',
    ],
    nextMeasurement: 'Pops per second against engine speed and cylinders.',
    cautions: ['running-engine', 'no-trial'],
  }),
  not({
    id: 'weather-static',
    headline: 'A connector filter will not cure weather static',
    reason: `Rain, snow, ice and dust charge the skin; it leaks off in corona from points and arcs across unbonded parts, right beside the antennas. Dischargers are credited with about ${decibels(DISCHARGER.db)}.`,
    sources: [
      { id: 'R38', standing: 'read' },
      { id: 'C23', standing: 'read' },
    ],
    steps: [
      'Write down weather, height and which radios suffered.',
      'Measure every discharger and the bond of every panel, door, cowling and antenna.',
      'Look for unpainted, cracked or isolated plastic and glass near antennas.',
      'If a receiver also suffers in dry air, come back and answer again.',
    ],
    nextMeasurement: 'Bond of dischargers, panels and antenna bases, to the limits of the manual.',
  }),
  not({
    id: 'location',
    cautions: ['lightning-hirf-fuel'],
    headline: 'It depends on the place: a strong transmitter outside',
    reason:
      'A field at a place is met by place and procedure. Hardening against it is part of the type’s certification, so a locally fitted filter is not the answer.',
    sources: [
      { id: 'C01', standing: 'read' },
      { id: 'R45', standing: 'read' },
      { id: 'R46', standing: 'memory' },
    ],
    steps: [
      'Map time, position, height and heading of each event against known transmitters.',
      'Inspect the shields, backshells and bonds of the affected system: protection degrades.',
      'Report to the design authority with the map; a change to this protection needs approved data.',
    ],
    nextMeasurement: 'Shield and bond resistance of the affected cables against the manual.',
  }),
  not({
    id: 'portable-device',
    headline: 'A carry-on device does it: take it away first',
    reason: `A phone, tablet or charger close to cables and antennas disturbs compass, receivers and audio. Its rhythm is fixed; ${hertz(PHONE_BURSTS.hz, 3)} is one sort of phone only.`,
    sources: [
      { id: 'C09', standing: 'read' },
      { id: 'C11', standing: 'read' },
      { id: 'C13', standing: 'read' },
      PHONE_BURSTS.basis,
    ],
    steps: [
      'Device on, off, on, at the same seat, three times; note type, place and mode.',
      'Keep it off or away. If it belongs on board, have it approved or replaced.',
      'If the system reacts to devices further away than it should, inspect its shields and bonds.',
    ],
    nextMeasurement: 'Distance at which the effect stops.',
  }),
  not({
    id: 'own-tx-antenna',
    cautions: ['key-down', 'transmitter-hazard'],
    headline: 'Our transmitter reaches the receiver by its antenna',
    reason: 'The path is antenna to antenna. A part in the connector of the box that suffers is not in that path.',
    sources: [...GNSS_CHANNELS.key.basis, { id: 'R46', standing: 'memory' }, PRACTICE],
    steps: [
      'Find the relation: transmit frequency, its multiples, the receiver’s channel.',
      'Check antenna bonds, coax contacts and spacing; an old emergency transmitter or a corroded joint can re-radiate.',
      'A coaxial filter for that radio, or a changed antenna place, is a design change.',
    ],
    nextMeasurement: `Which transmit channels do it: list them with the receiver’s indication, ${seconds(GNSS_CHANNELS.key.sec[1])} on each.`,
  }),
  not({
    id: 'own-tx-leak',
    cautions: ['key-down', 'transmitter-hazard'],
    headline: 'Our transmitter leaks from the set or its cables',
    reason:
      'It leaves by the set, its coax contact, its ground or its harness. Antenna filters did nothing in such a case.',
    sources: [{ id: 'C07', standing: 'read' }, PRACTICE],
    steps: [
      'Clean and re-seat the coax contact in the rack, check its spring and the ground straps.',
      'Shield the set’s harness, shield ended all round at both ends, away from the cable of the box that suffers.',
      'Repeat on the channels that did it.',
    ],
    nextMeasurement: 'Clamp ferrite on the set’s harness, then on that of the box that suffers: which one helps?',
  }),
  not({
    id: 'antenna-noise',
    cautions: ['breakers'],
    headline: 'It comes in by the antenna: a connector filter is not in the path',
    reason:
      'The noise is in the air at the antenna, in the very band the receiver must hear. Filtering it would filter the signal.',
    sources: [PRACTICE, { id: 'R44', standing: 'read' }],
    steps: [
      'Find the source: one system off at a time, receiver squelch open, weak station tuned.',
      'LED lamps, converters, displays and chargers near the antenna come first.',
      'Treat the source: come back and answer for it, with its breaker as the answer.',
      'Check the antenna base bond and the coax shield ends.',
    ],
    nextMeasurement: 'Noise floor on three quiet channels, each system on and off.',
  }),
  not({
    id: 'radiated-outside',
    headline: 'It is in the air around the aircraft',
    reason: 'It is radiated: ignition, a hangar lamp, a drive, or a station. A part on one cable does not reach it.',
    sources: [PRACTICE],
    steps: [
      'Walk with the handheld: louder towards the engine, the hangar, or nowhere?',
      `Move the aircraft ${metres(MOVED.fromHangarM)} and repeat.`,
      'If it is the engine with all power off, it is ignition: shield and bond by the manual.',
    ],
    nextMeasurement: 'Signal strength on the handheld at four places around the aircraft.',
  }),
  not({
    id: 'ground-supply',
    headline: 'The ground supply or the hangar makes it',
    reason: `The ground supply brings ${MAINS_HZ.low}, ${MAINS_HZ.high} or ${hertz(AC_BUS.hz)}, or a motor drive nearby brings hash.`,
    sources: [AC_BUS.basis, PRACTICE],
    steps: [
      'Try another ground supply, then another place.',
      'Tag the ground unit and have it repaired; check its neutral and its bond to the aircraft.',
      'If it also comes in flight, come back and answer again.',
    ],
    nextMeasurement: 'Ripple at the ground supply plug, with and without the load of the aircraft.',
  }),
  not({
    id: 'strobe-supply',
    cautions: ['stored-charge', 'no-trial'],
    headline: 'The strobe supply makes it: treat its low-voltage side',
    reason: `A tick at each flash with a rising whine between is the supply charging, at ${bare(hertz(STROBE_CHARGER_HZ[0]))} to ${hertz(STROBE_CHARGER_HZ[1])}. Its lamp lead is at ${bare(volts(STROBE_LAMP.volts[0]))} to ${volts(STROBE_LAMP.volts[1])} and is left alone.`,
    sources: [PRACTICE],
    steps: [
      'Switch the strobe off: gone proves it.',
      'Check the supply’s case bond, the lamp cable shield at the supply end only or as the manual says, and its power return.',
      'Route its power away from audio, with its own return. A filter on its low-voltage input is a design change; the whine itself needs a large choke.',
    ],
    nextMeasurement: 'Current probe on its low-voltage lead and on the lamp cable, outside.',
  }),
  not({
    id: 'bond-first',
    cautions: ['lightning-hirf-fuel'],
    headline: 'Repair the bond first; a filter is no better than it',
    reason: `Shunt parts share the bond. Between ${ohms(BENCH_ENDS.fixtureOhm)} ends, one inch of wire (${henries(INCH_OF_WIRE.henries)}) leaves ${inchLeaves(10e6)} and ${inchLeaves(100e6)}, whatever the capacitor.`,
    sources: INCH_OF_BOND_SOURCES,
    steps: [
      `Clean, bond and protect by the manual: box to structure ${ohms(BOND_NOTE.ohm)} or less where it is a class R bond.`,
      'Short and wide: a strap, or better the flange itself.',
      'Repeat on, off, on. If the noise stays, come back and answer "good".',
    ],
    nextMeasurement: 'Milliohms from case to structure, and from connector shell to case, after the repair.',
  }),
  not({
    id: 'shield-first',
    cautions: ['lightning-hirf-fuel'],
    headline: 'Repair the shield first',
    reason: `A pigtail of ${metres(TAIL.metres)} is some ${henries(TAIL.henries)} in series with the shield: ${tailOhm()} at ${hertz(TAIL.hz)}. What the shield should carry then goes into the wires.`,
    sources: [DERIVED, PRACTICE],
    steps: [
      'End the shield all round in the backshell; both ends for radio frequencies unless the drawing says otherwise.',
      'Check continuity of shield, backshell and shell to structure.',
      'Repeat on, off, on. If the noise stays, come back and answer "good".',
    ],
    nextMeasurement: 'Shield loop resistance, and shell to structure, in milliohms.',
  }),
  not({
    id: 'shared-return',
    headline: 'Give the signal its own return',
    reason:
      'Power current in the signal’s return adds its voltage drop to the signal, inside the signal’s band. No filter can tell the two apart.',
    sources: [PRACTICE],
    steps: [
      'Find where signal return and power return join; look for a second ground through a jack, tray or shield.',
      'One return, at the drawing’s ground point; jacks isolated from structure where the drawing says so.',
      'Repeat on, off, on.',
    ],
    nextMeasurement: 'Voltage between the two grounds, with the load on and off.',
  }),
  not({
    id: 'box-upset',
    headline: 'It is the box itself: its inside, its case, or its type',
    reason:
      'The fault goes with the box or its type: its inside, its case or its display window. A part on a cable is not in that path.',
    sources: [
      { id: 'C03', standing: 'read' },
      { id: 'C13', standing: 'read' },
    ],
    steps: [
      'Swap in another unit of the same number: does the fault follow the box?',
      'Check case screws, gaskets, connector shells and covers.',
      'Ask the maker for service information; some units were replaced for this reason.',
    ],
    nextMeasurement: 'Distance and direction at which a small source disturbs it: front, side, connector.',
  }),
  not({
    id: 'box-damage',
    headline: 'Wear or water: repair it',
    reason: 'Nothing electrical came from outside. A suppressor or filter would not have helped.',
    sources: [PRACTICE],
    steps: [
      'Replace by the manual and find the way the water, heat or force got in.',
      'Inspect the contacts, seals and backshell of the same connector.',
    ],
    nextMeasurement: 'Insulation and contact resistance of the connector by the manual.',
  }),
  not({
    id: 'source-fault',
    headline: 'Repair the source: it is faulty',
    reason: 'Ours has lost what keeps a good one quiet: a brush, a diode, a suppressor, a bond.',
    sources: [{ id: 'C17', standing: 'read' }, PRACTICE],
    steps: [
      'Repair or replace by the manual; check its switch, wiring and case bond too.',
      'Repeat on, off, on with the repaired unit.',
      'Note it for the fleet: the same part may be ageing in sister ships.',
    ],
    nextMeasurement: 'Noise with the good unit and with the old one, same place and settings.',
  }),
  not({
    id: 'coil-first',
    cautions: ['power-off', 'permanent-approved'],
    headline: 'Quench the coil where it is: at the coil',
    reason:
      'A coil that is switched off throws hundreds of volts in microseconds. A diode or suppressor across the coil stops it in one place; filters at each box do not.',
    sources: [{ id: 'S1', standing: 'read' }, PRACTICE],
    rules: ['place-coil', 'trial'],
    steps: [
      'See the kick with a scope across the coil, rated probe, at switch-off.',
      'By approved data: a diode across a DC coil releases slowly, a suppressor of a higher voltage releases faster.',
      'Check the release time the system needs before either.',
      `What remains above ${hertz(DRIVER_BEAD.fromHz)} on the drive wire: a series bead at the driver, low impedance on both sides.`,
    ],
    nextMeasurement: 'Peak voltage across the coil at switch-off, and the release time.',
  }),
  not({
    id: 'low-frequency',
    headline: 'Audio-rate noise: a connector filter is too small',
    reason: `Below ${hertz(NOISE_BANDS.audioToHz)} a capacitor that fits a contact does almost nothing. ${WHINE_NUMBER}`,
    sources: [AC_BUS.basis, DERIVED, PRACTICE],
    steps: [
      'Treat the source, or give the signal its own return.',
      'A large choke and capacitor in a separate filter is a design change.',
      'Radio energy can be made audible inside the box that suffers. The line then carries radio frequency. Come back and answer its band.',
    ],
    nextMeasurement: `Spectrum on the line itself, not in the headset: is there anything above ${hertz(NOISE_BANDS.audioToHz)}?`,
  }),
  not({
    id: 'in-band',
    headline: 'Noise in the signal’s own band: no low-pass cures it',
    reason:
      'A filter cannot tell noise from signal inside the signal’s own band, between the legs of a pair or on a single wire. What takes one takes the other.',
    sources: [DERIVED, PRACTICE],
    steps: [
      'Go to where it gets onto the pair. The source, the driver’s supply, a split pair, an unbalanced joint.',
      'On a pair, check twist, assignment and balance. Common-mode noise turned differential can still be cured as common mode.',
      'Lower the source, or raise the signal.',
    ],
    nextMeasurement: 'The same reading with the driver off: is the noise already there?',
  }),
]
