/** Contacts as decided, from texts of their Line, for tests of a whole connector. */
import type { DecidedContact } from '../../src/calc/connector/decided.ts'
import type { Connector, ContactText } from '../../src/calc/connector/types.ts'
import type { Fact, FactKey, Line } from '../../src/calc/types.ts'

export type Texts = { readonly [K in FactKey]?: string }

export const lineOf = (id: string, texts: Texts): Line => ({
  id,
  name: id,
  gate: 'clear',
  trials: [],
  facts: Object.fromEntries(
    Object.entries(texts).map(([key, text]): [string, Fact] => [key, { text, origin: { by: 'user' } }]),
  ),
})

/** A filtered or bare contact; 20 % either way unless told. */
export function contactOf(
  id: string,
  texts: Texts,
  part?: Partial<NonNullable<DecidedContact['part']>> & { readonly capacitanceF: number },
  more: Partial<DecidedContact> = {},
): DecidedContact {
  return {
    id,
    type: 'line',
    line: lineOf(`line-${id}`, texts),
    ...(texts.lineKind === undefined ? {} : { kind: texts.lineKind }),
    by: 'user',
    ...(part === undefined ? {} : { part: { topology: 'C', leastFrac: 0.8, mostFrac: 1.2, ...part } }),
    mode: 'common',
    sourceOhm: [],
    noiseHz: [],
    ...more,
  }
}

export function connectorOf(
  decided: readonly DecidedContact[],
  more: Partial<Connector> = {},
  texts: Readonly<Record<string, { readonly [K in ContactText]?: string }>> = {},
): Connector {
  return {
    id: 'c1',
    name: 'J1',
    shape: 'rectangular',
    contacts: decided.map(({ id, type, line, leg }) => ({
      id,
      type,
      ...(line === undefined ? {} : { lineId: line.id }),
      ...(leg === undefined ? {} : { leg }),
      texts: texts[id] ?? {},
    })),
    shared: {},
    texts: {},
    suppressors: [],
    adjacent: [],
    ...more,
  }
}
