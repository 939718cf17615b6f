/** What the power check says and draws. */
import { KILLS_ABOVE } from '../../../reference/field-figures.ts'
import { ladderPicture } from '../../explain/ladder.ts'
import { NAVY_SOURCE, navyWhy } from '../../explain/navy-rule.ts'
import { waitingFor } from '../../explain/sentence.ts'
import { RAIL } from '../../ladder.ts'
import { missingInputs, missingNames } from '../../line/missing.ts'
import type { PowerJudgement } from '../../power/judge.ts'
import { crestV, type PowerLine } from '../../power/supply.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Basis, Rung, SaidBound, Success } from '../../types.ts'
import { worstFirst } from '../../verdict.ts'
import type { PowerFigures } from './figures.ts'
import { isNearAir, powerFindings } from './findings.ts'
import { type PowerGiven, powerInputs } from './inputs.ts'
import { powerSaid } from './sentence.ts'
import { basisOf, lacking, type PowerOutputs, powerOutputs } from './workings.ts'

const show = (value: number, quantity: Quantity, digits = 3): string => formatQuantity(value, quantity, digits)

/** Outputs that every power line has once it is entered. */
const ALWAYS = [
  'currentRmsA',
  'totalCurrentRmsA',
  'residualCurrentRmsA',
  'storedJ',
  'bleedSec',
  'inrushPeakA',
  'inrushPeakV',
  'withstandV',
]

export function explainPower(given: PowerGiven, figures: PowerFigures): Success {
  const { worked, values } = figures
  if (worked === undefined) return waiting(given)
  const { line, judgement } = worked
  const outputs = powerOutputs(line, values, judgement.inrush)
  const rungs = rungsOf(line, judgement, outputs)
  const ladder = ladderPicture({ title: 'Volts on this line', rungs })
  const findings = powerFindings({ line, judgement, rules: given, faults: ladder.faults })
  return {
    ok: true,
    verdict: judgement.verdict,
    ...powerSaid(given, line, judgement, ladder.faults),
    findings: worstFirst(findings),
    outputs,
    bounds: boundsOf(given, line, judgement),
    rungs,
    pictures: [ladder],
    cautions: cautionsOf(line),
  }
}

function waiting(given: PowerGiven): Success {
  const missing = missingNames(powerInputs, given).join(', ')
  const output = lacking(`needs ${missing}`)
  return {
    ok: true,
    verdict: 'unknown',
    ...waitingFor(missingInputs(powerInputs, given)),
    findings: [],
    outputs: Object.fromEntries(ALWAYS.map((key) => [key, output])),
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: ['power-off'],
  }
}

const LABELS: Readonly<Record<string, string>> = {
  'power-working-peak': 'Working peak',
  'power-inrush': 'Inrush peak on the capacitor',
  'power-capacitor-withstand': 'Capacitor withstand test',
}

function rungsOf(line: PowerLine, { rungs }: PowerJudgement, outputs: PowerOutputs): readonly Rung[] {
  const bases: Readonly<Record<string, Basis | undefined>> = {
    'power-working-peak': peakBasis(line),
    'power-inrush': outputs['inrushPeakV']?.basis,
    'power-capacitor-withstand': outputs['withstandV']?.basis,
  }
  return rungs.map((rung) => ({
    ...rung,
    label: LABELS[rung.id] ?? rung.id,
    side: RAIL[rung.role],
    basis: bases[rung.id] ?? basisOf([]),
  }))
}

function peakBasis(line: PowerLine): Basis {
  return basisOf([
    {
      formula: line.supplyHz === 0 ? 'V_peak = V' : 'V_peak = √2·V',
      withNumbers: show(line.workingRmsV, 'voltage', 4),
      si: crestV(line),
      quantity: 'voltage',
    },
  ])
}

function boundsOf(given: PowerGiven, line: PowerLine, { bounds, navy }: PowerJudgement): readonly SaidBound[] {
  const words: Readonly<Record<string, { why: string; basis: (why: string, si: number) => Basis }>> = {
    'navy-4.2.2': {
      why: navy === undefined ? '' : navyWhy(navy, { supplyHz: line.supplyHz, loadW: given.loadW }),
      basis: (why, si) =>
        basisOf(
          [{ formula: 'MIL-STD-461 4.2.2', withNumbers: why, si, quantity: 'capacitance' }],
          ['the rule applies to this procurement'],
          NAVY_SOURCE,
        ),
    },
    'chassis-current': {
      why: `at most ${show(given.chassisLimitA ?? 0, 'current')} to chassis in each line`,
      basis: (_why, si) =>
        basisOf([
          {
            formula: 'C = I / (2π·f·V)',
            withNumbers: `${show(given.chassisLimitA ?? 0, 'current')} / (2π · ${show(line.supplyHz, 'frequency')} · ${show(line.workingRmsV, 'voltage')})`,
            si,
            quantity: 'capacitance',
          },
        ]),
    },
  }
  return bounds.flatMap((bound): readonly SaidBound[] => {
    const said = words[bound.id]
    if (said === undefined) return []
    return [
      {
        id: bound.id,
        side: bound.side,
        nature: bound.nature,
        topology: bound.topology,
        markedF: bound.farads,
        why: said.why,
        appliesTo: 'all capacitance from one line to ground',
        openedBy: [],
        basis: said.basis(said.why, bound.farads),
      },
    ]
  })
}

/** From here on a steady voltage counts as lethal in the cautions: alternating current at half the volts of direct. */
const isLethal = ({ workingRmsV, supplyHz }: PowerLine): boolean =>
  workingRmsV >= (supplyHz > 0 ? KILLS_ABOVE.acRmsV : KILLS_ABOVE.dcV)

function cautionsOf(line: PowerLine): readonly string[] {
  return [
    'power-off',
    'stored-charge',
    ...(isLethal(line) ? ['lethal-voltage'] : []),
    'chassis-capacitance',
    'hipot',
    ...(isNearAir(line) ? ['low-pressure'] : []),
    'lightning-hirf-fuel',
    'screening',
  ]
}
