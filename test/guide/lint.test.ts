import { expect, test } from 'vitest'
import { GUIDE } from '../../src/guide/guide.ts'
import { lint } from '../../src/guide/lint.ts'

test('the shipped guide has no fault', () => {
  expect(lint(GUIDE)).toEqual([])
})
