/** Everything that only the whole connector tells, but for the strike: figures, and findings with the worst first. */
import type { Express } from '../../line/fields.ts'
import { within } from '../../surge/progress.ts'
import type { Progress } from '../../types.ts'
import { VERDICT_RANK } from '../../verdict.ts'
import type { ContactRow } from '../contact-row.ts'
import type { DecidedContact } from '../decided.ts'
import type { ConnectorFinding } from '../finding.ts'
import type { Connector } from '../types.ts'
import { adjacentFindings } from './adjacent.ts'
import { balanceFindings } from './balance.ts'
import { type Bond, bondOf } from './bond.ts'
import { bondFindings } from './bond-findings.ts'
import { type Charges, chargesOf } from './charges.ts'
import { type ChassisCurrents, chassisCurrents } from './currents.ts'
import { navyFindings } from './navy.ts'
import { neighbourFindings } from './neighbours.ts'
import { type Counts, countsOf, openFindings } from './open-contacts.ts'
import { powerFindings } from './power-findings.ts'
import { ratingFindings } from './ratings.ts'
import { rowFindings } from './row-findings.ts'
import { bySupply, suppliedContacts } from './supplied.ts'
import { suppressorFindings } from './suppressor-findings.ts'

export type Whole = {
  readonly counts: Counts
  readonly bond: Bond
  /** one for each AC supply */
  readonly currents: readonly ChassisCurrents[]
  readonly charges: Charges
  /** worst first; those that decide nothing last */
  readonly findings: readonly ConnectorFinding[]
}

/** Of a schedule that is done: no whole is better than its contacts by themselves. */
export function* wholeOfRows(
  connector: Connector,
  rows: readonly ContactRow[],
  express?: Express,
): Generator<Progress, Whole> {
  const decided = rows.map((row) => row.decided)
  const whole = yield* wholeOf(connector, decided, express)
  return { ...whole, findings: worstFirst([...rowFindings(rows), ...whole.findings]) }
}

/** In slices; may be abandoned between them. `decided`: every contact of the connector, in its order. */
export function* wholeOf(
  connector: Connector,
  decided: readonly DecidedContact[],
  express?: Express,
): Generator<Progress, Whole> {
  const power = suppliedContacts(connector, decided, express)
  const ac = bySupply(power.supplied.filter(({ supplyHz, mostF }) => supplyHz > 0 && mostF > 0))
  const counts = countsOf(decided)
  const said: ConnectorFinding[] = [
    ...openFindings(counts),
    ...powerFindings(connector, power, express),
    ...navyFindings(connector, power, express),
    ...neighbourFindings(connector, decided),
    ...ratingFindings(connector, decided, express),
  ]
  yield { doneFrac: 0.1 }
  said.push(
    ...balanceFindings(decided, express),
    ...adjacentFindings(connector, decided, express),
    ...suppressorFindings(connector, decided, express),
  )
  yield { doneFrac: 0.3 }
  const bond = yield* within(bondOf(connector, decided, express), 0.3, 1)
  said.push(...bondFindings(bond))
  return {
    counts,
    bond,
    currents: ac.map((supply) => chassisCurrents(supply)),
    charges: chargesOf(power.supplied),
    findings: worstFirst(said),
  }
}

const rankOf = ({ verdict }: ConnectorFinding): number => (verdict === undefined ? -1 : VERDICT_RANK[verdict])

/** Equals keep their order. */
export const worstFirst = (findings: readonly ConnectorFinding[]): readonly ConnectorFinding[] =>
  [...findings].sort((a, b) => rankOf(b) - rankOf(a))
