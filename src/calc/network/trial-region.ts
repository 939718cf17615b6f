/**
 * Every impedance Z = Zs ∥ Zl that the readings of capacitors tried on a line allow. A capacitor of susceptance b lowers
 * the level by |1 + j·b·Z|, so that a reading between k and K (ratios) of a b between b₀ and b₁ leaves Z inside a circle
 * about j/b₀ of radius K/b₀ and outside of one about j/b₁ of radius k/b₁; a passive Z has no negative resistance. Ohms,
 * siemens, farads, hertz. Source: geometry of the shunt equation (derived).
 */

/** One reading: between what its capacitor may be, and what the level may have fallen by. */
export type ShuntReading = {
  readonly leastS: number
  readonly mostS: number
  readonly leastDb: number
  readonly mostDb: number
}

/** Resistance and reactance; ohm ≥ 0. */
export type Impedance = { readonly ohm: number; readonly reactanceOhm: number }

/** Inside or outside of a circle about a point of the reactance axis. */
type Ring = { readonly centre: number; readonly radius: number; readonly isInside: boolean }

/** A corner lies on its own circles but for rounding. */
const ROUNDED = 1e-9

/**
 * The corners of that region, worked out for good: how far any passive part in shunt lowers the level is least at one of
 * them, or on the reactance axis where the part resonates with it. Empty where no passive circuit gives these readings;
 * undefined where no reading fell by more than its error, so that there is no least of |Z|.
 *
 * Along a circle about a point of the axis the distance to any −1/Y of a passive Y (never on the resistive side) has no
 * minimum between the ends of an arc.
 */
export function cornersOf(readings: readonly ShuntReading[]): readonly Impedance[] | undefined {
  const rings = readings.flatMap(ringsOf)
  if (!rings.some(({ isInside }) => !isInside) || !rings.some(({ isInside }) => isInside)) return undefined
  const onAxis = rings.flatMap(({ centre, radius }) =>
    [centre - radius, centre + radius].map((reactanceOhm) => ({ ohm: 0, reactanceOhm })),
  )
  const crossings = rings.flatMap((one, i) => rings.slice(i + 1).flatMap((other) => crossingOf(one, other)))
  return distinct([...onAxis, ...crossings].filter((at) => rings.every((ring) => isWithin(at, ring))))
}

function ringsOf({ leastS, mostS, leastDb, mostDb }: ShuntReading): readonly Ring[] {
  const ratio = (db: number) => 10 ** (db / 20)
  return [
    // a level that may not have fallen at all says nothing that holds for every phase
    ...(mostDb > 0 ? [{ centre: 1 / leastS, radius: ratio(mostDb) / leastS, isInside: true }] : []),
    ...(leastDb > 0 ? [{ centre: 1 / mostS, radius: ratio(leastDb) / mostS, isInside: false }] : []),
  ]
}

function isWithin({ ohm, reactanceOhm }: Impedance, { centre, radius, isInside }: Ring): boolean {
  const far = Math.hypot(ohm, reactanceOhm - centre) / radius
  return isInside ? far <= 1 + ROUNDED : far >= 1 - ROUNDED
}

/** Where two circles meet on the resistive side; they meet at most once there. */
function crossingOf(one: Ring, other: Ring): readonly Impedance[] {
  const apart = other.centre - one.centre
  if (apart === 0) return []
  const reactanceOhm =
    (one.centre + other.centre) / 2 + ((one.radius + other.radius) * (one.radius - other.radius)) / (2 * apart)
  const off = reactanceOhm - one.centre
  const square = (one.radius + off) * (one.radius - off)
  return square > 0 ? [{ ohm: Math.sqrt(square), reactanceOhm }] : []
}

const distinct = (all: readonly Impedance[]): readonly Impedance[] =>
  all.filter((one, i) =>
    all.slice(0, i).every((before) => {
      const size = Math.hypot(one.ohm, one.reactanceOhm)
      return Math.hypot(one.ohm - before.ohm, one.reactanceOhm - before.reactanceOhm) > ROUNDED * size
    }),
  )

/** Magnitude in ohms and angle in degrees (positive = inductive), least and most of each, over the region of these corners. */
export function sizesOf(corners: readonly Impedance[]): {
  readonly leastOhm: number
  readonly mostOhm: number
  readonly leastDeg: number
  readonly mostDeg: number
} {
  const sizes = corners.map(({ ohm, reactanceOhm }) => Math.hypot(ohm, reactanceOhm))
  const angles = corners.map(({ ohm, reactanceOhm }) => (Math.atan2(reactanceOhm, ohm) * 180) / Math.PI)
  return {
    leastOhm: Math.min(...sizes),
    mostOhm: Math.max(...sizes),
    leastDeg: Math.min(...angles),
    mostDeg: Math.max(...angles),
  }
}

/**
 * The least capacitance without leads that takes `neededDb` off, and every larger one too, at every impedance with these
 * corners: the larger root of |1 + j·b·Z|² = 10^(need/10). Farads; 0 where nothing is needed.
 */
export function shuntNeedF(corners: readonly Impedance[], neededDb: number, hz: number): number {
  if (neededDb <= 0) return 0
  const power = 10 ** (neededDb / 10)
  const needs = corners.map(({ ohm, reactanceOhm }) => {
    const square = ohm * ohm + reactanceOhm * reactanceOhm
    return (reactanceOhm + Math.sqrt(reactanceOhm * reactanceOhm + (power - 1) * square)) / square
  })
  return Math.max(0, ...needs) / (2 * Math.PI * hz)
}

/** Whether a purely capacitive circuit is among them: a part above its own resonance may then meet it in resonance. */
export const hasCapacitiveAxis = (corners: readonly Impedance[]): boolean =>
  corners.some(({ ohm, reactanceOhm }) => ohm === 0 && reactanceOhm < 0)
