import { describe, expect, it } from 'vitest'
import { marginRatio } from '../../../src/calc/connector/grouping.ts'
import { type DielectricClass, fewestPlanes, type PlaneChoice } from '../../../src/calc/connector/planes.ts'
import type { Topology } from '../../../src/calc/types.ts'
import { randomFrom } from './random.ts'
import { finished } from './some-connector.ts'

const VALUES = [1, 2.2, 4.7, 10, 22, 47, 100].map((nano) => nano * 1e-9)

function drawn(next: () => number, topologies: readonly Topology[]): readonly PlaneChoice[] {
  return Array.from({ length: 2 + Math.floor(next() * 6) }, (_, i) => ({
    id: String(i + 1),
    dielectric: (next() < 0.3 ? 'class-1' : 'class-2') satisfies DielectricClass,
    options: Array.from({ length: 1 + Math.floor(next() * 2) }, () => {
      const leastF = 1e-9 * 10 ** (next() * 1.9)
      const topology = topologies[Math.floor(next() * topologies.length)] as Topology
      return { topology, leastF, mostF: leastF * (1.3 + next() * 6) }
    }),
  }))
}

/** Every set of planes, fewest ceramics first, by what contacts it serves. */
function bruteForce(contacts: readonly PlaneChoice[], ratio: number): number {
  const planes = (['class-1', 'class-2'] as const).flatMap((dielectric) =>
    [false, true].flatMap((isPi) => VALUES.map((fromF) => ({ dielectric, isPi, fromF, cost: isPi ? 2 : 1 }))),
  )
  const maskOf = ({ dielectric, isPi, fromF }: (typeof planes)[number]) =>
    contacts.reduce((mask, contact, i) => {
      const isServed =
        contact.dielectric === dielectric &&
        contact.options.some(
          (option) =>
            (option.topology === 'PI') === isPi &&
            VALUES.some(
              (value) =>
                value >= fromF && value <= fromF * ratio * (1 + 1e-9) && marginRatio(value, option) >= 1 - 1e-9,
            ),
        )
      return isServed ? mask | (1 << i) : mask
    }, 0)
  const masks = planes.map((plane) => ({ mask: maskOf(plane), cost: plane.cost })).filter(({ mask }) => mask > 0)
  const all = masks.reduce((mask, one) => mask | one.mask, 0)
  const least = new Map<number, number>([[0, 0]])
  // as many passes as there are contacts settle every sum
  for (let pass = 0; pass <= contacts.length; pass++)
    for (const [mask, cost] of [...least])
      for (const one of masks) {
        const to = mask | one.mask
        const sum = cost + one.cost
        if (sum < (least.get(to) ?? Number.POSITIVE_INFINITY)) least.set(to, sum)
      }
  return least.get(all) ?? 0
}

describe('planes', () => {
  it('needs as few ceramics as any set of planes, in 300 schedules', () => {
    const next = randomFrom(61)
    for (let run = 0; run < 300; run++) {
      const contacts = drawn(next, run % 2 === 0 ? ['C'] : ['C', 'LC', 'PI'])
      const ratio = [1, 2.2, 10][run % 3] as number
      const plan = finished(fewestPlanes(contacts, VALUES, ratio))
      expect(plan.ceramics, `schedule ${run}`).toBe(bruteForce(contacts, ratio))
      expect(plan.lowerBound).toBe(plan.ceramics)
      plan.planeOf.forEach((place, i) => {
        const part = plan.grouping.parts[plan.grouping.partOf[i] ?? -1]
        const plane = plan.planes[place]
        expect(plane === undefined).toBe(part === undefined)
        if (plane === undefined || part === undefined) return
        expect(plane.dielectric).toBe(contacts[i]?.dielectric)
        expect(plane.isPi).toBe(part.topology === 'PI')
        expect(part.valueF / plane.fromF).toBeLessThanOrEqual(ratio * (1 + 1e-9))
      })
    }
  })

  it('keeps one class and one range to a ceramic, and gives a Pi two of its own', () => {
    const choice = (id: string, topology: Topology, nano: number, dielectric: DielectricClass = 'class-2') => ({
      id,
      dielectric,
      options: [{ topology, leastF: nano * 0.9e-9, mostF: nano * 1.1e-9 }],
    })
    const count = (contacts: readonly PlaneChoice[], ratio = 10) =>
      finished(fewestPlanes(contacts, VALUES, ratio)).ceramics
    expect(count([choice('1', 'C', 1), choice('2', 'C', 4.7)])).toBe(1)
    expect(count([choice('1', 'C', 1), choice('2', 'C', 22)])).toBe(2)
    expect(count([choice('1', 'C', 1), choice('2', 'C', 4.7)], 1)).toBe(2)
    expect(count([choice('1', 'PI', 1), choice('2', 'C', 1)])).toBe(3)
    expect(count([choice('1', 'C', 1, 'class-1'), choice('2', 'C', 1)])).toBe(2)
    expect(count([])).toBe(0)
  })
})
