/** What the scripts do to node_modules: run from a copy of the script, with an npm that only writes down that it was called. */
import { spawnSync } from 'node:child_process'
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'

const SCRIPT = join(import.meta.dirname, '../scripts/install.mjs')
let root = ''

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'install-'))
  for (const folder of ['scripts', 'bin', 'elsewhere']) mkdirSync(join(root, folder))
  cpSync(SCRIPT, join(root, 'scripts/install.mjs'))
  writeFileSync(join(root, 'package-lock.json'), '{"packages":{"node_modules/a":{"version":"1.0.0"}}}')
  writeFileSync(join(root, 'bin/npm'), '#!/bin/sh\necho "$@" > called\n')
  chmodSync(join(root, 'bin/npm'), 0o755)
})
afterEach(() => rmSync(root, { recursive: true }))

function install() {
  const code = "import('./scripts/install.mjs').then(({ install }) => install())"
  const env = { ...process.env, PATH: `${join(root, 'bin')}${delimiter}${process.env['PATH']}` }
  const { status, stderr } = spawnSync(process.execPath, ['-e', code], { cwd: root, env, encoding: 'utf8' })
  return { status, stderr, isCalled: existsSync(join(root, 'called')) }
}

it('never empties a shared folder: says so and goes on', () => {
  symlinkSync(join(root, 'elsewhere'), join(root, 'node_modules'))
  const { status, stderr, isCalled } = install()
  expect([status, isCalled]).toEqual([0, false])
  expect(stderr).toContain('shared folder')
})

it('installs into a folder of its own, and where there is none', () => {
  expect(install()).toMatchObject({ status: 0, isCalled: true })
  rmSync(join(root, 'called'))
  mkdirSync(join(root, 'node_modules'))
  expect(install()).toMatchObject({ status: 0, isCalled: true })
})
