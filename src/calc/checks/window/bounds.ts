/** The bounds of a window as a screen says them: who says so, and what it leaves on one marked capacitor. */

import { roomUnderF } from '../../bounds/room.ts'
import { permittedInLegs, worksWhy } from '../../explain/ceiling.ts'
import { navyWhy } from '../../explain/navy-rule.ts'
import { loadingCeiling, worksList } from '../../loading/ceiling.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import { lineCurrentRmsA } from '../../power/supply.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Bound, Opener, SaidBound } from '../../types.ts'
import { READ, READ_UP_TO } from '../trial/bounds.ts'
import { leastBasis, mostBasis } from './basis.ts'
import { CONVERSION } from './conversion.ts'
import { conversionBasis } from './conversion-words.ts'
import { needIdOf, type WindowRow } from './row.ts'
import { lastOf, NEED } from './row-need.ts'
import { sharesOf, type WindowSetup } from './setup.ts'
import { isOfTrial, triedWhy } from './tried.ts'

const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const amps = (x: number) => formatQuantity(x, 'current', 3)
const volts = (x: number) => formatQuantity(x, 'voltage', 3)
const dB = (x: number) => formatQuantity(x, 'decibel', 3)

/** The reason of a bound from above, in words that fit after "at most …:". */
export function whyOf(id: string, { signal, navy, bounds, room, acSupply }: WindowSetup): string {
  if (id === 'buildable') return 'the largest the contact takes'
  if (id === 'chassis-current' && acSupply) {
    const limitF = bounds.find((bound) => bound.id === id)?.farads ?? 0
    return `${amps(lineCurrentRmsA({ ...acSupply, farads: limitF }))} into the chassis at ${volts(acSupply.workingRmsV)} and ${hertz(acSupply.supplyHz)}`
  }
  if (isOfTrial(id)) return triedWhy(id, bounds)
  if (id === CONVERSION) return 'more of the common mode becomes signal than is allowed'
  if (id === NEED) return 'above it a resonance loses the need again'
  if (id === 'navy-4.2.2') return navy !== undefined && navy !== 'not-power' ? navyWhy(navy.limit, navy) : ''
  if (!signal) return ''
  const ceiling = loadingCeiling(signal)
  const figure = ceiling.permitted.find((one) => `permitted-${one.id}` === id)
  const bound = bounds.find((one) => one.id === id)
  if (!figure || !bound) return worksWhy(signal, worksList(signal).find((one) => one.id === id)?.works ?? ceiling.works)
  return permittedInLegs(signal.kind, figure, roomUnderF(bound, room))
}

/** Every bound on the capacitors of one row, the deciding ones with what opens it. */
export function saidBounds(row: WindowRow, setup: WindowSetup, openedBy: readonly Opener[]): readonly SaidBound[] {
  const count = CAPACITOR_COUNT[row.topology]
  if (count === 0 || row.need.is === 'choke-alone') return []
  const isRead = (id: string | undefined) => id === READ || id === NEED
  const shared = { topology: row.topology, appliesTo: 'one capacitor as marked', openedBy }
  const said: SaidBound[] = []
  if (row.need.is === 'found') {
    const { need } = row.need.at
    said.push({
      ...shared,
      id: needIdOf(row),
      side: 'least',
      nature: 'need',
      markedF: row.least?.id === CONVERSION ? row.need.marked : (row.least?.markedF ?? row.need.marked),
      why: `${dB(need.db)} at ${hertz(need.hz)}${needIdOf(row) === READ ? `: ${whyOf(READ, setup)}` : ''}`,
      basis: leastBasis(row, setup),
    })
  }
  said.push(...otherNeeds(row, setup).map((one) => ({ ...shared, ...one })))
  if (isRead(row.upper?.id) && row.upper)
    said.push({
      ...shared,
      id: 'need-most',
      side: 'most',
      nature: 'need',
      markedF: row.upper.markedF,
      why: whyOf(NEED, setup),
      basis: leastBasis(row, setup),
    })
  if (row.upper?.id === CONVERSION || row.least?.id === CONVERSION)
    said.push({
      ...shared,
      id: CONVERSION,
      side: row.upper?.id === CONVERSION ? 'most' : 'least',
      nature: 'need',
      markedF: (row.upper?.id === CONVERSION ? row.upper : row.least)?.markedF ?? 0,
      why: whyOf(CONVERSION, setup),
      basis: conversionBasis(undefined),
    })
  const marked = (bound: Bound) => {
    if (bound.per === 'capacitor') return bound.farads
    if (bound.side === 'least') return bound.farads / (count * sharesOf(setup).least)
    return roomUnderF(bound, setup.room) / (count * sharesOf(setup).most)
  }
  const divisor = formatQuantity(count * sharesOf(setup).most, 'number', 3)
  for (const bound of setup.bounds) {
    if (bound.topology !== 'any' && bound.topology !== row.topology) continue
    said.push({
      ...shared,
      id: bound.id,
      side: bound.side,
      nature: bound.nature,
      markedF: Math.max(0, marked(bound)),
      why: `${whyOf(bound.id, setup)}${bound.nature === 'permitted' ? `; one capacitor at its largest: ÷ ${divisor}` : ''}`,
      basis: mostBasis(row, setup),
    })
  }
  return said
}

/** The need that asks for less, and up to where the readings of a trial say anything. */
function otherNeeds(
  row: WindowRow,
  setup: WindowSetup,
): readonly Omit<SaidBound, 'topology' | 'appliesTo' | 'openedBy'>[] {
  const counts = row.asked.filter(
    (one) => one.id === READ_UP_TO || (one.id !== needIdOf(row) && Number.isFinite(lastOf(one)) && lastOf(one) > 0),
  )
  return counts.map((one) => ({
    id: one.id,
    side: one.side,
    nature: one.nature,
    markedF: lastOf(one),
    why: one.id === NEED ? 'as computed from the noise ends' : whyOf(one.id, setup),
    basis: leastBasis(row, setup),
  }))
}
