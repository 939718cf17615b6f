/** A surge as a netlist for ngspice, and its peaks. */
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import type { Drawn, RandomSurge, Wired } from './random-surges.ts'

const SOURCE: Readonly<Record<string, string>> = {
  wf4: '1.09405*(exp(-11354*time)-exp(-647265*time))',
  wf5a: '2.33354*(exp(-12632.6*time)-exp(-43604.6*time))',
  'iec-1.2-50': '1.037*(1-exp(-time/0.407u))*exp(-time/68.22u)',
}

function sourceOf({ pulse }: RandomSurge, at: Drawn): string | undefined {
  if (!pulse.ring) return SOURCE[pulse.waveform]
  const angle = Math.atan(2 * pulse.ring.q)
  const norm = 1 / (Math.sin(angle) * Math.exp(-angle / (2 * pulse.ring.q)))
  return `${norm}*sin(${2 * Math.PI * at.ringHz}*time)*exp(-${(Math.PI * at.ringHz) / pulse.ring.q}*time)`
}

/** undefined for a pulse without a formula in the simulator. */
export function netlistOf(
  surge: RandomSurge,
  at: Drawn,
  { circuit, restFeedV, plan, load }: Wired,
): string | undefined {
  const source = sourceOf(surge, at)
  const { clamp, feed } = circuit
  if (source === undefined || !clamp) return undefined
  const name = (node: number) => (node === 0 ? '0' : `n${node}`)
  const parts = circuit.elements.flatMap((each, i) => {
    const [a, b] = [name(each.a), name(each.b)]
    if (each.is === 'R') return [`R${i} ${a} ${b} ${each.ohm}`]
    if (each.is === 'C') return [`C${i} ${a} ${b} ${each.farads}`]
    return [`L${i} ${a} x${i} ${each.henries}`, `RL${i} x${i} ${b} ${each.ohm}`]
  })
  const v = `v(${name(clamp.node)})`
  const [lowV, lowOhm] = clamp.bidirectional ? [clamp.breakdownV, clamp.ohm] : [1, 0.02]
  return [
    'surge',
    `Bs s 0 V = ${restFeedV}+${at.sign * surge.pulse.openV}*${source}`,
    `Rs s ${name(feed.node)} ${feed.ohm}`,
    ...parts,
    `Bz ${name(clamp.node)} 0 I = 1e-7*${v} + (${v}>${clamp.breakdownV} ? (${v}-${clamp.breakdownV})/${clamp.ohm} : (${v}<-${lowV} ? (${v}+${lowV})/${lowOhm} : 0))`,
    '.options reltol=1e-4 abstol=1e-9 vntol=1e-6',
    `.save v(${name(load)})`,
    `.tran ${plan.mostSec / 2} ${plan.endSec} 0 ${plan.mostSec / 2}`,
    '.end',
  ].join('\n')
}

type Answer = { readonly peakV?: Readonly<Record<string, number>>; readonly error?: string }

/** A few at a time: that build gives no memory back. */
const AT_ONCE = 10

export const peaksOf = (netlists: readonly string[]): readonly Answer[] =>
  Array.from({ length: Math.ceil(netlists.length / AT_ONCE) }, (_, i) =>
    someOf(netlists.slice(i * AT_ONCE, (i + 1) * AT_ONCE)),
  ).flat()

function someOf(netlists: readonly string[]): readonly Answer[] {
  const ran = spawnSync(process.execPath, [join(import.meta.dirname, 'transient.mjs')], {
    input: JSON.stringify(netlists),
    encoding: 'utf8',
    maxBuffer: 64 << 20,
  })
  if (ran.status !== 0) throw new Error(`the simulator stopped: ${ran.stderr.slice(0, 500)}`)
  return JSON.parse(ran.stdout) as Answer[]
}
