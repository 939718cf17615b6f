/**
 * `import address from './job.ts?job'`: the address of a worker that does that job. Its script is a chunk of the same
 * build, so that it shares what it computes with instead of carrying a second copy.
 */
import { fileURLToPath } from 'node:url'

const ASKED = /\?job$/
/** The zero in front keeps other plugins from reading the rest as a path. */
const ENTRY = '\0job:'

const SERVE = fileURLToPath(new URL('../src/worker/serve.ts', import.meta.url))

/** @returns {import('vite').Plugin} */
export function workerJobs() {
  let isBuild = false
  return {
    name: 'stillpin-worker-jobs',
    enforce: 'pre',
    configResolved({ command }) {
      isBuild = command === 'build'
    },
    async resolveId(asked, importer) {
      if (asked.startsWith(ENTRY)) return asked
      if (!ASKED.test(asked)) return null
      const job = await this.resolve(asked.replace(ASKED, ''), importer)
      if (job === null) throw new Error(`There is no job ${asked} for ${importer}.`)
      return `${job.id}?job`
    },
    load(id) {
      if (id.startsWith(ENTRY)) {
        const names = [id.slice(ENTRY.length), SERVE].map((path) => JSON.stringify(path))
        return `import { run } from ${names[0]}\nimport { serve } from ${names[1]}\nserve(run, self)\n`
      }
      if (!ASKED.test(id)) return null
      const job = id.replace(ASKED, '')
      if (!isBuild) return `export default ${JSON.stringify(`/@id/__x00__job:${job}`)}`
      const name = `work-${/([\w-]+)\.ts$/.exec(job)?.[1] ?? 'job'}`
      const chunk = this.emitFile({ type: 'chunk', id: ENTRY + job, name })
      return `export default import.meta.ROLLUP_FILE_URL_${chunk}`
    },
  }
}
