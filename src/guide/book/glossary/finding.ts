/** Words of finding and proving. */
import type { GlossaryWord } from './types.ts'

export const FINDING_WORDS: readonly GlossaryWord[] = [
  {
    word: 'on-off-on test',
    forms: ['on, off, on', 'A-B-A'],
    line: 'Bare, changed, bare again, with all else untouched: the only proof of a cause.',
    page: 'on-off-on',
  },
  {
    word: 'breaker matrix',
    line: 'A table of loads switched one by one and in pairs, with what is heard in each state.',
    page: 'breaker-matrix',
  },
  {
    word: 'in-line trial',
    line: 'A part fitted for a test between two mated connectors, steps of ten, never for flight.',
    page: 'in-line-trial',
  },
  {
    word: 'trial ladder',
    line: 'Rising trial values, each tried in turn, until it clears or harms.',
    page: 'in-line-trial',
  },
  {
    word: 'break-out box',
    line: 'A box that brings every contact of a connector to a socket, for measuring and for trials.',
  },
  {
    word: 'dummy load',
    line: 'A resistor in place of an antenna: it takes the power of a transmitter and radiates almost none.',
    page: 'dummy-load',
  },
  {
    word: 'current probe',
    line: 'A clamp round a cable that reads the current in it without opening the circuit.',
    page: 'current-probe',
  },
  {
    word: 'transfer impedance',
    line: 'What turns current into voltage: of a probe, its calibration; of a shield, how much it leaks.',
    page: 'current-probe',
  },
  {
    word: 'clamp ferrite',
    forms: ['clamp-on ferrite', 'split ferrite'],
    line: 'A split ring of ferrite that is clamped over a cable and resists the current both wires share.',
    page: 'clamp-ferrites',
  },
  {
    word: 'milliohm meter',
    forms: ['bonding meter'],
    line: 'An ohmmeter with four wires and enough current to read a bond.',
    page: 'bond-four-wire',
  },
  {
    word: 'four-wire measurement',
    forms: ['four wires', 'four-wire'],
    line: 'Two wires bring the current, two others read the voltage, so that the leads do not count.',
    page: 'bond-four-wire',
  },
  { word: 'spectrum view', line: 'A picture of how much there is at each frequency.' },
  {
    word: 'noise floor',
    line: 'What a receiver or an instrument shows with nothing wanted at its input.',
    page: 'lamps-and-chargers',
  },
  {
    word: 'squelch',
    line: 'The gate that keeps a receiver silent until a signal comes; noise can hold it open or shut.',
    page: 'lamps-and-chargers',
  },
  {
    word: 'birdie',
    line: 'A tone at certain places of a receiver’s dial: from a clock, mixer or converter, its own or another’s.',
  },
  {
    word: 'overload',
    line: 'So much signal that a receiver no longer follows; everything near it suffers.',
    everyday: true,
  },
  {
    word: 'signature',
    line: 'How a noise sounds, its rhythm and what it follows: often enough to name the source.',
    page: 'noise-signatures',
  },
  { word: 'whine', line: 'A tone whose pitch follows a speed, mostly the engine’s.', page: 'noise-signatures' },
  { word: 'hum', line: 'A low steady tone at the frequency of a supply or twice it.', page: 'noise-signatures' },
  { word: 'hash', line: 'Broad rough noise without a tone, as brushes and converters make.', page: 'noise-signatures' },
  { word: 'crackle', line: 'Irregular clicks close together: a bad contact, arcing or static.' },
  { word: 'ripple', line: 'What is left of a rectified or switched supply on top of its steady voltage.' },
  { word: 'harmonic', line: 'A whole multiple of a frequency; every edge and every distortion makes them.' },
  { word: 'fundamental', line: 'The lowest frequency of a repeating signal; its multiples are the harmonics.' },
  {
    word: 'common mode',
    forms: ['common-mode'],
    line: 'Both wires carry the same current one way; it comes back through structure.',
    page: 'common-or-differential',
  },
  {
    word: 'differential mode',
    forms: ['differential-mode'],
    line: 'Out on one wire and back on the other.',
    page: 'common-or-differential',
  },
  {
    word: 'source impedance',
    line: 'What stands behind a noise voltage and limits its current; it decides what a filter does.',
    page: 'source-impedance',
  },
  { word: 'load impedance', line: 'What the noise meets behind the filter.' },
  { word: 'victim', line: 'The circuit that is disturbed.' },
  { word: 'coupling path', line: 'The way from source to victim: by wire, by field between wires, by antenna.' },
  { word: 'crosstalk', line: 'What a wire takes up from one that runs beside it.' },
  { word: 'radiated', line: 'Through space, as a field.' },
  { word: 'conducted', line: 'Along a wire.' },
  { word: 'susceptibility', line: 'How easily a unit is upset by what comes at it.' },
  { word: 'emission', line: 'What a unit gives off that it need not.' },
  { word: 'back-feed', line: 'Supply that comes in where it should only go out, through a second connection.' },
  {
    word: 'ground loop',
    line: 'A return with two ways: their difference of voltage stands in series with the signal.',
    page: 'audio-ground',
  },
  {
    word: 'intermittent',
    line: 'A fault that comes and goes; found by heat, movement and a table of events.',
    page: 'intermittents',
  },
  {
    word: 'wiggle test',
    line: 'Moving and tapping wires and connectors piece by piece while somebody watches.',
    page: 'intermittents',
  },
  { word: 'fretting', line: 'Wear of contact surfaces by tiny movements; it leaves oxide that rectifies and opens.' },
  { word: 'chafe', line: 'Insulation worn through by rubbing.' },
  { word: 'look-alike', line: 'Another cause with the same signs; one test separates the two.' },
]
