import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { type FittedParts, fitFilter } from '../../../src/calc/touchstone/fit.ts'
import type { Network } from '../../../src/calc/touchstone/types.ts'
import { solveAll } from '../live-ngspice/spice.ts'

const REAL: readonly FittedParts[] = [
  { topology: 'C', capacitanceF: 10e-9, esrOhm: 0.05, eslH: 1.2e-9 },
  { topology: 'C', capacitanceF: 220e-12, esrOhm: 0.2, eslH: 0.6e-9 },
  { topology: 'L', inductanceH: 10e-6, dcrOhm: 0.3, inductorParallelF: 5e-12, inductorParallelOhm: 8e3 },
  {
    topology: 'LC',
    capacitanceF: 22e-9,
    esrOhm: 0.03,
    eslH: 1e-9,
    inductanceH: 2.2e-6,
    dcrOhm: 0.1,
    inductorParallelF: 3e-12,
    inductorParallelOhm: 5e3,
  },
  {
    topology: 'PI',
    capacitanceF: 4.7e-9,
    capacitance2F: 10e-9,
    esrOhm: 0.05,
    eslH: 0.8e-9,
    inductanceH: 1e-6,
    dcrOhm: 0.05,
    inductorParallelF: 2e-12,
    inductorParallelOhm: 3e3,
  },
  {
    topology: 'T',
    capacitanceF: 10e-9,
    esrOhm: 0.05,
    eslH: 0.8e-9,
    inductanceH: 1e-6,
    inductance2H: 4.7e-6,
    dcrOhm: 0.05,
    inductorParallelF: 2e-12,
    inductorParallelOhm: 3e3,
  },
]

const HERTZ = '.ac dec 20 1e4 1e9'

/** Nodes a at port 1, k at port 2, as ngspice solves them; `driven` has the source behind its 50 Ω. */
function deck(parts: FittedParts, driven: 'a' | 'k'): string {
  const c = (id: string, node: string, farads: number) => [
    `R${id} ${node} ${id}x ${parts.esrOhm}`,
    `L${id} ${id}x ${id}y ${parts.eslH}`,
    `C${id} ${id}y 0 ${farads}`,
  ]
  const l = (id: string, from: string, to: string, henries: number) => [
    `Rd${id} ${from} ${id}d ${parts.dcrOhm}`,
    `Ls${id} ${id}d ${to} ${henries}`,
    `Cp${id} ${id}d ${to} ${parts.inductorParallelF}`,
    `Rp${id} ${id}d ${to} ${parts.inductorParallelOhm}`,
  ]
  const { capacitanceF = 0, inductanceH = 0 } = parts
  const filter = {
    C: ['Vj a k DC 0', ...c('c', 'k', capacitanceF)],
    L: l('l', 'a', 'k', inductanceH),
    LC: [...l('l', 'a', 'k', inductanceH), ...c('c', 'k', capacitanceF)],
    CL: [...c('c', 'a', capacitanceF), ...l('l', 'a', 'k', inductanceH)],
    PI: [...c('c', 'a', capacitanceF), ...l('l', 'a', 'k', inductanceH), ...c('e', 'k', parts.capacitance2F ?? 0)],
    T: [...l('l', 'a', 'm', inductanceH), ...c('c', 'm', capacitanceF), ...l('n', 'm', 'k', parts.inductance2H ?? 0)],
  }[parts.topology]
  const other = driven === 'a' ? 'k' : 'a'
  return [
    '* parts of a filter',
    'Vin in 0 DC 0 AC 1',
    `Rs in ${driven} 50`,
    `Rl ${other} 0 50`,
    ...filter,
    '.save v(a) v(k)',
    HERTZ,
    '.end',
    '',
  ].join('\n')
}

/** S-parameters from the node voltages: S11 = 2·V1 − 1, S21 = 2·V2, for 1 V behind 50 Ω. */
function measured(all: readonly FittedParts[]): readonly Network[] {
  const solved = solveAll(all.flatMap((parts) => [deck(parts, 'a'), deck(parts, 'k')]))
  return all.map((_, i) => {
    const [forward, backward] = [solved[2 * i], solved[2 * i + 1]]
    const hz = Float64Array.from(forward?.hz ?? [])
    const re = new Float64Array(4 * hz.length)
    const im = new Float64Array(4 * hz.length)
    hz.forEach((_f, k) => {
      const entries = [forward?.volts['a'], backward?.volts['a'], forward?.volts['k'], backward?.volts['k']]
      entries.forEach((volts, place) => {
        const [x, y] = volts?.[k] ?? [0, 0]
        re[4 * k + place] = 2 * x - (place === 0 || place === 3 ? 1 : 0)
        im[4 * k + place] = 2 * y
      })
    })
    return { parameter: 'S', portCount: 2, hz, re, im, referenceOhm: [50, 50] }
  })
}

describe('parts that ngspice solved', () => {
  const networks = measured(REAL)

  it.each(REAL.map((parts, i) => [parts.topology, i] as const))(
    '%s, number %d, come back within 1 %',
    (topology, i) => {
      const parts = REAL[i] as FittedParts
      const [best] = atOnce(fitFilter(networks[i] as Network, [topology]))
      expect(best?.residualFrac).toBeLessThan(1e-4)
      for (const [name, value] of Object.entries(parts)) {
        if (name === 'topology') continue
        const found = Number(Object.entries(best?.parts ?? {}).find(([one]) => one === name)?.[1])
        expect(Math.abs(found / Number(value) - 1), name).toBeLessThan(0.01)
      }
    },
  )

  it('the topology of each is recognised', () => {
    const found = networks.map((network) => atOnce(fitFilter(network))[0]?.parts.topology)
    expect(found).toEqual(REAL.map(({ topology }) => topology))
  }, 60_000)
})
