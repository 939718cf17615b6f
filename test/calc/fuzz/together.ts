/**
 * Fields that belong together, as a person fills them: a table read off one curve, two parts of one branch, windings of one
 * core; most of the time none of it. Drawn apart they fit only by luck, are refused, and little behind them is calculated.
 */
import fc from 'fast-check'
import { LINE_KINDS } from '../../../src/reference/line-kinds.ts'
import { logRange } from './log-range.ts'

export type Texts = Readonly<Record<string, string>>

/** What a person leaves empty, or enters as a whole: the fields, and texts for them that fit. */
type Whole = {
  readonly keys: readonly string[]
  /** the one without which nobody fills in the rest */
  readonly asks: string
  readonly drawn: fc.Arbitrary<Texts>
  /** the texts once more where another field bounds them */
  readonly within?: (whole: Texts, others: Texts) => Texts
}

const text = (x: number): string => String(Number(x.toPrecision(6)))
const list = (values: readonly number[]): string => values.map(text).join(';')

const point = fc.record({
  hz: logRange(1e3, 1e10),
  ohm: logRange(1e-3, 1e4),
  reactanceOhm: logRange(1e-3, 1e4),
  isCapacitive: fc.boolean(),
})

/** Rising frequencies, some resistance at each, inductive at the first; X, |Z| or both. */
const bead = fc
  .tuple(
    fc.uniqueArray(point, { minLength: 1, maxLength: 5, selector: ({ hz }) => hz }),
    fc.constantFrom('reactance', 'size', 'both'),
    fc.integer({ min: 0, max: 90 }),
  )
  .map(([drawn, form, lostPercent]): Texts => {
    const points = [...drawn].sort((a, b) => a.hz - b.hz)
    const size = (p: { readonly ohm: number; readonly reactanceOhm: number }) => Math.hypot(p.ohm, p.reactanceOhm)
    // |Z| has its top past the first point: the sheet shows where the part stops to be an inductor
    const top = points.reduce((most, p) => (size(p) > size(most) ? p : most))
    const [first, last] = [points[0], points.at(-1)]
    const swapped = top === first && last !== undefined ? [last, ...points.slice(1, -1), top] : points
    const rows = points.length > 1 ? swapped : points
    const reactance = rows.map(({ reactanceOhm, isCapacitive }, i) => (i > 0 && isCapacitive ? -1 : 1) * reactanceOhm)
    return {
      beadHz: list(points.map(({ hz }) => hz)),
      beadOhm: list(rows.map(({ ohm }) => ohm)),
      ...(form === 'size' ? {} : { beadReactanceOhm: list(reactance) }),
      // to six digits it may fall on R or a little below, where a sheet is read to three
      ...(form === 'reactance' ? {} : { beadImpedanceOhm: list(rows.map((p) => 1.0001 * size(p))) }),
      beadBiasFrac: `${lostPercent} %`,
    }
  })

const damping = fc.record({ dampOhm: logRange(1e-6, 1e9).map(text), dampF: logRange(1e-15, 1).map(text) })

/** A contact takes what it takes, whatever stands in it. */
const asTheContactTakes = (whole: Texts, others: Texts): Texts => {
  const most = Number(others['maxBuildableF'] || 'NaN')
  return Number(whole['dampF']) > most ? { ...whole, dampF: String(most) } : whole
}

/** Windings on one core: leakage up to the whole inductance, unlike by no more than leaks. */
const choke = fc
  .record({
    windingH: logRange(1e-9, 10),
    leakageFrac: fc.option(logRange(1e-4, 1)),
    unlike: logRange(1e-3, 1),
    isUnlike: fc.boolean(),
    ohm: logRange(1e-3, 1e3),
    farads: fc.option(logRange(1e-15, 1e-6)),
    side: fc.constantFrom('source', 'load', ''),
    wires: fc.constantFrom('all', 'all', 'one', ''),
  })
  .map((c): Texts => {
    // M = L − leakage/2 ≤ L·√(1 − (mismatch/2)²) holds up to mismatch = √(2·leakage/L); leakage of 0.5 % where none is said
    const most = Math.min(0.5, Math.sqrt(2 * (c.leakageFrac ?? 5e-3)))
    return {
      chokeH: text(c.windingH),
      chokeLeakageH: c.leakageFrac === null ? '' : text(c.leakageFrac * c.windingH),
      chokeMismatchFrac: c.isUnlike ? text(c.unlike * most) : '',
      chokeOhm: text(c.ohm),
      chokeF: c.farads === null ? '' : text(c.farads),
      chokeSide: c.side,
      chokeWires: c.wires,
    }
  })

