/** Rules about the line itself: pairs, power lines, what fits a contact, the bond, and lines that are left alone. */
import { inrushPeak } from '../../calc/power/inrush.ts'
import { navyLimit } from '../../calc/power/navy-rule.ts'
import { lineCurrentRmsA } from '../../calc/power/supply.ts'
import { AC_BUS, BENCH_ENDS } from '../../reference/field-figures.ts'
import type { Citation } from '../../reference/line-kinds.ts'
import { bondFloorDb, conversionDb, factOf } from '../figures.ts'
import { amperes, decibels, farads, henries, hertz, ohms, percent, volts } from '../print.ts'
import { DERIVED, numberOf, offeredF, PRACTICE, type Rule } from './context.ts'

/** Worst conversion of two parts of this tolerance. */
const turned = (tolerance: number): string => decibels(conversionDb(1 - tolerance, 1 + tolerance), 2)

const pair: Rule = {
  id: 'pair',
  advisesPart: false,
  say: ({ facts, kind, mode }) => {
    if (kind === undefined)
      return {
        title: 'If it is a pair',
        text: 'Equal capacitors on both legs, and a line-to-line capacitor at least ten times each of them.',
        basis: [{ id: 'S48', standing: 'read' }],
        missing: ['kind of line'],
      }
    if (!kind.isPair) return undefined
    const legF = offeredF(facts)
    const cross = legF === undefined ? '' : ` With ${farads(legF)} a leg that is ${farads(10 * legF)} or more across.`
    return {
      title: 'Both legs alike',
      text: `Matched capacitors from both legs to the shell, from one lot or one array. Parts of ±${percent(0.2)} turn common noise into signal at ${turned(0.2)} in the worst place, ±${percent(0.05)} at ${turned(0.05)}. Where the signal allows it, a capacitor from line to line at least ten times each leg’s.${cross} One dead leg is worse than none. The signal sees half of a leg’s capacitance, common noise twice.`,
      basis: [{ id: 'S46', standing: 'read' }, { id: 'S48', standing: 'read' }, DERIVED],
      missing: mode === 'unknown' ? ['common or differential'] : [],
    }
  },
}

/** What a small capacitor to chassis carries on the usual bus and on the worst one. */
function chassisWords(): string {
  const [usual, worst] = [factOf('power-115-vac-400', 'supply'), factOf('power-115-vac-variable', 'supply')]
  const part = 10e-9
  const at = (workingRmsV: number, supplyHz: number): string =>
    `at ${volts(workingRmsV)} ${hertz(supplyHz)} ${amperes(lineCurrentRmsA({ supplyHz, workingRmsV, farads: part }), 2)}`
  return `Capacitance to chassis carries supply current: ${farads(part)} ${at(usual.nominalRmsV, usual.nominalHz)}, ${at(worst.worstRmsV, worst.worstHz)}, on every phase. MIL-STD-461 4.2.2, where the contract calls it up (Navy), allows ${navyAt(AC_BUS.hz)} a line at ${hertz(AC_BUS.hz)}.`
}

function navyAt(supplyHz: number): string {
  const { limitF } = navyLimit({ supplyHz })
  if (limitF === undefined) throw new RangeError(`no limit printed at ${supplyHz} Hz`)
  return farads(limitF)
}

/** A capacitor stepped onto the bus through a metre of wire. */
function inrushWords(): string {
  const step = { stepV: factOf('power-28-vdc', 'supply').nominalRmsV, farads: 10e-6, henries: 1e-6, ohm: 0 }
  return `${volts(step.stepV)} through ${henries(step.henries)} into ${farads(step.farads)} can reach ${amperes(inrushPeak(step).peakA, 2)}.`
}

/** Where the figures of a supply are from. */
const SUPPLY_BASIS: Readonly<Record<'ac' | 'dc', readonly Citation[]>> = {
  ac: [
    AC_BUS.basis,
    ...(['power-115-vac-400', 'power-115-vac-variable'] as const).map((id) => factOf(id, 'supply').source),
  ],
  dc: [factOf('power-28-vdc', 'supply').source],
}

