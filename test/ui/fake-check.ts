/** A small check for tests of the screens: one of each kind of input, and an answer with every part. Never shipped. */
import type { Basis, Check, Figures, Given, Input, Progress, Success } from '../../src/calc/types.ts'

const inputs = [
  {
    key: 'topology',
    fact: 'topology',
    label: 'Topology',
    help: 'Source to load.',
    type: {
      is: 'choice',
      options: [
        { value: 'C', label: 'C' },
        { value: 'PI', label: 'Pi' },
      ],
    },
    defaultText: 'C',
    whenEmpty: { do: 'ask', how: 'Look at the part.' },
  },
  {
    key: 'capacitanceF',
    fact: 'markedF',
    label: 'Capacitance',
    help: 'As marked.',
    type: { is: 'number', quantity: 'capacitance', min: 1e-15, max: 1 },
    whenEmpty: { do: 'ask', how: 'Read it on the part.' },
  },
  {
    key: 'sourceOhm',
    fact: 'noiseSourceOhm',
    label: 'Noise source',
    help: 'Where it comes from.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e12, many: true },
    whenEmpty: { do: 'ask', how: 'Rarely known.', offer: { text: '1;10;50', why: 'a spread' } },
  },
  {
    key: 'toleranceFrac',
    fact: 'toleranceFrac',
    label: 'Tolerance',
    help: 'Of the part.',
    type: { is: 'tolerance' },
    whenEmpty: { do: 'assume', text: '20 %', why: 'usual', favourable: true },
    group: 'Spread',
  },
  {
    key: 'navyRule',
    fact: 'navyRule',
    label: 'Navy rule',
    help: 'When the ship says so.',
    type: { is: 'flag' },
    whenEmpty: { do: 'omit' },
  },
] as const satisfies readonly Input[]

export const basis: Basis = {
  steps: [{ formula: 'f = 1 / (2·π·R·C)', withNumbers: '1 / (2·π·50·4.7e-9)', si: 677_255, quantity: 'frequency' }],
  assumptions: ['one capacitor, no lead'],
  sources: [{ id: 'derived', clause: 'first principles', standing: 'derived' }],
}

function figures({ capacitanceF }: Given<typeof inputs>): Figures {
  const none = { bounds: [], rungs: [] }
  if (capacitanceF === undefined) return { ...none, values: {} }
  const values = { cornerHz: 1 / (2 * Math.PI * 50 * capacitanceF) }
  return { ...none, verdict: capacitanceF > 1e-6 ? 'fails' : 'ok', values }
}

function explain(_given: Given<typeof inputs>, { verdict, values }: Figures): Success {
  const { cornerHz } = values
  const none = { bounds: [], rungs: [], pictures: [] }
  if (cornerHz === undefined || verdict === undefined) {
    return {
      ...none,
      ok: true,
      headline: 'Enter the capacitance.',
      findings: [],
      outputs: { cornerHz: { cell: { is: 'none', why: 'needs the capacitance' }, basis } },
      cautions: [],
    }
  }
  return {
    ...none,
    ok: true,
    verdict,
    headline: 'Inside the window.',
    findings: [{ verdict: 'marginal', sentence: 'Dips at 3.3 MHz.' }],
    outputs: {
      cornerHz: { cell: { is: 'si', si: cornerHz }, basis },
      peakHz: { cell: { is: 'none', why: 'there is no gain' }, basis },
    },
    cautions: ['hipot'],
  }
}

export const fakeCheck: Check<typeof inputs, Figures> = {
  id: 'filter',
  title: 'Fake',
  question: 'Does it fit?',
  inputs,
  outputs: [
    { key: 'cornerHz', label: 'Corner', quantity: 'frequency', digits: 4, lead: true },
    { key: 'peakHz', label: 'Worst at', quantity: 'frequency', digits: 4 },
    { key: 'neverSet', label: 'Not for this kind', quantity: 'frequency', digits: 4 },
  ],
  figures,
  explain,
}

/** The same, but slow: it needs `turns` turns of the generator, and tells after each. */
export function slowCheck(turns: number, onTurn: () => void): Check<typeof inputs, Figures> {
  function* run(given: Given<typeof inputs>): Generator<Progress, Figures> {
    for (let turn = 0; turn < turns; turn += 1) {
      onTurn()
      yield { doneFrac: turn / turns }
    }
    return figures(given)
  }
  return { ...fakeCheck, figures: run }
}
