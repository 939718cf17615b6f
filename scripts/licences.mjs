/** The licence texts of everything that travels with the app, written into the build from what the build holds. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { ROOT } from './install.mjs'

export const LICENCES_FILE = 'licences.txt'

/** Shipped without being a module of the page: the worker is built apart. */
const IN_WORKER = ['workbox-core', 'workbox-precaching', 'workbox-routing']

const TEXT = /^(licen[cs]e|notice)(\.(md|txt))?$/i

/** @typedef {{ name: string, version: string, licence: string, text: string }} Licence */

/**
 * Name, version and licence texts of an installed package; throws where it carries none, since then it may not be shipped.
 * @param {string} name
 * @returns {Licence}
 */
export function licenceOf(name) {
  const folder = join(ROOT, 'node_modules', name)
  const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  const texts = readdirSync(folder).filter((file) => TEXT.test(file))
  if (texts.length === 0) throw new Error(`${name} carries no licence text; nothing without one may be shipped.`)
  const text = texts.sort().map((file) => readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n').trim())
  return { name, version, licence: String(license), text: text.join('\n\n') }
}

/**
 * Packages whose files are among these modules; a package inside another one's folder counts by itself.
 * @param {readonly string[]} moduleIds
 */
export function packagesOf(moduleIds) {
  const names = moduleIds.flatMap((id) => {
    const found = /^.*\/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(id.replaceAll('\\', '/'))
    return found?.[1] === undefined ? [] : [found[1]]
  })
  return [...new Set(names)].sort()
}

/**
 * All texts in one; packages whose texts are the same letter for letter share it.
 * @param {readonly Licence[]} licences
 */
export function licencesText(licences) {
  /** @type {Map<string, string[]>} */
  const heads = new Map()
  for (const { name, version, licence, text } of licences)
    heads.set(text, [...(heads.get(text) ?? []), `${name} ${version} (${licence})`])
  const parts = [...heads].map(([text, names]) => `${names.join('\n')}\n\n${text}\n`)
  return `What Stillpin is made of, and the licences of each part.\n\n${parts.join(`\n${'-'.repeat(72)}\n\n`)}`
}

/**
 * Writes the file into the build: every package a chunk holds, every dependency (fonts among them) and the worker's.
 * @returns {import('vite').Plugin}
 */
export function licences() {
  return {
    name: 'stillpin-licences',
    apply: 'build',
    generateBundle(_options, bundle) {
      const modules = Object.values(bundle).flatMap((file) => (file.type === 'chunk' ? file.moduleIds : []))
      const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'))
      const named = [...packagesOf(modules), ...Object.keys(dependencies), ...IN_WORKER]
      const shipped = [...new Set(named)].sort()
      this.emitFile({ type: 'asset', fileName: LICENCES_FILE, source: licencesText(shipped.map(licenceOf)) })
    },
  }
}
