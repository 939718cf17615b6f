/** What all capacitors on supplies take when they are switched on together, what they hold, and how it leaves them. */
import { inrushPeak } from '../../power/inrush.ts'
import { bleedSec, storedJ, TOUCH_V } from '../../power/supply.ts'
import type { Supplied } from './supplied.ts'

export type Charges = {
  /** peaks of every contact added, as if they came at one moment; undefined where the wiring of any is not known */
  readonly inrushA: number | undefined
  /** highest volts on a capacitor that the inrush reaches */
  readonly inrushV: number | undefined
  /** filtered contacts whose wiring is not known */
  readonly withoutWiring: readonly string[]
  readonly chargeC: number
  readonly storedJ: number
  /** the longest time down to 34 V of contacts that have a bleed; undefined without one */
  readonly bleedSec: number | undefined
  /** contacts that hold more than 34 V and have no bleed */
  readonly withoutBleed: readonly string[]
}

/**
 * Most capacitance counts, at the crest, line to line included; for the volts a capacitor rings up to the least, which
 * damps it least, and twice the crest where no inductance was entered. Volts, farads, ohms, henries.
 */
export function chargesOf(supplied: readonly Supplied[]): Charges {
  const filtered = supplied.map((one) => ({ ...one, mostF: one.mostF + one.crossF })).filter((one) => one.mostF > 0)
  const hasWiring = ({ wiringOhm = 0, wiringH = 0 }: Supplied) => wiringOhm > 0 || wiringH > 0
  const withoutWiring = filtered.filter((one) => !hasWiring(one)).map(({ id }) => id)
  const peaks = filtered.filter(hasWiring).map(({ crestV, leastF, crossF, mostF, wiringOhm = 0, wiringH }) => {
    const through = { stepV: crestV, ohm: wiringOhm, henries: wiringH ?? 0 }
    return {
      peakA: inrushPeak({ ...through, farads: mostF }).peakA,
      peakV:
        wiringH === undefined ? 2 * crestV : inrushPeak({ ...through, farads: leastF > 0 ? leastF : crossF }).peakV,
    }
  })
  const isKnown = peaks.length > 0 && withoutWiring.length === 0
  const touchable = filtered.filter((one) => one.crestV > TOUCH_V)
  const bled = touchable.flatMap(({ bleedOhm, mostF, crestV }) =>
    bleedOhm === undefined ? [] : [bleedSec({ ohm: bleedOhm, farads: mostF, fromV: crestV, toV: TOUCH_V })],
  )
  return {
    inrushA: isKnown ? peaks.reduce((sum, { peakA }) => sum + peakA, 0) : undefined,
    inrushV: isKnown ? Math.max(...peaks.map(({ peakV }) => peakV)) : undefined,
    withoutWiring,
    chargeC: filtered.reduce((sum, { mostF, crestV }) => sum + mostF * crestV, 0),
    storedJ: filtered.reduce((sum, { mostF, crestV }) => sum + storedJ({ farads: mostF, crestV }), 0),
    bleedSec: bled.length === 0 ? undefined : Math.max(...bled),
    withoutBleed: touchable.filter(({ bleedOhm }) => bleedOhm === undefined).map(({ id }) => id),
  }
}
