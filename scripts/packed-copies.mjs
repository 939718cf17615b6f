/**
 * Copies for the offline copy: beside every larger file that no start waits for stands one that is deflated, and that is
 * what the worker keeps. A page without a worker takes the files themselves, which hosts compress on the way.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { deflateRawSync } from 'node:zlib'
import { startFiles } from './build-plugins.mjs'
import { LICENCES_FILE } from './licences.mjs'

/** Behind the name of a file: its copy, see src/offline/worker/unpacked.ts. */
const PACKED = '.z'
/** Below this a copy saves less than it costs to unpack. */
const LEAST_BYTES = 3000

/** @returns {import('vite').Plugin} */
export function packedCopies() {
  return {
    name: 'stillpin-packed-copies',
    apply: 'build',
    enforce: 'post',
    writeBundle(options, bundle) {
      const folder = options.dir ?? 'dist'
      if (!('index.html' in bundle)) return
      const start = startFiles(folder, bundle)
      for (const name of Object.keys(bundle)) {
        if (start.includes(name) || !(name.endsWith('.js') || name === LICENCES_FILE)) continue
        const whole = readFileSync(join(folder, name))
        if (whole.length >= LEAST_BYTES) writeFileSync(join(folder, name + PACKED), deflateRawSync(whole, { level: 9 }))
      }
    },
  }
}

/**
 * Of a file and its copy, the worker keeps the copy.
 * @param {string} folder the folder that was built into
 * @returns {import('workbox-build').ManifestTransform}
 */
export const onlyCopies = (folder) => (entries) => ({
  manifest: entries.filter(({ url }) => !existsSync(join(folder, url + PACKED))),
})
