/** What a ceiling is counted for, in the few words a sentence has room for: the whole bus, the whole port, the line. */
import type { LineKind } from '../../reference/line-kinds.ts'
import type { Taken } from '../bounds/room.ts'
import { perLegF } from '../bounds/room.ts'
import type { LoadingCeiling, PermittedCeiling } from '../loading/ceiling.ts'
import { permittedRoomF } from '../loading/judge.ts'
import { formatEstimate, formatExact } from '../quantity/format.ts'

/** Lines many boxes stand on: what one of them adds is missing for the others. */
const BUSES = /^(?:arinc-429|arinc-717|csdb|mil-std-1553|can$|lin$|rs-485|i2c)/u

const isBus = ({ id }: LineKind): boolean => BUSES.test(id)
/** A mask of return loss is for everything in the port together. */
export const isPort = ({ loading }: LineKind): boolean => loading.rule === 'return-loss'

type Whole = { readonly word: string; readonly whole: string; readonly less: string }

const WHOLE: Readonly<Record<'port' | 'terminal' | 'bus' | 'line', Whole>> = {
  port: { word: 'port', whole: 'whole port', less: ', transceiver and magnetics included' },
  terminal: { word: 'terminal', whole: 'whole terminal', less: ', transformer and wiring of the box included' },
  bus: { word: 'bus', whole: 'whole bus', less: ', less what other nodes add' },
  line: { word: 'line', whole: 'line', less: '' },
}

export function wholeOf(kind: LineKind): Whole {
  if (isPort(kind)) return WHOLE.port
  if (kind.loading.rule === 'terminal-impedance') return WHOLE.terminal
  return isBus(kind) ? WHOLE.bus : WHOLE.line
}

export const isTaken = ({ existingF, crossF, suppressorF }: Taken): boolean => existingF + crossF + suppressorF > 0

/** "the whole bus stands 4.8 nF a leg, less what other nodes add", or what is left of it. `roomF`: per leg. */
export function standsWords(kind: LineKind, roomF: number, taken: Taken): string {
  const { word, whole, less } = wholeOf(kind)
  if (roomF <= 0) return isTaken(taken) ? `nothing is left on the ${word}` : `the ${whole} stands nothing more`
  const room = `${formatEstimate(roomF, 'capacitance', 'most')}${kind.isPair ? ' a leg' : ''}`
  return isTaken(taken) ? `${room} are left beside what is on the ${word}` : `the ${whole} stands ${room}${less}`
}

/** What a document or common practice allows: "practice allows 100 pF a node". */
export function allowsWords(kind: LineKind, ceiling: PermittedCeiling): string {
  const row = kind.permitted.find(({ id }) => id === ceiling.id)
  return row === undefined
    ? `the mask at its worst corner allows ${formatEstimate(perLegF(ceiling, kind.isPair), 'capacitance', 'most')} a leg`
    : `${row.allows.by} allows ${formatExact(row.farads, 'capacitance')} ${row.allows.of}`
}

export type Tightest = { readonly figure: PermittedCeiling; readonly roomF: number }

/** The figure of a document that leaves least; undefined where none is printed. */
export function tightestPermitted({ permitted }: LoadingCeiling, taken: Taken): Tightest | undefined {
  return permitted
    .map((figure) => ({ figure, roomF: permittedRoomF(figure, taken) }))
    .reduce<Tightest | undefined>((least, one) => (least && least.roomF <= one.roomF ? least : one), undefined)
}

/** Above a document's figure: how far, and who has to agree. `legF`: what is fitted, per leg. */
export function overPermittedWords(kind: LineKind, { figure, roomF }: Tightest, legF: number): string {
  const approval = isBus(kind) ? 'needs the bus owner’s approval' : 'needs design approval'
  const row = kind.permitted.find(({ id }) => id === figure.id)
  const wholeF = perLegF(figure, kind.isPair)
  const allowed =
    row === undefined
      ? `the ${formatEstimate(wholeF, 'capacitance', 'most')} a leg the mask allows at its worst corner`
      : `the ${formatExact(row.farads, 'capacitance')} ${row.allows.by} allows ${row.allows.of}`
  if (roomF <= 0) return `nothing is left of ${allowed}: ${approval}`
  const times = `${formatEstimate(legF / roomF, 'number', 'least')} times`
  const isWhole = Math.abs(roomF - wholeF) <= 1e-9 * roomF
  const left = isWhole ? '' : `the ${formatEstimate(roomF, 'capacitance', 'most')} left of `
  return `${times} ${left}${allowed}: ${approval}`
}
