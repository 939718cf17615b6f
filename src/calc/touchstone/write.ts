/** Writes a network as a Touchstone file of version 1.1 or 2.0: to the last digit, so that what is read back is the same. */
import { unnormalised } from './assemble.ts'
import { HZ_PER, type ModePort, type Network, type NumberFormat, type TouchstoneUnit } from './types.ts'

export type WriteOptions = {
  readonly version: '1' | '2'
  readonly unit: TouchstoneUnit
  readonly format: NumberFormat
  readonly comments: readonly string[]
}

/** Pairs of figures on one line of three ports and more. */
const PAIRS_A_LINE = 4

/** Version 1 knows one reference resistance and no modes: a network with several is written as version 2. */
export function writeTouchstone(network: Network, options: WriteOptions): string {
  const { parameter, portCount: n, hz, referenceOhm, modes } = network
  const isSecond = options.version === '2' || modes !== undefined || new Set(referenceOhm).size > 1
  const lines = [
    ...options.comments.map((comment) => `! ${comment.replaceAll(/[^\x20-\x7E]/g, '?')}`),
    ...(isSecond ? ['[Version] 2.0'] : []),
    `# ${options.unit} ${parameter} ${options.format} R ${referenceOhm[0] ?? 50}`,
    ...(isSecond
      ? [
          `[Number of Ports] ${n}`,
          ...(n === 2 ? ['[Two-Port Data Order] 21_12'] : []),
          `[Number of Frequencies] ${hz.length}`,
          `[Reference] ${referenceOhm.join(' ')}`,
          '[Matrix Format] Full',
          ...(modes === undefined ? [] : [`[Mixed-Mode Order] ${modes.map(modeText).join(' ')}`]),
          '[Network Data]',
        ]
      : []),
  ]
  for (let k = 0; k < hz.length; k++) lines.push(...rowsAt(network, k, options, isSecond))
  if (isSecond) lines.push('[End]')
  return `${lines.join('\r\n')}\r\n`
}

const modeText = (mode: ModePort): string =>
  mode.is === 'single' ? `S${mode.port}` : `${mode.is === 'common' ? 'C' : 'D'}${mode.ports.join(',')}`

function rowsAt(network: Network, k: number, { unit, format }: WriteOptions, isSecond: boolean): readonly string[] {
  const { portCount: n, parameter, referenceOhm, re, im } = network
  const pairs: string[] = []
  for (let row = 0; row < n; row++)
    for (let column = 0; column < n; column++) {
      const [i, j] = n === 2 ? [column, row] : [row, column]
      const at = (k * n + i) * n + j
      const scale = isSecond ? 1 : unnormalised(parameter, i, j, referenceOhm)
      pairs.push(pairText((re[at] as number) / scale, (im[at] as number) / scale, format))
    }
  const f = String((network.hz[k] as number) / HZ_PER[unit])
  if (n <= 2) return [[f, ...pairs].join(' ')]
  const rows: string[] = []
  for (let row = 0; row < n; row++)
    for (let from = 0; from < n; from += PAIRS_A_LINE)
      rows.push(pairs.slice(row * n + from, row * n + Math.min(n, from + PAIRS_A_LINE)).join(' '))
  return [`${f} ${rows[0]}`, ...rows.slice(1)]
}

const DEG_PER_RAD = 180 / Math.PI
/** 20·log10 of nothing: low enough to be nothing, and a number. */
const NOTHING_DB = -1000

function pairText(x: number, y: number, format: NumberFormat): string {
  if (format === 'RI') return `${x} ${y}`
  const magnitude = Math.hypot(x, y)
  const angle = Math.atan2(y, x) * DEG_PER_RAD
  return format === 'MA'
    ? `${magnitude} ${angle}`
    : `${magnitude === 0 ? NOTHING_DB : 20 * Math.log10(magnitude)} ${angle}`
}
