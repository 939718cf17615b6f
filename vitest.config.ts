import { defineConfig } from 'vitest/config'
import { versionDefine } from './scripts/version.mjs'

const shared = {
  define: versionDefine('test edition'),
  oxc: { jsx: { runtime: 'automatic' as const, importSource: 'preact' } },
}

export default defineConfig({
  test: {
    projects: [
      {
        ...shared,
        test: {
          name: 'unit',
          // the allocation test collects garbage before it counts
          execArgv: ['--expose-gc'],
          include: ['test/**/*.test.{ts,tsx}'],
          exclude: ['test/build/**', 'test/e2e/**', '**/node_modules/**'],
          testTimeout: 30_000,
        },
      },
      {
        ...shared,
        test: {
          name: 'site',
          include: ['test/build/**/*.test.ts', 'test/e2e/**/*.e2e.ts'],
          globalSetup: ['test/e2e/support/built-site.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
          // a shared, noisy machine may starve a browser once; the report names what needed a second try
          retry: 1,
        },
      },
    ],
  },
})
