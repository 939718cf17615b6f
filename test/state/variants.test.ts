import { signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import { needCheck } from '../../src/calc/checks/need/check.ts'
import { windowCheck } from '../../src/calc/checks/window/check.ts'
import type { Line } from '../../src/calc/types.ts'
import { createCheck } from '../../src/state/check.ts'
import { readHash, readQuery } from '../../src/state/router.ts'
import { lineOfVariant, pairsOfVariants, readVariants, splitVariants, writeVariants } from '../../src/state/variants.ts'
import { editComplaint } from '../../src/store/edits.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import fc from '../support/property.ts'

const noExpress = () => undefined
const line: Line = { id: 'x', name: '', gate: 'unknown', trials: [], facts: {} }

describe('variants in an address', () => {
  it('are the keys of the check with b. or c. before them; every other key stays where it was', () => {
    const query = readQuery('neededDb=20&b.neededDb=22%20dB&c.sourceOhm=50&d.neededDb=1&b.colour=blue&b.=x')
    const { own, variants } = splitVariants(query, windowCheck.inputs)
    expect(variants).toEqual({ b: { neededDb: '22 dB' }, c: { sourceOhm: '50' } })
    expect(own.map(({ key }) => key)).toEqual(['neededDb', 'd.neededDb', 'b.colour', 'b.'])
  })

  it('come back from what is written, whatever was typed', () => {
    const keys = windowCheck.inputs.map(({ key }) => key)
    const differs = fc.dictionary(fc.constantFrom(...keys), fc.string(), { minKeys: 1 })
    fc.assert(
      fc.property(differs, differs, (b, c) => {
        const text = writeVariants(windowCheck.inputs, { b, c })
        expect(readVariants(windowCheck.inputs, text)).toEqual({ b: { ...b }, c: { ...c } })
      }),
    )
  })

  it('stand in the address of the check after its own keys, and are appended as they change', () => {
    const model = createCheck(
      needCheck,
      { line: signal(line), write: () => undefined, variants: { b: { limitDb: '60' } } },
      noExpress,
    )
    expect(model.hash.value).toMatch(/&b\.limitDb=60$/)
    model.setVariants({ b: { limitDb: '60' }, c: { marginDb: '' } })
    expect(model.hash.value).toMatch(/&b\.limitDb=60&c\.marginDb=$/)
    expect(model.isTouched.value).toBe(true)
    const route = readHash(model.hash.value)
    expect(route.place === 'check' && splitVariants(route.query, needCheck.inputs).variants).toEqual({
      b: { limitDb: '60' },
      c: { marginDb: '' },
    })
    model.dispose()
  })
})

describe('the Line of a variant', () => {
  it('has the texts that differ and all others as they are', () => {
    const base: Line = {
      ...line,
      facts: { measuredDb: { text: '105', origin: { by: 'user' } }, limitDb: { text: '76', origin: { by: 'user' } } },
    }
    const facts = Object.fromEntries(needCheck.inputs.map(({ key, fact }) => [key, fact]))
    const other = lineOfVariant(needCheck, base, { limitDb: '60', marginDb: '' })
    expect(other.facts[facts['measuredDb'] ?? 'measuredDb']?.text).toBe('105')
    expect(other.facts[facts['limitDb'] ?? 'limitDb']?.text).toBe('60')
    expect(base.facts.limitDb?.text).toBe('76')
    expect(pairsOfVariants(needCheck.inputs, {})).toEqual([])
  })
})

describe('variants in the Log', () => {
  it('stay with the check, are replaced by newer ones, and go when they are taken away', () => {
    const saved = { check: 'need', lineId: 'l1', rules: 3 } as const
    const record = newComplaint({ checks: [saved] })
    const at = '2026-11-26T05:00:00.000Z'
    const keep = (old: typeof record, beside?: string) => ({
      ...old,
      ...editComplaint(
        old,
        { do: 'check', id: old.id, at, check: { ...saved, ...(beside !== undefined && { beside }) } },
        false,
      ),
    })
    const kept = keep(record, 'b.limitDb=60')
    expect(kept.checks).toEqual([{ ...saved, beside: 'b.limitDb=60' }])
    expect(keep(kept).checks).toEqual(kept.checks)
    expect(keep(kept, '').checks).toEqual([{ ...saved, beside: '' }])
  })
})
