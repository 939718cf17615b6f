/** From the figures of a file to matrices over frequency: how many ports, which order, which format, what is normalised. */
import type { Figures } from './figures.ts'
import type { Keywords } from './keywords.ts'
import type { OptionLine } from './option-line.ts'
import {
  HZ_PER,
  MOST_PORTS,
  type ModePort,
  type Network,
  type NumberFormat,
  refusedAt,
  type TouchstoneReading,
  type TouchstoneRefused,
} from './types.ts'

type Parts = {
  readonly figures: Figures
  readonly option: OptionLine
  readonly keywords: Keywords
  readonly referenceOhm: readonly number[]
  readonly namedPorts: number | undefined
  readonly comments: readonly string[]
}

export function assemble(parts: Parts): TouchstoneReading {
  const { figures, option, keywords, comments } = parts
  const isSecond = keywords.version !== undefined
  const portCount = keywords.portCount ?? parts.namedPorts ?? portsByShape(figures)
  if (isSecond && keywords.portCount === undefined)
    return refusedAt('[Number of Ports] is missing; version 2.0 needs it.')
  if (portCount === undefined || portCount < 1 || portCount > MOST_PORTS)
    return refusedAt(
      'How many ports there are cannot be told from the figures: name the file .s1p, .s2p or .s4p.',
      firstLine(figures),
    )
  const referenceOhm = referencesOf(parts, portCount)
  if ('ok' in referenceOhm) return referenceOhm
  const modes = keywords.modes
  if (modes !== undefined) {
    const wrong = modesWrong(modes, portCount)
    if (wrong) return wrong
  }
  const places = placesOf(portCount, keywords, isSecond)
  const length = 1 + 2 * places.length
  const end = isSecond || portCount !== 2 ? figures.count() : noiseAt(figures, length)
  if (end === 0) return refusedAt('There are no figures behind the option line.')
  const left = end % length
  if (left !== 0) {
    const line = figures.line(end - left)
    return refusedAt(
      `Line ${line}: ${portCount === 1 ? '1 port takes' : `${portCount} ports take`} ${length} figures a frequency, and ${left} are left over.`,
      line,
    )
  }
  const count = end / length
  if (keywords.frequencyCount !== undefined && keywords.frequencyCount !== count)
    return refusedAt(
      `[Number of Frequencies] says ${keywords.frequencyCount} and there ${count === 1 ? 'is' : 'are'} ${count}.`,
    )
  const network = fill({ figures, option, portCount, count, places, referenceOhm, isSecond, modes })
  if ('ok' in network) return network
  return {
    ok: true,
    network,
    version: isSecond ? '2' : '1',
    unit: option.unit,
    format: option.format,
    comments,
    remarks: remarksOf(parts, portCount, end < figures.count(), isSecond),
  }
}

const firstLine = (figures: Figures): number | undefined => (figures.count() > 0 ? figures.line(0) : undefined)

/** 3 figures in the first row are one port, 7 three; 9 are two ports, or four where the next row has 8. */
function portsByShape({ rows, count }: Figures): number | undefined {
  const widths = rows.slice(0, 2).map((from, i) => (rows[i + 1] ?? count()) - from)
  if (widths[0] === 3) return 1
  if (widths[0] === 7) return 3
  if (widths[0] === 9) return widths[1] === 8 ? 4 : 2
  return undefined
}

function referencesOf({ referenceOhm, option }: Parts, portCount: number): readonly number[] | TouchstoneRefused {
  const given = referenceOhm.length > 0 ? referenceOhm : option.referenceOhm
  if (given.some((ohm) => !(ohm > 0))) return refusedAt('[Reference] takes resistances above 0, one a port.')
  if (given.length === 1) return Array.from({ length: portCount }, () => given[0] as number)
  if (given.length !== portCount)
    return refusedAt(
      `There are ${given.length} reference resistances for ${portCount === 1 ? '1 port' : `${portCount} ports`}; give one a port.`,
    )
  return given
}

/** Every port once alone, or twice as the two modes of one pair. */
function modesWrong(modes: readonly ModePort[], portCount: number): TouchstoneRefused | undefined {
  const used = new Map<string, number>()
  for (const mode of modes) {
    const key = mode.is === 'single' ? `${mode.port}` : [...mode.ports].sort((a, b) => a - b).join()
    used.set(`${mode.is} ${key}`, (used.get(`${mode.is} ${key}`) ?? 0) + 1)
  }
  const ports = modes.flatMap((mode) => (mode.is === 'single' ? [mode.port, mode.port] : [...mode.ports]))
  const isWhole =
    modes.length === portCount &&
    [...used.values()].every((times) => times === 1) &&
    modes.every((mode) => mode.is === 'single' || hasOther(mode, modes)) &&
    Array.from({ length: portCount }, (_, i) => i + 1).every((port) => ports.filter((one) => one === port).length === 2)
  return isWhole
    ? undefined
    : refusedAt('[Mixed-Mode Order] has to name every port once: alone as S, or in a pair as D and as C.')
}

