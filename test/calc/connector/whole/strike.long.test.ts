/** Four contacts struck at one moment, on one plate and one bond, beside a live ngspice. */
import { describe, expect, it } from 'vitest'
import { strikeTogether } from '../../../../src/calc/connector/whole/strike/solve-together.ts'
import type { SharedPart, Struck, StruckLine } from '../../../../src/calc/connector/whole/strike/together.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import { NO_FILTER, type SurgeCircuit } from '../../../../src/calc/surge/circuit.ts'
import { waveformById } from '../../../../src/reference/waveforms.ts'
import { peaksOf } from '../../../adversary/support/netlist.ts'
import { struckNetlist } from '../../../support/struck-netlist.ts'

const TVS = { breakdownV: 34.4, dynamicOhm: 0.3323263, bidirectional: false, capacitanceF: 1e-9, leadH: 0 }

const line = (circuit: Partial<SurgeCircuit>, more: Partial<StruckLine> = {}): StruckLine => ({
  count: 1,
  ...more,
  circuit: {
    source: { form: 'voltage', peak: 300, ohm: 5 },
    lineOhm: 0,
    lineH: 0,
    filter: NO_FILTER,
    placement: 'connector',
    loadOhm: 10e3,
    loadF: 0,
    ...circuit,
  },
})

const filter = (topology: SurgeCircuit['filter']['topology'], capacitanceF: number, inductanceH = 0) => ({
  ...NO_FILTER,
  topology,
  capacitanceF,
  capacitance2F: topology === 'PI' ? capacitanceF : 0,
  inductanceH,
  inductance2H: topology === 'T' ? inductanceH : 0,
  dcrOhm: 0.05,
})

const FOUR: readonly StruckLine[] = [
  line({ suppressor: TVS, filter: filter('C', 100e-9), restV: 28 }),
  line({
    suppressor: { ...TVS, breakdownV: 12, bidirectional: true, leadH: 5e-9 },
    filter: filter('C', 1e-9),
    loadOhm: 100,
    loadF: 50e-12,
  }),
  line({ suppressor: TVS, filter: filter('LC', 100e-9, 10e-6), loadOhm: 20, lineH: 1e-6 }),
  line({ filter: filter('PI', 10e-9, 2e-6), loadOhm: 1e3, loadF: 20e-12 }),
]

const BOND = { bondOhm: 2.5e-3, bondH: 20e-9 }
const struckBy = (waveform: string, lines: readonly StruckLine[], more: Partial<Struck> = {}): Struck => ({
  spec: waveformById(waveform)?.shape as Struck['spec'],
  ...BOND,
  lines,
  groups: [],
  ...more,
})

/** A bounce of nanoseconds wants a finer step than the joules: it is over when `bounceSec` is. */
const FINE = 20
function errorsOf(
  struck: Struck,
  waveform: string,
  { stepSec, endSec, bounceSec }: { readonly stepSec: number; readonly endSec: number; readonly bounceSec?: number },
): Readonly<Record<string, number>> {
  const found = atOnce(strikeTogether(struck))
  const [answer, fine] = peaksOf([
    struckNetlist(struck, waveform, stepSec, endSec),
    ...(bounceSec === undefined ? [] : [struckNetlist(struck, waveform, stepSec / FINE, bounceSec)]),
  ])
  const theirs = answer?.peakV
  if (theirs === undefined) throw new Error(`ngspice: ${answer?.error}`)
  const off = (node: string, ours: number) => Math.abs(ours / (theirs[node] as number) - 1)
  const bounceV = (fine ?? answer)?.peakV?.['p'] ?? Number.NaN
  const errors: Record<string, number> = { bounce: Math.abs(found.bounceV / bounceV - 1) }
  struck.lines.forEach(({ circuit, group }, k) => {
    const own = found.lines[k]
    if (own === undefined) throw new Error(`no line ${k}`)
    errors[`connector ${k}`] = off(`c${k}`, own.connectorV)
    errors[`load ${k}`] = off(`o${k}`, own.loadV)
    if (circuit.suppressor === undefined || group !== undefined) return
    errors[`clamp ${k}`] = off(`vz${k}`, own.clampV)
    errors[`amps ${k}`] = off(`a${k}`, own.clampA)
    errors[`joules ${k}`] = off(`en${k}`, own.energyJ)
  })
  struck.groups.forEach((_, g) => {
    errors[`shared amps ${g}`] = off(`ag${g}`, found.groups[g]?.clampA ?? Number.NaN)
    errors[`shared joules ${g}`] = off(`eg${g}`, found.groups[g]?.energyJ ?? Number.NaN)
  })
  return errors
}

