/** The dielectric of the capacitor, asked in the same words by every check that promises an attenuation over its spread. */
import { DIELECTRICS } from '../../reference/constructions.ts'
import { CASE_NAMES, CASE_SIZES, MOST_VOLTAGE_FRAC } from '../../reference/dielectric-bias.ts'
import type { Input } from '../types.ts'
import { spreadInputs } from './spread-inputs.ts'

const [tolerance, temperature, bias, ageing, ageingPerDecade] = spreadInputs
const { group } = tolerance
const { defaultText: _usual, ...biasField } = bias

export const dielectricSpreadInputs = [
  tolerance,
  {
    key: 'dielectric',
    fact: 'dielectric',
    label: 'Dielectric',
    help: 'Gives temperature, voltage and ageing from the table of dielectrics; the three fields below do not count then. Empty: they do.',
    type: { is: 'choice', options: DIELECTRICS.map(({ id, name }) => ({ value: id, label: name })) },
    whenEmpty: { do: 'omit' },
    group,
  },
  {
    key: 'voltageFrac',
    fact: 'voltageFrac',
    label: 'Voltage of its rating',
    help: 'Highest working voltage over the rated one: 28 V on a 50 V part is 56 %. Only with a dielectric. Empty: all of it.',
    type: { is: 'number', quantity: 'fraction', min: 0, max: MOST_VOLTAGE_FRAC },
    whenEmpty: { do: 'omit' },
    group,
  },
  {
    key: 'caseSize',
    fact: 'caseSize',
    label: 'Build',
    help: 'A small part of much capacitance loses most at voltage. Only with a dielectric. Empty: the smallest.',
    type: { is: 'choice', options: CASE_SIZES.map((value) => ({ value, label: CASE_NAMES[value] })) },
    whenEmpty: { do: 'omit' },
    group,
  },
  temperature,
  {
    ...biasField,
    help: 'Capacitance lost at working voltage. 12 % is for large parts only: filter grade class 2 loses 10 to 40 % at rated voltage, a small chip 50 to 80 %. C0G none.',
    whenEmpty: {
      do: 'assume',
      name: 'what the capacitor loses at its voltage',
      how: 'The curve of the part gives it; a dielectric named above gives it from its table.',
      text: '12 %',
      why: 'a large part, or a filter contact at a third of its rating: with 15 % for temperature this is the −25 % of a BX part',
      favourable: true,
      contrary: '50 %',
      contraryOfKind: 'biasFrac',
    },
  },
  ageing,
  ageingPerDecade,
] as const satisfies readonly Input[]
