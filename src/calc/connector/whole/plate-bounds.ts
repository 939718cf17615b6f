/**
 * What every contact loses to the bond they share, over the tolerances of all of them: found, and certain.
 *
 *   Vp = Zb·Σα/(1 + Zb·Σβ),  V_i = own_i·E_i + plate_i·Vp
 * With c the plate volts of the parts as marked, Vp − c = (Σ e − c)/(1 + Zb·Σβ), e = Zb·(α − c·β): the numerator is a
 * sum of one small term a contact, whose reach in a direction is the sum of the reaches (support functions of a
 * Minkowski sum). Its longest over 16 directions, enlarged by 1/cos(π/16), over the shortest the denominator can be is
 * the radius of a disc that holds every plate voltage; the loss with the disc's far side is certain. `found` is the
 * least of places tried one by one: the others each at the end that pushes hardest. Source: derived; the tests hold
 * both against a nodal solver.
 */
import type { Progress } from '../../types.ts'
import { add, type Complex, divide, magnitude, multiply, ONE, subtract, ZERO } from '../complex.ts'
import type { PlateShare } from '../shared-bond.ts'

/** One contact at one frequency: a share for each place tried, the first as marked. */
export type PlateBox = {
  readonly places: readonly PlateShare[]
  /** 1 = driven with all others, 0 = quiet or driven in differential mode */
  readonly volts: 0 | 1
}

const COUNT = 16
const COS = Float64Array.from({ length: COUNT }, (_, k) => Math.cos((2 * Math.PI * k) / COUNT))
const SIN = Float64Array.from({ length: COUNT }, (_, k) => Math.sin((2 * Math.PI * k) / COUNT))
const ENLARGED = 1 / Math.cos(Math.PI / COUNT)
/** What a place between two tried ones may have beyond them: they are tried until they bend by less than a hundredth. */
const BETWEEN = 1.005
/** Places looked at between two pauses. */
const SLICE = 3000

/** Everything about the plate at one bond. */
export type Plate = {
  readonly bondOhm: Complex
  readonly boxes: readonly PlateBox[]
  readonly disc: { readonly centre: Complex; readonly radius: number }
  /** least |1 + Zb·Σβ| */
  readonly leastFall: number
  /** reach of Zb·α of each contact in each direction, and of all */
  readonly reaches: readonly Float64Array[]
  readonly allReach: Float64Array
}

/** Sums of α and β with every part as marked. */
function markedSums(boxes: readonly PlateBox[]): { readonly alpha: Complex; readonly beta: Complex } {
  let [alpha, beta] = [ZERO, ZERO]
  for (const { places, volts } of boxes) {
    const { alphaSie, betaSie } = places[0] as PlateShare
    if (volts) alpha = add(alpha, alphaSie)
    beta = add(beta, betaSie)
  }
  return { alpha, beta }
}

const plateV = (bondOhm: Complex, { alpha, beta }: { readonly alpha: Complex; readonly beta: Complex }): Complex =>
  divide(multiply(bondOhm, alpha), add(ONE, multiply(bondOhm, beta)))

/** The plate with all contacts at one frequency, in slices. */
export function* plateOf(boxes: readonly PlateBox[], bondOhm: Complex): Generator<Progress, Plate> {
  const centre = plateV(bondOhm, markedSums(boxes))
  const away = new Float64Array(COUNT)
  const fall = new Float64Array(COUNT)
  const allReach = new Float64Array(COUNT)
  const reaches: Float64Array[] = []
  let looked = 0
  for (const [i, box] of boxes.entries()) {
    const own = reachInto(box, bondOhm, centre, { away, fall })
    for (let k = 0; k < COUNT; k++) allReach[k] = (allReach[k] as number) + (own[k] as number)
    reaches.push(own)
    looked += box.places.length
    if (looked < SLICE) continue
    looked = 0
    yield { doneFrac: (i + 1) / boxes.length }
  }
  let [farthest, leastFall] = [0, 0]
  for (let k = 0; k < COUNT; k++) {
    const [x, y] = [COS[k] as number, SIN[k] as number]
    farthest = Math.max(farthest, (away[k] as number) - (x * centre[0] + y * centre[1]))
    leastFall = Math.max(leastFall, (fall[k] as number) + x)
  }
  const radius = leastFall > 0 ? (farthest * ENLARGED * BETWEEN) / leastFall : Number.POSITIVE_INFINITY
  return { bondOhm, boxes, disc: { centre, radius }, leastFall, reaches, allReach }
}

/** Adds the farthest of e and the nearest of Zb·β of one contact in every direction; gives the farthest of Zb·α. */
function reachInto(
  { places, volts }: PlateBox,
  [zRe, zIm]: Complex,
  [cRe, cIm]: Complex,
  { away, fall }: { readonly away: Float64Array; readonly fall: Float64Array },
): Float64Array {
  const own = new Float64Array(COUNT).fill(volts ? Number.NEGATIVE_INFINITY : 0)
  const most = new Float64Array(COUNT).fill(Number.NEGATIVE_INFINITY)
  const least = new Float64Array(COUNT).fill(Number.POSITIVE_INFINITY)
  for (const { alphaSie, betaSie } of places) {
    const aRe = volts * (zRe * alphaSie[0] - zIm * alphaSie[1])
    const aIm = volts * (zRe * alphaSie[1] + zIm * alphaSie[0])
    const bRe = zRe * betaSie[0] - zIm * betaSie[1]
    const bIm = zRe * betaSie[1] + zIm * betaSie[0]
    const eRe = aRe - (cRe * bRe - cIm * bIm)
    const eIm = aIm - (cRe * bIm + cIm * bRe)
    for (let k = 0; k < COUNT; k++) {
      const x = COS[k] as number
      const y = SIN[k] as number
      const driven = x * aRe + y * aIm
      if (driven > (own[k] as number)) own[k] = driven
      const term = x * eRe + y * eIm
      if (term > (most[k] as number)) most[k] = term
      const beta = x * bRe + y * bIm
      if (beta < (least[k] as number)) least[k] = beta
    }
  }
  for (let k = 0; k < COUNT; k++) {
    away[k] = (away[k] as number) + (most[k] as number)
    fall[k] = (fall[k] as number) + (least[k] as number)
  }
  return own
}

