/** Ohms at the ends of the usual data buses, as their line kinds and everything that speaks of them take them. */
import { memory, read } from './cite.ts'

/** Impedance of the line, which is also that of each terminator. */
export const CAN_LINE = { ohm: 120, basis: read('R16') } as const
export const RS485_LINE = { ohm: 120, basis: read('R14') } as const
export const RS422_LINE = { ohm: 100, basis: read('R12') } as const

/** Least resistance of one receiver; this bus has no terminator. */
export const ARINC_429_RECEIVER = { leastOhm: 12e3, basis: memory('arinc-429') } as const
