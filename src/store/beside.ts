/** Parts that come late onto newer ones: those stand, and what they lack comes to them. */
import type { Beside } from './edits.ts'
import { mergeTables, oneHistory, union, unionById } from './union.ts'

export const beside: Beside = {
  record: (newer, { answers, events, tables, checks }) => ({
    ...(answers && { answers: { ...answers, ...newer.answers } }),
    ...(events && { events: oneHistory(newer.events, events) }),
    ...(tables && { tables: mergeTables(newer.tables, tables) }),
    ...(checks && { checks: union(newer.checks, checks) }),
  }),
  // what may be tried on a line is what was answered last, but a line that was barred is barred
  line: (newer, { gate, trials }) => ({
    ...(gate === 'barred' && { gate }),
    ...(trials && { trials: unionById(newer.trials, trials) }),
  }),
}
