import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { describe, expect, it } from 'vitest'

const SRC = join(import.meta.dirname, '..', 'src')

/** Each folder may import from itself and from these. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  'main.tsx': ['ui', 'state', 'store', 'offline'],
  ui: ['state', 'store', 'guide', 'calc', 'reference', 'offline'],
  state: ['store', 'worker', 'guide', 'calc', 'reference'],
  store: ['guide', 'calc', 'reference'],
  worker: ['guide', 'calc', 'reference'],
  guide: ['calc', 'reference'],
  calc: ['reference'],
  reference: [],
  offline: [],
}

/** Where each package may be imported: a folder, or one file. Any other package is refused. */
const PACKAGES: readonly { readonly name: RegExp; readonly where: readonly string[] }[] = [
  { name: /^preact(\/|$)/, where: ['main.tsx', 'ui'] },
  { name: /^@preact\/signals$/, where: ['state', 'ui', 'offline'] },
  { name: /^uqr$/, where: ['ui/paper/qr.ts'] },
  { name: /^@fontsource\//, where: ['ui'] },
  { name: /^idb$/, where: ['store/db.ts'] },
  { name: /^mathjs(\/|$)/, where: ['state/expression.ts', 'state/mathjs-number.d.ts'] },
  { name: /^minisearch$/, where: ['state/search.ts', 'state/search-index.ts', 'state/search-terms.ts'] },
  { name: /^uplot(\/|$)/, where: ['ui/parts/trace-plot.tsx'] },
  { name: /^workbox-window$/, where: ['offline'] },
  { name: /^workbox-(precaching|routing)$/, where: ['offline/worker'] },
]

const LONGEST_FILE = 300

/** Rooms of src/calc that compute and say nothing; what their numbers mean is written in explain/ and checks/. */
const PHYSICS_ROOMS = ['network', 'loading', 'power', 'surge', 'bounds'] as const

type File = { readonly path: string; readonly text: string; readonly imports: readonly string[] }

/** `import … from`, `export … from`; the names between are words, braces and commas only. */
const STATIC_IMPORT = /^\s*(?:import|export)\s+[\w*{},\s]*?\bfrom\s*(['"])([^'"\n]+)\1/gm
const TYPE_IMPORT = /^\s*(?:import|export)\s+type\s+[\w*{},\s]*?\bfrom\s*(['"])([^'"\n]+)\1/gm

function importsOf(text: string): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '')
  const found = [STATIC_IMPORT, /^\s*import\s*(['"])([^'"\n]+)\1/gm, /\bimport\s*\(\s*(['"])([^'"\n]+)\1/g]
  return found.flatMap((form) => [...code.matchAll(form)].map((match) => match[2] ?? ''))
}

const files: readonly File[] = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => /\.tsx?$/.test(path) && statSync(join(SRC, path)).isFile())
  .map((path) => {
    const text = readFileSync(join(SRC, path), 'utf8')
    return { path, text, imports: importsOf(text) }
  })

const folderOf = (path: string): string => path.split('/')[0] ?? ''
const isInside = (path: string, place: string): boolean => path === place || path.startsWith(`${place}/`)
const isPure = (path: string): boolean => ['reference', 'calc', 'guide', 'worker'].includes(folderOf(path))
/** Asks for the address of a worker, see scripts/worker-jobs.mjs. */
const AS_JOB = /\?job$/
/** Asks for what a file gives when the app is built, see scripts/built-data.mjs. */
const AS_DATA = /\?built$/
const relativeImports = (file: File): string[] =>
  file.imports
    .filter((name) => name.startsWith('.'))
    .map((name) => normalize(join(dirname(file.path), name.replace(AS_JOB, '').replace(AS_DATA, ''))))
const packageImports = (file: File): string[] => file.imports.filter((name) => !name.startsWith('.'))

describe('the house', () => {
  it('is read by this test', () => {
    expect(files.length).toBeGreaterThan(20)
    expect(importsOf("import { a } from './a.ts'\nconst b = await import('b')\nimport './c.css'")).toEqual([
      './a.ts',
      './c.css',
      'b',
    ])
  })

  it('has no folder but the known ones', () => {
    expect([...new Set(files.map(({ path }) => folderOf(path)))].filter((folder) => !(folder in MAY_IMPORT))).toEqual(
      [],
    )
  })

  it('imports one way only', () => {
    const offenders = files.flatMap((file) =>
      relativeImports(file)
        .filter((target) => {
          const from = folderOf(file.path)
          const to = folderOf(target)
          return to !== from && !MAY_IMPORT[from]?.includes(to)
        })
        .map((target) => `${file.path} imports ${target}`),
    )
    expect(offenders).toEqual([])
  })

  it('keeps every package inside its fence', () => {
    const offenders = files.flatMap((file) =>
      packageImports(file)
        .filter(
          (name) =>
            !PACKAGES.some((fence) => fence.name.test(name) && fence.where.some((place) => isInside(file.path, place))),
        )
        .map((name) => `${file.path} imports ${name}`),
    )
    expect(offenders).toEqual([])
  })

  it('loads mathjs only when it is needed', () => {
    const isStatic = ({ text }: File) =>
      [...text.replace(TYPE_IMPORT, '').matchAll(STATIC_IMPORT)].some((match) => match[2]?.startsWith('mathjs'))
    expect(files.filter(isStatic).map(({ path }) => path)).toEqual([])
  })

  it('keeps the pure folders away from the page, the clock and chance', () => {
    const impure =
      /\b(document|window|navigator|localStorage|indexedDB|fetch|setTimeout|Math\.random|Date\.now|new Date)\b[.(]/
    const strip = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$|'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/gm, '')
    expect(files.filter(({ path, text }) => isPure(path) && impure.test(strip(text))).map(({ path }) => path)).toEqual(
      [],
    )
  })

  it('writes every relative import with its extension, and each leads to a file', () => {
    const offenders = files.flatMap((file) =>
      file.imports
        .filter((name) => name.startsWith('.'))
        .map((name) => name.replace(AS_JOB, '').replace(AS_DATA, ''))
        .filter((name) => !/\.(tsx?|css|json)$/.test(name) || !existsSync(join(SRC, dirname(file.path), name)))
        .map((name) => `${file.path} imports ${name}`),
    )
    expect(offenders).toEqual([])
  })

  it('starts workers in one place, and only on jobs', () => {
    const asked = files.flatMap(({ path, imports }) =>
      imports.filter((name) => AS_JOB.test(name)).map((name) => `${path} ${name}`),
    )
    expect(asked.length).toBeGreaterThan(0)
    expect(asked.filter((line) => !/^state\/work\.ts \.\.\/worker\/[\w-]+\.ts\?job$/.test(line))).toEqual([])
    // In offline that name is Workbox's, which drives the service worker.
    const starting = files.filter(({ path, text }) => folderOf(path) !== 'offline' && /\bnew Worker\(/.test(text))
    expect(starting.map(({ path }) => path)).toEqual(['state/work.ts'])
  })

  it('has no barrels and no drawers for odds and ends', () => {
    const barrel = files.filter(({ path, text }) => /(^|\/)index\.tsx?$/.test(path) || /^\s*export\s*\*/m.test(text))
    const drawer = files.filter(({ path }) => /(^|\/)(utils?|common|helpers?|misc|shared)(\/|\.tsx?$)/.test(path))
    expect([...barrel, ...drawer].map(({ path }) => path)).toEqual([])
  })

  it('keeps the physics in numbers: no sentence, no answer, nothing of a check', () => {
    const strip = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
    const speaks = (file: File) =>
      relativeImports(file).some((target) => /^calc\/(checks|explain)\//.test(target)) ||
      /\b(?:Result|Finding|Basis|formatQuantity)\b/.test(strip(file.text))
    const physics = files.filter(({ path }) => PHYSICS_ROOMS.some((room) => isInside(path, `calc/${room}`)))
    for (const room of PHYSICS_ROOMS)
      expect(
        files.some(({ path }) => isInside(path, `calc/${room}`)),
        room,
      ).toBe(true)
    const speaking = physics.filter(speaks).map(({ path }) => path.slice('calc/'.length))
    expect(speaking).toEqual([])
  })

  it('reads every table of src/reference somewhere: what no screen needs is not kept', () => {
    const EXPORTED = /^export (?:const|function) (\w+)/gm
    const unread = files
      .filter(({ path }) => folderOf(path) === 'reference')
      .flatMap(({ path, text }) => [...text.matchAll(EXPORTED)].map((match) => ({ path, name: match[1] ?? '' })))
      .filter(({ path, name }) => {
        const word = new RegExp(`\\b${name}\\b`)
        return !files.some((file) => file.path !== path && word.test(file.text))
      })
    // Read within their own file only: pieces that are exported for the tests that prove them.
    const usedAtHome = unread.filter(({ path, name }) => {
      const { text } = files.find((file) => file.path === path) ?? { text: '' }
      return text.split(new RegExp(`\\b${name}\\b`)).length > 2
    })
    expect(unread.filter((each) => !usedAtHome.includes(each)).map(({ path, name }) => `${path} ${name}`)).toEqual([])
  })

  it('has no cycle between files', () => {
    const targets = new Map(
      files.map((file) => [
        file.path,
        relativeImports({ ...file, imports: importsOf(file.text.replace(TYPE_IMPORT, '')) }),
      ]),
    )
    const done = new Set<string>()
    const cycles: string[] = []
    const visit = (path: string, trail: readonly string[]): void => {
      if (trail.includes(path)) cycles.push([...trail.slice(trail.indexOf(path)), path].join(' > '))
      if (done.has(path) || trail.includes(path)) return
      for (const next of targets.get(path) ?? []) visit(next, [...trail, path])
      done.add(path)
    }
    for (const path of targets.keys()) visit(path, [])
    expect(cycles).toEqual([])
  })

  it('has small files; tables, chapters of the tree and reference rows may be longer', () => {
    const mayBeLong = (path: string) => /^(reference|guide\/(chapters|notes|suspects|evidence))\//.test(path)
    const tooLong = files.filter(({ path, text }) => !mayBeLong(path) && text.split('\n').length > LONGEST_FILE + 1)
    expect(tooLong.map(({ path }) => path)).toEqual([])
  })

  it('switches no check off', () => {
    const tests = join(SRC, '..', 'test')
    const ours = readdirSync(tests, { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.tsx?$/.test(path))
      .map((path) => ({ path: `test/${path}`, text: readFileSync(join(tests, path), 'utf8') }))
    const off = new RegExp(['@ts-', 'biome-'].map((prefix) => `${prefix}(?:ignore|expect-error|nocheck)`).join('|'))
    const skips = new RegExp(`\\b(?:it|test|describe)\\.(?:${['skip', 'todo', 'only', 'fails'].join('|')})\\b`)
    const offenders = [...files, ...ours].filter(({ text }) => off.test(text) || skips.test(text))
    expect(offenders.map(({ path }) => path)).toEqual([])
  })

  it('runs every test in one project, and times nothing but in the bench', () => {
    const tests = join(SRC, '..', 'test')
    const named = readdirSync(tests, { recursive: true, encoding: 'utf8' }).map((path) => path.replaceAll('\\', '/'))
    const asserting = named
      .filter((path) => /\.tsx?$/.test(path) && !path.startsWith('support/'))
      .map((path) => ({ path, text: readFileSync(join(tests, path), 'utf8') }))
      .filter(({ text }) => /from 'vitest'/.test(text) && /^\s*(?:it|test)(?:\.each\(|\()/m.test(text))
    const isRun = (path: string) =>
      path.startsWith('bench/')
        ? path.endsWith('.bench.test.ts')
        : path.startsWith('e2e/')
          ? path.endsWith('.e2e.ts')
          : path.startsWith('torture/')
            ? path.endsWith('.torture.ts')
            : path.startsWith('engines/')
              ? path.endsWith('.engine.ts')
              : /\.test\.tsx?$/.test(path) && !path.includes('.bench.')
    expect(asserting.length).toBeGreaterThan(50)
    expect(asserting.filter(({ path }) => !isRun(path)).map(({ path }) => path)).toEqual([])
    const clock = new RegExp(['performance', 'hrtime', 'cpuUsage'].map((name) => `\\b${name}\\b[.(]`).join('|'))
    const timed = asserting.filter(({ path, text }) => !path.startsWith('bench/') && clock.test(text))
    expect(timed.map(({ path }) => path)).toEqual([])
  })

  it('gives the composition root 60 lines at most', () => {
    expect(readFileSync(join(SRC, 'main.tsx'), 'utf8').split('\n').length).toBeLessThanOrEqual(61)
  })
})
