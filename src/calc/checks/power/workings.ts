/** How each figure of the power check came about. */
import type { InrushPeak } from '../../power/inrush.ts'
import { acrossLinesV, crestV, isThreePhase, type PowerLine, TOUCH_V } from '../../power/supply.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Basis, Cell, Figures, Source, Step } from '../../types.ts'

export type PowerOutputs = Readonly<Record<string, { readonly cell: Cell; readonly basis: Basis }>>
type Values = Figures['values']

const DERIVED: Source = { id: 'derived', standing: 'derived' }
const show = (value: number, quantity: Quantity, digits = 4): string => formatQuantity(value, quantity, digits)

/** A basis of one or more steps; derived unless a source is named. */
export function basisOf(steps: readonly Step[], assumptions: readonly string[] = [], source: Source = DERIVED): Basis {
  return { steps, assumptions, sources: [source] }
}

/** An output that does not exist, and why. */
export const lacking = (why: string) => ({ cell: { is: 'none' as const, why }, basis: basisOf([]) })

type Working = { readonly formula: string; readonly withNumbers: string; readonly quantity: Quantity }

/** One output where it has a value, with its working. */
function said(
  values: Values,
  key: string,
  working: Working,
  assumptions: readonly string[] = [],
  source?: Source,
): PowerOutputs {
  const si = values[key]
  return si === undefined
    ? {}
    : { [key]: { cell: { is: 'si', si }, basis: basisOf([{ ...working, si }], assumptions, source) } }
}

/** Every output of a capacitor on a power line. */
export function powerOutputs(line: PowerLine, values: Values, inrush: InrushPeak | undefined): PowerOutputs {
  return {
    ...currentOutputs(line, values),
    ...energyOutputs(line, values),
    ...inrushOutputs(line, values, inrush),
    ...withstandOutput(line, values),
    ...crossOutputs(line, values),
  }
}

/** Current of each line, of all of them, the net one, and (AC only) reactive power. */
function currentOutputs(line: PowerLine, values: Values): PowerOutputs {
  const { workingRmsV, supplyHz, capacitanceF: farads, lineCount } = line
  const per = show(values['currentRmsA'] ?? 0, 'current')
  const inThrees = isThreePhase(lineCount)
  return {
    ...said(values, 'currentRmsA', {
      formula: 'I = 2π·f·C·V',
      withNumbers: `2π · ${show(supplyHz, 'frequency')} · ${show(farads, 'capacitance')} · ${show(workingRmsV, 'voltage')}`,
      quantity: 'current',
    }),
    ...said(values, 'totalCurrentRmsA', {
      formula: 'I_total = n·I',
      withNumbers: `${lineCount} · ${per}`,
      quantity: 'current',
    }),
    ...said(
      values,
      'residualCurrentRmsA',
      {
        formula: inThrees ? 'balanced phases cancel at the fundamental' : 'I_residual = n·I',
        withNumbers: inThrees ? `${lineCount} lines, 120° apart` : `${lineCount} · ${per}`,
        quantity: 'current',
      },
      [inThrees ? 'the lines are balanced three-phase sets' : 'the lines do not cancel (conservative)'],
    ),
    ...said(values, 'phaseLostCurrentRmsA', {
      formula: 'I_lost = n·I/3',
      withNumbers: `${lineCount} · ${per} / 3`,
      quantity: 'current',
    }),
    ...said(values, 'reactiveVa', {
      formula: 'Q = V·I',
      withNumbers: `${show(workingRmsV, 'voltage')} · ${per}`,
      quantity: 'number',
    }),
  }
}

/** Stored energy at the crest and the time to bleed it. */
function energyOutputs(line: PowerLine, values: Values): PowerOutputs {
  const { capacitanceF: farads, bleedOhm, supplyHz } = line
  const fromV = crestV(line)
  const stored = said(
    values,
    'storedJ',
    {
      formula: supplyHz === 0 ? 'E = ½·C·V²' : 'E = ½·C·(√2·V)²',
      withNumbers: `½ · ${show(farads, 'capacitance')} · (${show(fromV, 'voltage')})²`,
      quantity: 'energy',
    },
    ['one capacitor, switched off at the crest'],
  )
  if (bleedOhm === undefined) {
    const none = lacking('no bleed resistor was entered: the charge stays')
    return { ...stored, bleedSec: none, bleedTo34Sec: none }
  }
  const rc = `${show(bleedOhm, 'resistance')} · ${show(farads, 'capacitance')}`
  return {
    ...stored,
    ...said(values, 'bleedSec', { formula: 't = R·C·ln 100', withNumbers: `${rc} · 4.605`, quantity: 'time' }, [
      'to 1 % of the crest, one capacitor on the resistor',
    ]),
    ...said(
      values,
      'bleedTo34Sec',
      {
        formula: 't = R·C·ln(V/34 V)',
        withNumbers:
          fromV > TOUCH_V
            ? `${rc} · ln(${show(fromV, 'voltage')}/34 V)`
            : `${show(fromV, 'voltage')} is already below 34 V`,
        quantity: 'time',
      },
      ['one capacitor on the resistor'],
    ),
  }
}

