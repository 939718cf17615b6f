import { describe, expect, it } from 'vitest'
import {
  type ContactChoice,
  type ContactOption,
  fewestParts,
  type GroupPart,
  marginCurve,
  marginRatio,
} from '../../../src/calc/connector/grouping.ts'
import type { Topology } from '../../../src/calc/types.ts'

const VALUES = [1, 1.5, 2.2, 3.3, 4.7, 6.8, 10, 15, 22, 33, 47, 68].map((nano) => nano * 1e-9)

function finish<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** Small seeded generator (mulberry32). */
function random(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

function option(next: () => number, topologies: readonly Topology[]): ContactOption {
  const leastF = 1e-9 * 10 ** (next() * 1.7)
  return {
    topology: topologies[Math.floor(next() * topologies.length)] as Topology,
    leastF,
    mostF: leastF * (1.3 + next() * 6),
  }
}

function schedule(next: () => number, topologies: readonly Topology[]): readonly ContactChoice[] {
  const count = 2 + Math.floor(next() * 7)
  return Array.from({ length: count }, (_, i) => ({
    id: String(i + 1),
    options: Array.from({ length: topologies.length > 1 ? 1 + Math.floor(next() * 3) : 1 }, () =>
      option(next, topologies),
    ),
  }))
}

const fits = (part: GroupPart, { options }: ContactChoice, ratio = 1) =>
  options.some((one) => one.topology === part.topology && marginRatio(part.valueF, one) >= ratio * (1 - 1e-9))

/** Every subset of parts, smallest first. */
function bruteForce(contacts: readonly ContactChoice[], topologies: readonly Topology[], ratio = 1): number {
  const parts = topologies.flatMap((topology) => VALUES.map((valueF) => ({ topology, valueF })))
  const masks = new Set(
    parts.map((part) =>
      contacts.reduce((mask, contact, i) => (fits(part, contact, ratio) ? mask | (1 << i) : mask), 0),
    ),
  )
  const all = [...masks].reduce((mask, one) => mask | one, 0)
  let reached = new Set([0])
  for (let count = 0; ; count++) {
    if (reached.has(all)) return count
    const next = new Set<number>()
    for (const mask of reached) for (const one of masks) next.add(mask | one)
    reached = next
  }
}

describe('grouping against brute force', () => {
  it('finds the fewest values of one topology in 1,000 schedules', () => {
    const next = random(11)
    for (let run = 0; run < 1000; run++) {
      const contacts = schedule(next, ['C'])
      const found = finish(fewestParts(contacts, VALUES))
      expect(found?.parts.length, `schedule ${run}`).toBe(bruteForce(contacts, ['C']))
      expect(found?.lowerBound).toBe(found?.parts.length)
    }
  })

  it('finds the fewest parts over several topologies in 200 schedules', () => {
    const next = random(12)
    const topologies: readonly Topology[] = ['C', 'LC', 'PI']
    for (let run = 0; run < 200; run++) {
      const contacts = schedule(next, topologies)
      const found = finish(fewestParts(contacts, VALUES))
      expect(found?.parts.length, `schedule ${run}`).toBe(bruteForce(contacts, topologies))
    }
  })

  it('gives every contact a part that fits, or none where none fits', () => {
    const next = random(13)
    for (let run = 0; run < 300; run++) {
      const contacts = schedule(next, ['C', 'T'])
      const found = finish(fewestParts(contacts, VALUES))
      contacts.forEach((contact, i) => {
        const part = found?.parts[found.partOf[i] ?? -1]
        const could = ['C', 'T'].some((topology) =>
          VALUES.some((valueF) => fits({ topology: topology as Topology, valueF }, contact)),
        )
        expect(part !== undefined, `schedule ${run}, contact ${contact.id}`).toBe(could)
        if (part) expect(fits(part, contact)).toBe(true)
      })
    }
  })

  it('gives the most margin for each number of values', () => {
    const next = random(14)
    for (let run = 0; run < 60; run++) {
      const contacts = schedule(next, ['C'])
      const served = contacts.filter((contact) => VALUES.some((valueF) => fits({ topology: 'C', valueF }, contact)))
      const curve = finish(marginCurve(contacts, VALUES))
      let last = 0
      for (const { parts, leastMarginRatio } of curve) {
        expect(leastMarginRatio).toBeGreaterThan(last)
        last = leastMarginRatio
        expect(bruteForce(served, ['C'], leastMarginRatio), `schedule ${run}`).toBeLessThanOrEqual(parts)
        // a hair more margin is not to be had with as many values, or nobody could have it
        const all = served.length
        const more = bruteForce(served, ['C'], leastMarginRatio * 1.0001)
        const isServed = served.every((contact) =>
          VALUES.some((valueF) => fits({ topology: 'C', valueF }, contact, leastMarginRatio * 1.0001)),
        )
        expect(!isServed || more > parts || all === 0, `schedule ${run}, ${parts} values`).toBe(true)
      }
    }
  })
})
