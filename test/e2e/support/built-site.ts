/** Builds the site once for the build and browser tests, unless it is there and newer than everything it is made of. */
import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { DIST } from '../../../scripts/static-server.mjs'

const ROOT = join(DIST, '..')
const MADE_OF = ['src', 'public', 'scripts', 'index.html', 'vite.config.ts', 'package.json', 'package-lock.json']

function newestMs(path: string): number {
  const own = statSync(path)
  if (!own.isDirectory()) return own.mtimeMs
  return Math.max(own.mtimeMs, ...readdirSync(path).map((name) => newestMs(join(path, name))))
}

/** Runs the production build into a folder. */
export function build(environment: Readonly<Record<string, string>> = {}): void {
  execFileSync(process.execPath, [join(ROOT, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'warn'], {
    cwd: ROOT,
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, NODE_ENV: 'production', ...environment },
  })
}

export default function setup(): void {
  const worker = join(DIST, 'sw.js')
  const isFresh =
    existsSync(worker) && statSync(worker).mtimeMs > Math.max(...MADE_OF.map((name) => newestMs(join(ROOT, name))))
  if (!isFresh) build()
}
