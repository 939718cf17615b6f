import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { pairModes } from '../../../src/calc/touchstone/mixed-mode.ts'
import { readTouchstone } from '../../../src/calc/touchstone/read.ts'
import { chainAt, chainLossDb, entriesOf } from '../../../src/calc/touchstone/two-port.ts'
import type { Network, NumberFormat, Parameter, TouchstoneUnit } from '../../../src/calc/touchstone/types.ts'
import { writeTouchstone } from '../../../src/calc/touchstone/write.ts'
import fc from '../../support/property.ts'

const entry = fc.double({ min: -3, max: 3, noNaN: true }).map((x) => (Math.abs(x) < 1e-6 ? 0.5 : x))
const networks: fc.Arbitrary<Network> = fc
  .tuple(
    fc.constantFrom<Parameter>('S', 'Y', 'Z', 'H', 'G'),
    fc.constantFrom(1, 2, 3, 4, 5),
    fc.integer({ min: 1, max: 4 }),
    fc.boolean(),
  )
  .chain(([parameter, n, count, isUneven]) => {
    const portCount = parameter === 'H' || parameter === 'G' ? 2 : n
    const entries = fc.array(entry, { minLength: count * portCount ** 2, maxLength: count * portCount ** 2 })
    const ohm = fc.double({ min: 0.01, max: 600, noNaN: true })
    return fc.record({
      parameter: fc.constant(parameter),
      portCount: fc.constant(portCount),
      hz: fc.constant(Float64Array.from({ length: count }, (_, k) => 1e4 * 7 ** k)),
      re: entries.map((list) => Float64Array.from(list)),
      im: entries.map((list) => Float64Array.from(list)),
      referenceOhm: isUneven
        ? fc.array(ohm, { minLength: portCount, maxLength: portCount })
        : ohm.map((one) => Array.from({ length: portCount }, () => one)),
    })
  })

/** Far from a matrix that has no other form: no determinant, nothing passing through. */
function isPlain(network: Network): boolean {
  const first = chainAt(network, 0)
  const third = entriesOf(first, 'Z', network.referenceOhm)
  return (
    [first.a, first.b, first.c, first.d, first.q].every(([re, im]) => Math.hypot(re, im) > 0.05) &&
    third.every(([re, im]) => Math.hypot(re, im) < 1e5)
  )
}

