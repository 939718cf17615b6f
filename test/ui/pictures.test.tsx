// @vitest-environment happy-dom
import { beforeAll, describe, expect, it } from 'vitest'
import type { Picture } from '../../src/calc/types.ts'
import { PictureView } from '../../src/ui/parts/picture.tsx'
import { isAtRest } from '../../src/ui/rest.ts'
import { basis } from './fake-check.ts'
import { by, show } from './support.ts'

const strip: Picture = {
  is: 'strip',
  title: 'Window, one capacitor',
  minF: 1e-11,
  maxF: 1e-6,
  chosenF: 3.3e-9,
  rows: [
    {
      topology: 'C',
      label: 'C',
      best: false,
      state: 'shut',
      leastF: 15.7e-9,
      mostF: 11.6e-9,
      holes: [],
      verdict: 'fails',
      note: '',
    },
    {
      topology: 'PI',
      label: 'Pi',
      best: true,
      state: 'open',
      leastF: 2.53e-9,
      mostF: 5.82e-9,
      permittedF: 18.1e-12,
      proposedF: 3.3e-9,
      holes: [[3e-9, 3.1e-9]],
      verdict: 'marginal',
      note: 'above the permitted figure',
    },
  ],
  marks: [
    { kind: 'failed', atF: 1e-9, label: 'first trial' },
    { kind: 'harmed', atF: 1e-8, label: 'second trial' },
  ],
}
const bound = {
  id: 'need',
  nature: 'need',
  topology: 'PI',
  appliesTo: 'one capacitor',
  openedBy: [],
  basis,
} as const
const bounds = [
  { ...bound, side: 'least' as const, markedF: 2.53e-9, why: '40 dB at 12 MHz' },
  { ...bound, id: 'edge', side: 'most' as const, markedF: 5.82e-9, why: 'edge under 2 µs' },
]

describe('pictures', () => {
  // the app stands: pictures are drawn at once
  beforeAll(() => {
    isAtRest.value = true
  })

  it('tells the strip in words: each row, the pin, and the two bounds with their reasons', () => {
    const place = show(<PictureView picture={strip} bounds={bounds} />)
    expect(by('img', /Pi leaves room, at least 2\.53.nF, at most 5\.82.nF/u).getAttribute('aria-label')).toContain(
      'Chosen 3.3',
    )
    expect(place.textContent).toContain('40 dB at 12 MHz')
    expect(place.textContent).toContain('edge under 2 µs')
    expect(place.textContent).toContain('tried, did not clear')
    expect(place.querySelectorAll('svg .shut-word')).toHaveLength(1)
    expect(place.querySelectorAll('svg[role=img] .hole')).toHaveLength(1)
    // the limits of the best row, each labelled and through the whole plot
    expect(
      [...place.querySelectorAll('svg[role=img] .limits text, svg[role=img] .pin text')].map(
        (text) => text.textContent,
      ),
    ).toEqual(['at least 2.53\u00a0nF', 'document 18.1\u00a0pF', 'at most 5.82\u00a0nF', '3.3\u00a0nF'])
    expect(place.querySelectorAll('svg[role=img] .care')).toHaveLength(1)
    expect(place.querySelector('.legend')?.textContent).toContain('with care: needs approval')
  })

  it('tells the ladder in words, its faults first, and draws an arrow from the rung that exceeds', () => {
    const ladder: Picture = {
      is: 'ladder',
      title: 'Volts on this line',
      rungs: [
        { id: 'ring', label: 'behind the filter', side: 'comes', minV: 88, maxV: 88, exceeds: 'input' },
        { id: 'input', label: 'input survives', side: 'holds', minV: 60, maxV: 60 },
      ],
      faults: ['It rings up to 88 V; the input survives 60 V.'],
    }
    const place = show(<PictureView picture={ladder} />)
    expect(by('img', /What comes: behind the filter 88.V/u).getAttribute('aria-label')).toContain('rings up to 88')
    expect(place.querySelectorAll('.rung.faulty')).toHaveLength(1)
    expect(place.querySelectorAll('path.arrow')).toHaveLength(1)
    expect(place.querySelector('.finding.fails')?.textContent).toContain('88 V')
  })

  it('draws a curve, its need and its band, and reads any point off by slider', () => {
    const plot: Picture = {
      is: 'plot',
      title: 'Insertion loss',
      xLabel: 'Frequency',
      xQuantity: 'frequency',
      xScale: 'log',
      yLabel: 'dB',
      yQuantity: 'decibel',
      curves: [
        {
          id: 'a',
          label: 'your circuit',
          style: 'solid',
          x: Float64Array.from([1e4, 1e6, 1e8]),
          y: Float64Array.from([0, 20, 60]),
        },
      ],
      bands: [{ label: 'signal', from: 0, to: 1e5 }],
      limits: [{ label: 'need 40 dB', x: 1e7, y: 40, must: 'least' }],
      flags: ['Dips to 3 dB at 3.3 MHz.'],
    }
    const place = show(<PictureView picture={plot} />)
    expect(by('img', /^Insertion loss\. your circuit: .*need 40 dB\. Dips/u)).toBeDefined()
    expect(place.querySelector('svg .axis text')?.textContent).toBe('dB')
    // on the straight line between 1 MHz and 100 MHz it holds 23.6 dB at 10 MHz: short of 40 dB
    expect(place.querySelectorAll('.limit.fails')).toHaveLength(1)
    expect(place.querySelector('input[type=range]')?.getAttribute('aria-valuetext')).toMatch(
      /^at 1.MHz: your circuit 20/u,
    )
  })

  it('scrolls a table inside itself and shows the reason where a figure does not exist', () => {
    const place = show(
      <PictureView
        picture={{
          is: 'table',
          title: 'Side by side',
          columns: [
            { key: 'topology', label: 'Topology' },
            { key: 'least', label: 'At least', quantity: 'capacitance' },
          ],
          rows: [
            {
              id: 'C',
              cells: [
                { is: 'word', word: 'C' },
                { is: 'si', si: 15.7e-9 },
              ],
            },
            {
              id: 'L',
              strong: true,
              cells: [
                { is: 'word', word: 'L' },
                { is: 'none', why: 'no capacitor' },
              ],
            },
          ],
        }}
      />,
    )
    const region = by('region', 'Side by side')
    expect(region.tabIndex).toBe(0)
    expect([...place.querySelectorAll('tbody td')].map((cell) => cell.textContent)).toEqual([
      '15.7\u00a0nF',
      'no capacitor',
    ])
  })
})
