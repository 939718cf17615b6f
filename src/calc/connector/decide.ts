/** The part a window stands for, and the contact in numbers as the sums over the whole connector read it. */
import type { OpenWindow } from '../checks/window/figures.ts'
import { sharesOf } from '../checks/window/setup.ts'
import { hasCapacitor, hasInductor } from '../network/circuit.ts'
import type { Line } from '../types.ts'
import type { ContactPart } from './contact-row.ts'
import type { DecidedContact } from './decided.ts'
import type { Contact } from './types.ts'

type By = DecidedContact['by']

/** A contact without a part. */
export function decidedBare(contact: Contact, line: Line | undefined, by: By): DecidedContact {
  return {
    id: contact.id,
    type: contact.type,
    by,
    mode: 'common',
    sourceOhm: [],
    noiseHz: [],
    ...(contact.leg === undefined ? {} : { leg: contact.leg }),
    ...(line === undefined ? {} : { line }),
  }
}

/** The part a window stands for; undefined where nothing is needed, or nothing would do. */
export function partOf({ row, setup, verdict }: OpenWindow): ContactPart | undefined {
  const { topology, proposal, need } = row
  const inductanceH = hasInductor(topology) ? { inductanceH: setup.enteredH } : {}
  if (proposal !== undefined && hasCapacitor(topology)) return { topology, valueF: proposal.valueF, ...inductanceH }
  return need.is === 'inductor-only' && verdict !== 'fails' ? { topology, ...inductanceH } : undefined
}

/** The contact with this part, impedances and needs as its window has them. */
export function decidedOf(q: {
  readonly contact: Contact
  readonly line: Line
  readonly shown: OpenWindow
  readonly part: ContactPart | undefined
  readonly by: By
}): DecidedContact {
  const { setup, verdict, values, bounds, rungs, restsOn } = q.shown
  const { around, mode, kind, needs } = setup
  const shares = sharesOf(setup)
  return {
    ...decidedBare(q.contact, q.line, q.by),
    mode,
    ...(kind === undefined ? {} : { kind: kind.id }),
    ...(q.part === undefined ? {} : { part: inNumbers(q.part, shares) }),
    sourceOhm: around?.sources.map(({ ohm }) => ohm) ?? [],
    ...(around === undefined ? {} : { loadOhm: around.load.ohm }),
    noiseHz: needs.map(({ hz }) => hz),
    ...(needs.length === 0 ? {} : { neededDb: Math.max(...needs.map(({ db }) => db)) }),
    window: {
      ...(verdict === undefined ? {} : { verdict }),
      values,
      bounds,
      rungs,
      ...(restsOn === undefined ? {} : { restsOn }),
    },
  }
}

function inNumbers(
  { topology, valueF = 0, inductanceH }: ContactPart,
  shares: { readonly least: number; readonly most: number },
): NonNullable<DecidedContact['part']> {
  return {
    topology,
    capacitanceF: valueF,
    ...(inductanceH === undefined ? {} : { inductanceH }),
    leastFrac: shares.least,
    mostFrac: shares.most,
  }
}
