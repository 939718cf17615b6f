/**
 * A tool that is wanted now and then: installed into a folder of its own beside the system's temporary files, and kept there.
 */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/**
 * The folder a package stands in, and the file of it that is asked for.
 * @param {string} name
 * @param {string} version
 * @param {string} file within the package
 */
export function onDemand(name, version, file) {
  const folder = join(tmpdir(), `stillpin-${name.replace(/\W+/g, '-').replace(/^-/, '')}-${version}`)
  const program = join(folder, 'node_modules', name, file)
  if (!existsSync(program)) {
    mkdirSync(folder, { recursive: true })
    writeFileSync(join(folder, 'package.json'), '{ "private": true }\n')
    execFileSync('npm', ['install', '--no-audit', '--no-fund', '-E', `${name}@${version}`], {
      cwd: folder,
      stdio: 'inherit',
    })
  }
  return { folder, program }
}
