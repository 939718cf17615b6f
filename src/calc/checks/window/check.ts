/** The capacitance window of one line: from the attenuation needed (at least) to what the signal stands (at most). */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Check, Progress, Result } from '../../types.ts'
import { type Told, told } from '../told.ts'
import { answerWindow, barredAnswer } from './answer.ts'
import { type WindowGiven, windowInputs } from './inputs.ts'

function* compute(given: WindowGiven): Generator<Progress, Result> {
  const kind = given.lineKind === undefined ? undefined : lineKindById(given.lineKind)
  if (kind?.barredWhy !== undefined) return barredAnswer(kind.name, kind.barredWhy)
  return yield* answerWindow(given, kind)
}

export const windowCheck: Check<typeof windowInputs, Told> = {
  id: 'window',
  title: 'Window',
  question: 'Which capacitance quiets the noise and still lets the signal through?',
  inputs: windowInputs,
  outputs: [
    {
      key: 'proposedF',
      label: 'Proposed, one capacitor as marked',
      quantity: 'capacitance',
      digits: 3,
      lead: true,
      provides: 'markedF',
    },
    { key: 'leastCapacitanceF', label: 'At least', quantity: 'capacitance', digits: 3 },
    { key: 'mostCapacitanceF', label: 'At most', quantity: 'capacitance', digits: 3 },
    { key: 'topologyUsed', label: 'Topology', is: 'words' },
    { key: 'worstLossDb', label: 'Worst-case attenuation with it', quantity: 'decibel', digits: 3 },
    { key: 'overLeastRatio', label: 'Proposed ÷ least', quantity: 'number', digits: 2 },
    { key: 'underMostRatio', label: 'Most ÷ proposed', quantity: 'number', digits: 2 },
    { key: 'permittedF', label: 'Permitted by the document', quantity: 'capacitance', digits: 3 },
    { key: 'leastInductanceH', label: 'Least inductance (L alone)', quantity: 'inductance', digits: 3, lead: true },
  ],
  ...told(compute),
}