/** The capacitor from line to line: nothing of it reaches the chassis. */
function crossOutputs(line: PowerLine, values: Values): PowerOutputs {
  const { supplyHz, crossF } = line
  const volts = acrossLinesV(line)
  const isBetweenPhases = volts !== line.workingRmsV
  const crest = crestV({ workingRmsV: volts, supplyHz })
  const across = isBetweenPhases ? ['between two phases: √3 times the volts to chassis'] : ['between line and return']
  return {
    ...said(
      values,
      'crossCurrentRmsA',
      {
        formula: 'I = 2π·f·Cx·V',
        withNumbers: `2π · ${show(supplyHz, 'frequency')} · ${show(crossF, 'capacitance')} · ${show(volts, 'voltage')}`,
        quantity: 'current',
      },
      across,
    ),
    ...said(
      values,
      'crossStoredJ',
      {
        formula: 'E = ½·Cx·V²',
        withNumbers: `½ · ${show(crossF, 'capacitance')} · (${show(crest, 'voltage')})²`,
        quantity: 'energy',
      },
      across,
    ),
    ...said(
      values,
      'crossWithstandV',
      {
        formula: supplyHz === 0 ? 'V_test = 2.5 · V DC' : 'V_test = 2.8 · V rms',
        withNumbers: `${supplyHz === 0 ? '2.5' : '2.8'} · ${show(volts, 'voltage')}`,
        quantity: 'voltage',
      },
      across,
      { id: 'S28', clause: '4.6.3', standing: 'read' },
    ),
  }
}

const DAMPING_WORDS: Readonly<Record<InrushPeak['damping'], { readonly formula: string; readonly words: string }>> = {
  none: { formula: 'I = V·√(C/L)', words: 'no resistance counted: the lossless bound' },
  light: { formula: 'I = V·√(C/L)·e^(−a·t), t = atan(ωd/a)/ωd', words: 'lightly damped: the capacitor overshoots' },
  critical: { formula: 'I = 2V/(e·R)', words: 'critically damped: no overshoot' },
  heavy: { formula: 'I = V/(L·(s1 − s2))·(e^(s1·t) − e^(s2·t))', words: 'heavily damped: no overshoot' },
  'no-inductance': { formula: 'I = V/R', words: 'no inductance counted: the resistance alone limits it' },
}

/** Inrush current and the peak on the capacitor. */
function inrushOutputs(line: PowerLine, values: Values, inrush: InrushPeak | undefined): PowerOutputs {
  if (inrush === undefined) {
    const none = lacking('enter the resistance or the inductance of the wiring')
    return { inrushPeakA: none, inrushPeakV: none }
  }
  // Wiring of which only one of the two was entered has none of the other.
  const { wiringOhm = 0, wiringH = 0, capacitanceF } = line
  const { formula, words } = DAMPING_WORDS[inrush.damping]
  const withNumbers = `V = ${show(crestV(line), 'voltage')}, C = ${show(capacitanceF, 'capacitance')}, R = ${show(wiringOhm, 'resistance')}, L = ${show(wiringH, 'inductance')}`
  const assumptions = [
    words,
    'switched on at the crest into an empty capacitor',
    'the source behind the wiring is stiff',
  ]
  return {
    ...said(values, 'inrushPeakA', { formula, withNumbers, quantity: 'current' }, assumptions),
    ...said(
      values,
      'inrushPeakV',
      { formula: 'V_peak = V·(1 + e^(−π·a/ωd))', withNumbers, quantity: 'voltage' },
      assumptions,
    ),
  }
}

/** Withstand test of a part rated for this working voltage. */
function withstandOutput({ supplyHz, workingRmsV }: PowerLine, values: Values): PowerOutputs {
  const isDc = supplyHz === 0
  return said(
    values,
    'withstandV',
    {
      formula: isDc ? 'V_test = 2.5 · V DC' : 'V_test = 2.8 · V rms',
      withNumbers: `${isDc ? '2.5' : '2.8'} · ${show(workingRmsV, 'voltage')}`,
      quantity: 'voltage',
    },
    ['a part rated for just this voltage; held 5 s to 1 min, at most 50 mA while charging'],
    { id: 'S28', clause: '4.6.3', standing: 'read' },
  )
}
