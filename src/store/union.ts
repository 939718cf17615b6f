/** Two of the same kind as one: nothing of either goes, and where both say something, that of here stands. */
import type { Filled } from '../guide/fill-ins.ts'
import type { Event } from '../guide/investigation.ts'

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/** Those of here, then those of there that are not the same as one of them. */
export const union = <T>(here: readonly T[] = [], there: readonly T[] = []): readonly T[] => [
  ...here,
  ...there.filter((one) => !here.some((other) => isSame(one, other))),
]

/** Those of here, then those of there under other ids. */
export const unionById = <T extends { readonly id: string }>(here: readonly T[], there: readonly T[]): readonly T[] => [
  ...here,
  ...there.filter(({ id }) => !here.some((other) => other.id === id)),
]

/** The events of both in the order of their times. */
export const oneHistory = (here: readonly Event[] | undefined, there: readonly Event[] | undefined): readonly Event[] =>
  [...union(here, there)].sort((a, b) => a.at.localeCompare(b.at))

/** Tables filled in on both sides, row by row. */
export function mergeTables(here: Filled = {}, there: Filled = {}): Filled {
  const names = [...new Set([...Object.keys(here), ...Object.keys(there)])]
  return Object.fromEntries(names.map((name) => [name, union(here[name], there[name])]))
}
