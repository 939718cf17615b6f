/** The shelf of tests: every card of the guide is a page, and the figures of the instruments come out as worked by hand. */
import { expect, test } from 'vitest'
import { instrumentPageOf, instrumentPages } from '../../../src/guide/book/tests/instruments.ts'
import { pages } from '../../../src/guide/book/tests/tests.ts'
import { GUIDE } from '../../../src/guide/guide.ts'

const textOf = (id: string): string =>
  JSON.stringify(instrumentPages().find((page) => page.id === id)).replace(/\u00a0/g, ' ')

test('every test of the guide that has a card has a page with its steps, readings and cautions', () => {
  const withCard = GUIDE.evidence.filter(({ card }) => card !== undefined)
  expect(withCard.length).toBeGreaterThan(30)
  const made = new Map(pages().map((page) => [page.id, page]))
  for (const item of withCard) {
    const page = made.get(`test-${item.id}`)
    expect(page?.title).toBe(item.text)
    expect(page?.cautions).toEqual(item.cautions ?? [])
    const text = JSON.stringify(page?.blocks)
    for (const step of item.card?.do ?? []) expect(text).toContain(JSON.stringify(step).slice(1, -1))
    for (const { label, id, retired } of item.options)
      if (id !== 'dont-know' && retired !== true) expect(text).toContain(JSON.stringify(label).slice(1, -1))
  }
})

test('the instruments a guide asks for are told of, seven pages in all', () => {
  expect(instrumentPages()).toHaveLength(7)
  for (const tool of ['multimeter', 'milliohm meter', 'oscilloscope', 'current probe', 'clamp ferrite'] as const)
    expect(instrumentPageOf(tool)).toBeDefined()
  for (const page of instrumentPages()) {
    const kinds = page.blocks.map(({ is }) => is)
    expect(kinds).toContain('list')
    expect(kinds.some((kind) => kind === 'drawing' || kind === 'waveform')).toBe(true)
  }
})

test.each([
  // two ends of 120 Ω side by side
  ['test-with-multimeter', '60 Ω'],
  // 20·log10 2
  ['test-with-current-probe', '6.02 dB'],
  // 20·log10(1 + 150/50) and 20·log10(1 + 150/300)
  ['test-with-clamp', '12 dB'],
  ['test-with-clamp', '3.52 dB'],
  // 1/(2π·√(12 pF · 150 nH))
  ['test-with-oscilloscope', '119 MHz'],
  // 0.35/100 MHz
  ['test-with-oscilloscope', '3.5 ns'],
  // 2π · 10 MHz · 50 nH
  ['test-with-milliohm-meter', '3.14 Ω'],
  ['test-with-milliohm-meter', '2.5 mΩ'],
])('%s says %s', (id, figure) => {
  expect(textOf(id)).toContain(figure)
})

test('every instrument warns before it is taken up, and no probe goes to what kills', () => {
  for (const { id, cautions = [] } of instrumentPages()) expect(cautions.length, id).toBeGreaterThan(0)
  expect(textOf('test-with-oscilloscope')).toContain('A probe on ignition, strobe high voltage or any lethal supply.')
  // 0.1 Ω over 2.5 mΩ
  expect(textOf('test-with-milliohm-meter')).toContain('as much as 40 good bonds')
})

test('an instrument whose figure is recalled or read says so beside practice', () => {
  const cited = (id: string) => instrumentPages().find((page) => page.id === id)?.sources
  expect(cited('test-with-oscilloscope')).toContainEqual(
    expect.objectContaining({ id: 'mil-std-704', standing: 'memory' }),
  )
  expect(cited('test-with-milliohm-meter')).toContainEqual({ id: 'mil-b-5087', standing: 'memory' })
  expect(cited('test-with-multimeter')).toContainEqual({ id: 'R16', standing: 'read' })
})

test('a test says how long it takes in words, and keeps the letters of a name inside its sentence', () => {
  const textsOf = (id: string) =>
    pages()
      .filter((page) => page.id === id)
      .flatMap(({ blocks }) =>
        blocks.flatMap((block) =>
          block.is === 'rows'
            ? block.rows.map(({ label, text }) => `${label}: ${text}`)
            : block.is === 'text'
              ? [block.text]
              : [],
        ),
      )
  expect(textsOf('test-flight-table')).toContain('Time: A day or more.')
  expect(textsOf('test-aba-l-band').join(' ')).toContain('prove or clear it: L-band pulses')
  expect(
    pages()
      .flatMap(({ id }) => textsOf(id))
      .filter((text) => /^Minutes|\bl-band/.test(text)),
  ).toEqual([])
})
