/** Every field and every result has a name, and no heading is empty. */
import { expect, it } from 'vitest'
import { CHECKS } from '../../../src/calc/registry.ts'

it.each(CHECKS.map((check) => [check.id, check] as const))('%s names what it asks and what it gives', (_id, check) => {
  const named = [
    ...check.inputs.map(({ key, label }) => [key, label]),
    ...check.outputs.map(({ key, label }) => [key, label]),
  ]
  for (const [key, label] of named) expect(label, key).toMatch(/\w/u)
  for (const { key, group } of check.inputs) if (group !== undefined) expect(group, key).toMatch(/\w/u)
})
