/**
 * The process in which `scripts/mutants.mjs` runs tests: vitest is started once and kept warm. One message, one file of
 * tests with one mutant switched on. A loop without end can only be left by ending the process, which is then started anew.
 *   node scripts/mutants-run.mjs TREE FOLDER   (by fork)
 */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { loadConfigFromFile } from 'vite'
import { createVitest } from 'vitest/node'

const [tree = '', folder = ''] = process.argv.slice(2)
process.chdir(tree)
process.env['STILLPIN_MUTANTS'] = folder

/** @typedef {{ mutant: string, file: string, testIds: string[] | undefined, mostCpuMs: number }} Job */
/** @typedef {{ failed: string[], cpuMs: number, tests: { id: string, ms: number }[], passed?: import('./mutants-reach.mjs').Coverage }} Outcome */

const loaded = await loadConfigFromFile({ command: 'serve', mode: 'test' }, join(tree, 'vitest.config.ts'))
/** @type {import('vitest/config').ViteUserConfig | undefined} */
const config = loaded?.config
const projects = config?.test?.projects ?? []
/** @param {string} name */
const named = (name) => {
  const found = projects.find(
    (one) => typeof one === 'object' && 'test' in one && typeof one.test?.name === 'string' && one.test.name === name,
  )
  if (typeof found !== 'object' || !('test' in found)) throw new Error(`vitest.config.ts has no project named ${name}`)
  return found
}
const { test, ...vite } = named('unit')

const vitest = await createVitest(
  'test',
  {
    ...test,
    include: [...(test?.include ?? []), ...(named('kept').test?.include ?? [])],
    // what the tests of storage leave out of the other project is in this one
    exclude: (test?.exclude ?? []).filter((one) => !named('kept').test?.include?.includes(one)),
    // a mutant may sit in what runs while a module is read
    isolate: true,
    config: false,
    root: tree,
    watch: false,
    maxWorkers: 1,
    bail: 1,
    // a mutant that waits for ever fails by it; a busy machine must not
    testTimeout: 60_000,
    hookTimeout: 60_000,
    setupFiles: [join(tree, 'test/support/own-channels.ts'), join(tree, 'scripts/mutants-reach.mjs')],
    reporters: [{}],
  },
  vite,
)
await vitest.standalone()
const specifications = new Map((await vitest.globTestSpecifications()).map((one) => [one.moduleId, one]))

const spentMs = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** @param {Job} job @returns {Promise<Outcome>} */
async function run({ mutant, file, testIds }) {
  writeFileSync(join(folder, 'active'), mutant)
  const passed = join(folder, 'passed.json')
  rmSync(passed, { force: true })
  const known = specifications.get(join(tree, file))
  if (known === undefined) throw new Error(`${file} is no file of the tests of unit or kept`)
  const specification = testIds === undefined ? known : known.project.createSpecification(known.moduleId, { testIds })
  const fromMs = spentMs()
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications([specification])
  const here = testModules.filter(({ moduleId }) => moduleId === known.moduleId)
  const cases = here.flatMap(({ children }) => [...children.allTests()])
  /** @param {{ message: string }} error */
  const first = ({ message }) => message.split('\n')[0]?.slice(0, 200) ?? ''
  const failed = [
    ...cases.flatMap((one) => {
      const result = one.result()
      return result.state === 'failed' ? [`${one.fullName}: ${first(result.errors[0] ?? { message: '' })}`] : []
    }),
    ...here.flatMap((module) => [
      ...module.errors().map(first),
      ...[...module.children.allSuites()].flatMap((suite) => suite.errors().map(first)),
    ]),
    ...unhandledErrors.map((error) => String(error).slice(0, 200)),
  ]
  return {
    failed,
    cpuMs: spentMs() - fromMs,
    tests: cases.map((one) => ({ id: one.id, ms: one.diagnostic()?.duration ?? 0 })),
    ...(existsSync(passed) && { passed: JSON.parse(readFileSync(passed, 'utf8')) }),
  }
}

process.on('message', (/** @type {Job} */ job) => {
  const fromMs = spentMs()
  const watch = setInterval(() => {
    // the time of the processor, not the clock: others may be working on the machine
    if (spentMs() - fromMs > job.mostCpuMs) process.exit(3)
  }, 200)
  run(job).then(
    (outcome) => {
      clearInterval(watch)
      process.send?.(outcome)
    },
    (error) => {
      console.error(error)
      process.exit(1)
    },
  )
})
process.on('disconnect', () => process.exit(0))
process.send?.([...specifications.keys()].map((path) => path.slice(tree.length + 1)))
