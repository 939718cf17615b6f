/** A naive walker: whatever is answered, an outcome that fits a part has positive evidence behind it. */
import { describe, expect, it } from 'vitest'
import { isEvidence, optionsOf, replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import type { Answers } from '../../src/guide/types.ts'
import fc from '../support/property.ts'

const GATE: Answers = { 'gate-danger': 'none', 'gate-lines': 'none' }
const FITS_A_PART = new Set(['filter'])

const known = (answers: Answers, id: string): boolean =>
  answers[id] !== undefined && answers[id] !== 'dont-know' && answers[id] !== 'set-aside'

/** Walks to the end by a stream of numbers that pick one of the answers offered. */
function walk(picks: Iterator<number>): { readonly answers: Answers; readonly end: string; readonly kind: string } {
  let answers = GATE
  for (let step = 0; step < 60; step++) {
    const { current } = replay(GUIDE, answers)
    if (!isEvidence(current)) return { answers, end: current.id, kind: current.class }
    const offered = optionsOf(current).filter(({ retired, stop }) => !retired && stop === undefined)
    const pick = offered[(picks.next().value ?? 0) % offered.length]
    answers = { ...answers, [current.id]: pick?.id ?? 'dont-know' }
  }
  throw new Error('it never ended')
}

describe('the naive walker', () => {
  it('meets no part without cable or supply, mode, bond and shield seen or measured', () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat()), (stream) => {
        const { answers, end, kind } = walk(stream)
        if (!FITS_A_PART.has(kind)) return
        expect(known(answers, 'bond'), `${end}: bond`).toBe(true)
        expect(known(answers, 'shield-ends'), `${end}: shield`).toBe(true)
        // "Repair it before any part", "Close it before any part"
        expect(answers['bond'], `${end}: bond`).not.toBe('poor')
        expect(answers['shield-ends'], `${end}: shield`).not.toBe('open')
        if (answers['wrong'] === 'data') expect(known(answers, 'bus-ohms'), `${end}: bus`).toBe(true)
        if (end === 'decouple-supply' || end === 'choke-drive') return
        expect(known(answers, 'mode') || ['whole', 'each-leg'].includes(answers['cable'] ?? ''), `${end}: mode`).toBe(
          true,
        )
        if (answers['wrong'] === 'plan') return
        const carrier = ['cable', 'cable-trial', 'own-battery', 'source-fix'].some((id) => known(answers, id))
        expect(carrier, `${end}: cable`).toBe(true)
      }),
      { numRuns: 150 },
    )
  })

  it('is sent to mend a bond or a shield that was found poor, whatever part it asked for', () => {
    const planned: Answers = { ...GATE, wrong: 'plan', mode: 'common', kind: 'can', frequency: 'vhf', need: 'twenty' }
    const ends = { impedance: 'fifty', 'surge-threat': 'none', box: 'yes' }
    const endOf = (bond: string, shield: string, direction: string) =>
      replay(GUIDE, { ...planned, ...ends, 'plan-direction': direction, bond, 'shield-ends': shield }).current.id
    for (const direction of ['emission', 'stand', 'dont-know']) {
      expect(endOf('poor', 'good', direction)).toBe('bond-first')
      expect(endOf('good', 'open', direction)).toBe('shield-first')
      expect(endOf('poor', 'open', direction)).toBe('bond-first')
    }
    expect(endOf('good', 'good', 'stand')).toBe('filter-victim-box')
  })

  it('never takes more than forty taps to an outcome', () => {
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat()), (stream) => {
        expect(Object.keys(walk(stream).answers).length).toBeLessThanOrEqual(40)
      }),
      { numRuns: 60 },
    )
  })
})

describe('suppressors', () => {
  it('lay their pulse into the surge check and ask for no noise', () => {
    for (const { class: kind, checks, rules } of GUIDE.outcomes)
      if (kind === 'suppressor') {
        expect(checks[0]?.check).toBe('surge')
        expect(rules).not.toContain('topology')
      }
  })
})
