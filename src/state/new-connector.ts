/** A connector as it begins: a label of its own, and nothing said of it. */
import type { Connector } from '../calc/connector/types.ts'
import { newId } from '../store/ids.ts'

/** The label is the next free of J1, J2 and on, as drawings count; it is the user's to change. */
export function newConnector(taken: readonly string[]): Connector {
  let count = 1
  while (taken.includes(`J${count}`)) count += 1
  return {
    id: newId(),
    name: `J${count}`,
    shape: 'ring',
    contacts: [],
    shared: {},
    texts: {},
    suppressors: [],
    adjacent: [],
  }
}
