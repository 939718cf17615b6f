/** How the guide prints a figure in a sentence. */
import { formatQuantity } from '../calc/quantity/format.ts'

/** A figure and a unit that the quantities do not have, kept on one line. */
export const withUnit = (figure: number | string, unit: string): string => `${figure}\u00a0${unit}`

export const hertz = (si: number, digits = 6): string => formatQuantity(si, 'frequency', digits)
/** Radio frequencies that are compared with each other, in one unit whatever their size. */
export const megahertz = (si: number, digits = 6): string => withUnit(Number((si / 1e6).toPrecision(digits)), 'MHz')
export const ohms = (si: number, digits = 3): string => formatQuantity(si, 'resistance', digits)
export const farads = (si: number, digits = 3): string => formatQuantity(si, 'capacitance', digits)
export const henries = (si: number, digits = 3): string => formatQuantity(si, 'inductance', digits)
export const volts = (si: number, digits = 3): string => formatQuantity(si, 'voltage', digits)
export const amperes = (si: number, digits = 3): string => formatQuantity(si, 'current', digits)
export const joules = (si: number, digits = 3): string => formatQuantity(si, 'energy', digits)
export const watts = (si: number, digits = 3): string => formatQuantity(si, 'power', digits)
export const seconds = (si: number, digits = 3): string => formatQuantity(si, 'time', digits)
export const metres = (si: number, digits = 3): string => formatQuantity(si, 'length', digits)
export const decibels = (si: number, digits = 3): string => formatQuantity(si, 'decibel', digits)
export const percent = (frac: number, digits = 3): string => formatQuantity(frac, 'fraction', digits)

/** A figure without its unit, where the unit follows once for two: "30 to 45 s". */
export const bare = (printed: string): string => printed.replace(/\u00a0.*$/u, '')
