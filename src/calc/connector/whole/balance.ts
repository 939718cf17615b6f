/** Both legs of each pair beside each other: how alike they are, and how much common mode turns into signal. */
import { conversionAt } from '../../checks/window/conversion.ts'
import type { Express } from '../../line/fields.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import { worstConversionRatio } from '../../pair.ts'
import type { Verdict } from '../../types.ts'
import type { DecidedContact } from '../decided.ts'
import type { ConnectorFinding } from '../finding.ts'
import { type Pair, pairsOf, unlikeLegs } from '../unlike-legs.ts'
import { setupOf } from './plate-contact.ts'
import { basisOf, decibels, exact, show, step } from './said.ts'

/** One finding for each pair that has a part on either leg. */
export function balanceFindings(decided: readonly DecidedContact[], express?: Express): readonly ConnectorFinding[] {
  return pairsOf(decided).flatMap((pair) => {
    const found = findingOf(pair, express)
    return found === undefined ? [] : [found]
  })
}

function findingOf({ a, b }: Pair, express: Express | undefined): ConnectorFinding | undefined {
  const id = `balance-${a.id}-${b.id}`
  const contacts = [a.id, b.id]
  const setup = setupOf(a, express)
  const isRequired = setup?.mostConversionDb !== undefined
  const unlike = unlikeLegs({ a, b }, isRequired)
  if (unlike !== undefined) return unlike
  if (a.part === undefined) return undefined
  if (CAPACITOR_COUNT[a.part.topology] === 0 || a.mode === 'differential') return undefined
  const { leastFrac, mostFrac, capacitanceF } = a.part
  const worst = worstConversionRatio({ legF: capacitanceF * mostFrac, leg2F: capacitanceF * leastFrac })
  const found = setup && conversionAt(a.part.topology, setup, capacitanceF)
  const convertedDb = found === undefined ? undefined : Math.max(decibels(0), found.db)
  const verdict: Verdict | undefined = !isRequired
    ? undefined
    : found === undefined
      ? 'unknown'
      : found.db <= (setup.mostConversionDb ?? 0)
        ? 'ok'
        : 'fails'
  const where =
    found === undefined
      ? 'the noise of the pair is not known'
      : `${show(convertedDb ?? 0, 'decibel', 'least')} at ${show(found.hz, 'frequency')}${isRequired ? `, ${exact(setup.mostConversionDb ?? 0, 'decibel')} is allowed` : ''}`
  return {
    id,
    ...(verdict === undefined ? {} : { verdict }),
    sentence: `Legs ${a.id} and ${b.id}, the same mark, differ by their tolerance: of the common mode that turns into signal ${where}; at no frequency more than ${show(decibels(worst), 'decibel', 'least')}${a.part.topology === 'C' ? '' : ' by the capacitors alone'}.`,
    contacts,
    basis: basisOf(
      [
        step(
          '|C1 − C2|/(C1 + C2)',
          `${exact(capacitanceF * mostFrac, 'capacitance')} beside ${exact(capacitanceF * leastFrac, 'capacitance')}`,
          decibels(worst),
          'decibel',
        ),
        ...(found === undefined
          ? []
          : [step('each part of either leg anywhere in its tolerance', 'searched', convertedDb ?? 0, 'decibel')]),
      ],
      ['both legs lie anywhere in the same tolerance, each by itself'],
    ),
  }
}
