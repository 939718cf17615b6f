/**
 * How the sounds are put together, sample by sample. Pure: seconds in, numbers from −1 to 1 out; chance comes from a
 * generator with a seed, so that a sound is the same on every device and in the tests.
 */

/** Chance from 0 up to 1. */
export type Chance = () => number

/** A sound: asked for at each moment in turn. */
export type Voice = (sec: number) => number

export type Clock = { readonly rateHz: number; readonly chance: Chance }

/** A sound with the seconds it lasts; it is played in a loop. */
export type Sound = { readonly id: string; readonly seconds: number; readonly voice: (clock: Clock) => Voice }

/** A generator of chance by multiplication and shifts (a 32-bit hash of a counter). */
function chanceOf(seed: number): Chance {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

/** A share of full scale that is so many decibels under it. */
export const below = (db: number): number => 10 ** (-db / 20)

/** One tone whose pitch may move: the phase is summed, so that it never jumps. */
export function tone({ rateHz }: Clock, hz: (sec: number) => number): Voice {
  let phase = 0
  return (sec) => {
    phase += (2 * Math.PI * hz(sec)) / rateHz
    return Math.sin(phase)
  }
}

/** A tone and its multiples; `levelsDb`: how far each lies below full scale, the first being the tone itself. */
export function harmonics(clock: Clock, hz: (sec: number) => number, levelsDb: readonly number[]): Voice {
  const voices = levelsDb.map((db, index) => ({ share: below(db), voice: tone(clock, (sec) => hz(sec) * (index + 1)) }))
  return (sec) => voices.reduce((sum, { share, voice }) => sum + share * voice(sec), 0)
}

/** Hiss between two frequencies: white noise through one pole below and one above. */
export function hiss({ rateHz, chance }: Clock, fromHz: number, toHz: number): Voice {
  const pole = (hz: number) => 1 - Math.exp((-2 * Math.PI * hz) / rateHz)
  const [slow, quick] = [pole(fromHz), pole(toHz)]
  let [low, high] = [0, 0]
  return () => {
    high += quick * (2 * chance() - 1 - high)
    low += slow * (high - low)
    return high - low
  }
}

/** Short clicks that ring at one pitch and die away; `perSec` of them, evenly or by chance. */
export function clicks(
  { rateHz, chance }: Clock,
  q: {
    readonly perSec: (sec: number) => number
    readonly hz: number
    readonly lastSec: number
    readonly even: boolean
  },
): Voice {
  let [due, age, height] = [0, Number.POSITIVE_INFINITY, 0]
  return (sec) => {
    const share = q.perSec(sec) / rateHz
    due += share
    const isNow = q.even ? due >= 1 : chance() < share
    if (isNow) {
      ;[due, age, height] = [0, 0, q.even ? 1 : 0.4 + 0.6 * chance()]
    }
    age += 1 / rateHz
    return age > 8 * q.lastSec ? 0 : height * Math.exp(-age / q.lastSec) * Math.sin(2 * Math.PI * q.hz * age)
  }
}

/** On for a share of each period, from its start. */
export const isOn = (sec: number, periodSec: number, shareOn: number): boolean => (sec / periodSec) % 1 < shareOn

/** From one value to another and back within a period, along a triangle. */
export function upAndDown(sec: number, periodSec: number, from: number, to: number): number {
  const share = (sec / periodSec) % 1
  return from + (to - from) * (share < 0.5 ? 2 * share : 2 - 2 * share)
}

/** The whole of a sound as samples; `peak`: the largest of them is brought to it. */
export function render(sound: Sound, rateHz: number, peak = 0.5): Float32Array {
  const voice = sound.voice({ rateHz, chance: chanceOf(sound.id.length * 7919 + 1) })
  const samples = new Float32Array(Math.round(sound.seconds * rateHz))
  let most = 0
  for (let i = 0; i < samples.length; i++) {
    const value = voice(i / rateHz)
    samples[i] = value
    most = Math.max(most, Math.abs(value))
  }
  if (most > 0) for (let i = 0; i < samples.length; i++) samples[i] = ((samples[i] ?? 0) * peak) / most
  return samples
}