/** What the trial check hands over: a resistance and a reactance for each extreme its readings allow. */
const sideBySide = fc
  .array(fc.record({ ohm: logRange(1e-3, 1e6), reactanceOhm: logRange(1e-3, 1e6), isCapacitive: fc.boolean() }), {
    minLength: 1,
    maxLength: 5,
  })
  .map(
    (each): Texts => ({
      sideReOhm: list(each.map(({ ohm }) => ohm)),
      sideImOhm: list(each.map(({ reactanceOhm, isCapacitive }) => (isCapacitive ? -1 : 1) * reactanceOhm)),
    }),
  )

const WHOLES: readonly Whole[] = [
  {
    keys: ['beadHz', 'beadOhm', 'beadReactanceOhm', 'beadImpedanceOhm', 'beadBiasFrac'],
    asks: 'beadHz',
    drawn: bead,
  },
  { keys: ['dampOhm', 'dampF'], asks: 'dampOhm', drawn: damping, within: asTheContactTakes },
  {
    keys: ['chokeH', 'chokeLeakageH', 'chokeMismatchFrac', 'chokeOhm', 'chokeF', 'chokeSide', 'chokeWires'],
    asks: 'chokeH',
    drawn: choke,
  },
  { keys: ['sideReOhm', 'sideImOhm'], asks: 'sideReOhm', drawn: sideBySide },
]

type Turned = { readonly turn: number; readonly whole: Texts }

/** By a turn of ten: one as drawn apart, three that fit, else nothing of it. */
function withWhole(texts: Texts, { keys, within }: Whole, { turn, whole }: Turned, known: ReadonlySet<string>): Texts {
  if (turn < 1) return texts
  const others = Object.fromEntries(Object.entries(texts).filter(([key]) => !keys.includes(key)))
  if (turn > 3) return others
  const fitted = within === undefined ? whole : within(whole, others)
  return { ...others, ...Object.fromEntries(Object.entries(fitted).filter(([key]) => known.has(key))) }
}

/** One figure for all frequencies, or one for each: a list of another length keeps its first. */
function needsThatFit(texts: Texts): Texts {
  const { frequencyHz, neededDb } = texts
  if (frequencyHz === undefined || neededDb === undefined) return texts
  const needs = neededDb.split(';')
  return needs.length === frequencyHz.split(';').length ? texts : { ...texts, neededDb: needs[0] ?? '' }
}

/** A person reads a current in the unit of currents, and a voltage in one of voltages. */
const UNITS: Readonly<Record<string, readonly string[]>> = {
  currentDb: ['', 'dB', 'dBµA', 'dBuA'],
  voltageDb: ['', 'dB', 'dBµV', 'dBuV', 'dBV'],
}

function unitsThatFit(texts: Texts, unit: number): Texts {
  const fitted = Object.entries(UNITS).flatMap(([key, units]) => {
    const number = texts[key]?.split(' ')[0]
    return number === undefined || number === '' ? [] : [[key, `${number} ${units[unit % units.length]}`] as const]
  })
  return { ...texts, ...Object.fromEntries(fitted) }
}

/** Nodes are counted on a bus whose document says what one of them may have; elsewhere what they add is entered. */
function nodesThatFit(texts: Texts): Texts {
  const kind = LINE_KINDS.find(({ id }) => id === texts['lineKind'])
  if (kind === undefined || kind.permitted.some(({ nodeF }) => nodeF !== undefined)) return texts
  return Object.fromEntries(Object.entries(texts).filter(([key]) => key !== 'nodeCount'))
}

/**
 * `texts` drawn field by field, with what belongs together put together for the fields of `known`; of ten sets `apartOfTen`
 * stay as they were drawn.
 */
export function together(
  texts: fc.Arbitrary<Texts>,
  known: ReadonlySet<string>,
  apartOfTen: number,
): fc.Arbitrary<Texts> {
  const wholes = WHOLES.filter(({ asks }) => known.has(asks))
  const turn = fc.nat({ max: 9 })
  const turned = fc.tuple(...wholes.map(({ drawn }) => fc.record({ turn, whole: drawn })))
  return fc.tuple(texts, fc.nat({ max: 9 }), fc.nat({ max: 59 }), turned).map(([all, apart, unit, each]) => {
    if (apart < apartOfTen) return all
    const fitted = needsThatFit(nodesThatFit(unitsThatFit(all, unit)))
    return wholes.reduce((now, whole, i) => {
      const drawn = each[i]
      return drawn === undefined ? now : withWhole(now, whole, drawn, known)
    }, fitted)
  })
}
