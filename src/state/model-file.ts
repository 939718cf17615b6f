/** The filter of a check as a Touchstone file: what another program takes to calculate with. */
import { circuitOf } from '../calc/checks/filter/circuit.ts'
import { type FilterGiven, filterInputs } from '../calc/checks/filter/inputs.ts'
import type { Field } from '../calc/line/fields.ts'
import { logGrid } from '../calc/network/chain.ts'
import { TOPOLOGIES } from '../calc/network/circuit.ts'
import { networkOf } from '../calc/touchstone/model.ts'
import { writeTouchstone } from '../calc/touchstone/write.ts'
import type { OwnFile } from './files.ts'

/** 10 kHz to 1 GHz, fifty a decade. */
const FROM_HZ = 1e4
const TO_HZ = 1e9
const POINTS = 251
const REFERENCE_OHM = 50

export type ModelFile = { readonly ok: true; readonly file: OwnFile } | { readonly ok: false; readonly message: string }

/** S-parameters of the parts as entered, one leg, 50 Ω at both ends; a sentence where there is no circuit to write. */
export function modelFile(fields: readonly Field[]): ModelFile {
  const refused = fields.find(({ issue }) => issue !== undefined)
  if (refused?.issue) return { ok: false, message: `${refused.input.label}: ${refused.issue.message}` }
  const given = Object.fromEntries(fields.map(({ key, value }) => [key, value])) as FilterGiven
  const topology = TOPOLOGIES.find((one) => one === given.topology)
  if (topology === undefined)
    return { ok: false, message: 'Choose the topology first: without it there is no circuit.' }
  if (given.beadHz !== undefined)
    return {
      ok: false,
      message: 'A bead is known at its own frequencies only, so that its filter is not written as a file.',
    }
  const parts = fields.filter(({ key, state, text }) => state === 'value' && text.trim() !== '' && PARTS.has(key))
  const network = networkOf(circuitOf(given, topology), logGrid(FROM_HZ, TO_HZ, POINTS), REFERENCE_OHM)
  const content = writeTouchstone(network, {
    version: '1',
    unit: 'Hz',
    format: 'RI',
    comments: [
      'Calculated from parts as entered, one leg: a screening estimate, not a measurement and not approved data',
      ...parts.map(
        ({ input, text }) =>
          `${input.label}: ${text
            .replaceAll('Ω', 'Ohm')
            .replaceAll(/[µ\u03bc]/g, 'u')
            .replaceAll(/\s+/g, ' ')}`,
      ),
    ],
  })
  return { ok: true, file: { name: `filter-${topology.toLowerCase()}.s2p`, type: 'text/plain', content } }
}

/** What of the fields is the filter itself, not what stands around it. */
const AROUND = new Set([
  'sourceOhm',
  'loadOhm',
  'frequencyHz',
  'neededDb',
  'lineKind',
  'mode',
  'sourceH',
  'loadF',
  'loadH',
])
const PARTS: ReadonlySet<string> = new Set(filterInputs.map(({ key }) => key).filter((key) => !AROUND.has(key)))
