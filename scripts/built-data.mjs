/**
 * `import data from './file.ts?built'`: the `built` of that file, worked out when the app is built, as plain data. Where
 * that is a function it is what the function gives.
 * What takes long to work out, or needs a large part of the app to be worked out, is then only read on the phone.
 */
import { runnerImport } from 'vite'

const ASKED = /\?built$/

/** @returns {import('vite').Plugin} */
export function builtData() {
  return {
    name: 'stillpin-built-data',
    enforce: 'pre',
    async resolveId(asked, importer) {
      if (!ASKED.test(asked)) return null
      const file = await this.resolve(asked.replace(ASKED, ''), importer)
      if (file === null) throw new Error(`There is no ${asked} for ${importer}.`)
      return `${file.id}?built`
    },
    async load(id) {
      if (!ASKED.test(id)) return null
      const path = id.replace(ASKED, '')
      /** @type {{ module: { built: unknown }, dependencies: string[] }} */
      const { module, dependencies } = await runnerImport(path, { configFile: false, logLevel: 'error' })
      for (const file of [path, ...dependencies]) this.addWatchFile(file)
      const { built } = module
      const text = JSON.stringify(typeof built === 'function' ? built() : built)
      // a text is read faster than an object written as script
      return `export default JSON.parse(${JSON.stringify(text)})\n`
    },
  }
}
