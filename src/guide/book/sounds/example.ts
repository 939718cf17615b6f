/** The machine the sounds are made for: figures of an example of ours, so that a pitch can be worked out from them. */
import { ALTERNATOR_PULSES, electricalHz, rectifierHz, sparksPerSec } from '../../../calc/tone/explanations.ts'
import { AC_BUS } from '../../../reference/field-figures.ts'

export const EXAMPLE = {
  /** idle, cruise */
  rpm: [1200, 2400],
  driveRatio: 2,
  polePairs: 6,
  cylinders: 4,
  commutatorBars: 24,
  motorRpm: 6000,
  busHz: AC_BUS.hz,
  rectifierPulses: 6,
  /** flashes of the strobe a minute */
  flashesPerMin: 50,
  /** turns of a ground radar's antenna a minute, and its pulses a second */
  sweepsPerMin: 30,
  radarPulsesPerSec: 400,
} as const

/** Whine of the alternator: humps a second of its rectifier. */
export const alternatorHz = (rpm: number): number =>
  rectifierHz(electricalHz({ rpm, driveRatio: EXAMPLE.driveRatio, polePairs: EXAMPLE.polePairs }), ALTERNATOR_PULSES)

/** Whistle of a transformer-rectifier on the alternating bus. */
export const whistleHz = (): number => rectifierHz(EXAMPLE.busHz, EXAMPLE.rectifierPulses)

/** Sparks a second of the example's engine. */
export const popsPerSec = (rpm: number): number => sparksPerSec(rpm, EXAMPLE.cylinders)

/** Bars that pass the brushes in a second. */
export const commutatorHz = (): number => (EXAMPLE.motorRpm / 60) * EXAMPLE.commutatorBars