const DIFFERENTIAL_POWER =
  'The noise is differential: the capacitor goes from line to line, the inductor towards the lower impedance, at the power entry.'

const powerLine: Rule = {
  id: 'power-line',
  advisesPart: false,
  say: ({ facts, kind, mode }) => {
    if (kind === undefined || (kind.family !== 'power-dc' && kind.family !== 'power-ac')) return undefined
    const loadW = numberOf(facts, 'loadW', 'power')
    const isAc = kind.family === 'power-ac'
    const text = isAc
      ? `${chassisWords()} Prefer line-to-line capacitors and a choke. Open the power check.`
      : `Inrush, stored charge and the breaker decide here. ${inrushWords()} It rings to nearly twice the supply. MIL-STD-461 4.2.2, where the contract calls it up (Navy), limits capacitance to chassis by the load. Open the power check.`
    return {
      title: isAc ? 'AC power: current to chassis' : 'DC power: inrush and stored charge',
      text: mode === 'differential' ? `${text} ${DIFFERENTIAL_POWER}` : text,
      basis: [
        { id: 'S30', standing: 'read' },
        { id: 'S40', standing: 'read' },
        ...SUPPLY_BASIS[isAc ? 'ac' : 'dc'],
        DERIVED,
      ],
      missing: loadW === undefined && !isAc ? ['connected load'] : [],
    }
  },
}

const fitsContact: Rule = {
  id: 'fits-contact',
  advisesPart: false,
  say: ({ facts }) => {
    const mostF = numberOf(facts, 'maxBuildableF', 'capacitance')
    const text =
      mostF === undefined
        ? 'Ask the maker what fits this contact size at this voltage, and enter it: the window then ends there. Without it a proposal may be larger than a contact can hold.'
        : `Entered: at most ${farads(mostF)} in this contact. The window ends there.`
    return {
      title: 'Does a part that size fit the contact?',
      text,
      basis: [PRACTICE],
      missing: mostF === undefined ? ['largest capacitance that fits the contact'] : [],
    }
  },
}

/** What the inductance of a bond leaves of the best capacitor on the bench. */
function bondWords(): string {
  const [hz, ohm] = [100e6, BENCH_ENDS.fixtureOhm]
  const leaves = (bondH: number) => decibels(bondFloorDb({ sourceOhm: ohm, loadOhm: ohm, bondOhm: 0, bondH, hz }), 2)
  const [least, ...more] = [1e-9, 5e-9, 20e-9] as const
  return `Between ${ohms(ohm)} ends at ${hertz(hz)}, ${henries(least)} of bond leaves at most ${leaves(least)}, ${more.map((bondH) => `${henries(bondH)} ${leaves(bondH)}`).join(', ')}.`
}

const bond: Rule = {
  id: 'bond',
  advisesPart: false,
  say: ({ facts }) => {
    const bondH = numberOf(facts, 'bondH', 'inductance')
    const bondOhm = numberOf(facts, 'bondOhm', 'resistance')
    return {
      title: 'The bond it stands on',
      text: `Every shunt part of the connector works through one bond. ${bondWords()} Measure it before a part, and after refitting. The bond carries the current of every contact, so a figure for one line alone is on the good side.`,
      basis: [DERIVED, { id: 'S41', standing: 'read' }, BENCH_ENDS.fixtureBasis],
      missing: [
        ...(bondOhm === undefined ? ['bond resistance'] : []),
        ...(bondH === undefined ? ['bond inductance'] : []),
      ],
    }
  },
}

const barredKind: Rule = {
  id: 'barred-kind',
  advisesPart: false,
  say: ({ kind }) =>
    kind?.barredWhy === undefined
      ? undefined
      : { title: kind.name, text: kind.barredWhy, basis: kind.sources, missing: [] },
}

/** Rules about the line. */
export const LINE_RULE_CODE: readonly Rule[] = [pair, powerLine, fitsContact, bond, barredKind]
