import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const ROOT = new URL('../../src/ui/', import.meta.url)
const declarations = (css: string) =>
  [...css.matchAll(/(--[\w-]+|color-scheme): ([^;]+);/g)].map(([, name, value]) => `${name}: ${value}`)

describe('a drawing that becomes a file', () => {
  it('has the colours of print, every one of them', () => {
    const tokens = readFileSync(new URL('styles/tokens.css', ROOT), 'utf8')
    const print = declarations(tokens.slice(tokens.indexOf('@media print')))
    expect(print.length).toBeGreaterThan(10)
    expect(declarations(readFileSync(new URL('parts/picture-file.css', ROOT), 'utf8'))).toEqual(print)
  })
})
