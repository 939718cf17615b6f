/**
 * Runs transient netlists through the ngspice build of the development dependencies, as a process of its own: that build
 * keeps its process alive, and a test worker must end. Netlists as a JSON list on standard input; on standard output for
 * each the largest magnitude of every node: { peakV: { node: volts } } or { error }.
 */
import { Simulation } from 'eecircuit-engine'

const chunks = []
for await (const chunk of process.stdin) chunks.push(chunk)
/** @type {string[]} */
const netlists = JSON.parse(Buffer.concat(chunks).toString('utf8'))

const simulation = new Simulation()
await simulation.start()

/** @param {string} netlist */
async function solve(netlist) {
  simulation.setNetList(netlist)
  const result = await simulation.runSim()
  const errors = simulation.getError()
  if (result.dataType !== 'real') return { error: errors.join(' ') || 'no real result' }
  const peaks = result.data
    .filter(({ type }) => type === 'voltage')
    .map(({ name, values }) => [name.slice(2, -1), values.reduce((most, v) => Math.max(most, Math.abs(v)), 0)])
  return { peakV: Object.fromEntries(peaks) }
}

const answers = []
for (const netlist of netlists) answers.push(await solve(netlist))
process.stdout.write(JSON.stringify(answers), () => process.exit(0))
