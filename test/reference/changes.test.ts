import { expect, it } from 'vitest'
import { RULES_EDITION } from '../../src/calc/edition.ts'
import { CHANGES } from '../../src/reference/changes.ts'

it('says of every edition of the rules what changed, the newest first, in short sentences', () => {
  expect(CHANGES.map(({ rules }) => rules)).toEqual(
    Array.from({ length: RULES_EDITION }, (_, at) => RULES_EDITION - at),
  )
  const sentences = CHANGES.flatMap(({ changes }) => changes)
  expect(CHANGES.every(({ changes }) => changes.length > 0)).toBe(true)
  expect(new Set(sentences).size).toBe(sentences.length)
  for (const one of sentences) {
    expect(one).toMatch(/^[A-Z].*\.$/)
    for (const part of one.split(/(?<=[.;:])\s/)) expect(part.split(' ').length).toBeLessThanOrEqual(20)
  }
})
