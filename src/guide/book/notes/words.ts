/** What a field note is looked up by, beside its own words. */
export const NOTE_WORDS: Readonly<Record<string, readonly string[]>> = {
  'bench-figure': ['50 ohm bench', 'data sheet figure', 'catalogue attenuation'],
  paschen: ['altitude voltage', 'arcing at height', 'pressure gap'],
  'lightning-and-pulses': ['lightning waveform', 'do-160 section 22', 'damped sine', 'level'],
  'inductance-as-built': ['esr of a capacitor', 'esl', 'lead inductance'],
  'hf-on-the-airframe': ['coupler ground strap', 'hf howl', 'counterpoise'],
  'common-or-differential': ['common mode', 'differential mode'],
  'limit-lines': ['ce102', 'conducted emission limit'],
  'audio-ground': ['jack washer', 'ground loop', 'intercom wiring'],
  'navy-rule': ['capacitance to ground limit', '0.1 microfarad', 'power line capacitor'],
  'rack-trays': ['in-line adapter', 'blind mating'],
  'no-trial-lines': ['barred lines', 'never a trial part', 'no trial lines'],
  codes: ['4n7', '1k5', 'marking', 'letter code', 'preferred values', 'e12', 'e24'],
  'bus-dip': ['brownout', 'reset at start', 'hold-up'],
  'may-i-fly': ['approved data', 'modification', 'release to service'],
  'bond-four-wire': ['bond resistance', 'milliohm', 'bonding'],
  'l-band': ['transponder', 'tcas', 'dme', 'ghost'],
}
