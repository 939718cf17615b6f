/**
 * What people say when they mean an answer of the guide, for the search only: it is matched and never shown.
 * Keys are `<item>/<option>`.
 */
export const PLAIN_WORDS: Readonly<Record<string, string>> = {
  'wrong/noise':
    'whine hum buzz hiss crackle popping clicks tone muddy scratchy headset intercom speaker audio interphone heard',
  'wrong/receiver': 'squelch breaks opens static radio com nav adf vor ils needle swings points poor reception range',
  'wrong/gnss': 'gps gnss satellite position lost jammed signal drops degraded',
  'wrong/complain': 'transmission garbled distorted microphone mic side tone tower hears us noisy carrier',
  'wrong/reading':
    'gauge gauges indicator jumps flickers wanders sensor temperature pressure pointer heading swings flag',
  'wrong/data':
    'bus drops dropout errors messages lost crc parity arinc 429 1553 can rs-485 rs-422 ethernet link packet loss',
  'wrong/reset':
    'reboots box reboots reboot restarts trips resets false alarm warning latched discrete relay chatters blanks',
  'wrong/compass': 'compass magnetometer flux valve magnetic heading off',
  'wrong/broken': 'dead burnt blown failed damaged short fried destroyed',
  'wrong/plan': 'new box design emission susceptibility qualification do-160 install',
  'when/transmit': 'call calling tower transmit transmits transmitting keyed keying ptt radio hf vhf uhf push to talk',
  'when/engine': 'engine rpm speed follows alternator generator magneto',
  'when/load': 'load switched pitch changes',
  'when/unit': 'lamp light strobe beacon motor pump blower charger display on',
  'when/switching': 'relay switch contactor plugged power up start starter',
  'when/device': 'phone tablet mobile laptop passenger portable',
  'when/weather': 'snow ice dust cloud rain precipitation static',
  'when/wet': 'wet water damp moisture rain wash humidity',
  'when/storm': 'lightning strike thunderstorm',
  'when/touch': 'touch static shock spark refuel',
}

/** The same for causes, by suspect. */
export const CAUSE_WORDS: Readonly<Record<string, string>> = {
  alternator: 'whine generator diode open field rpm charging ripple',
  regulator: 'pitch voltage regulator load alternator',
  'ac-hum': 'hum 400 800 hz 115 v inverter feeder even steady all headsets',
  rectifier: 'whistle 2.4 4.8 khz transformer rectifier unit tru',
  converter: 'usb socket charger led lamp hash squelch opens range display switching supply dc-dc',
  motor: 'brush commutator pump blower fan buzz servo actuator',
  drive: 'dimmer pwm vfd inverter spindle limit switch',
  ignition: 'magneto spark plug pops ticking static grows with power rpm switch leads',
  strobe: 'beacon flash tick every second whine capacitor charging',
  coil: 'relay contactor solenoid valve latch switch-off spike diode flyback master shutdown radios fail closes latch sets caution',
  'bus-dip': 'reset reboot crank start brownout sag transfer interruption voltage drop',
  'bus-surge': 'load dump overvoltage hot plug plugged live board dies inrush ringing',
  precipitation: 'p-static snow ice cloud dust hiss roar radome wick strip paint glide slope needle no radio com',
  touch: 'esd electrostatic spark touched panel carpet dry air',
  lightning: 'strike thunderstorm burn mark exit point',
  'own-tx-radiated': 'keying ptt transmit vhf hf autopilot rolls banks needle channel frequency',
  'own-tx-leak':
    'harmonic front face gps lpv approach tower 121 rudder kicks yaw damper connector shield warm plug howl howls',
  device: 'phone tablet passenger mobile gsm laptop earbuds',
  'outside-field': 'jamming spoofing one airport billboard broadcast mast jammed radar same place other crews',
  'ground-power': 'gpu hangar stand shore cart external power',
  'dc-field': 'compass magnetised steel bolt demagnetise heading error',
  'l-band': 'transponder dme tcas suppression ghost pulse ticks',
  clock: 'birdie fixed channels steps oscillator processor bus traffic',
  'two-sources': 'intermodulation both together mix',
  antenna: 'weak stations lightning detector display random strikes clear air day skin map distance too near',
  coax: 'antenna corroded wet rg cable connector swr weak stations crackle',
  return: 'ground loop jack washer intercom headset right side sleeve tip one seat copilot',
  bond: 'strap paint milliohm corrosion panel loose',
  shield: 'pigtail drain wire braid both ends one end earthed lifted tail',
  cable: 'common mode antenna effect pickup long wire',
  supply: 'power lead conducted alternator every output',
  crosstalk: 'bundle routing parallel buzzer wire separation near beside moved',
  joint: 'rusty bolt rectify corroded intermodulation',
  stud: 'ground stud battery negative cable loose many systems fail together flicker weights clocks everything minus never connected',
  contact: 'intermittent loose pin fretting vibration chafed wire short bare terminal comes and goes',
  'bus-fault': 'terminator stub 120 ohm retries crc errors wrong resistance end open',
  'set-up': 'configuration speed setting format software jam mechanical adjustment wrong option',
  'own-part': 'filter fitted made it worse capacitor added adapter improved connector drops culprit',
  'box-fault':
    'inside the box relay sticking board serial number one unit bench weak reset pin hangs freezes trim runs by itself runaway locks',
  water: 'corrosion wash rain moisture wet salt',
  headset: 'anr noise cancelling battery microphone cord',
  'receiver-self': 'birdie internal overload strong station image',
}

/** The same for checks. */
export const CHECK_WORDS: Readonly<Record<string, string>> = {
  filter: 'attenuation topology pi lc ringing',
  need: 'how much attenuation decibels limit exceeded too much',
  window: 'which capacitor what value how large',
  loading: 'edge slow signal stands eye bit rate cable',
  power: 'leakage inrush reactive current supply capacitor bleed',
  pair: 'balance unequal legs conversion two capacitors',
  surge: 'tvs lightning pulse clamp energy let-through',
  tone: 'pitch frequency hear whine hum what makes',
  trial: 'in-line ladder result nanofarad cleared',
  trace: 'spectrum analyser file csv touchstone s2p import measured plot',
}
