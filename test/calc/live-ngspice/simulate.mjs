/**
 * Runs netlists through the ngspice build of the development dependencies, as a process of its own: that build keeps
 * its process alive, and a test worker must end. Netlists as a JSON list on standard input, node voltages as a JSON
 * list on standard output: { hz, volts: { node: [[re, im], …] } } or { error }.
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
  if (errors.length > 0 || result.dataType !== 'complex') return { error: errors.join(' ') || 'no complex result' }
  const frequency = result.data.find(({ type }) => type === 'frequency')
  if (!frequency) return { error: 'no frequencies' }
  const volts = Object.fromEntries(
    result.data
      .filter(({ type }) => type === 'voltage')
      .map(({ name, values }) => [name.slice(2, -1), values.map(({ real, img }) => [real, img])]),
  )
  return { hz: frequency.values.map(({ real }) => real), volts }
}

const answers = []
for (const netlist of netlists) answers.push(await solve(netlist))
process.stdout.write(JSON.stringify(answers), () => process.exit(0))
