/** Rules about the line itself: pairs, power lines, what fits a contact, the bond, and lines that are left alone. */
import { formatQuantity } from '../../calc/quantity/format.ts'
import { DERIVED, numberOf, offeredF, PRACTICE, type Rule } from './context.ts'

const farad = (si: number): string => formatQuantity(si, 'capacitance')

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
    const cross = legF === undefined ? '' : ` With ${farad(legF)} a leg that is ${farad(10 * legF)} or more across.`
    return {
      title: 'Both legs alike',
      text: `Matched capacitors from both legs to the shell, from one lot or one array. Parts of ±20 % turn common noise into signal at −14 dB in the worst place, ±5 % at −26 dB. Where the signal allows it, a capacitor from line to line at least ten times each leg’s.${cross} One dead leg is worse than none. The signal sees half of a leg’s capacitance, common noise twice.`,
      basis: [{ id: 'S46', standing: 'read' }, { id: 'S48', standing: 'read' }, DERIVED],
      missing: mode === 'unknown' ? ['common or differential'] : [],
    }
  },
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
      ? 'Capacitance to chassis carries supply current: 10 nF at 115 V 400 Hz 2.9 mA, at 118 V 800 Hz 5.9 mA, on every phase. MIL-STD-461 4.2.2, where the contract calls it up (Navy), allows 0.02 µF a line at 400 Hz. Prefer line-to-line capacitors and a choke. Open the power check.'
      : 'Inrush, stored charge and the breaker decide here. 28 V through 1 µH into 10 µF can reach 89 A. It rings to nearly twice the supply. MIL-STD-461 4.2.2, where the contract calls it up (Navy), limits capacitance to chassis by the load. Open the power check.'
    return {
      title: isAc ? 'AC power: current to chassis' : 'DC power: inrush and stored charge',
      text: mode === 'differential' ? `${text} ${DIFFERENTIAL_POWER}` : text,
      basis: [{ id: 'S30', standing: 'read' }, { id: 'S40', standing: 'read' }, DERIVED],
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
        : `Entered: at most ${farad(mostF)} in this contact. The window ends there.`
    return {
      title: 'Does a part that size fit the contact?',
      text,
      basis: [PRACTICE],
      missing: mostF === undefined ? ['largest capacitance that fits the contact'] : [],
    }
  },
}

const bond: Rule = {
  id: 'bond',
  advisesPart: false,
  say: ({ facts }) => {
    const bondH = numberOf(facts, 'bondH', 'inductance')
    const bondOhm = numberOf(facts, 'bondOhm', 'resistance')
    return {
      title: 'The bond it stands on',
      text: 'Every shunt part of the connector works through one bond. Between 50 Ω ends at 100 MHz, 1 nH of bond leaves at most 32 dB, 5 nH 18 dB, 20 nH 7 dB. Measure it before a part, and after refitting. The bond carries the current of every contact, so a figure for one line alone is on the good side.',
      basis: [DERIVED, { id: 'S41', standing: 'read' }],
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
