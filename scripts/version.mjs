/** What the build writes into the app about itself. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Compile-time constants. STILLPIN_VERSION overrides the version (the update test builds a second one);
 * SOURCE_DATE_EPOCH fixes the date for reproducible builds.
 * @param {string} dataEdition edition of the guide and the tables
 */
export function versionDefine(dataEdition) {
  const manifest = JSON.parse(readFileSync(join(import.meta.dirname, '..', 'package.json'), 'utf8'))
  const epochSec = process.env['SOURCE_DATE_EPOCH']
  const built = epochSec === undefined ? new Date() : new Date(Number(epochSec) * 1000)
  return {
    __APP_VERSION__: JSON.stringify(process.env['STILLPIN_VERSION'] ?? manifest.version),
    __DATA_EDITION__: JSON.stringify(dataEdition),
    __BUILD_DATE__: JSON.stringify(built.toISOString().slice(0, 10)),
  }
}
