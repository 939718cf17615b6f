/** Grouping in pictures: the curve of number of values against least margin, what each contact gives up, the ceramics. */
import { TOPOLOGY_LABEL } from '../network/circuit.ts'
import type { Picture } from '../picture.ts'
import { formatEstimate, formatExact } from '../quantity/format.ts'
import type { ContactRow } from './contact-row.ts'
import type { GroupAnswer, Merge } from './group.ts'
import type { CurvePoint } from './grouping.ts'
import { partWords } from './said.ts'

/** A ratio as decibels of capacitance: 20·log10. */
const decibels = (ratio: number): number => 20 * Math.log10(ratio)
/** A contact that was chosen has no ends: its margin says nothing. */
const MOST_SHOWN_DB = 60

export function curvePicture(curve: readonly CurvePoint[]): Picture | undefined {
  const points = curve.filter(({ leastMarginRatio }) => Number.isFinite(leastMarginRatio))
  if (points.length < 2) return undefined
  const steps = stairsOf(points)
  return {
    is: 'plot',
    title: 'Least margin of all contacts by number of parts',
    xLabel: 'Different parts',
    xQuantity: 'count',
    xScale: 'linear',
    yLabel: 'To the nearer end of its window',
    yQuantity: 'decibel',
    curves: [
      {
        id: 'margin',
        label: 'largest margin this number of parts can leave',
        style: 'solid',
        x: Float64Array.from(steps.map(([parts]) => parts)),
        y: Float64Array.from(steps.map(([, db]) => db)),
      },
    ],
    bands: [],
    limits: [],
    flags: [],
  }
}

/** At least so many parts stand on the axis, so that its ticks are whole. */
const LEAST_SPAN = 5

/** A number of parts leaves what it leaves until the next one does better; more than the last bring nothing. */
function stairsOf(points: readonly CurvePoint[]): readonly (readonly [parts: number, db: number])[] {
  const [first, last] = [points[0]?.parts ?? 1, points.at(-1)?.parts ?? 1]
  const end = Math.max(first + LEAST_SPAN, last + 1)
  return points.flatMap(({ parts, leastMarginRatio }, i) => {
    const db = Math.min(MOST_SHOWN_DB, decibels(leastMarginRatio))
    return [
      [parts, db],
      [points[i + 1]?.parts ?? end, db],
    ] as const
  })
}

/** One point of the curve in words: "2 parts: 10 nF and 100 nF; least margin 1.4 times (2.9 dB)". */
export function pointWords({ parts, leastMarginRatio, grouping }: CurvePoint): string {
  const named = grouping.parts.map(({ topology, valueF }) => partWords({ topology, valueF })).sort()
  const margin = Number.isFinite(leastMarginRatio)
    ? `least margin ${formatEstimate(leastMarginRatio, 'number', 'most')} times (${formatEstimate(decibels(leastMarginRatio), 'decibel', 'most')})`
    : 'nothing is given up'
  const proved = grouping.lowerBound >= parts ? '' : `; not proved: at least ${grouping.lowerBound}`
  return `${parts === 1 ? '1 part' : `${parts} parts`}: ${named.join(', ')}; ${margin}${proved}`
}

export function mergesPicture(merges: readonly Merge[]): Picture {
  const named = ({ topology, valueF }: Merge['from']) =>
    `${TOPOLOGY_LABEL[topology]} ${formatExact(valueF, 'capacitance')}`
  const times = (ratio: number) =>
    Number.isFinite(ratio) ? ({ is: 'si', si: ratio } as const) : ({ is: 'none', why: 'chosen: no window' } as const)
  return {
    is: 'table',
    title: 'What each contact gives up',
    columns: [
      { key: 'contact', label: 'Contact' },
      { key: 'from', label: 'By itself' },
      { key: 'to', label: 'In its group' },
      { key: 'lost', label: 'Attenuation lost', quantity: 'decibel', side: 'least' },
      { key: 'before', label: 'Margin before, times', quantity: 'number', side: 'most' },
      { key: 'after', label: 'Margin after, times', quantity: 'number', side: 'most' },
    ],
    rows: merges.map(({ id, from, to, lostDb, fromRatio, toRatio }) => ({
      id,
      cells: [
        { is: 'word', word: id },
        { is: 'word', word: named(from) },
        { is: 'word', word: named(to) },
        lostDb === undefined ? { is: 'none', why: 'no need known' } : { is: 'si', si: lostDb },
        times(fromRatio),
        times(toRatio),
      ],
    })),
  }
}

export type PlaneWords = { readonly id: string; readonly sentence: string; readonly contacts: readonly string[] }

/** Each ceramic with its class, the class of voltage that sets its thickness, and its contacts. */
export function planeWords({ planes, contacts }: GroupAnswer, rows: readonly ContactRow[]): readonly PlaneWords[] {
  return planes.planes.map((plane, place) => {
    const ids = contacts.flatMap(({ id }, i) => (planes.planeOf[i] === place ? [id] : []))
    const valuesF = [
      ...new Set(
        contacts.flatMap((_, i) => {
          const part = planes.planeOf[i] === place ? planes.grouping.parts[planes.grouping.partOf[i] ?? -1] : undefined
          return part === undefined ? [] : [part.valueF]
        }),
      ),
    ].sort((a, b) => a - b)
    const rated = rows.flatMap(({ contact, build }) => (ids.includes(contact.id) ? [build?.ratedV] : []))
    const known = rated.filter((one) => one !== undefined)
    const volts =
      known.length === 0
        ? 'voltage class open'
        : `as thick as ${formatExact(Math.max(...known), 'voltage')} asks${known.length < rated.length ? ' (some contacts’ volts are not known)' : ''}`
    const values = valuesF.map((valueF) => formatExact(valueF, 'capacitance')).join(', ')
    return {
      id: String(place + 1),
      sentence: `${plane.isPi ? 'Two ceramics with inductors between' : 'One ceramic'}, ${plane.dielectric === 'class-1' ? 'class 1' : 'class 2'}, ${volts}: ${values}`,
      contacts: ids,
    }
  })
}
