/** Every sound of the book, a few lines each, by the id of its noise signature. Pitches by the formulas of the tone check. */
import { DIMMER_HZ, MAINS_HZ, PHONE_HZ, STROBE_CHARGER_HZ } from '../../../calc/tone/explanations.ts'
import { alternatorHz, commutatorHz, EXAMPLE, popsPerSec, whistleHz } from './example.ts'
import { below, clicks, harmonics, hiss, isOn, type Sound, tone, upAndDown } from './synthesis.ts'

const [IDLE, CRUISE] = EXAMPLE.rpm
/** What a receiver or an intercom lets through. */
const VOICE_HZ = [300, 3400] as const
/** Highest pitch a sweep is played at: above it few hear anything. */
const HEARD_HZ = 9e3
/** Pitch of a carrier beside the channel it is listened for on. */
const BEAT_HZ = 1e3
const FLASH_SEC = 60 / EXAMPLE.flashesPerMin
const SWEEP_SEC = 60 / EXAMPLE.sweepsPerMin

export const SOUNDS: readonly Sound[] = [
  { id: 'leakage-400', seconds: 2, voice: (clock) => harmonics(clock, () => EXAMPLE.busHz, [0, 9, 14, 22]) },
  { id: 'rectifier-400', seconds: 2, voice: (clock) => harmonics(clock, whistleHz, [0, 14, 24]) },
  {
    id: 'alternator-whine',
    seconds: 6,
    voice: (clock) => harmonics(clock, (sec) => alternatorHz(upAndDown(sec, 6, IDLE, CRUISE)), [0, 16, 26]),
  },
  {
    // the pitch steps when a large load comes on, the engine turning evenly
    id: 'pwm-regulator',
    seconds: 4,
    voice: (clock) => {
      const middle = Math.sqrt(DIMMER_HZ[0] * DIMMER_HZ[1])
      return harmonics(clock, (sec) => (isOn(sec, 4, 0.5) ? middle : middle * 1.3), [0, 12, 16, 20])
    },
  },
  {
    // runs up from standstill, the brushes hissing all the while
    id: 'commutator',
    seconds: 4,
    voice: (clock) => {
      const speed = (sec: number) => Math.min(1, 0.2 + sec / 2)
      const [whirr, hash] = [harmonics(clock, (sec) => commutatorHz() * speed(sec), [6, 12]), hiss(clock, ...VOICE_HZ)]
      const spin = tone(clock, (sec) => (EXAMPLE.motorRpm / 60) * speed(sec))
      return (sec) => whirr(sec) + hash(sec) * (1.5 + spin(sec)) * (sec < 1 ? 2 : 1)
    },
  },
  {
    id: 'ignition',
    seconds: 6,
    voice: (clock) =>
      clicks(clock, {
        perSec: (sec) => popsPerSec(upAndDown(sec, 6, IDLE, CRUISE)),
        ...{ hz: 1800, lastSec: 0.0008, even: true },
      }),
  },
  {
    // tuned across the band: at equal steps a whistle falls to nothing and climbs again
    id: 'switch-mode',
    seconds: 3,
    voice: (clock) => {
      const [beat, floor] = [tone(clock, (sec) => upAndDown(sec + 0.5, 1, VOICE_HZ[1], 0)), hiss(clock, ...VOICE_HZ)]
      return (sec) => beat(sec) + below(9) * floor(sec)
    },
  },
  {
    // lamps off, lamps on: the floor comes up, no tone
    id: 'led-lighting',
    seconds: 4,
    voice: (clock) => {
      const floor = hiss(clock, ...VOICE_HZ)
      return (sec) => floor(sec) * (isOn(sec, 4, 0.5) ? below(20) : 1)
    },
  },
  {
    id: 'strobe',
    seconds: 2 * FLASH_SEC,
    voice: (clock) => {
      const charge = tone(clock, (sec) => {
        const share = (sec / FLASH_SEC) % 1
        return Math.min(HEARD_HZ, STROBE_CHARGER_HZ[0] * (STROBE_CHARGER_HZ[1] / STROBE_CHARGER_HZ[0]) ** share)
      })
      const flash = clicks(clock, { perSec: () => 1 / FLASH_SEC, hz: 1200, lastSec: 0.004, even: true })
      return (sec) => below(12) * charge(sec) + flash(sec)
    },
  },
  {
    // single ticks that run together into a roar
    id: 'precipitation-static',
    seconds: 8,
    voice: (clock) => {
      const ticks = clicks(clock, {
        perSec: (sec) => 3 * 2 ** sec,
        ...{ hz: 2200, lastSec: 0.0012, even: false },
      })
      const roar = hiss(clock, ...VOICE_HZ)
      return (sec) => ticks(sec) + roar(sec) * Math.min(1, sec / 8) ** 3 * 2
    },
  },
  {
    // one click at each switching, nothing between
    id: 'coil-flyback',
    seconds: 3,
    voice: (clock) => clicks(clock, { perSec: () => 0.7, hz: 2600, lastSec: 0.0015, even: true }),
  },
  {
    // one channel has it at a pitch that nothing moves, the next has not
    id: 'clock',
    seconds: 4,
    voice: (clock) => {
      const [beat, floor] = [tone(clock, () => BEAT_HZ), hiss(clock, ...VOICE_HZ)]
      return (sec) => (isOn(sec, 4, 0.5) ? beat(sec) : 0) + below(12) * floor(sec)
    },
  },
  {
    // the rate stays, the width of the pulses and with it the timbre moves
    id: 'dimmer',
    seconds: 4,
    voice: (clock) => {
      const rate = 2 * DIMMER_HZ[0]
      let phase = 0
      return (sec) => {
        phase = (phase + rate / clock.rateHz) % 1
        return phase < upAndDown(sec, 4, 0.05, 0.5) ? 1 : -0.2
      }
    },
  },
  {
    id: 'portable-device',
    seconds: 3,
    voice: (clock) => {
      const burst = clicks(clock, { perSec: () => PHONE_HZ, hz: 1500, lastSec: 0.0006, even: true })
      return (sec) => (isOn(sec, 3, 0.7) && isOn(sec, 0.18, 0.6) ? burst(sec) : 0)
    },
  },
  {
    // only while keyed: speech rectified into a rasp, over a hum of the supply
    id: 'own-transmitter',
    seconds: 4,
    voice: (clock) => {
      const [rasp, syllable] = [hiss(clock, ...VOICE_HZ), tone(clock, () => 4)]
      const hum = harmonics(clock, () => 150, [6, 10, 14])
      return (sec) => (isOn(sec, 4, 0.5) ? hum(sec) + 4 * Math.abs(rasp(sec) * syllable(sec)) : 0)
    },
  },
  {
    // a radar: a short buzz each time its antenna looks this way
    id: 'ground-transmitter',
    seconds: 2 * SWEEP_SEC,
    voice: (clock) => {
      const pulses = clicks(clock, {
        perSec: () => EXAMPLE.radarPulsesPerSec,
        ...{ hz: 2000, lastSec: 0.0004, even: true },
      })
      return (sec) => (isOn(sec, SWEEP_SEC, 0.04) ? pulses(sec) : 0)
    },
  },
  {
    id: 'ground-power',
    seconds: 2,
    voice: (clock) => {
      const [hum, hash] = [harmonics(clock, () => MAINS_HZ.low, [6, 3, 12, 9, 20, 14]), hiss(clock, ...VOICE_HZ)]
      return (sec) => hum(sec) + below(16) * hash(sec)
    },
  },
]

/** A sound by the id of its signature. */
export const soundById = (id: string): Sound | undefined => SOUNDS.find((sound) => sound.id === id)
