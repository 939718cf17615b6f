/** Brings node_modules to what package-lock.json says, and does nothing when it already is. */
import { spawnSync } from 'node:child_process'
import { existsSync, lstatSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

export const ROOT = join(import.meta.dirname, '..')

/**
 * @param {string} path
 * @returns {Record<string, { version?: string, optional?: boolean, devOptional?: boolean }>}
 */
function packagesOf(path) {
  return JSON.parse(readFileSync(path, 'utf8')).packages ?? {}
}

/** True when every package of the lock file is installed in its version; optional ones depend on the machine. */
export function isInstalled() {
  const installedPath = join(ROOT, 'node_modules', '.package-lock.json')
  if (!existsSync(installedPath)) return false
  const installed = packagesOf(installedPath)
  return Object.entries(packagesOf(join(ROOT, 'package-lock.json'))).every(
    ([name, { version, optional, devOptional }]) =>
      name === '' || optional === true || devOptional === true || installed[name]?.version === version,
  )
}

/** True when node_modules is a link: others use the folder it leads to, and `npm ci` would empty it for all of them. */
export function isShared() {
  return lstatSync(join(ROOT, 'node_modules'), { throwIfNoEntry: false })?.isSymbolicLink() === true
}

/**
 * Stops with a sentence when Node is too old for the tools, then installs what is missing; a shared folder is left as it is.
 */
export function install() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Node 20.19 or newer is needed; this is ${process.versions.node}.`)
    process.exit(1)
  }
  if (isInstalled()) return
  if (isShared()) {
    console.warn('node_modules is a link to a shared folder that differs from package-lock.json; it is used as it is.')
    return
  }
  console.log('Installing packages (npm ci) …')
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: ROOT,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  })
  if (status === 0) return
  console.error('npm ci failed, see above.')
  process.exit(1)
}

/**
 * Runs one of the installed tools with this Node.
 * @param {string} script path below node_modules
 * @param {readonly string[]} args
 * @returns {boolean} whether it succeeded
 */
export function runTool(script, args) {
  const { status } = spawnSync(process.execPath, [join(ROOT, 'node_modules', script), ...args], {
    cwd: ROOT,
    stdio: 'inherit',
  })
  return status === 0
}

export const TOOLS = {
  tsc: 'typescript/bin/tsc',
  biome: '@biomejs/biome/bin/biome',
  vite: 'vite/bin/vite.js',
  vitest: 'vitest/vitest.mjs',
  knip: 'knip/bin/knip.js',
}
