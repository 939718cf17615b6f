/** What a rule may not ask for, because of what it costs on every screen. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const STYLES = join(import.meta.dirname, '../../src/ui/styles')

// A browser that meets "any element beside any other" reads the style of all that stands in a parent anew whenever a child
// comes or goes: beside the drawn face of 128 contacts that is a third of a frame. Being the first child is cheap to ask.
test('no rule looks for any element beside any other', () => {
  const found = readdirSync(STYLES).flatMap((file) =>
    readFileSync(join(STYLES, file), 'utf8')
      .split('\n')
      .filter((line) => /(^|[\s>])\*\s*[+~]\s*\*/.test(line))
      .map((line) => `${file}: ${line.trim()}`),
  )
  expect(found).toEqual([])
})
