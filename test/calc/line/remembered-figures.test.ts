/** A check with its words and the same without are worked out once. */
import { expect, test } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { wordlessWindow } from '../../../src/calc/checks/window/wordless.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import { figuresOf } from '../../../src/calc/line/remembered-figures.ts'

test('a window asked for by another check is not worked out anew for its own screen', () => {
  const fields = readFields(windowCheck, { lineKind: 'arinc-429-high', frequencyHz: '2.13M', neededDb: '17' })
  expect(figuresOf(windowCheck, fields)).toBe(figuresOf(wordlessWindow, fields))
})