/** 400 dB either way: beyond it nothing is left, or nothing is certain. */
const FLOOR = 1e-20
const lossDb = (volts: number, bare: number): number =>
  -20 * Math.log10(Math.min(1 / FLOOR, Math.max(FLOOR, volts / bare)))

const lossOf = ({ ownRatio, plateRatio, bareRatio }: PlateShare, vp: Complex): number =>
  lossDb(magnitude(add(ownRatio, multiply(plateRatio, vp))), magnitude(bareRatio))

/** Loss of a contact while all are driven that is certain whatever the tolerances; dB, −400 = none. */
export function certainDb({ boxes, disc }: Plate, at: number): number {
  const { places } = boxes[at] as PlateBox
  let least = Number.POSITIVE_INFINITY
  const beyond = places.length > 1 ? BETWEEN : 1
  for (const { ownRatio, plateRatio, bareRatio } of places) {
    const volts =
      beyond * (magnitude(add(ownRatio, multiply(plateRatio, disc.centre))) + magnitude(plateRatio) * disc.radius)
    least = Math.min(least, lossDb(volts, magnitude(bareRatio)))
  }
  return least
}

/** The same with every part as marked. */
export const markedDb = ({ boxes, disc }: Plate, at: number): number =>
  lossOf((boxes[at] as PlateBox).places[0] as PlateShare, disc.centre)

/** The least loss found: its own place that is worst beside the others as marked, they where they push hardest. */
export function foundDb({ boxes, bondOhm, disc }: Plate, at: number): number {
  const box = boxes[at] as PlateBox
  const hardest = box.places.reduce((worst, place) =>
    lossOf(place, disc.centre) < lossOf(worst, disc.centre) ? place : worst,
  )
  return lossOf(hardest, plateV(bondOhm, pushedSums(boxes, at, hardest, { bondOhm, centre: disc.centre })))
}

/** Sums of α and β with every other contact at the place that moves the load volts of `at` outward most. */
function pushedSums(
  boxes: readonly PlateBox[],
  at: number,
  own: PlateShare,
  { bondOhm, centre }: { readonly bondOhm: Complex; readonly centre: Complex },
): { readonly alpha: Complex; readonly beta: Complex } {
  const [vRe, vIm] = add(own.ownRatio, multiply(own.plateRatio, centre))
  // outward is the length along the load volts of what a term does there: Re(conj(V)·plate·Zb·(α − c·β))
  const [gRe, gIm] = multiply([vRe, -vIm], multiply(own.plateRatio, bondOhm))
  let [alpha, beta] = [ZERO, ZERO]
  boxes.forEach(({ places, volts }, i) => {
    let best = i === at ? own : (places[0] as PlateShare)
    let reach = Number.NEGATIVE_INFINITY
    for (const place of i === at ? [] : places) {
      const { alphaSie: a, betaSie: b } = place
      const re = volts * a[0] - (centre[0] * b[0] - centre[1] * b[1])
      const im = volts * a[1] - (centre[0] * b[1] + centre[1] * b[0])
      const outward = gRe * re - gIm * im
      if (outward <= reach) continue
      reach = outward
      best = place
    }
    if (volts) alpha = add(alpha, best.alphaSie)
    beta = add(beta, best.betaSie)
  })
  return { alpha, beta }
}

/** Loss with nothing on the bond but the contacts of its own Line, all alike and driven together; least of the places. */
export function aloneDb({ boxes, bondOhm }: Plate, at: number, legs: number): number {
  const box = boxes[at] as PlateBox
  const many = box.volts === 0 ? 0 : legs
  let least = Number.POSITIVE_INFINITY
  for (const place of box.places) {
    const alpha: Complex = [many * place.alphaSie[0], many * place.alphaSie[1]]
    const beta: Complex = [many * place.betaSie[0], many * place.betaSie[1]]
    least = Math.min(least, lossOf(place, plateV(bondOhm, { alpha, beta })))
  }
  return least
}

/** What a quiet contact receives through the plate while all others are driven, at most, against its bare level; dB ≤ 0 = below. */
export function receivedDb({ boxes, reaches, allReach, leastFall }: Plate, at: number): number {
  const own = reaches[at] as Float64Array
  let others = 0
  for (let k = 0; k < COUNT; k++) others = Math.max(others, (allReach[k] as number) - (own[k] as number))
  const volts = leastFall > 0 ? (others * ENLARGED * BETWEEN) / leastFall : Number.POSITIVE_INFINITY
  let most = 0
  for (const { plateRatio, bareRatio } of (boxes[at] as PlateBox).places)
    most = Math.max(most, (magnitude(plateRatio) * volts) / magnitude(bareRatio))
  return -lossDb(most, 1)
}

/** The same with every part as marked. */
export function receivedAsMarkedDb({ boxes, bondOhm }: Plate, at: number): number {
  const { places, volts } = boxes[at] as PlateBox
  const { alphaSie, plateRatio, bareRatio } = places[0] as PlateShare
  const { alpha, beta } = markedSums(boxes)
  const vp = plateV(bondOhm, { alpha: volts ? subtract(alpha, alphaSie) : alpha, beta })
  return -lossDb(magnitude(multiply(plateRatio, vp)), magnitude(bareRatio))
}
