import { describe, expect, it } from 'vitest'
import { suits } from '../../../src/calc/line/resolver.ts'
import { oneCheck } from '../../../src/calc/one-check.ts'
import { PROVIDERS } from '../../../src/calc/providers.ts'
import { CHECKS } from '../../../src/calc/registry.ts'
import type { Check, Input } from '../../../src/calc/types.ts'

/** As `suits` says it, but with the inputs of every check looked at. */
function suitsAmongAll(input: Input, text: string): boolean {
  const takes = ({ type }: Input): boolean =>
    type.is === 'choice'
      ? type.options.some(({ value }) => value === text)
      : !text.includes(';') || type.is === 'column' || (type.is === 'number' && type.many === true)
  const all = CHECKS.flatMap(({ inputs }) => inputs.filter(({ fact }) => fact === input.fact))
  return takes(input) || !all.some(takes)
}

describe('the checks that provide facts', () => {
  it('are all whose outputs or lists do, in the order in which checks are listed', () => {
    const provides = CHECKS.filter(({ outputs, lists = [] }) =>
      [...outputs, ...lists].some((output) => 'provides' in output && output.provides !== undefined),
    )
    expect(PROVIDERS.map(({ id }) => id)).toEqual(provides.map(({ id }) => id))
    // the same but for the words
    for (const [at, check] of PROVIDERS.entries()) {
      const { explain: _explain, wordless, ...rest } = provides[at] as Check
      expect(wordless).toBe(check)
      expect(rest).toEqual(check)
      expect(rest.figures).toBe(check.figures)
    }
  })

  it('tell of every text whether it can stand in an input as all checks together would', () => {
    for (const input of CHECKS.flatMap(({ inputs }) => [...inputs])) {
      const options = input.type.is === 'choice' ? input.type.options.map(({ value }) => value) : []
      for (const text of ['', '1', '1; 2', 'C', 'no such choice', ...options])
        expect(suits(input, text), `${input.key}: ${text}`).toBe(suitsAmongAll(input, text))
    }
  })
})

describe('one check', () => {
  it.each(CHECKS.map((check) => [check.id, check] as const))('is the one that is listed: %s', async (id, check) => {
    expect(await oneCheck(id)).toBe(check)
  })

  it('is none for an id that is no check', async () => {
    expect(await oneCheck('torque')).toBeUndefined()
  })
})
