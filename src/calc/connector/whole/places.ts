/**
 * The places of a contact's tolerances that are tried at one frequency: along every edge of the box of its parts and
 * through its middle, closer where a resonance bends what the contact does to the plate. For fixed others, that is a
 * fraction of two straight functions of any one part; a coil and a capacitor meet along a curve that leaves the box through its edges.
 */
import { circuitOf, type Parts, type Span, type Surroundings } from '../../bounds/surroundings.ts'
import type { WindowAround } from '../../checks/window/around.ts'
import { beadOhms } from '../../network/bead.ts'
import { hasCapacitor, hasInductor, type NoiseSource, sourceImpedance } from '../../network/circuit.ts'
import { add, type Complex, magnitude, subtract } from '../complex.ts'
import { type PlateContact, type PlateShare, plateShareOf } from '../shared-bond.ts'
import type { OnPlate } from './plate-contact.ts'
import { stagesOf } from './stages.ts'

export type Place = { readonly contact: PlateContact; readonly share: PlateShare }

/** What varies by itself, each from its least to its most. */
type Axis = {
  readonly key: 'shunt1F' | 'shunt2F' | 'series1H' | 'series2H'
  readonly span: Span
  readonly marked: number
}
type Setting = {
  readonly around: Surroundings
  readonly source: NoiseSource
  readonly node: { readonly sourceF: number; readonly loadF: number }
  readonly rest: Partial<Parts>
}

/** Every place tried, the part as marked with its first source first; empty where a bead is not known at the frequency. */
export function placesOf(contact: OnPlate, hz: number): readonly Place[] {
  const { part, arounds } = contact
  if (part === undefined)
    return arounds.flatMap((around) =>
      around.sources.map((source) => placed({ stages: [], ...endsOf(source, around, hz) })),
    )
  const settings = arounds.flatMap((around) => settingsOf({ ...around, topology: part.topology }, hz))
  return settings.flatMap((setting) => tried(setting, axesOf(setting.around, part), hz))
}

const placed = (contact: PlateContact): Place => ({ contact, share: plateShareOf(contact) })

function endsOf(source: NoiseSource, { load }: Pick<WindowAround, 'load'>, hz: number): Omit<PlateContact, 'stages'> {
  const w = 2 * Math.PI * hz
  const coilSie = Number.isFinite(load.parallelH) ? 1 / (w * load.parallelH) : 0
  return { sourceOhm: sourceImpedance(source, w), loadSie: [1 / load.ohm, w * load.parallelF - coilSie] }
}

function axesOf(around: Surroundings, part: NonNullable<OnPlate['part']>): readonly Axis[] {
  const { topology } = around
  const [least = 0] = around.inductancesH
  const farads = {
    span: { least: part.capacitanceF * part.leastFrac, most: part.capacitanceF * part.mostFrac },
    marked: part.capacitanceF,
  }
  const henries = { span: { least, most: around.inductancesH.at(-1) ?? least }, marked: least }
  const coiled = hasInductor(topology) && around.bead === undefined
  return [
    ...(hasCapacitor(topology) ? [{ key: 'shunt1F' as const, ...farads }] : []),
    ...(topology === 'PI' ? [{ key: 'shunt2F' as const, ...farads }] : []),
    ...(coiled ? [{ key: 'series1H' as const, ...henries }] : []),
    ...(coiled && topology === 'T' ? [{ key: 'series2H' as const, ...henries }] : []),
  ]
}

const NOTHING: Parts = {
  shunt1F: 0,
  shunt2F: 0,
  series1H: 0,
  series2H: 0,
  sourceNodeF: 0,
  loadNodeF: 0,
  crossF: 0,
  chokeH: 0,
}

/** Everything that stands at one of its ends, and every source. */
function settingsOf(around: Surroundings, hz: number): readonly Setting[] {
  const ends = (span: Span | undefined): readonly (number | undefined)[] =>
    span === undefined ? [undefined] : span.most > span.least ? [span.least, span.most] : [span.least]
  const bead = around.bead && hasInductor(around.topology) ? beadOhms(around.bead, hz) : undefined
  if (around.bead && hasInductor(around.topology) && bead === undefined) return []
  const damper = hasCapacitor(around.topology) ? around.damper : undefined
  const rests = ends(around.choke?.spanH).flatMap((chokeH = 0) =>
    ends(damper?.farads).flatMap((farads) =>
      ends(damper?.ohm).flatMap((ohm) =>
        ends(bead?.ohm).flatMap((beadOhm) =>
          ends(bead?.reactanceOhm).map(
            (x): Partial<Parts> => ({
              chokeH,
              crossF: around.crossF?.most ?? 0,
              ...(farads === undefined || ohm === undefined ? {} : { damper: { farads, ohm } }),
              ...(beadOhm === undefined || x === undefined ? {} : { bead1: [beadOhm, x], bead2: [beadOhm, x] }),
            }),
          ),
        ),
      ),
    ),
  )
  return rests.flatMap((rest) =>
    nodesOf(around).flatMap((node) => around.sources.map((source): Setting => ({ around, source, node, rest }))),
  )
}

