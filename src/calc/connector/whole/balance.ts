/** Both legs of each pair beside each other: how alike they are, and how much common mode turns into signal. */
import { conversionAt } from '../../checks/window/conversion.ts'
import type { Express } from '../../line/fields.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import { worstConversionRatio } from '../../pair.ts'
import type { Verdict } from '../../types.ts'
import type { DecidedContact } from '../decided.ts'
import type { ConnectorFinding } from '../finding.ts'
import { setupOf } from './plate-contact.ts'
import { basisOf, decibels, exact, show, step } from './said.ts'

type Pair = { readonly a: DecidedContact; readonly b: DecidedContact }

/** The two contacts of every Line that has two. */
export function pairsOf(decided: readonly DecidedContact[]): readonly Pair[] {
  const byLine = new Map<string, DecidedContact[]>()
  for (const one of decided)
    if (one.line !== undefined && one.leg !== undefined)
      byLine.set(one.line.id, [...(byLine.get(one.line.id) ?? []), one])
  return [...byLine.values()].flatMap((legs) => {
    const [a, b] = [legs.find(({ leg }) => leg === 'a'), legs.find(({ leg }) => leg === 'b')]
    return a && b ? [{ a, b }] : []
  })
}

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
  if (a.part === undefined && b.part === undefined) return undefined
  if (a.part === undefined || b.part === undefined) {
    const [bare, fitted] = a.part === undefined ? [a, b] : [b, a]
    return {
      id,
      verdict: isRequired ? 'fails' : 'marginal',
      sentence: `Contact ${fitted.id} has a part and its other leg ${bare.id} has none: all that it takes from one leg becomes signal. Give both the same.`,
      contacts,
    }
  }
  if (a.part.topology !== b.part.topology || !isAlike(a.part, b.part))
    return {
      id,
      verdict: isRequired ? 'unknown' : 'marginal',
      sentence: `The legs ${a.id} and ${b.id} have unlike parts (${partWords(a)} and ${partWords(b)}): ${unlikeWords(a, b)}. Give both the same.`,
      contacts,
    }
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

type Part = NonNullable<DecidedContact['part']>
const isAlike = (a: Part, b: Part): boolean =>
  Math.abs(a.capacitanceF - b.capacitanceF) <= 1e-9 * a.capacitanceF &&
  Math.abs((a.inductanceH ?? 0) - (b.inductanceH ?? 0)) <= 1e-9 * (a.inductanceH ?? 0)

const partWords = ({ part }: DecidedContact): string =>
  part === undefined
    ? 'none'
    : CAPACITOR_COUNT[part.topology] === 0
      ? part.topology
      : `${part.topology} ${exact(part.capacitanceF, 'capacitance')}`

function unlikeWords({ part: a }: DecidedContact, { part: b }: DecidedContact): string {
  const farads = (part: Part | undefined) =>
    part === undefined ? 0 : CAPACITOR_COUNT[part.topology] * part.capacitanceF
  const ratio = worstConversionRatio({ legF: farads(a), leg2F: farads(b) })
  return ratio > 0
    ? `up to ${show(decibels(ratio), 'decibel', 'least')} of the common mode turns into signal even without tolerance`
    : 'what differs between them turns common mode into signal'
}