const hasOther = (mode: Exclude<ModePort, { is: 'single' }>, modes: readonly ModePort[]): boolean =>
  modes.some((one) => one.is !== 'single' && one.is !== mode.is && one.ports.every((port) => mode.ports.includes(port)))

/** Row and column of each pair of figures, in the order of the file. */
function placesOf(n: number, { order, matrix }: Keywords, isSecond: boolean): readonly (readonly [number, number])[] {
  const all: [number, number][] = []
  for (let row = 0; row < n; row++)
    for (let column = 0; column < n; column++) {
      if (matrix === 'lower' && column > row) continue
      if (matrix === 'upper' && column < row) continue
      all.push([row, column])
    }
  // the odd order of two ports: 21 before 12
  const isOdd = n === 2 && all.length === 4 && (isSecond ? order !== '12_21' : true)
  return isOdd ? all.map(([row, column]) => [column, row] as const) : all
}

/** Where noise figures begin behind two ports of version 1: a row of five whose frequency falls back. */
function noiseAt({ rows, value, count }: Figures, length: number): number {
  for (const [i, from] of rows.entries()) {
    if (from === 0 || from % length !== 0) continue
    const width = (rows[i + 1] ?? count()) - from
    if (width === 5 && value(from) < value(from - length)) return from
  }
  return count()
}

function fill(q: {
  readonly figures: Figures
  readonly option: OptionLine
  readonly portCount: number
  readonly count: number
  readonly places: readonly (readonly [number, number])[]
  readonly referenceOhm: readonly number[]
  readonly isSecond: boolean
  readonly modes: readonly ModePort[] | undefined
}): Network | TouchstoneRefused {
  const { figures, option, portCount: n, count, places, referenceOhm } = q
  const hz = new Float64Array(count)
  const re = new Float64Array(count * n * n)
  const im = new Float64Array(count * n * n)
  const length = 1 + 2 * places.length
  const isSymmetric = places.length < n * n
  for (let k = 0; k < count; k++) {
    const from = k * length
    const f = figures.value(from) * HZ_PER[option.unit]
    const line = figures.line(from)
    if (f < 0) return refusedAt(`Line ${line}, column 1: a frequency below 0.`, line, 1)
    if (k > 0 && f <= (hz[k - 1] as number))
      return refusedAt(`Line ${line}: the frequency does not rise; each has to be above the one before.`, line, 1)
    hz[k] = f
    for (const [i, [row, column]] of places.entries()) {
      const scale = q.isSecond ? 1 : unnormalised(option.parameter, row, column, referenceOhm)
      const [x, y] = complexOf(figures.value(from + 1 + 2 * i), figures.value(from + 2 + 2 * i), option.format)
      if (!Number.isFinite(x * scale) || !Number.isFinite(y * scale)) {
        const at = figures.line(from + 1 + 2 * i)
        return refusedAt(`Line ${at}: a figure too large to calculate with.`, at)
      }
      const at = (k * n + row) * n + column
      re[at] = x * scale
      im[at] = y * scale
      if (!isSymmetric) continue
      const other = (k * n + column) * n + row
      re[other] = x * scale
      im[other] = y * scale
    }
  }
  return {
    parameter: option.parameter,
    portCount: n,
    hz,
    re,
    im,
    referenceOhm,
    ...(q.modes === undefined ? {} : { modes: q.modes }),
  }
}

const RAD_PER_DEG = Math.PI / 180

function complexOf(first: number, second: number, format: NumberFormat): readonly [number, number] {
  if (format === 'RI') return [first, second]
  const magnitude = format === 'DB' ? 10 ** (first / 20) : first
  return [magnitude * Math.cos(second * RAD_PER_DEG), magnitude * Math.sin(second * RAD_PER_DEG)]
}

/** Version 1 writes Y, Z, H and G over the reference: what brings a figure back to ohms, siemens or a pure number. */
export function unnormalised(
  parameter: Network['parameter'],
  row: number,
  column: number,
  referenceOhm: readonly number[],
): number {
  const [r1, r2] = [referenceOhm[row] ?? 50, referenceOhm[column] ?? 50]
  switch (parameter) {
    case 'S':
      return 1
    case 'Z':
      return Math.sqrt(r1 * r2)
    case 'Y':
      return 1 / Math.sqrt(r1 * r2)
    case 'H':
      return row !== column ? 1 : row === 0 ? r1 : 1 / r1
    case 'G':
      return row !== column ? 1 : row === 0 ? 1 / r1 : r1
  }
}

function remarksOf({ keywords }: Parts, portCount: number, hasNoise: boolean, isSecond: boolean): readonly string[] {
  const remarks: string[] = []
  if (hasNoise || keywords.noiseCount !== undefined) remarks.push('The noise figures behind the network were left out.')
  if (
    isSecond &&
    portCount === 2 &&
    keywords.order === undefined &&
    keywords.matrix !== 'lower' &&
    keywords.matrix !== 'upper'
  )
    remarks.push('[Two-Port Data Order] is missing; taken as 21_12.')
  return remarks
}
