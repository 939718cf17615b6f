/**
 * Read before every file of tests in the copy of `scripts/mutants.mjs`: switches on the mutant the folder names, and notes
 * which mutants each test came past.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeEach } from 'vitest'

/** @typedef {{ static: Record<string, number>, perTest: Record<string, Record<string, number>> }} Coverage */
/** @typedef {{ activeMutant?: string, currentTestId?: string | undefined, mutantCoverage?: Coverage }} Switch as Stryker names it */

const folder = process.env['STILLPIN_MUTANTS'] ?? ''
/** @type {Switch} */
const state = { activeMutant: readFileSync(join(folder, 'active'), 'utf8') }
Object.assign(globalThis, { __stryker__: state })

beforeEach(({ task }) => {
  state.currentTestId = task.id
})
afterEach(() => {
  state.currentTestId = undefined
})
afterAll(() => {
  if (state.activeMutant === 'none')
    writeFileSync(join(folder, 'passed.json'), JSON.stringify(state.mutantCoverage ?? { static: {}, perTest: {} }))
})
