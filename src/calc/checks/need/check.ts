/** How much attenuation is needed: measured level against limit and margin. */
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Check, Given, Input, Result } from '../../types.ts'
import { type Told, told } from '../told.ts'

const LEVEL_DB = { is: 'number', quantity: 'level', min: -300, max: 400 } as const

const inputs = [
  {
    key: 'measuredDb',
    fact: 'measuredDb',
    label: 'Measured level',
    help: 'Worst reading without a filter. Susceptibility: the level injected. Same quantity, reference and bandwidth as the limit.',
    type: LEVEL_DB,
    whenEmpty: {
      do: 'ask',
      how: 'Read it in the receiver or analyser bandwidth the limit is written for. A current-probe reading in dBµA becomes dBµV with + 20·log10(impedance in Ω).',
    },
  },
  {
    key: 'limitDb',
    fact: 'limitDb',
    label: 'Allowed level',
    help: 'The limit line at that frequency. Susceptibility: the level at which the equipment is upset.',
    type: LEVEL_DB,
    whenEmpty: {
      do: 'ask',
      how: 'Take it from the test plan or specification in force, at the same frequency and detector.',
    },
  },
  {
    key: 'marginDb',
    fact: 'marginDb',
    label: 'Margin',
    help: 'How far below the limit you want to be.',
    type: { is: 'number', quantity: 'decibel', min: 0, max: 100 },
    defaultText: '6',
    whenEmpty: { do: 'assume', text: '6', why: 'a factor of two in voltage, common practice', favourable: false },
  },
] as const satisfies readonly Input[]

/**
 * Needed attenuation = max(0, measured − limit + margin), in dB. All three in the same quantity and bandwidth.
 * Source: definition of insertion loss in dB; the margin is common practice.
 */
export function neededAttenuationDb(levels: { measuredDb: number; limitDb: number; marginDb: number }): number {
  return Math.max(0, levels.measuredDb - levels.limitDb + levels.marginDb)
}

function compute(given: Given<typeof inputs>): Result {
  const { measuredDb, limitDb, marginDb } = given
  const missing = [
    measuredDb === undefined && 'the measured level',
    limitDb === undefined && 'the allowed level',
  ].filter(Boolean)
  if (measuredDb === undefined || limitDb === undefined || marginDb === undefined) {
    const why = `needs ${missing.join(' and ')}`
    return {
      ok: true,
      headline: `Enter ${missing.join(' and ')}.`,
      findings: [],
      outputs: { neededDb: { cell: { is: 'none', why }, basis: basisOf([]) } },
      bounds: [],
      rungs: [],
      pictures: [],
      cautions: [],
    }
  }
  const neededDb = neededAttenuationDb({ measuredDb, limitDb, marginDb })
  const db = (x: number) => formatQuantity(x, 'decibel', 4)
  const step = {
    formula: 'needed = max(0, measured − limit + margin)',
    withNumbers: `max(0, ${db(measuredDb)} − ${db(limitDb)} + ${db(marginDb)})`,
    si: neededDb,
    quantity: 'decibel' as const,
  }
  return {
    ok: true,
    headline:
      neededDb > 0
        ? `${db(Math.abs(measuredDb - limitDb))} ${measuredDb >= limitDb ? 'over' : 'under'} the limit; with ${db(marginDb)} margin ${db(neededDb)} are needed.`
        : `Already ${db(limitDb - measuredDb)} under the limit: no filter is needed for this reading.`,
    findings:
      neededDb > 100
        ? [
            {
              verdict: 'marginal',
              sentence:
                'More than 100 dB is beyond what one connector holds in practice: look for the source or the path first.',
            },
          ]
        : [],
    outputs: { neededDb: { cell: { is: 'si', si: neededDb }, basis: basisOf([step]) } },
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: [],
  }
}

function basisOf(steps: Basis['steps']): Basis {
  return {
    steps,
    assumptions: ['measured and allowed level are the same quantity in the same bandwidth and detector'],
    sources: [
      { id: 'derived', standing: 'derived' },
      { id: 'practice', standing: 'practice' },
    ],
  }
}

export const needCheck: Check<typeof inputs, Told> = {
  id: 'need',
  title: 'Need',
  question: 'How many dB must come off?',
  inputs,
  outputs: [
    { key: 'neededDb', label: 'Needed attenuation', quantity: 'decibel', digits: 4, lead: true, provides: 'neededDb' },
  ],
  ...told(compute),
}
