/**
 * The search finds what people mean: words of documented complaints, trade words of lines, short forms and misspellings,
 * each with the hit that must stand first.
 */
import { describe, expect, it } from 'vitest'
import { searchFor } from '../../../src/state/search.ts'
import { QUERIES } from './search-queries.ts'

describe('the ranking of the search', () => {
  it('is asked at least 150 different queries', () => {
    expect(new Set(QUERIES.map(([typed]) => typed)).size).toBe(QUERIES.length)
    expect(QUERIES.length).toBeGreaterThanOrEqual(150)
  })

  it.each(QUERIES)('puts what “%s” means first', (typed, ...first) => {
    expect(first).toContain(searchFor(typed)[0]?.id)
  })
})
