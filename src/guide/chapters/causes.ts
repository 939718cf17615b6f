/** Outcomes of causes that a part on a line does not cure, and the choke and decoupling outcomes. */
import { CHOKE_PLACE, MOVED, ONE_PASS, RECEIVE_ATTENUATOR } from '../../reference/field-figures.ts'
import { bare, decibels, hertz, metres } from '../print.ts'
import type { Outcome } from '../types.ts'
import { CHECK_SOURCES, FILTER_CAUTIONS, LINE_CHECKS } from './filters.ts'

const PRACTICE = { id: 'practice', standing: 'practice' } as const

const not = (
  part: Pick<Outcome, 'id' | 'headline' | 'reason' | 'steps' | 'nextMeasurement'> & Partial<Outcome>,
): Outcome => ({
  is: 'outcome',
  class: 'not-a-filter',
  sources: [PRACTICE],
  rules: [],
  checks: [],
  cautions: [],
  ...part,
})

/** The distances at which parallel runs are compared: "0, 50, 150 and 300 mm". */
function apart(): string {
  const tried = MOVED.triedM.map((metre) => metres(metre))
  return `${tried.slice(0, -1).map(bare).join(', ')} and ${tried.at(-1)}`
}

const PROOF = 'Prove it: off, on, off. Three repeats must agree, and the signal must still be good.'

