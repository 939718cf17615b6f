/** The Line of a contact as its connector has it, and the answer of the window on it. */
import { lineKindById } from '../../reference/line-kinds.ts'
import { type Barred, type OpenWindow, type WindowFigures, windowFigures } from '../checks/window/figures.ts'
import { isHeldReason } from '../checks/window/held.ts'
import { type WindowGiven, windowInputs } from '../checks/window/inputs.ts'
import { fixedRow } from '../checks/window/row.ts'
import { wordlessWindow } from '../checks/window/wordless.ts'
import { isRefused } from '../line/evaluate.ts'
import { type Express, type Field, saySame } from '../line/fields.ts'
import { figuresInSteps } from '../line/remembered-figures.ts'
import { resolve } from '../line/resolver.ts'
import { withFact } from '../line/with-fact.ts'
import type { Fact, FactKey, Figures, Line, Progress, Refused, WordlessCheck } from '../types.ts'
import type { Choice } from './choice.ts'
import type { SharedTexts } from './types.ts'

/** Lines made here, so that the same question is asked of the same object again. */
const made = new WeakMap<Line, Map<string, Line>>()

/** With the connector's bond in place of the line's own, and the topology and inductance that were chosen. */
export function lineInConnector(
  line: Line,
  shared: SharedTexts,
  choice: Pick<Choice, 'topology' | 'inductanceH'> = {},
): Line {
  const { topology, inductanceH } = choice
  const texts: readonly (readonly [FactKey, string])[] = [
    ['bondOhm', shared.bondOhm?.trim() ?? ''],
    ['bondH', shared.bondH?.trim() ?? ''],
    ['topology', topology ?? ''],
    ['inductanceH', inductanceH === undefined ? '' : String(inductanceH)],
  ]
  const key = JSON.stringify(texts)
  const known = made.get(line) ?? new Map<string, Line>()
  made.set(line, known)
  const before = known.get(key)
  if (before !== undefined) return before
  const asked = texts.reduce((one, [fact, text]) => (text === '' ? one : withFact(one, fact, typed(text))), line)
  known.set(key, asked)
  return asked
}

const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })

/** What a line states of its own bond that its connector states otherwise, as typed there and here. */
export function bondConflicts(
  line: Line,
  shared: SharedTexts,
  express?: Express,
): readonly { readonly fact: 'bondOhm' | 'bondH'; readonly line: string; readonly connector: string }[] {
  return (['bondOhm', 'bondH'] as const).flatMap((fact) => {
    const [own, ours] = [line.facts[fact]?.text.trim() ?? '', shared[fact]?.trim() ?? '']
    const input = windowInputs.find((one) => one.fact === fact)
    if (own === '' || ours === '' || input === undefined || saySame(input, own, ours, express)) return []
    return [{ fact, line: own, connector: ours }]
  })
}

export type WindowAnswer =
  | { readonly is: 'refused'; readonly key: string; readonly message: string }
  | (Barred & { readonly restsOn?: readonly string[] })
  | OpenAnswer

/** An open window with what it was given: what its sentence is written from. */
export type OpenAnswer = OpenWindow & {
  readonly given: WindowGiven
  /** the inductance, or a bead, was entered: a part with an inductor does not rest on what was assumed */
  readonly hasCoil: boolean
}

/**
 * The window of a line, in steps, doubts included. `valueF`: the capacitor the user chose, as marked, judged in place of
 * the proposal over its whole box; the topology is that of the line then.
 */
export function* windowAnswer(
  line: Line,
  valueF: number | undefined,
  express?: Express,
): Generator<Progress, WindowAnswer> {
  const fields = resolve(line, express).fields(WINDOW)
  const figures = yield* figuresInSteps(valueF === undefined ? WINDOW : chosenWindow(valueF), fields)
  if (isRefused(figures)) {
    const [issue] = figures.issues
    return { is: 'refused', key: issue?.key ?? '', message: issue?.message ?? '' }
  }
  const found = figures as WindowFigures
  return found.is === 'barred' ? found : { ...found, given: givenIn(fields), hasCoil: fields.some(isCoil) }
}

const isCoil = ({ key, state }: Field): boolean => (key === 'inductanceH' || key === 'beadOhm') && state === 'value'

const WINDOW: WordlessCheck = wordlessWindow

/** What the window was given. The fields are those of its own descriptor, so that every key is there. */
const givenIn = (fields: readonly Field[]): WindowGiven =>
  Object.fromEntries(fields.map(({ key, value }) => [key, value])) as WindowGiven

const chosen = new Map<number, WordlessCheck>()
const MOST_CHOSEN = 512

/** The window check with this capacitor in place of its proposal; the same one for the same value. */
function chosenWindow(valueF: number): WordlessCheck {
  const known = chosen.get(valueF)
  if (known !== undefined) return known
  const check: WordlessCheck = {
    ...WINDOW,
    *figures(given): Generator<Progress, Figures | Refused> {
      const found = yield* windowFigures(given as WindowGiven)
      if (isRefused(found)) return found
      return found.is === 'barred' ? found : withValue(found, valueF)
    },
  }
  if (chosen.size >= MOST_CHOSEN) chosen.clear()
  chosen.set(valueF, check)
  return check
}

function withValue(found: OpenWindow, valueF: number): OpenWindow {
  const proposal = { valueF, series: 'E12', verdict: 'ok' } as const
  const row = { ...found.row, proposal }
  const { verdict, reasons: fixed } = fixedRow(row, found.setup)
  const others = row.reasons.filter((reason) => !isHeldReason(reason))
  const reasons = [...fixed.filter(isHeldReason), ...others]
  return { ...found, row: { ...row, verdict, reasons }, verdict, values: { ...found.values, proposedF: valueF } }
}

/** Whether the kind of a line, or its safety questions, bar every part. */
export function barredWhy(line: Line): string | undefined {
  if (line.gate === 'barred') return 'A safety question of this line stops it: no part is advised on it.'
  return lineKindById(line.facts.lineKind?.text ?? '')?.barredWhy
}
