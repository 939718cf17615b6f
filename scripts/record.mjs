/**
 * Writes anew what is recorded from the source: the ledger of permanent ids (which only grows), the address table in
 * DEVELOPERS.md, the guide's key list, its printed grid, the walks of the documented cases, the schema of a file. Review the difference like any other.
 */
import { install, runTool, TOOLS } from './install.mjs'

/** The tests that hold a record against the source, and write it when UPDATE is set. */
const RECORDING = [
  'test/ledger.test.ts',
  'test/addresses.test.ts',
  'test/guide/table.test.ts',
  'test/guide/cases.test.ts',
  'test/store/exchange/schema.test.ts',
]

install()
process.env['UPDATE'] = '1'
process.exitCode = runTool(TOOLS.vitest, ['run', '--project', 'unit', '--project', 'kept', ...RECORDING]) ? 0 : 1