/** Worst of today: 0.0081 % (a ring, volts at the connector); of the bounce, whose spike lasts nanoseconds, as told in each case. */
const MOST = 1e-4
function within(errors: Readonly<Record<string, number>>, bounce: number): void {
  for (const [name, error] of Object.entries(errors))
    expect(error, `${name}: ${error}`).toBeLessThan(name === 'bounce' ? bounce : MOST)
  expect(Object.keys(errors).length).toBeGreaterThan(9)
}

describe('four contacts struck at one moment', () => {
  it('by waveform 4, as in ngspice', { timeout: 120_000 }, () => {
    const errors = errorsOf(struckBy('wf4', FOUR), 'wf4', { stepSec: 5e-9, endSec: 400e-6, bounceSec: 10e-6 })
    within(errors, 4e-5)
  })

  it('by waveform 5A with no bond inductance, as in ngspice', { timeout: 120_000 }, () => {
    const errors = errorsOf(struckBy('wf5a', FOUR, { bondH: 0, bondOhm: 0.05 }), 'wf5a', {
      stepSec: 10e-9,
      endSec: 800e-6,
    })
    within(errors, 1e-6)
  })

  it('by a ring of 1 MHz, as in ngspice', { timeout: 120_000 }, () => {
    const ring = { hz: 1e6, q: 18.13 }
    const errors = errorsOf(struckBy('wf3', FOUR, { ring }), 'wf3', { stepSec: 1e-9, endSec: 30e-6, bounceSec: 3e-6 })
    within(errors, 4e-5)
  })

  it('with one part for three of them through steering, as in ngspice', { timeout: 120_000 }, () => {
    const shared: SharedPart = { breakdownV: 40, dynamicOhm: 0.2, capacitanceF: 1e-9, isBridge: false }
    const lines = [
      line({ filter: filter('C', 100e-9), restV: 28 }, { group: 0 }),
      line({ filter: filter('C', 10e-9), restV: 20, loadOhm: 50 }, { group: 0 }),
      line({ filter: filter('LC', 47e-9, 4.7e-6), loadOhm: 100 }, { group: 0 }),
      line({ suppressor: TVS, filter: filter('C', 1e-9) }),
    ]
    const errors = errorsOf(struckBy('wf4', lines, { groups: [shared] }), 'wf4', {
      stepSec: 5e-9,
      endSec: 400e-6,
      bounceSec: 10e-6,
    })
    within(errors, 3e-4)
  })

  it('with a bridge, both signs of a ring, as in ngspice', { timeout: 120_000 }, () => {
    const shared: SharedPart = { breakdownV: 40, dynamicOhm: 0.2, capacitanceF: 1e-9, isBridge: true }
    const lines = [
      line({ filter: filter('C', 10e-9) }, { group: 0 }),
      line({ filter: filter('C', 4.7e-9), loadOhm: 50 }, { group: 0 }),
      line({ filter: filter('C', 1e-9), loadOhm: 100 }, { group: 0 }),
      line({ suppressor: { ...TVS, bidirectional: true }, filter: filter('C', 1e-9) }),
    ]
    const ring = { hz: 1e6, q: 18.13 }
    const errors = errorsOf(struckBy('wf3', lines, { groups: [shared], ring }), 'wf3', {
      stepSec: 1e-9,
      endSec: 30e-6,
      bounceSec: 3e-6,
    })
    within(errors, 1.5e-3)
  })
})
