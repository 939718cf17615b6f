/** A voltage written with the word of the other figure, "115 Vrms" where an instantaneous peak is meant, or "163 Vpk" where rms is. */
import type { NumberType } from '../number-type.ts'
import { formatQuantity } from '../quantity/format.ts'

/** Why it is refused, with what a sine of it would be; undefined where nothing contradicts the field. `volts`: as it was read. */
export function otherVolts(as: NumberType['volts'], text: string, volts: number): string | undefined {
  const written = /V(rms|pk)\s*$/u.exec(text)?.[1]
  const isOther = (as === 'peak' && written === 'rms') || (as === 'rms' && written === 'pk')
  if (!isOther) return undefined
  const sine = formatQuantity(as === 'peak' ? volts * Math.SQRT2 : volts / Math.SQRT2, 'voltage')
  return as === 'peak'
    ? `“${text.trim()}” is no peak; that of a sine is ${sine}. Write the highest instantaneous volts.`
    : `“${text.trim()}” is a peak; of a sine it is ${sine} rms. Write volts rms.`
}
