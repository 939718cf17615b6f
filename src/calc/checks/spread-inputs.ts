/** How far a capacitor in service is from its mark: asked in the same words by every check that judges over a box of tolerances. */
import type { Input } from '../types.ts'

const SPREAD = 'Spread of the part'
const share = { is: 'number', quantity: 'fraction', min: 0, max: 0.95 } as const

export const spreadInputs = [
  {
    key: 'toleranceFrac',
    fact: 'toleranceFrac',
    label: 'Tolerance',
    help: '20 %, or +100/-0 % for a guaranteed minimum value.',
    type: { is: 'tolerance' },
    defaultText: '20 %',
    whenEmpty: { do: 'assume', text: '20 %', why: 'usual for ceramic filter parts', favourable: false },
    group: SPREAD,
  },
  {
    key: 'temperatureFrac',
    fact: 'temperatureFrac',
    label: 'Temperature',
    help: 'Capacitance lost or gained over temperature. Class 2 (X7R) 15 %, C0G 0.3 %.',
    type: share,
    defaultText: '15 %',
    whenEmpty: { do: 'assume', text: '15 %', why: 'class 2 ceramic', favourable: false },
    group: SPREAD,
  },
  {
    key: 'biasFrac',
    fact: 'biasFrac',
    label: 'Voltage',
    help: 'Capacitance lost at working voltage. Filter grade class 2: 10 to 40 % at rated voltage. C0G none.',
    type: share,
    defaultText: '12 %',
    whenEmpty: {
      do: 'assume',
      text: '12 %',
      why: 'with 15 % for temperature this is the −25 % of a BX part',
      favourable: false,
    },
    group: SPREAD,
  },
  {
    key: 'ageingDecades',
    fact: 'ageingDecades',
    label: 'Ageing decades',
    help: 'Decades of hours since manufacture: 1,000 h to 100,000 h is two. C0G does not age: write 0 % below.',
    type: { is: 'number', quantity: 'number', min: 0, max: 8 },
    defaultText: '2',
    whenEmpty: { do: 'assume', text: '2', why: '1,000 h to 100,000 h', favourable: false },
    group: SPREAD,
  },
  {
    key: 'ageingFracPerDecade',
    fact: 'ageingFracPerDecade',
    label: 'Ageing per decade',
    help: 'Class 2: 1 to 4 %. C0G: 0.',
    type: share,
    defaultText: '2.5 %',
    whenEmpty: { do: 'assume', text: '2.5 %', why: 'class 2 ceramic', favourable: false },
    group: SPREAD,
  },
] as const satisfies readonly Input[]