/** A suppressor at either end, at its least and its most. */
function nodesOf({ sourceNodeF, loadNodeF }: Surroundings): readonly Setting['node'][] {
  if (sourceNodeF) return [sourceNodeF.least, sourceNodeF.most].map((sourceF) => ({ sourceF, loadF: 0 }))
  if (loadNodeF) return [loadNodeF.least, loadNodeF.most].map((loadF) => ({ sourceF: 0, loadF }))
  return [{ sourceF: 0, loadF: 0 }]
}

function placeAt({ around, source, node, rest }: Setting, values: Partial<Parts>, hz: number): Place {
  const circuit = circuitOf(around, { ...NOTHING, ...rest, ...values })
  return placed({ stages: stagesOf(circuit, hz, node), ...endsOf(source, around, hz) })
}

type Values = Partial<Record<Axis['key'], number>>
type Found = { readonly values: Values; readonly place: Place }

/** As marked; then along each axis with the others at every mixture of their ends. */
function tried(setting: Setting, all: readonly Axis[], hz: number): readonly Place[] {
  const at = (values: Values): Found => ({ values, place: placeAt(setting, values, hz) })
  const marked: Values = Object.fromEntries(all.map(({ key, marked: value }) => [key, value]))
  const found: Found[] = [at(marked)]
  const axes = all.filter(({ span }) => span.most > span.least)
  for (const axis of axes) {
    const others = axes.filter((one) => one !== axis)
    for (const mixture of mixturesOf(others)) {
      const rest: Values = { ...marked, ...mixture }
      alongInto(found, axis.span, (value) => at({ ...rest, [axis.key]: value }))
    }
  }
  if (axes.length > 1) climbInto(found, axes, at)
  return found.map(({ place }) => place)
}

/** Every other part at its least or its most, and all of them at their middles. */
function mixturesOf(others: readonly Axis[]): readonly Values[] {
  const ends = others.reduce<readonly Values[]>(
    (all, { key, span }) =>
      all.flatMap((values) => [span.least, span.most].map((value): Values => ({ ...values, [key]: value }))),
    [{}],
  )
  const middles = Object.fromEntries(others.map(({ key, span }) => [key, (span.least + span.most) / 2]))
  return others.length === 0 ? ends : [...ends, middles]
}

const ROUNDS = 60

/** On from where most arrives at the load: each part by itself up and down, by half as much where neither helps. */
function climbInto(found: Found[], axes: readonly Axis[], at: (values: Values) => Found): void {
  const arrives = ({ place }: Found) => magnitude(place.share.ownRatio)
  let best = found.reduce((most, one) => (arrives(one) > arrives(most) ? one : most))
  for (let round = 0, step = 0.125; round < ROUNDS && step > 1e-3; round++) {
    const before = best
    for (const { key, span } of axes)
      for (const by of [step, -step]) {
        const from = best.values[key] ?? span.least
        const value = Math.min(span.most, Math.max(span.least, from + by * (span.most - span.least)))
        if (value === from) continue
        const next = at({ ...best.values, [key]: value })
        if (arrives(next) > arrives(best)) best = next
      }
    if (best === before) step /= 2
    else found.push(best)
  }
}

const FIRST = 4
const FINEST = 6
/** A bend of less than this share is no resonance. */
const BEND = 0.01

/** Ends, three places between them, and on by halves where it bends. */
function alongInto(found: Found[], { least, most }: Span, at: (value: number) => Found): void {
  const place = (share: number) => at(least + share * (most - least))
  const first = Array.from({ length: FIRST + 1 }, (_, i) => place(i / FIRST))
  found.push(...first)
  const between = (from: number, to: number, a: Found, b: Found, depth: number): void => {
    const middle = (from + to) / 2
    const half = place(middle)
    found.push(half)
    if (depth >= FINEST || !bends(a.place.share, half.place.share, b.place.share)) return
    between(from, middle, a, half, depth + 1)
    between(middle, to, half, b, depth + 1)
  }
  const bent = first.map((one, i) => {
    const [before, after] = [first[i - 1], first[i + 1]]
    return before !== undefined && after !== undefined && bends(before.place.share, one.place.share, after.place.share)
  })
  for (let i = 0; i < FIRST; i++)
    if (bent[i] || bent[i + 1]) between(i / FIRST, (i + 1) / FIRST, first[i] as Found, first[i + 1] as Found, 1)
}

function bends(a: PlateShare, m: PlateShare, b: PlateShare): boolean {
  const bend = (x: Complex, y: Complex, z: Complex) => {
    const sum = add(x, z)
    return magnitude(subtract(y, [sum[0] / 2, sum[1] / 2])) > BEND * Math.max(magnitude(x), magnitude(y), magnitude(z))
  }
  return bend(a.alphaSie, m.alphaSie, b.alphaSie) || bend(a.ownRatio, m.ownRatio, b.ownRatio)
}
