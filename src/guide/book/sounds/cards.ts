/** What stands on the card of a noise signature beside its row in the reference: when it comes, and what is taken for it. */
import type { SuspectId } from '../../investigation.ts'

export type SoundCard = {
  /** id of the noise signature */
  readonly signature: string
  readonly title: string
  readonly suspect: SuspectId
  readonly comes: string
  readonly rhythm: string
  /** another signature that is taken for this one, and the one test that separates them */
  readonly alike: readonly { readonly signature: string; readonly test: string }[]
  /** what people call it */
  readonly words: readonly string[]
  /** what to listen for in the sound played here */
  readonly listen: string
}

/** Id of the page of a signature. */
export const soundPageId = (signature: string): string => `sound-${signature}`

export const SOUND_CARDS: readonly SoundCard[] = [
  {
    signature: 'leakage-400',
    title: 'Hum of the alternating bus',
    suspect: 'ac-hum',
    comes: 'As long as the alternating bus or its inverter is on, whatever the engine does.',
    rhythm: 'Steady, no beat. It starts and ends with the inverter.',
    alike: [
      { signature: 'ground-power', test: 'Ground power unplugged, inverter on: this hum stays, that one is gone.' },
      { signature: 'alternator-whine', test: 'Change the engine speed: this hum keeps its pitch, the whine does not.' },
    ],
    words: ['hum', '400 Hz', 'inverter', 'buzz', 'AC bus', 'headset hum', 'instrument transformer'],
    listen: 'One low note with its octave over it. It does not move.',
  },
  {
    signature: 'rectifier-400',
    title: 'Whistle of a transformer-rectifier',
    suspect: 'rectifier',
    comes: 'With the rectifier unit on, on everything that its direct-current bus feeds.',
    rhythm: 'Steady. On a bus of variable frequency it follows the engine slowly.',
    alike: [
      {
        signature: 'alternator-whine',
        test: 'Other rectifier unit on, same engine speed: this whistle goes with its unit.',
      },
      { signature: 'switch-mode', test: 'Turn the receiver off channel: a birdie slides, this whistle stays.' },
    ],
    words: ['whistle', 'TRU', 'transformer rectifier', 'ripple', 'high pitched', 'steady whine'],
    listen: 'One clear high note. If it ever falls to the note of the bus, a diode is open.',
  },
  {
    signature: 'alternator-whine',
    title: 'Whine of the alternator',
    suspect: 'alternator',
    comes: 'With the engine turning and the alternator charging; loudest with a flat battery and large loads.',
    rhythm: 'No beat. The pitch climbs and falls with the engine.',
    alike: [
      {
        signature: 'pwm-regulator',
        test: 'Large load on at one engine speed: this pitch stays, the regulator’s moves.',
      },
      { signature: 'ignition', test: 'Alternator field off: the whine is gone, the popping stays.' },
      { signature: 'rectifier-400', test: 'Change the engine speed by a tenth: this one moves by a tenth.' },
    ],
    words: ['whine', 'alternator', 'generator', 'rpm', 'follows engine', 'singing', 'diode'],
    listen: 'It climbs from idle to cruise and falls back. A second note below it points to an open diode.',
  },
  {
    signature: 'pwm-regulator',
    title: 'Pitch that moves with the load',
    suspect: 'regulator',
    comes: 'With the alternator charging, when lamps, flaps or pumps are switched.',
    rhythm: 'Steady between two switchings, then it steps.',
    alike: [
      {
        signature: 'alternator-whine',
        test: 'Hold the engine speed and switch a load: only the regulator changes pitch.',
      },
      { signature: 'dimmer', test: 'Turn every dimmer to zero: if it stays, it is the regulator.' },
    ],
    words: ['regulator', 'voltage regulator', 'landing light', 'pitch changes', 'load'],
    listen: 'The note steps up when the load comes on, the engine turning as before.',
  },
  {
    signature: 'commutator',
    title: 'Hash of a brush motor',
    suspect: 'motor',
    comes: 'While that pump, blower or actuator runs; worst at its start and with worn brushes.',
    rhythm: 'A rough rush that runs up with the motor.',
    alike: [
      { signature: 'led-lighting', test: 'Stop the motor: its rush dies away with the speed, a lamp’s stops at once.' },
      { signature: 'precipitation-static', test: 'On the ground in clear air: only the motor can be heard.' },
    ],
    words: ['motor', 'pump', 'blower', 'brushes', 'hash', 'fuel pump', 'fan', 'gyro', 'crackle'],
    listen: 'A rush with a whirr in it, running up from standstill.',
  },
  {
    signature: 'ignition',
    title: 'Popping of the ignition',
    suspect: 'ignition',
    comes: 'With the engine turning, with the master switch off as well.',
    rhythm: 'Even pops; twice the engine speed, twice the pops.',
    alike: [
      {
        signature: 'precipitation-static',
        test: 'Change the engine speed: pops follow it. Static follows the weather.',
      },
      {
        signature: 'alternator-whine',
        test: 'Field off: pops stay. One ignition at a time, by the manual: pops change.',
      },
    ],
    words: ['popping', 'magneto', 'spark', 'ticking', 'P lead', 'ignition', 'crackle', 'engine noise'],
    listen: 'Each pop is short and rough. Quick pops run together into a rasp.',
  },
  {
    signature: 'switch-mode',
    title: 'Birdies of a converter',
    suspect: 'converter',
    comes: 'With a charger, display, converter or camera powered; it drifts while that unit warms up.',
    rhythm: 'None. Tuning across the band, a whistle comes back at equal steps.',
    alike: [
      { signature: 'clock', test: 'Note the channel cold and warm: a converter drifts, a clock stays.' },
      { signature: 'own-transmitter', test: 'Key nothing: a converter’s birdie is there all the time.' },
    ],
    words: ['birdie', 'birdies', 'converter', 'charger', 'USB', 'switching supply', 'equal steps', 'squelch opens'],
    listen: 'Tuned across: the whistle falls to nothing and climbs again, over and over.',
  },
  {
    signature: 'led-lighting',
    title: 'Floor raised by lamps',
    suspect: 'converter',
    comes: 'With a lamp on, most of all a lamp near an antenna or its coaxial cable.',
    rhythm: 'None: even hiss. The squelch opens, or weak stations are lost without any sound.',
    alike: [
      { signature: 'precipitation-static', test: 'Lamps off: this hiss is gone at once.' },
      { signature: 'commutator', test: 'Every motor stopped, lamps on: the hiss stays.' },
    ],
    words: ['LED', 'lamp', 'light', 'range lost', 'weak stations', 'squelch', 'hiss', 'landing light', 'beacon'],
    listen: 'First the lamps are off, then on. There is no tone in it.',
  },
  {
    signature: 'strobe',
    title: 'Tick and rising whine of a strobe',
    suspect: 'strobe',
    comes: 'With the strobe on, on the ground and in the air.',
    rhythm: 'A tick at each flash, a whine that climbs until the next.',
    alike: [
      { signature: 'coil-flyback', test: 'Watch the lamp: each tick comes with a flash.' },
      { signature: 'pwm-regulator', test: 'Strobe off: its whine is gone, the regulator’s is not.' },
    ],
    words: ['strobe', 'flash', 'tick', 'ticking', 'beacon', 'anti-collision light', 'rising whine'],
    listen: 'Tick, climb, tick, climb: one round a flash.',
  },
  {
    signature: 'precipitation-static',
    title: 'Roar in snow, rain and dust',
    suspect: 'precipitation',
    comes: 'In cloud, snow, dry dust or near a thunderstorm; it goes in clear air.',
    rhythm: 'Single ticks that grow together into a roar.',
    alike: [
      { signature: 'ignition', test: 'Change the engine speed: static does not follow.' },
      { signature: 'led-lighting', test: 'Lamps off: static goes on.' },
    ],
    words: ['static', 'P-static', 'precipitation static', 'static wick', 'snow', 'rain', 'roar', 'discharger', 'ADF'],
    listen: 'Ticks by chance, quicker and quicker, until no single one is heard.',
  },
  {
    signature: 'coil-flyback',
    title: 'One click at a switching',
    suspect: 'coil',
    comes: 'At the moment a relay, valve or contactor is switched off. Look for a reset or a latched input as well.',
    rhythm: 'One click, then nothing until the next switching.',
    alike: [
      { signature: 'strobe', test: 'Strobe off: if clicks still come with a switch, it is the coil.' },
      { signature: 'ignition', test: 'Engine stopped: the click still comes with the switch.' },
    ],
    words: ['click', 'relay', 'solenoid', 'contactor', 'reset', 'latch', 'switch off', 'flyback', 'valve'],
    listen: 'Single clicks. Between them there is silence.',
  },
  {
    signature: 'clock',
    title: 'A tone on named channels',
    suspect: 'clock',
    comes: 'On the same channels every time, as long as one box is powered.',
    rhythm: 'None. On the channel beside it there is nothing.',
    alike: [
      { signature: 'switch-mode', test: 'Let the unit warm up: a clock keeps its place to the channel.' },
      { signature: 'own-transmitter', test: 'Key nothing: the tone is there.' },
    ],
    words: ['clock', 'fixed channel', 'birdie', 'always the same frequency', 'oscillator', 'processor'],
    listen: 'First the channel that has it, then the one beside it.',
  },
  {
    signature: 'dimmer',
    title: 'Buzz that follows a dimmer',
    suspect: 'drive',
    comes: 'With panel lights dimmed, a heater on, or a motor under speed control.',
    rhythm: 'Steady; its colour changes as the knob is turned.',
    alike: [
      { signature: 'pwm-regulator', test: 'Dimmer to full or to zero: its buzz goes.' },
      { signature: 'leakage-400', test: 'Inverter off: if the buzz stays, it is the dimmer.' },
    ],
    words: ['dimmer', 'PWM', 'buzz', 'panel lights', 'heater', 'speed control', 'seat heater'],
    listen: 'The note stays, the buzz grows thinner and thicker with the knob.',
  },
  {
    signature: 'portable-device',
    title: 'Rhythm of a telephone',
    suspect: 'device',
    comes: 'When a telephone in a bag, pocket or headset pouch looks for its network or rings.',
    rhythm: 'Short bursts in a fixed pattern, then a pause.',
    alike: [
      { signature: 'ground-transmitter', test: 'All devices truly off, not in flight mode: this rhythm is gone.' },
      { signature: 'dimmer', test: 'Turn the dimmer: the rhythm does not care.' },
    ],
    words: ['phone', 'mobile', 'cell phone', 'tablet', 'PED', 'dit-dit-dit', 'GSM buzz', 'rhythm'],
    listen: 'Bursts of a rough buzz. Only one sort of telephone makes it; others are silent and still disturb.',
  },
  {
    signature: 'own-transmitter',
    title: 'Only while we transmit',
    suspect: 'own-tx-radiated',
    comes: 'With the push-to-talk key down, often on some channels and one antenna only.',
    rhythm: 'That of the speech, as a rasp. Or a reading jumps for as long as the key is held.',
    alike: [
      { signature: 'switch-mode', test: 'Key up: this one is gone.' },
      { signature: 'leakage-400', test: 'Hum only on the carrier: run the set from its own battery.' },
    ],
    words: ['push to talk', 'PTT', 'keyed', 'transmit', 'squeal', 'RF feedback', 'sidetone', 'rectified'],
    listen: 'Key down, then key up. The rasp follows the speech.',
  },
  {
    signature: 'ground-transmitter',
    title: 'The same place every time',
    suspect: 'outside-field',
    comes: 'Near one transmitter or radar, for other crews as well.',
    rhythm: 'That of the station; from a radar a short buzz at each turn of its antenna.',
    alike: [
      { signature: 'portable-device', test: 'All devices off, same place: it is still there.' },
      { signature: 'own-transmitter', test: 'Nothing keyed, same place: it is still there.' },
    ],
    words: ['radar', 'HIRF', 'tower', 'same place', 'high intensity field', 'ground station', 'jamming'],
    listen: 'A short buzz, a long pause, a short buzz.',
  },
  {
    signature: 'ground-power',
    title: 'Hum on ground power',
    suspect: 'ground-power',
    comes: 'Only with the ground supply connected, or beside the hangar.',
    rhythm: 'Steady, with the hash of drives and lamps of the hall in it.',
    alike: [
      { signature: 'leakage-400', test: 'Ground supply unplugged: this hum is gone, and it is lower in pitch.' },
      { signature: 'commutator', test: 'On the battery, every motor stopped: silence means the ground supply.' },
    ],
    words: ['GPU', 'ground power', 'hangar', 'mains hum', '50 Hz', '60 Hz', 'ground cart', 'hum on stand'],
    listen: 'A low hum, rougher than that of the aircraft’s own bus.',
  },
]
