import { defineConfig } from 'vitest/config'
import { builtData } from './scripts/built-data.mjs'
import { versionDefine } from './scripts/version.mjs'
import { workerJobs } from './scripts/worker-jobs.mjs'

/** Made anew for each project: what is defined is taken out of the object by the one that reads it first. */
const shared = () => ({
  define: versionDefine('test edition'),
  plugins: [workerJobs(), builtData()],
  oxc: { jsx: { runtime: 'automatic' as const, importSource: 'preact' } },
})

const TESTS = 'test/**/*.test.{ts,tsx}'
const LONG = 'test/**/*.long.test.ts'
const ADVERSARY = 'test/adversary/*.test.ts'
const BENCH = 'test/bench/**'
const BUILD = 'test/build/**'
const KEEPING = 'test/{store,state,offline,worker,ui}/**/*.test.{ts,tsx}'

/** Which file runs where follows from its name and folder; test/architecture.test.ts sees that none is left out. */
export default defineConfig({
  test: {
    // both cores of a small machine; left alone, a run takes one of them
    maxWorkers: 2,
    projects: [
      {
        // the inner loop: quick, deterministic, nothing timed. These keep nothing, so that files share what they import.
        ...shared(),
        test: {
          name: 'unit',
          pool: 'threads',
          isolate: false,
          include: [TESTS],
          exclude: [LONG, ADVERSARY, BENCH, BUILD, KEEPING, 'test/e2e/**', '**/node_modules/**'],
          testTimeout: 30_000,
          // what is worked out at build time is worked out within the first hook that asks for it
          hookTimeout: 30_000,
        },
      },
      {
        // what is kept, and the screens that show it: each file starts from nothing
        ...shared(),
        test: {
          name: 'kept',
          pool: 'threads',
          setupFiles: ['test/support/own-channels.ts'],
          include: [KEEPING],
          exclude: [LONG, '**/node_modules/**'],
          testTimeout: 30_000,
          hookTimeout: 30_000,
        },
      },
      {
        // searches with a seed, and ngspice run beside
        ...shared(),
        test: { name: 'long', include: [LONG], testTimeout: 600_000 },
      },
      {
        // random windows and surges against solvers of their own: what one of them refutes is no answer
        ...shared(),
        test: { name: 'adversary', include: [ADVERSARY], testTimeout: 600_000 },
      },
      {
        // speed as ratios within one run, one file after the other so that none disturbs the next
        ...shared(),
        test: {
          name: 'bench',
          include: ['test/bench/*.bench.test.ts'],
          // the allocation test collects garbage before it counts
          execArgv: ['--expose-gc'],
          fileParallelism: false,
          testTimeout: 120_000,
        },
      },
      {
        // the built site, by file and in a browser: nothing is timed here, and a browser waits for its frames most of the time
        ...shared(),
        test: {
          name: 'site',
          include: ['test/build/**/*.test.ts', 'test/e2e/**/*.e2e.ts'],
          globalSetup: ['test/e2e/support/built-site.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        // attacks with a seed; the long form on demand
        ...shared(),
        test: { name: 'torture', include: ['test/torture/*.torture.ts'], testTimeout: 600_000 },
      },
      {
        // the same stories in three engines
        ...shared(),
        test: {
          name: 'engines',
          include: ['test/engines/*.engine.ts'],
          globalSetup: ['test/e2e/support/built-site.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
})
