/** A pair through a filter: the two modes of a four-port, each as a two-port of its own. */
import { entryAt } from './two-port.ts'
import type { ModePort, Network } from './types.ts'

/** Ports at the source end and at the load end, the wires of a pair in the same order at both. */
export type PairPorts = { readonly near: readonly [number, number]; readonly far: readonly [number, number] }

export type PairModes =
  | {
      readonly ok: true
      readonly differential: Network
      readonly common: Network
      /** largest of what passes from one mode to the other, in dB of the incoming one; undefined: none at all */
      readonly conversionDb: number | undefined
    }
  | { readonly ok: false; readonly asks?: 'pairs'; readonly message: string }

/** Where each mode of each end stands in the file; undefined where it is written port by port. */
function placed(network: Network): { readonly d: readonly number[]; readonly c: readonly number[] } | undefined {
  const pairs = network.modes?.map((mode, at) => ({ mode, at })) ?? []
  const of = (wanted: ModePort['is']) => pairs.filter(({ mode }) => mode.is === wanted)
  const [differential, common] = [of('differential'), of('common')]
  const key = ({ mode }: { mode: ModePort }) =>
    mode.is === 'single' ? '' : [...mode.ports].sort((a, b) => a - b).join()
  const ordered = differential.map((one) => common.find((other) => key(other) === key(one))?.at)
  if (differential.length !== 2 || ordered.some((at) => at === undefined)) return undefined
  return { d: differential.map(({ at }) => at), c: ordered as number[] }
}

/**
 * Differential and common mode of a pair, S with references 2·R and R/2. What goes from one mode into the other is left
 * out of both and told. The four-port is written in modes, or port by port with `ports` said: M = [[1,−1],[1,1]]/√2.
 */
export function pairModes(network: Network, ports?: PairPorts): PairModes {
  if (network.portCount !== 4)
    return {
      ok: false,
      message: `A pair through a filter has four ports and this file has ${network.portCount}: measure both wires together as .s4p, or take each wire as a line of its own.`,
    }
  if (network.parameter !== 'S')
    return { ok: false, message: 'The modes of a pair are taken from S-parameters: export the four ports as S.' }
  if (new Set(network.referenceOhm).size !== 1)
    return { ok: false, message: 'The four ports have different references: export them all at one resistance.' }
  const written = placed(network)
  if (written !== undefined) return split(network, written.d, written.c)
  if (network.modes !== undefined)
    return {
      ok: false,
      message: 'The file names modes of one pair only: both ends have to be pairs, as D1,2 C1,2 D3,4 C3,4.',
    }
  if (ports === undefined)
    return {
      ok: false,
      asks: 'pairs',
      message:
        'The file does not say which ports are a pair: choose the two at the source end and the two at the load end.',
    }
  return split(inModes(network, ports), [0, 1], [2, 3])
}

/**
 * One mode as one leg of the pair meets it, so that its parts are those of a leg: R of one port at both ends, in place of
 * R/2 in common mode (both legs side by side) and 2·R in differential mode (one after the other). S stays as it is.
 */
export function oneLeg(network: Network, mode: 'common' | 'differential'): Network {
  const factor = mode === 'common' ? 2 : 1 / 2
  return { ...network, referenceOhm: network.referenceOhm.map((ohm) => factor * ohm) }
}

function split(network: Network, d: readonly number[], c: readonly number[]): PairModes {
  const ohm = network.referenceOhm[0] ?? 50
  let most = 0
  for (let k = 0; k < network.hz.length; k++)
    for (const i of d)
      for (const j of c)
        for (const [x, y] of [
          [i, j],
          [j, i],
        ] as const)
          most = Math.max(most, Math.hypot(...entryAt(network, k, x, y)))
  return {
    ok: true,
    differential: { ...part(network, d), referenceOhm: [2 * ohm, 2 * ohm] },
    common: { ...part(network, c), referenceOhm: [ohm / 2, ohm / 2] },
    conversionDb: most > 0 ? 20 * Math.log10(most) : undefined,
  }
}

/** Rows and columns of two places. */
function part(network: Network, at: readonly number[]): Omit<Network, 'referenceOhm'> {
  const count = network.hz.length
  const re = new Float64Array(4 * count)
  const im = new Float64Array(4 * count)
  for (let k = 0; k < count; k++)
    for (const [i, row] of at.entries())
      for (const [j, column] of at.entries())
        [re[4 * k + 2 * i + j], im[4 * k + 2 * i + j]] = entryAt(network, k, row, column) as [number, number]
  return { parameter: 'S', portCount: 2, hz: network.hz, re, im }
}

/** M·S·Mᵀ, rows D near, D far, C near, C far. */
function inModes(network: Network, { near, far }: PairPorts): Network {
  const count = network.hz.length
  const re = new Float64Array(16 * count)
  const im = new Float64Array(16 * count)
  const rows = [
    { ports: near, second: -1 },
    { ports: far, second: -1 },
    { ports: near, second: 1 },
    { ports: far, second: 1 },
  ]
  for (let k = 0; k < count; k++)
    for (const [i, to] of rows.entries())
      for (const [j, from] of rows.entries()) {
        let [x, y] = [0, 0]
        for (const [p, signP] of [
          [to.ports[0], 1],
          [to.ports[1], to.second],
        ] as const)
          for (const [q, signQ] of [
            [from.ports[0], 1],
            [from.ports[1], from.second],
          ] as const) {
            const [sRe, sIm] = entryAt(network, k, p - 1, q - 1)
            x += (signP * signQ * sRe) / 2
            y += (signP * signQ * sIm) / 2
          }
        re[16 * k + 4 * i + j] = x
        im[16 * k + 4 * i + j] = y
      }
  return { ...network, re, im }
}
