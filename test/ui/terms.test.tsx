// @vitest-environment happy-dom
import { beforeAll, describe, expect, it } from 'vitest'
import { TermList, TermsIn, Text } from '../../src/ui/parts/book/terms.tsx'
import { allBy, by, show, tap, until } from './support.ts'

const TEXTS = ['Measure the bond with a dummy load.', 'A bond again.'] as const

describe('words of the trade on a screen', () => {
  // at hand, so that nothing is waited for longer than it takes
  beforeAll(async () => {
    await import('../../src/guide/book/glossary-match.ts')
  })

  const screen = () =>
    show(
      <TermsIn texts={TEXTS}>
        {TEXTS.map((text) => (
          <p key={text}>
            <Text of={text} />
          </p>
        ))}
        <TermList />
      </TermsIn>,
    )

  it('stand as they are before the glossary comes, and are marked where they are first used', async () => {
    const place = screen()
    const before = [...place.querySelectorAll('p')].map((line) => line.textContent)
    expect(before).toEqual(TEXTS)
    await until('a.term')
    expect(allBy('a', /^(bond|dummy load)$/).map((term) => term.textContent)).toEqual(['bond', 'dummy load'])
    expect([...place.querySelectorAll('p')].map((line) => line.textContent)).toEqual(before)
  })

  it('tell their line by a tap, spoken too, one at a time; a second tap, Escape and a tap beside put it away', async () => {
    screen()
    await until('a.term')
    await tap(by('a', 'bond'))
    expect(by('a', 'bond').getAttribute('aria-expanded')).toBe('true')
    expect(document.querySelector('[role=status] .term-line')?.textContent).toContain('measured in milliohms')
    await tap(by('a', 'dummy load'))
    expect(document.querySelectorAll('.term-line')).toHaveLength(1)
    expect(document.querySelector('.term-line a')?.getAttribute('href')).toBe('#/notes/dummy-load')
    await tap(by('a', 'dummy load'))
    expect(document.querySelector('.term-line')).toBeNull()
    await tap(by('a', 'bond'))
    await tap(by('p', /again/))
    expect(document.querySelector('.term-line')).toBeNull()
  })

  it('are listed with their lines, for those who read on', async () => {
    screen()
    await until('a.term')
    expect([...document.querySelectorAll('dl strong')].map((word) => word.textContent)).toEqual(['bond', 'dummy load'])
  })
})
