/** A good signal of a kind as levels and times, from which its picture is drawn. Volts, seconds, hertz. */
import type { Citation } from '../line-kinds/types.ts'

type From = { readonly source: Citation }

export type Wave =
  /** three levels between the legs, back to zero in every bit; edge and bit time are the kind's */
  | ({ readonly is: 'return-to-zero'; readonly levelV: number; readonly leastV: number; readonly nullV: number } & From)
  /** a change in the middle of every bit, down or up for a one; `edgeSec`: 10 to 90 %; the most that is sent is the kind's */
  | ({
      readonly is: 'manchester'
      readonly one: 'down' | 'up'
      readonly leastSentV: number
      readonly heardFromV: number
      readonly edgeSec: number
    } & From)
  /** two legs that swing against each other around a middle; `thresholdV`: between them, of either sign */
  | ({
      readonly is: 'balanced'
      readonly middleV: number
      readonly swingV: number
      readonly thresholdV: number
      readonly rateHz: number
      /** of the bit time */
      readonly edgeShare: number
    } & From)
  /** driven apart for one bit value, let go for the other */
  | ({
      readonly is: 'dominant'
      readonly recessiveV: number
      readonly highV: number
      readonly lowV: number
      readonly seenFromV: number
      readonly notSeenToV: number
      readonly rateHz: number
      /** differential capacitance the falling side is drawn with */
      readonly busF: number
    } & From)
  /** one wire against ground, driven both ways */
  | ({
      readonly is: 'single'
      readonly highV: number
      readonly lowV: number
      readonly highFromV: number
      readonly lowToV: number
      readonly rateHz: number
      readonly edgeSec: number
    } & From)
  /** one wire pulled up and drawn down; shares of the supply */
  | ({
      readonly is: 'pulled-up'
      readonly supplyV: number
      readonly highShare: number
      readonly lowShare: number
    } & From)
  /** steps between so many levels */
  | ({
      readonly is: 'steps'
      readonly peakV: number
      readonly count: 3 | 5
      readonly rateHz: number
      readonly edgeSec: number
    } & From)
  /** usual and highest volts are those of the kind's supply; without one it is a ground, and they are none and as far up as down */
  | ({
      readonly is: 'steady'
      readonly leastV: number
      readonly ripplePeakV: number
      readonly rippleHz: number
    } & From)
  /** usual and highest volts and the frequency are those of the kind's supply */
  | ({
      readonly is: 'sine'
      readonly leastRmsV: number
    } & From)
  /** a switch that closes and bounces; `activeV` from then on; `onFromV`: what counts as closed, where that is known */
  | ({
      readonly is: 'contact'
      readonly idleV: number
      readonly activeV: number
      readonly onFromV?: number
      readonly bounceSec: number
      readonly settledSec: number
    } & From)
  /** a carrier whose size and sign is the reading: `fromShare` to `toShare` of the excitation, whose peak is the kind's */
  | ({
      readonly is: 'carrier'
      readonly hz: number
      readonly fromShare: number
      readonly toShare: number
    } & From)
  /** three legs of one carrier, at a shaft angle; reference and frequency are the kind's */
  | ({
      readonly is: 'three-legs'
      readonly legRmsV: number
      readonly shaftDeg: number
    } & From)
  /** a value that climbs slowly */
  | ({
      readonly is: 'slow'
      readonly fromV: number
      readonly toV: number
      readonly overSec: number
      readonly fromLabel: string
      readonly toLabel: string
    } & From)
  /** one swing for each tooth that passes; its most is the kind's */
  | ({
      readonly is: 'pick-up'
      readonly peakV: number
      readonly leastV: number
      readonly hz: number
    } & From)
  /** speech, on a bias where there is one */
  | ({ readonly is: 'voice'; readonly rmsV: number; readonly biasV: number } & From)
  /** one line of a picture */
  | ({
      readonly is: 'picture-line'
      readonly whiteV: number
      readonly syncV: number
      readonly lineSec: number
      readonly syncSec: number
      /** from the end of a line to its next picture, sync in it */
      readonly blankSec: number
      readonly frontSec: number
    } & From)
  /** switched on and off by a low-side switch or a dimmer; `kickV`: what a clamped coil adds when it is let go */
  | ({
      readonly is: 'chopped'
      readonly supplyV: number
      readonly hz: number
      readonly onShare: number
      readonly kickV?: number
    } & From)
  | ({
      readonly is: 'pulse'
      readonly highV: number
      readonly everySec: number
      readonly forSec: number
    } & From)