describe('a network', () => {
  it('is read back as it was written, in every version, format and unit', () => {
    fc.assert(
      fc.property(
        networks,
        fc.constantFrom<'1' | '2'>('1', '2'),
        fc.constantFrom<NumberFormat>('RI', 'MA', 'DB'),
        fc.constantFrom<TouchstoneUnit>('Hz', 'kHz', 'MHz', 'GHz'),
        (network, version, format, unit) => {
          const text = writeTouchstone(network, { version, format, unit, comments: ['drawn'] })
          const reading = atOnce(readTouchstone(text, { fileName: `x.s${network.portCount}p` }))
          if (!reading.ok) throw new Error(reading.message)
          const back = reading.network
          expect([back.parameter, back.portCount]).toEqual([network.parameter, network.portCount])
          expect(back.referenceOhm).toEqual(network.referenceOhm)
          network.hz.forEach((hz, k) => {
            expect(Math.abs((back.hz[k] as number) / hz - 1)).toBeLessThan(1e-14)
          })
          network.re.forEach((re, i) => {
            const size = Math.hypot(re, network.im[i] as number)
            expect(
              Math.hypot((back.re[i] as number) - re, (back.im[i] as number) - (network.im[i] as number)),
            ).toBeLessThanOrEqual(1e-13 * size)
          })
        },
      ),
      { numRuns: 400 },
    )
  })

  it('of two ports loses the same between a source and a load in every parameter', () => {
    const part = fc.double({ min: 0.5, max: 200, noNaN: true })
    fc.assert(
      fc.property(
        networks.filter(({ portCount }) => portCount === 2),
        part,
        part,
        (network, ohm, load) => {
          fc.pre(isPlain(network))
          const chain = chainAt(network, 0)
          const loss = chainLossDb(chain, [ohm, load], [load, -ohm])
          for (const parameter of ['S', 'Y', 'Z', 'H', 'G'] as const) {
            const entries = entriesOf(chain, parameter, network.referenceOhm)
            const other: Network = {
              ...network,
              parameter,
              re: Float64Array.from(entries, ([re]) => re),
              im: Float64Array.from(entries, ([, im]) => im),
            }
            expect(chainLossDb(chainAt(other, 0), [ohm, load], [load, -ohm])).toBeCloseTo(loss, 6)
          }
        },
      ),
      { numRuns: 300 },
    )
  })

  it('G is the inverse of H', () => {
    fc.assert(
      fc.property(
        networks.filter(({ parameter }) => parameter === 'H'),
        (network) => {
          fc.pre(isPlain(network))
          const [g11, g12] = entriesOf(chainAt(network, 0), 'G', network.referenceOhm)
          const h = (i: number): readonly [number, number] => [network.re[i] as number, network.im[i] as number]
          const product = (a: readonly [number, number], b: readonly [number, number]) => [
            a[0] * b[0] - a[1] * b[1],
            a[0] * b[1] + a[1] * b[0],
          ]
          const [one, two] = [product(g11, h(0)), product(g12, h(2))]
          expect((one[0] as number) + (two[0] as number)).toBeCloseTo(1, 6)
          expect((one[1] as number) + (two[1] as number)).toBeCloseTo(0, 6)
        },
      ),
    )
  })

  it('written with its modes is read with them', () => {
    const network: Network = {
      parameter: 'S',
      portCount: 4,
      hz: Float64Array.of(1e6),
      referenceOhm: [50, 50, 50, 50],
      re: Float64Array.from({ length: 16 }, (_, i) => i / 20),
      im: new Float64Array(16),
      modes: [
        { is: 'differential', ports: [1, 2] },
        { is: 'differential', ports: [3, 4] },
        { is: 'common', ports: [1, 2] },
        { is: 'common', ports: [3, 4] },
      ],
    }
    const reading = atOnce(
      readTouchstone(writeTouchstone(network, { version: '1', format: 'RI', unit: 'Hz', comments: [] })),
    )
    if (!reading.ok) throw new Error(reading.message)
    expect(reading.network).toEqual(network)
    const modes = pairModes(reading.network)
    if (!modes.ok) throw new Error(modes.message)
    expect([...modes.differential.re]).toEqual([0, 1 / 20, 4 / 20, 5 / 20])
    expect([...modes.common.re]).toEqual([10 / 20, 11 / 20, 14 / 20, 15 / 20])
    expect([modes.differential.referenceOhm, modes.common.referenceOhm]).toEqual([
      [100, 100],
      [25, 25],
    ])
    expect(modes.conversionDb).toBeCloseTo(20 * Math.log10(13 / 20), 9)
  })
})

describe('a pair is refused in words', () => {
  const four = (extra: Partial<Network>): Network => ({
    parameter: 'S',
    portCount: 4,
    hz: Float64Array.of(1e6),
    referenceOhm: [50, 50, 50, 50],
    re: new Float64Array(16),
    im: new Float64Array(16),
    ...extra,
  })
  it.each([
    [four({ portCount: 2 }), 'four ports and this file has 2'],
    [four({ parameter: 'Z' }), 'export the four ports as S'],
    [four({ referenceOhm: [50, 75, 50, 50] }), 'different references'],
    [four({}), 'does not say which ports are a pair'],
    [
      four({
        modes: [
          { is: 'differential', ports: [1, 2] },
          { is: 'common', ports: [1, 2] },
          { is: 'single', port: 3 },
          { is: 'single', port: 4 },
        ],
      }),
      'modes of one pair only',
    ],
  ])('case %#', (network, sentence) => {
    const modes = pairModes(network)
    expect(modes.ok ? '' : modes.message).toContain(sentence)
  })
})