/** Outcomes of the second edition. */
export const CAUSE_OUTCOMES: readonly Outcome[] = [
  not({
    id: 'source-treat',
    cautions: ['permanent-approved', 'breakers'],
    headline: 'Quieten the source: another unit, distance, or a filter at the source',
    reason: 'A quiet source helps every box at once; a part at one box helps only that one.',
    sources: [{ id: 'D09', standing: 'read' }, { id: 'W2', standing: 'read' }, PRACTICE],
    steps: [
      'Try another unit of the same kind, then another make.',
      'Move it or its leads away from antennas and from the cable of the box that suffers.',
      'Clean and close its case bond; brushes and connectors by the manual.',
      'A filter at its own connector is a design change; a bare capacitor there can upset its regulation.',
      PROOF,
    ],
    nextMeasurement: 'Level at the box that suffers with the unit on and off, same settings.',
  }),
  not({
    id: 'supply-dip',
    cautions: ['power-off'],
    headline: 'The supply dips: mend the supply or its hold-up, no suppressor',
    reason: 'A suppressor clips what is too high. It gives nothing back when the supply is too low.',
    steps: [
      'Compare depth and length of the dip with the hold-up of the box, from its maker.',
      'Check contacts, wire size, breaker and ground of that feed under load.',
      'Change the order of switching, or give the box another bus, by approved data.',
      PROOF,
    ],
    nextMeasurement: 'Lowest voltage at the box and its length, at the same instant as the reset.',
  }),
  not({
    id: 'hum-way-in',
    headline: 'The hum is the bus; find its way in',
    reason: 'The alternating bus always hums. A second ground, an open shield or a feeder beside the line lets it in.',
    sources: [PRACTICE],
    steps: [
      'Isolate jacks and lift one end of the audio shield, one at a time.',
      `Move the audio line ${metres(MOVED.fromNeighbourM)} from the feeder.`,
      'Compare inverter one with inverter two; a hum that changes pitch is the inverter’s.',
    ],
    nextMeasurement: 'Millivolts between audio ground and power ground, the bus on and off.',
  }),
  {
    is: 'outcome',
    id: 'choke-drive',
    class: 'filter',
    noiseFrom: 'box',
    headline: 'A choke on the leads of the drive, shield closed at both ends',
    reason:
      'Fast edges drive current through the capacitance of leads and motor. A choke on all leads stops it at the drive.',
    sources: [{ id: 'D41', standing: 'read' }, PRACTICE],
    rules: ['place-choke', 'bond'],
    steps: [
      'All leads of the drive through one core, as near to the drive as they go.',
      'Shield of the motor leads closed all round at both ends, unless that ground is the noisy one.',
      'Feed and return together; signal leads elsewhere.',
      PROOF,
    ],
    checks: [],
    cautions: ['power-off', 'trial-authority', 'trial-not-for-flight', 'permanent-approved'],
    nextMeasurement: 'Current probe on the drive’s leads together, before and after.',
  },
  {
    is: 'outcome',
    id: 'choke-cable',
    class: 'filter',
    noiseFrom: 'cable',
    headline: 'A choke or ferrite on the whole cable, at the box that suffers',
    reason: 'The current is common to all wires, and a core around all of them takes nothing from the signal.',
    sources: [{ id: 'C15', standing: 'read' }, { id: 'S47', standing: 'read' }, PRACTICE],
    rules: ['place-choke', 'clamp', 'bond', 'sharing'],
    steps: [
      `All wires of the cable through the core, within ${metres(CHOKE_PLACE.fromConnectorM)} of the connector.`,
      `More turns below ${hertz(ONE_PASS.fromHz)}: the impedance grows with their square.`,
      'No single wire that carries direct current: it saturates the core.',
      'Held by approved means; it is weight on a cable.',
      PROOF,
    ],
    checks: [
      { check: 'loop', prefill: {}, why: 'what the clamp read of the loop says how much choke it takes' },
      { check: 'loading', prefill: {}, why: 'a choke takes no room of the signal; a capacitor beside it does' },
    ],
    cautions: ['screening', 'power-off', 'trial-authority', 'trial-not-for-flight', 'permanent-approved'],
    nextMeasurement: 'Current probe on the cable, before and after, in the same two places.',
  },
  {
    is: 'outcome',
    id: 'decouple-supply',
    class: 'filter',
    noiseFrom: 'cable',
    headline: 'Decouple the supply at the box: inductor towards the bus, capacitor towards the box',
    reason:
      'A bus is a source of about an ohm. An inductor faces it; the capacitor behind it then has something to work against.',
    sources: [
      { id: 'D25', standing: 'read' },
      { id: 'D43', standing: 'read' },
      { id: 'S1', standing: 'read' },
      ...CHECK_SOURCES,
    ],
    rules: ['in-band', 'line-class', 'topology', 'impedance', 'need', 'power-line', 'fits-contact', 'bond', 'trial'],
    steps: [
      'The source first, where it can be switched or repaired.',
      'Open the power check: current, inrush and stored charge decide the most.',
      'Short to the case of the box that suffers, at its supply entry.',
      PROOF,
    ],
    checks: [{ check: 'power', prefill: {}, why: 'what the capacitor does to the supply' }, ...LINE_CHECKS],
    cautions: FILTER_CAUTIONS,
    nextMeasurement: 'Noise on the supply at the box, with the load that makes it on and off.',
  },
  not({
    id: 'inspect-strike',
    cautions: ['after-strike', 'lightning-hirf-fuel', 'hipot'],
    headline: 'Inspect for lightning before anything else',
    reason: 'An upset that recovers can leave a suppressor open or a bond burnt. Neither shows in use.',
    steps: [
      'Strike inspection by the manual: marks, bonds, shields, dischargers, antennas.',
      'Test or replace the suppressors of the affected lines by approved limits.',
      'Then design for the pulse: come back with "must stand lightning".',
    ],
    nextMeasurement: 'Leakage and breakdown of the suppressors, bond by bond in milliohms.',
  }),
  not({
    id: 'magnetic-field',
    headline: 'A steady field: demagnetise the part, or twist feed and return',
    reason: 'An electrical filter does not reach a steady magnetic field. Steel keeps it; a loop of wire makes it.',
    sources: [{ id: 'D61', standing: 'read' }, PRACTICE],
    steps: [
      'Find the spot with a hand compass, power off, then each load on.',
      'Demagnetise or replace the steel part, by the manual.',
      'Run feed and return together and twisted; no structure return near the sensor.',
      'Compensate the compass again.',
    ],
    nextMeasurement: 'Swing of the hand compass at the spot, before and after.',
  }),
  not({
    id: 'l-band-line',
    cautions: ['no-trial'],
    headline: 'Pulse sets: repair the suppression line, never a capacitor on it',
    reason: 'The pulses that blank the other sets are short. A capacitor there removes the blanking.',
    sources: [{ id: 'W5', standing: 'read' }, PRACTICE],
    steps: [
      'Scope the pulse at both ends of the suppression line; continuity by meter may miss a fault.',
      'Repair line, coax and plugs by the manual.',
      'Each set to standby in turn, to name the one that disturbs.',
    ],
    nextMeasurement: 'Height and width of the pulse at both ends of the line.',
  }),
  not({
    id: 'two-together',
    cautions: ['breakers'],
    headline: 'Two sources together: cure the cheaper of the two',
    reason: 'Neither is enough alone. Either one quietened, or moved away, brings both below the threshold.',
    steps: [
      'Write the matrix: each alone, both, three times.',
      'Treat the one that is easier to reach, then repeat the matrix.',
      'If two signals mix, look for a joint that rectifies.',
    ],
    nextMeasurement: 'Level with the first, the second and both.',
  }),
  not({
    id: 'coax-repair',
    cautions: ['antenna-load', 'key-down'],
    headline: 'Repair or replace the coax or the antenna',
    reason: 'An open braid leaks both ways, and a wet antenna crackles by itself.',
    sources: [
      { id: 'D05', standing: 'read' },
      { id: 'D17', standing: 'read' },
      { id: 'D23', standing: 'read' },
    ],
    steps: [
      'Plugs, braid ends and antenna base by the manual; the right coax, doubly shielded.',
      'Braid end to end and plug to structure in milliohms.',
      PROOF,
    ],
    nextMeasurement: 'Standing-wave ratio, and the noise with a load at the antenna end.',
  }),
  not({
    id: 'separate-cables',
    headline: 'Move the cables apart, or twist and shield the one that suffers',
    reason: 'Coupling between parallel runs falls with distance, and twist takes the magnetic part away.',
    sources: [{ id: 'D21', standing: 'read' }, { id: 'D03', standing: 'read' }, MOVED.basis],
    steps: [
      `${metres(MOVED.fromNeighbourM)} or more between them; cross at right angles.`,
      'Electric coupling: a shield, one end is enough. Magnetic coupling: twist feed and return.',
      'Secure the new route by approved means.',
      PROOF,
    ],
    nextMeasurement: `The trouble at ${apart()}.`,
  }),
  not({
    id: 'bond-joint',
    cautions: ['milliohm-fuel'],
    headline: 'Clean and bond the joint that rectifies',
    reason: 'A corroded joint mixes strong signals into new ones. Clean metal does not.',
    steps: [
      'Clean, bond and protect the joint by the manual.',
      'Loose wires, hinges and brackets near the antennas: bond or remove.',
      PROOF,
    ],
    nextMeasurement: 'Milliohms across the joint in both polarities: unequal readings are a rectifier.',
  }),
  not({
    id: 'return-missing',
    cautions: ['power-off', 'milliohm-fuel'],
    headline: 'Repair the return or the ground stud',
    reason: 'Without its own return the current of a box comes back through shields and signal commons.',
    sources: [
      { id: 'D29', standing: 'read' },
      { id: 'D55', standing: 'read' },
    ],
    steps: [
      'Torque, washers, paint and strands of the stud and the minus lead, by the manual.',
      'Measure the drop under full load again.',
      PROOF,
    ],
    nextMeasurement: 'Millivolts from the box’s minus to the stud at full load.',
  }),
  not({
    id: 'contact-repair',
    cautions: ['power-off'],
    headline: 'Repair the contact or the chafe',
    reason: 'Noise does not jump when one place is touched. A contact does.',
    sources: [{ id: 'D57', standing: 'read' }, PRACTICE],
    steps: [
      'Contact, crimp, seal and strain relief by the manual; look for a second one nearby.',
      'Sleeve and clamp where a wire touches metal or a moving cable.',
      'Flex three times again.',
    ],
    nextMeasurement: 'Resistance of the contact while it is flexed.',
  }),
  not({
    id: 'bus-repair',
    cautions: ['power-off', 'no-back-probing'],
    headline: 'Repair the bus: terminators, stubs, levels',
    reason: 'A bus that is wrong in silence is not cured by anything added to it. A capacitor makes it worse.',
    sources: [{ id: 'D35', standing: 'read' }, PRACTICE],
    steps: [
      'Terminators: one at each end, none in the middle.',
      'Stubs short; couplers where the standard asks for them.',
      'Every capacitor on the pair listed and equal on both legs, or taken off.',
      'Levels and legs the right way round; count the errors again.',
    ],
    checks: [{ check: 'loading', prefill: {}, why: 'what each capacitor on the pair takes' }],
    nextMeasurement: 'Ohms between the legs, dead; errors in ten minutes, alive.',
  }),
  not({
    id: 'not-interference',
    headline: 'No interference: a setting, software or a mechanical part',
    reason: 'A wrong speed, format or table repeats itself exactly. Noise does not.',
    sources: [{ id: 'D37', standing: 'read' }, PRACTICE],
    steps: [
      'Correct the value; write down the old one.',
      'Check every other port and every sister ship for the same value.',
      'Repeat the flight or the function test.',
    ],
    nextMeasurement: 'List of settings against the approved configuration.',
  }),
  not({
    id: 'dry-and-seal',
    cautions: ['hipot', 'power-off'],
    headline: 'Dry, clean and seal; no part',
    reason: 'Water carries current between contacts. It goes when it dries, and comes back with the rain.',
    steps: [
      'Open, dry and clean by the manual; replace green contacts.',
      'Find the way in: seals, drip loops, drains.',
      'Insulation again, dry.',
    ],
    nextMeasurement: 'Insulation before and after drying, filtered contacts isolated.',
  }),
  not({
    id: 'headset-repair',
    headline: 'Repair or replace the headset',
    reason: 'The trouble moves with the headset, so nothing on the aircraft makes it.',
    steps: ['Cord, plug and microphone by its maker; batteries out.', 'Check the jack it came from all the same.'],
    nextMeasurement: 'The same headset in three seats.',
  }),
  not({
    id: 'receiver-own',
    cautions: ['antenna-load'],
    headline: 'The receiver’s own tone, or overload by a strong station',
    reason: 'A tone into a load is made inside. Overload falls faster than the attenuator in front of it.',
    steps: [
      'List the channels and ask the maker; another set tells whether it is this one.',
      'Near a strong station: distance, antenna place, or a coaxial filter approved for that radio.',
    ],
    nextMeasurement: `Fall of the trouble with ${decibels(RECEIVE_ATTENUATOR.db)} in front of the receiver.`,
  }),
  {
    is: 'outcome',
    id: 'measure-open',
    class: 'measure',
    headline: 'Measure first: the cause is not found yet',
    reason: 'Nothing asked so far leaves one cause. The tests below decide most for their time.',
    sources: [PRACTICE],
    rules: [],
    steps: [
      'Do the first test of the list; its card says how.',
      'Enter its reading; the list gets shorter.',
      'Hand the list over with what was seen, tried and excluded.',
    ],
    checks: [],
    cautions: [],
    nextMeasurement: 'The first open test of the list.',
  },
]
