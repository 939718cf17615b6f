/**
 * Random lines struck together on one plate, beside a live ngspice: no voltage, current or energy is off by more than 0.5 %.
 * Another seed: SEED=…; more of them: STRIKES=40.
 */
import { expect, it } from 'vitest'
import { strikeTogether } from '../../src/calc/connector/whole/strike/solve-together.ts'
import type { Struck, StruckLine } from '../../src/calc/connector/whole/strike/together.ts'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import { NO_FILTER, type SurgeCircuit } from '../../src/calc/surge/circuit.ts'
import { waveformById } from '../../src/reference/waveforms.ts'
import { random } from '../support/seeded.ts'
import { struckNetlist } from '../support/struck-netlist.ts'
import { peaksOf } from './support/netlist.ts'

const SEED = Number(process.env['SEED'] ?? 20_461)
const STRIKES = Number(process.env['STRIKES'] ?? 6)
const MOST = 5e-3
/** The bounce of a steep corner lasts less than a step of the simulator. */
const MOST_BOUNCE = 5e-2
const STEP_SEC = 4e-9
const END_SEC = 250e-6

const rand = random(SEED)
const decade = (low: number, high: number) => Number((low * (high / low) ** rand()).toPrecision(4))
const pick = <T>(of: readonly T[]): T => of[Math.floor(rand() * of.length)] as T

function anyLine(): StruckLine {
  const topology = pick(['none', 'C', 'C', 'LC', 'CL', 'PI', 'T'] as const)
  const hasCapacitor = topology !== 'none'
  const hasCoil = hasCapacitor && topology !== 'C'
  const capacitanceF = hasCapacitor ? decade(1e-9, 200e-9) : 0
  const inductanceH = hasCoil ? decade(1e-6, 20e-6) : 0
  const suppressor =
    rand() < 0.75
      ? {
          breakdownV: decade(10, 90),
          dynamicOhm: decade(0.1, 1),
          bidirectional: rand() < 0.5,
          capacitanceF: decade(100e-12, 3e-9),
          leadH: rand() < 0.3 ? decade(1e-9, 20e-9) : 0,
        }
      : undefined
  const circuit: SurgeCircuit = {
    source: { form: 'voltage', peak: decade(50, 800), ohm: pick([1, 5, 25]) },
    lineOhm: 0,
    lineH: rand() < 0.4 ? decade(0.2e-6, 5e-6) : 0,
    filter: {
      ...NO_FILTER,
      topology,
      capacitanceF,
      capacitance2F: topology === 'PI' ? capacitanceF : 0,
      inductanceH,
      inductance2H: topology === 'T' ? inductanceH : 0,
      dcrOhm: hasCoil ? 0.05 : 0,
    },
    ...(suppressor === undefined ? {} : { suppressor }),
    placement: hasCoil && rand() < 0.3 ? 'behind' : 'connector',
    loadOhm: decade(20, 10e3),
    loadF: rand() < 0.4 ? decade(10e-12, 1e-9) : 0,
  }
  return { circuit, count: 1 }
}

it(`${STRIKES} random strikes are what ngspice makes of them, seed ${SEED}`, { timeout: 600_000 }, () => {
  let compared = 0
  for (let i = 0; i < STRIKES; i++) {
    const waveform = pick(['wf4', 'wf5a'])
    const struck: Struck = {
      spec: waveformById(waveform)?.shape as Struck['spec'],
      bondOhm: decade(0.5e-3, 50e-3),
      bondH: decade(0.2e-9, 50e-9),
      lines: Array.from({ length: 2 + Math.floor(3 * rand()) }, anyLine),
      groups: [],
    }
    const found = atOnce(strikeTogether(struck))
    const [answer] = peaksOf([struckNetlist(struck, waveform, STEP_SEC, END_SEC)])
    const theirs = answer?.peakV
    if (theirs === undefined) throw new Error(`ngspice: ${answer?.error}`)
    const check = (node: string, ours: number, most = MOST) => {
      const wanted = theirs[node] as number
      // what stays blocked leaks microamperes: nothing to compare
      if (Math.abs(wanted) < 1e-3) return
      compared++
      expect(
        Math.abs(ours / wanted - 1),
        `${node}: ${ours} here, ${wanted} there, ${JSON.stringify(struck)}`,
      ).toBeLessThan(most)
    }
    check('p', found.bounceV, MOST_BOUNCE)
    struck.lines.forEach(({ circuit }, k) => {
      const own = found.lines[k]
      if (own === undefined) throw new Error(`no line ${k}`)
      check(`c${k}`, own.connectorV)
      check(`o${k}`, own.loadV)
      if (circuit.suppressor === undefined) return
      check(`vz${k}`, own.clampV)
      check(`a${k}`, own.clampA)
    })
  }
  expect(compared).toBeGreaterThan(6 * STRIKES)
})
