/** Figures that a technician is told at the aircraft and that no table of a part or a line holds, each with who says so. */
import { memory, PRACTICE, read } from './line-kinds/cite.ts'

/**
 * Bursts a second of one sort of mobile phone: its standard puts 26 frames into 120 ms, and it sends once a frame.
 * 216.7 to four digits.
 */
export const PHONE_BURSTS = {
  hz: 216.7,
  basis: memory('3gpp-45-002', 'frame of 120/26 ms'),
} as const

/** A signal or noise of a pair is taken as differential below and as common above, before anything is measured. */
export const CUSTOMARY_COMMON = { fromHz: 1e6, basis: read('S6') } as const

/** Leads of a trial part: with longer ones it is an inductor. */
export const TRIAL_LEAD = { mostM: 0.01, basis: PRACTICE } as const

/** A shield that ends in a tail. */
export const SHIELD_TAIL = { metres: 0.05, basis: PRACTICE } as const

/** As much wire as an aircraft has from a source to a box: 100 m of it, at 1 µH a metre. */
export const LONGEST_WIRE = { henries: 100e-6, basis: PRACTICE } as const

/** An inch of wire, as far as a bond is often led. */
export const INCH_OF_WIRE = { henries: 20e-9, basis: PRACTICE } as const

/** Source impedances that are tried where nobody knows it. */
export const USUAL_SOURCES = { ohms: [1, 10, 50, 150], basis: PRACTICE } as const

/** Supply network of a test on aircraft equipment, and of a test after the military standard. */
export const SUPPLY_NETWORK = {
  airborneH: 5e-6,
  airborneBasis: read('S36'),
  militaryH: 50e-6,
  basis: memory('mil-std-461', 'supply networks'),
} as const

/** Alternating bus of constant frequency. */
export const AC_BUS = { hz: 400, basis: memory('mil-std-704', 'constant frequency') } as const

/** Mains of large aircraft, each phase to neutral. */
export const HIGH_MAINS = { volts: 230, basis: memory('do-160', 'supply categories') } as const

/** Least volts at which air breaks down lie at one product of pressure and gap: 0.567 torr·cm. */
export const PASCHEN_MINIMUM = { torrMetres: 5.67e-3, basis: memory('textbook') } as const

/** Pressures of the altitude test of component parts, and the height each stands for. */
export const ALTITUDE_PRESSURES = {
  seaLevelTorr: 760,
  rows: [
    { torr: 226, feet: 30e3 },
    { torr: 87, feet: 50e3 },
    { torr: 33, feet: 70e3 },
  ],
  basis: memory('mil-std-202', 'method 105, conditions A to C'),
} as const

/** Ends of the bench test, and the two unequal sets of ends that show what a circuit far from them does. */
export const BENCH_ENDS = {
  fixtureOhm: 50,
  fixtureBasis: read('S7'),
  lowOhm: 0.1,
  highOhm: 100,
  basis: read('S6'),
} as const

/** Cable of a radio to its antenna, and the load that stands for one. */
export const RADIO_COAX = { ohm: 50, basis: PRACTICE } as const

/** Channels of the aircraft radio whose harmonics fall beside satellite position, as owners found them. */
export const GNSS_CHANNELS = {
  thirteenth: { hz: [121.15e6, 121.25e6], basis: [read('D11'), read('C07')] },
  twelfth: { hz: 131.3e6, basis: memory('C07', '131.x') },
  key: { sec: [30, 45], basis: [read('D11'), read('C07')] },
} as const

/** What dischargers are credited with against precipitation static. */
export const DISCHARGER = { db: 50, basis: read('R38') } as const

/** Turns of a clamp count below this: one pass does little. */
export const ONE_PASS = { fromHz: 10e6, basis: PRACTICE } as const

/** Strap or foil that is laid to try a bond. */
export const TEST_STRAP = { widthM: 0.05, basis: PRACTICE } as const

/** A core on a whole cable: this near to the connector. */
export const CHOKE_PLACE = { fromConnectorM: 0.05, basis: PRACTICE } as const

/** Clamps in a row, together. */
export const CLAMPS = { togetherOhm: 300, basis: PRACTICE } as const

/** How far things are moved to see whether the trouble follows. */
export const MOVED = {
  fromNeighbourM: 0.15,
  triedM: [0, 0.05, 0.15, 0.3],
  compassM: 0.1,
  fromHangarM: 100,
  basis: PRACTICE,
} as const

/** Pad ahead of a receiver: trouble that falls by more is made in the receiver. */
export const RECEIVE_ATTENUATOR = { db: 10, basis: PRACTICE } as const

/** Probe on a coil that is switched off. */
export const KICK_PROBE = { leastV: 1000, basis: PRACTICE } as const

/** Time a division, for a dip of the supply. */
export const DIP_SWEEP = { fastSec: 1e-3, slowSec: 50e-3, basis: PRACTICE } as const

/** Where the bands end that a noise is sorted into, on the line itself. */
export const NOISE_BANDS = {
  audioToHz: 20e3,
  lowToHz: 2e6,
  hfToHz: 30e6,
  vhfToHz: 400e6,
  uhfToHz: 2e9,
  basis: PRACTICE,
} as const

/** What is left between a level and its limit. */
export const USUAL_MARGIN = { db: 6, basis: PRACTICE } as const

/** Attenuation that is asked for where nobody has a figure. */
export const TARGETS = { modestDb: 20, strongDb: 40, basis: PRACTICE } as const

/** A cable that works as an antenna, as a source. */
export const CABLE_ANTENNA = { leastOhm: 50, usualOhm: 150, mostOhm: 300, basis: PRACTICE } as const

/** Capacitor at the very pin that keeps a VHF transmitter out of an audio input. */
export const PIN_CAPACITOR = { leastF: 100e-12, mostF: 1e-9, basis: PRACTICE } as const

/** A leaded part is an inductor from here on. */
export const FEED_THROUGH = { fromHz: 100e6, basis: PRACTICE } as const

/** What is left of a quenched coil and has to be stopped at the driver begins here. */
export const DRIVER_BEAD = { fromHz: 1e6, basis: PRACTICE } as const

/** Capacitor that many a box has at its input already, and where it makes that input low. */
export const INSIDE_CAPACITOR = { farads: 1e-9, fromHz: 5e6, basis: PRACTICE } as const

/** Match of an antenna line that one capacitor may not spend. */
export const ANTENNA_MATCH = { returnLossDb: 20, basis: PRACTICE } as const

/** A live line above these kills: direct, and alternating by its effective value. */
export const KILLS_ABOVE = { dcV: 60, acRmsV: 30, basis: PRACTICE } as const

/** High direct supplies beside 270 V. */
export const HIGH_DIRECT = { volts: [540, 800], basis: PRACTICE } as const

/** What a strobe keeps on its lamp lead, and a magneto makes on its primary. */
export const STROBE_LAMP = { volts: [400, 600], basis: PRACTICE } as const
export const MAGNETO_PRIMARY = { volts: [200, 400], basis: PRACTICE } as const

/** An engine at cruise as an example of how often its plugs spark. */
export const CRUISE = { rpm: 2400, basis: PRACTICE } as const
