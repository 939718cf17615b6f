/** Asks ngspice, in a child process, for the node voltages of some netlists. */
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'

export type Volts = readonly (readonly [number, number])[]
export type Solved = { readonly hz: readonly number[]; readonly volts: Readonly<Record<string, Volts>> }

/** One answer a netlist, in order. Throws with what ngspice said when one could not be solved. */
export function solveAll(netlists: readonly string[]): Solved[] {
  const child = spawnSync(process.execPath, [join(import.meta.dirname, 'simulate.mjs')], {
    input: JSON.stringify(netlists),
    maxBuffer: 1 << 28,
    timeout: 60_000,
    encoding: 'utf8',
  })
  if (child.status !== 0) throw new Error(`ngspice ended with ${child.status ?? child.signal}: ${child.stderr}`)
  const answers = JSON.parse(child.stdout) as readonly (Solved | { readonly error: string })[]
  return answers.map((answer, i) => {
    if ('error' in answer) throw new Error(`ngspice refused netlist ${i}: ${answer.error}\n${netlists[i]}`)
    return answer
  })
}

/** Magnitudes of one node. */
export function magnitudes(solved: Solved, node: string): number[] {
  const volts = solved.volts[node]
  if (!volts) throw new Error(`ngspice gave no node ${node}`)
  return volts.map(([re, im]) => Math.hypot(re, im))
}
