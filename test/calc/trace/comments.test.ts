/** Lines of a measured file that hold no figures. */
import { expect, it } from 'vitest'
import { isComment } from '../../../src/calc/trace/text-lines.ts'

it.each(['# 1;2', '! settings', '% 3', "' note", '* note', '// note', '-- note', '  --', '--- 5'])(
  '%s is a comment',
  (line) => {
    expect(isComment(line)).toBe(true)
  },
)

it.each(['--5;2', '-5;2', '1;2', 'Hz;dBm', ''])(
  '%s is none: two signs before a digit are for the reader of figures',
  (line) => {
    expect(isComment(line)).toBe(false)
  },
)
