/** Which value of a fact wins, what is shown beside it, and that derived facts never chase each other. */
import { expect, test, vi } from 'vitest'
import { needCheck } from '../../../src/calc/checks/need/check.ts'
import { wordlessNeed } from '../../../src/calc/checks/need/wordless.ts'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { checkLine, DERIVED, resolve, resolveFact } from '../../../src/calc/line/resolver.ts'
import type { Reading } from '../../../src/calc/quantity/reading.ts'
import { checkById } from '../../../src/calc/registry.ts'
import type { Check, Fact, FactKey, Line } from '../../../src/calc/types.ts'

const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })
const answered = (text: string): Fact => ({ text, origin: { by: 'answer', node: 'need' } })

function line(facts: Line['facts']): Line {
  return { id: 'l1', name: 'J3-14', gate: 'clear', trials: [], facts }
}

test('a typed need beats the one computed from level and limit, and the other is shown', () => {
  const both = line({ measuredDb: typed('71'), limitDb: typed('50'), marginDb: typed('6'), neededDb: typed('33') })
  const need = resolveFact(both, 'neededDb')
  expect(need?.text).toBe('33')
  expect(need?.conflicts.map((c) => [c.text, c.origin.by])).toEqual([['27 dB', 'check']])
})

test('a computed need beats an answered one', () => {
  const both = line({ measuredDb: typed('71'), limitDb: typed('50'), marginDb: typed('6'), neededDb: answered('20') })
  const need = resolveFact(both, 'neededDb')
  expect(need?.origin.by).toBe('check')
  expect(need?.conflicts[0]?.text).toBe('20')
})

test('the kind of a power line gives its worst supply: 118 V at 800 Hz on variable frequency', () => {
  const ac = line({ lineKind: typed('power-115-vac-variable') })
  expect(resolveFact(ac, 'workingRmsV')?.text).toBe('118 V')
  expect(resolveFact(ac, 'supplyHz')?.text).toBe('800 Hz')
  expect(resolveFact({ ...ac, facts: { ...ac.facts, supplyHz: typed('400') } }, 'supplyHz')?.text).toBe('400')
})

test('an unknown fact is asked for', () => {
  expect(resolveFact(line({}), 'noiseHz')).toBeUndefined()
  expect(resolveFact(line({ noiseHz: typed('  ') }), 'noiseHz')).toBeUndefined()
})

test('a Line fills the checks that share its facts, and only those', () => {
  const known = line({ lineKind: typed('can'), noiseHz: typed('120M'), legF: typed('47p') })
  const filledBy = (check: Check) =>
    resolve(known)
      .fields(check)
      .flatMap(({ key, text, origin }) => (origin ? [[key, text, origin.by]] : []))
  expect(filledBy(windowCheck)).toEqual([
    ['lineKind', 'can', 'user'],
    ['frequencyHz', '120M', 'user'],
  ])
  expect(filledBy(needCheck)).toEqual([])
})

test('a check on a Line uses the need of another check', () => {
  const full = line({
    lineKind: typed('microphone'),
    noiseHz: typed('120M'),
    measuredDb: typed('71'),
    limitDb: typed('50'),
    noiseSourceOhm: typed('50'),
    noiseLoadOhm: typed('150'),
  })
  const result = checkLine(windowCheck, full)
  expect(result.ok && result.bounds.some((b) => b.why.startsWith('27'))).toBe(true)
})

test('no check feeds a fact that it needs itself, directly or through others', () => {
  const needs = (fact: FactKey, seen: readonly FactKey[]): void => {
    expect(seen, `cycle ${[...seen, fact].join(' -> ')}`).not.toContain(fact)
    for (const rule of DERIVED.filter((d) => d.fact === fact)) {
      for (const input of checkById(rule.check)?.inputs ?? []) needs(input.fact, [...seen, fact])
    }
  }
  for (const rule of DERIVED) needs(rule.fact, [])
})

test('a fact emptied by the user is not known, whatever else claims to know it', () => {
  const both = line({ measuredDb: typed('71'), limitDb: typed('50'), neededDb: typed('') })
  expect(resolveFact(both, 'neededDb')).toBeUndefined()
  const need = resolve(both)
    .fields(windowCheck)
    .find(({ key }) => key === 'neededDb')
  expect(need).toMatchObject({ text: '', state: 'missing', others: [{ text: '27 dB', origin: { by: 'check' } }] })
})

test('a derived fact is computed once for a Line, and not again while the texts it rests on stay', () => {
  const figures = vi.spyOn(wordlessNeed, 'figures')
  const first = line({ measuredDb: typed('73.7'), limitDb: typed('50'), noiseHz: typed('9M') })
  for (let turn = 0; turn < 3; turn += 1) resolve(first).fields(windowCheck)
  expect(resolve(first)).toBe(resolve(first))
  const others = Array.from({ length: 128 }, (_, index) => line({ ...first.facts, noiseHz: typed(`${index + 1}M`) }))
  for (const other of others) expect(resolveFact(other, 'neededDb')?.text).toBe('29.7 dB')
  expect(figures).toHaveBeenCalledTimes(1)
  resolveFact(line({ ...first.facts, limitDb: typed('51') }), 'neededDb')
  expect(figures).toHaveBeenCalledTimes(2)
  figures.mockRestore()
})

test('what waits for the calculator is not remembered', () => {
  let isLoaded = false
  const express = (): Reading | undefined => (isLoaded ? { is: 'value', si: 44 } : undefined)
  const waiting = line({ measuredDb: typed('4*11'), limitDb: typed('30') })
  expect(resolveFact(waiting, 'neededDb', express)).toBeUndefined()
  isLoaded = true
  // 44 − 30 + 6
  expect(resolveFact(waiting, 'neededDb', express)?.text).toBe('20 dB')
})
