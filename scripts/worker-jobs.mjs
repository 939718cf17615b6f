/**
 * `import address from './job.ts?job'`: the address of a worker that does that job. Its script is a chunk of the same
 * build, so that it shares what it computes with instead of carrying a second copy.
 */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const ASKED = /\?job$/
/** The zero in front keeps other plugins from reading the rest as a path. */
const ENTRY = '\0job:'

/** What a job answers with that goes over without a copy. */
const HANDS_OVER = /^export (?:const|function) handedOver\b/m

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
        const job = id.slice(ENTRY.length)
        const more = HANDS_OVER.test(readFileSync(job, 'utf8')) ? ', handedOver' : ''
        const [from, serve] = [job, SERVE].map((path) => JSON.stringify(path))
        return `import { run${more} } from ${from}\nimport { serve } from ${serve}\nserve(run, self${more})\n`
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
