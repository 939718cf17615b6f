/** What makes noise on an aircraft, how it sounds, and the first test that separates it from the rest. */
import { PHONE_BURSTS } from './field-figures.ts'
import { DERIVED, PRACTICE, read } from './line-kinds/cite.ts'
import type { Citation } from './line-kinds/types.ts'

export type NoiseSignature = {
  readonly id: string
  readonly source: string
  /** the rule its frequencies follow */
  readonly rule: string
  readonly heard: string
  readonly firstTest: string
  readonly citations: readonly [Citation, ...Citation[]]
}

export const NOISE_SIGNATURES: readonly NoiseSignature[] = [
  {
    id: 'leakage-400',
    source: '400 Hz leakage',
    rule: '400, 800, 1200 Hz…',
    heard: 'a hum higher than mains, steady, not with rpm',
    firstTest: 'inverter or AC bus off',
    citations: [PRACTICE],
  },
  {
    id: 'rectifier-400',
    source: 'Transformer-rectifier on 400 Hz',
    rule: 'pulses × 400 Hz: 6-pulse 2.4 kHz, 12-pulse 4.8 kHz, 18-pulse 7.2 kHz; on 360–800 Hz a 12-pulse gives 4.32–9.6 kHz',
    heard: 'a steady whistle on DC loads',
    firstTest: 'swap the unit; a drop to 400 or 800 Hz means an open diode',
    citations: [DERIVED, read('R36')],
  },
  {
    id: 'alternator-whine',
    source: 'Alternator whine',
    rule: 'rpm/60 × pole pairs × drive ratio × 6',
    heard: 'a whine that follows rpm and stops with the field off',
    firstTest: 'field switch off',
    citations: [read('R40'), read('R41'), DERIVED],
  },
  {
    id: 'pwm-regulator',
    source: 'Switching voltage regulator',
    rule: 'the switching rate moves with the load',
    heard: 'pitch changes with electrical load at constant rpm',
    firstTest: 'switch the landing light at constant rpm',
    citations: [read('R40')],
  },
  {
    id: 'commutator',
    source: 'Brush motor or generator',
    rule: 'bars × rpm/60, and broadband up to VHF',
    heard: 'buzz or hash while it runs, worse at start',
    firstTest: 'breaker of that pump or blower',
    citations: [PRACTICE],
  },
  {
    id: 'ignition',
    source: 'Ignition',
    rule: 'sparks per second = rpm/60 × cylinders/2: 80 or 120 at 2400 rpm',
    heard: 'popping that follows rpm, radiated, stays with the master off',
    firstTest: 'handheld receiver from outside the arc; one magneto at a time, from the cockpit, by the manual',
    citations: [DERIVED, PRACTICE],
  },
  {
    id: 'switch-mode',
    source: 'Switch-mode converter',
    rule: 'multiples of 20–500 kHz through ADF, HF and VHF, drifting with load and temperature',
    heard: 'birdies at even steps, or broad hash',
    firstTest: 'turn units off one by one',
    citations: [PRACTICE],
  },
  {
    id: 'led-lighting',
    source: 'LED lighting',
    rule: 'converter of 50–500 kHz with edges up to VHF',
    heard: 'noise floor up, squelch opens, range lost without a tone',
    firstTest: 'squelch test with the lights off and on',
    citations: [PRACTICE],
  },
  {
    id: 'strobe',
    source: 'Strobe',
    rule: '40–60 flashes a minute; the charger sweeps 1–20 kHz between them',
    heard: 'a tick at each flash and a rising whine',
    firstTest: 'strobe off',
    citations: [PRACTICE],
  },
  {
    id: 'precipitation-static',
    source: 'Precipitation static',
    rule: 'corona pulses, broadband from LF to UHF',
    heard: 'ticking that grows to a roar in rain, snow or dust and stops in clear air',
    firstTest: 'compare with the weather; check dischargers and bonds',
    citations: [read('R38'), read('C23')],
  },
  {
    id: 'coil-flyback',
    source: 'Relay or solenoid coil',
    rule: 'single bursts of nanoseconds to microseconds, hundreds of volts',
    heard: 'one click, reset or latched discrete at each switching',
    firstTest: 'scope at the coil; add a diode or suppressor there',
    citations: [PRACTICE],
  },
  {
    id: 'clock',
    source: 'Digital clocks',
    rule: 'multiples of the clock',
    heard: 'fixed birdies at named channels',
    firstTest: 'power one box at a time',
    citations: [PRACTICE],
  },
  {
    id: 'dimmer',
    source: 'PWM heater or dimmer',
    rule: 'edges at 100 Hz–20 kHz',
    heard: 'a buzz that follows the dimmer',
    firstTest: 'turn the dimmer',
    citations: [PRACTICE],
  },
  {
    id: 'portable-device',
    source: 'Portable electronic device',
    rule: '217 Hz buzz of one sort of mobile phone only; VHF harmonics, Wi-Fi',
    heard: 'a buzz in a fixed rhythm, or a navigation error on one frequency',
    firstTest: 'device on, off, on',
    citations: [PHONE_BURSTS.basis, read('C09'), read('C11')],
  },
  {
    id: 'own-transmitter',
    source: 'Own transmitter',
    rule: 'the frequency sent, its harmonics, or its rectified modulation',
    heard: 'only on push-to-talk; worse on one channel or antenna',
    firstTest: 'dummy load; lower power',
    citations: [read('C07'), read('C15')],
  },
  {
    id: 'ground-transmitter',
    source: 'Ground transmitter (HIRF)',
    rule: 'set by the site',
    heard: 'the same place every time',
    firstTest: 'plot the place against towers',
    citations: [read('C01')],
  },
  {
    id: 'ground-power',
    source: 'Hangar or ground power',
    rule: '50, 60 or 400 Hz and drives',
    heard: 'gone on the battery',
    firstTest: 'ground power off',
    citations: [PRACTICE],
  },
]
