/**
 * Carries out the recipes of DEVELOPERS.md literally, each in a copy of this tree: makes the edits, records, then proves
 * that no file was touched that the recipe does not name, that types hold, and that the projects unit and kept are green.
 *   node scripts/recipes.mjs [part of a title [test file …]]
 */
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { install, ROOT } from './install.mjs'
import { RECIPE_EDITS } from './recipe-edits.mjs'
import { isNamed, recipesOf } from './recipe-text.mjs'

/** Everything that is or would be in the repository. @param {string} folder */
function listed(folder) {
  const { stdout } = spawnSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: folder,
    encoding: 'utf8',
  })
  // A linked node_modules is no folder, so that .gitignore does not cover it.
  return [...new Set(stdout.split('\0').filter((path) => path !== '' && path !== 'node_modules'))]
}

/** @param {string} folder @param {readonly string[]} paths */
const hashes = (folder, paths) =>
  new Map(
    paths.map((path) => [
      path,
      createHash('sha1')
        .update(readFileSync(join(folder, path)))
        .digest('hex'),
    ]),
  )

/** A copy of the tree that is a repository of its own, with the installed packages linked. */
function copyTree() {
  const folder = mkdtempSync(join(tmpdir(), 'stillpin-recipe-'))
  for (const path of listed(ROOT)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    cpSync(join(ROOT, path), join(folder, path))
  }
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'))
  spawnSync('git', ['init', '-q'], { cwd: folder })
  return folder
}

/** @param {string} folder @param {import('./recipe-edits.mjs').Edit} edit */
function make(folder, edit) {
  const path = join(folder, edit.file)
  if ('text' in edit) {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, edit.text)
    return
  }
  const before = readFileSync(path, 'utf8')
  const after = before.replace(edit.find, edit.put)
  if (after === before) throw new Error(`${edit.file} has no place for the edit: ${edit.find}`)
  writeFileSync(path, after)
}

/** @param {string} folder @param {string} script @param {readonly string[]} args @returns {string | undefined} what went wrong */
function failureOf(folder, script, args) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(folder, script), ...args], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  })
  if (status === 0) return undefined
  const telling = `${stdout}\n${stderr}`.split('\n').filter((line) => /error|FAIL|expected|^\s*[-+] /i.test(line))
  return [`${script} ${args.join(' ')} failed`, ...telling.slice(0, 30)].join('\n    ')
}

const [wanted = '', ...tests] = process.argv.slice(2)

/** @param {import('./recipe-text.mjs').Recipe} recipe @param {readonly import('./recipe-edits.mjs').Edit[]} edits */
function carryOut({ files: named }, edits) {
  const folder = copyTree()
  try {
    const before = hashes(folder, listed(folder))
    for (const edit of edits) make(folder, edit)
    const failures = [failureOf(folder, 'scripts/record.mjs', [])]
    const after = hashes(folder, listed(folder))
    const touched = [...after].filter(([path, hash]) => before.get(path) !== hash).map(([path]) => path)
    for (const path of touched)
      if (!named.some((name) => isNamed(name, path))) failures.push(`touched without being named: ${path}`)
    for (const name of named)
      if (!touched.some((path) => isNamed(name, path))) failures.push(`named but not touched: ${name}`)
    failures.push(failureOf(folder, 'node_modules/typescript/bin/tsc', ['-p', 'tsconfig.test.json']))
    failures.push(failureOf(folder, 'node_modules/@biomejs/biome/bin/biome', ['check', '.']))
    failures.push(
      failureOf(folder, 'node_modules/vitest/vitest.mjs', ['run', '--project', 'unit', '--project', 'kept', ...tests]),
    )
    return failures.filter((failure) => failure !== undefined)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

install()
const count = { passed: 0, failed: 0 }
for (const [title, edits] of Object.entries(RECIPE_EDITS)) {
  if (!title.toLowerCase().includes(wanted.toLowerCase())) continue
  const recipe = recipesOf().find((each) => each.title === title)
  const failures = recipe === undefined ? ['DEVELOPERS.md has no such recipe'] : carryOut(recipe, edits)
  count[failures.length === 0 ? 'passed' : 'failed']++
  console.log(`${failures.length === 0 ? 'carried out' : 'FAILED'}: ${title}, ${recipe?.files.length ?? 0} files`)
  for (const failure of failures) console.log(`  ${failure}`)
}
console.log(`${count.passed} passed, ${count.failed} failed`)
process.exitCode = count.failed === 0 && count.passed > 0 ? 0 : 1
