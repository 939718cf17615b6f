/** The answer of the power check in one sentence: the reason that decides, with its limit. */

import { WIRE_H_PER_M } from '../../../reference/instruments.ts'
import { NAVY_SOURCE, navyWhy } from '../../explain/navy-rule.ts'
import { notKnown, type Said } from '../../explain/sentence.ts'
import type { PowerJudgement, PowerReason } from '../../power/judge.ts'
import { crestV, lineCurrentRmsA, PASCHEN_MINIMUM_V, type PowerLine, storedJ } from '../../power/supply.ts'
import { formatEstimate, formatExact } from '../../quantity/format.ts'
import { capital, VERDICT_RANK, VERDICT_WORDS } from '../../verdict.ts'
import { type PowerGiven, powerInputs } from './inputs.ts'

export function powerSaid(
  given: PowerGiven,
  line: PowerLine,
  judgement: PowerJudgement,
  faults: readonly string[],
): Said {
  const { verdict, reasons } = judgement
  const deciding = [...reasons].sort((a, b) => VERDICT_RANK[b.verdict] - VERDICT_RANK[a.verdict])[0]
  if (verdict === 'unknown') return lackingSaid(given, line, judgement)
  const said = deciding === undefined ? '' : reasonWords(deciding, line, faults)
  return { headline: `${formatExact(line.capacitanceF, 'capacitance')}: ${VERDICT_WORDS[verdict]}. ${capital(said)}.` }
}

function lackingSaid(given: PowerGiven, line: PowerLine, { navy }: PowerJudgement): Said {
  const puts = `${capital(currentWords(line))}.`
  if (navy !== undefined && navy.limitF === undefined)
    return navy.lacks === 'load'
      ? notKnown(powerInputs, 'loadW', `the connected load: on DC the Navy rule goes by it. ${puts}`)
      : notKnown(
          powerInputs,
          'chassisLimitA',
          `the chassis current allowed. ${navyWhy(navy, { supplyHz: line.supplyHz, loadW: given.loadW })}`,
        )
  return line.supplyHz === 0
    ? notKnown(powerInputs, 'navyRule', `the rule that limits it on DC. ${puts}`)
    : notKnown(powerInputs, 'chassisLimitA', `the chassis current allowed. ${puts}`)
}

/** What flows into the chassis; on DC what is stored. */
function currentWords(line: PowerLine): string {
  const { capacitanceF: farads } = line
  if (line.supplyHz === 0)
    return `no steady current on DC, ${formatEstimate(storedJ({ farads, crestV: crestV(line) }), 'energy', 'least')} stored`
  return `${formatEstimate(lineCurrentRmsA({ ...line, farads }), 'current', 'least')} into the chassis in each line`
}

function reasonWords(reason: PowerReason, line: PowerLine, faults: readonly string[]): string {
  switch (reason.is) {
    case 'navy':
      return `${NAVY_RULE} allows ${formatEstimate(reason.limitF, 'capacitance', 'most')} from each line to ground`
    case 'chassis-limit':
      return `${currentWords(line)}, ${formatExact(reason.limitA, 'current')} allowed: ${formatEstimate(reason.limitF, 'capacitance', 'most')} on this supply`
    case 'ladder':
      return (faults[0] ?? '').replace(/\.$/u, '')
    case 'cross-withstand':
      return `an inrush peak of ${formatEstimate(reason.peakV, 'voltage', 'least')} from line to line is above the ${formatEstimate(reason.holdsV, 'voltage', 'most')} of the withstand test of the capacitor there`
    case 'thin-air': {
      const what = reason.by === 'inrush' ? 'an inrush peak' : 'a working peak'
      const air = formatEstimate(PASCHEN_MINIMUM_V, 'voltage')
      const place = reason.peakV >= PASCHEN_MINIMUM_V ? 'above' : 'close to'
      return `${what} of ${formatEstimate(reason.peakV, 'voltage', 'least')}${reason.isAcross ? ' from line to line' : ''} is ${place} the ${air} at which thin air can break down`
    }
    case 'wire-long':
      return wireWords(reason.henries)
    case 'no-limit':
    case 'navy-lacks':
      return currentWords(line)
  }
}

/** What is odd about an inductance that no wiring has: metres, say, read as millihenries. */
export const wireWords = (henries: number): string =>
  `${formatExact(henries, 'inductance')} is the inductance of ${formatExact(henries / WIRE_H_PER_M.henriesPerM / 1e3, 'number')} km of wire, and makes the inrush current too small`

const NAVY_RULE = `MIL-STD-461 ${NAVY_SOURCE.clause} (Navy)`
