/** The picture of a good signal of a kind, drawn from its levels and times in reference. */
import type { Wave } from '../../../reference/line-cards.ts'
import type { LineKind } from '../../../reference/line-kinds.ts'
import type { Waveform } from '../types.ts'
import { balanced, dominant, manchester, pulledUp, returnToZero, single, steps } from './waveforms-data.ts'
import {
  carrier,
  chopped,
  contact,
  pickUp,
  pictureLine,
  pulse,
  sineWave,
  slow,
  steady,
  threeLegs,
  voice,
} from './waveforms-wire.ts'

/** Points, levels and named times of the wave; what the kind's own row holds (bit rate, edge, rise) is taken from there. */
export function waveformOf(wave: Wave, kind: LineKind): Waveform {
  switch (wave.is) {
    case 'return-to-zero':
      return returnToZero(wave, kind)
    case 'manchester':
      return manchester(wave, kind)
    case 'balanced':
      return balanced(wave)
    case 'dominant':
      return dominant(wave, kind)
    case 'single':
      return single(wave)
    case 'pulled-up':
      return pulledUp(wave, kind)
    case 'steps':
      return steps(wave)
    case 'steady':
      return steady(wave, kind)
    case 'sine':
      return sineWave(wave, kind)
    case 'contact':
      return contact(wave)
    case 'carrier':
      return carrier(wave, kind)
    case 'three-legs':
      return threeLegs(wave, kind)
    case 'slow':
      return slow(wave)
    case 'pick-up':
      return pickUp(wave, kind)
    case 'voice':
      return voice(wave)
    case 'picture-line':
      return pictureLine(wave)
    case 'chopped':
      return chopped(wave)
    case 'pulse':
      return pulse(wave)
  }
}
