/** The shelf of tables: figures of the reference in rows, each table with its sources. */
import type { BookPage } from '../types.ts'
import { HARDWARE_TABLES } from './hardware.ts'
import { asPage } from './print.ts'
import { SIGNAL_TABLES } from './signals.ts'

export const pages = (): readonly BookPage[] => [...HARDWARE_TABLES(), ...SIGNAL_TABLES()].map(asPage)

export { pages as built }
