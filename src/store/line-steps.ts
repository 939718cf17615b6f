/** What is new about lines as single changes, and the changes that take it back. */
import type { FactKey, Line } from '../calc/types.ts'
import type { LineStep } from './connector-edits.ts'
import type { LineEdit, LinePatch } from './edits.ts'
import { type KeptLine, keptLine } from './line.ts'

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/** New lines are put at the end; of a known one, only what differs is written, fact by fact. */
export function lineSteps(
  complaintId: string,
  known: readonly KeptLine[],
  lines: readonly Line[],
  at: string,
): readonly LineStep[] {
  let order = Math.max(-1, ...known.map((one) => one.order))
  return lines.flatMap((line): readonly LineStep[] => {
    const old = known.find(({ id }) => id === line.id)
    if (old !== undefined) return editsOf(old, line, at)
    order++
    return [{ do: 'addLine', line: { ...keptLine(line, complaintId, order), updatedAt: at } }]
  })
}

function editsOf(old: KeptLine, line: Line, at: string): readonly LineEdit[] {
  const place = { id: old.complaintId, lineId: old.id, at }
  const { name, gate, trials } = line
  const patch: LinePatch = {
    ...(name !== old.name && { name }),
    ...(gate !== old.gate && { gate }),
    ...(!isSame(trials, old.trials) && { trials }),
  }
  const keys = Object.keys({ ...old.facts, ...line.facts }) as FactKey[]
  const facts = keys.flatMap((fact): readonly LineEdit[] => {
    const next = line.facts[fact]
    if (isSame(next, old.facts[fact])) return []
    return [{ do: 'fact', ...place, fact, base: old.facts[fact]?.text ?? '', ...(next && { next }) }]
  })
  const base = patch.name === undefined ? {} : { base: old.name }
  return Object.keys(patch).length > 0 ? [{ do: 'line', ...place, patch, ...base }, ...facts] : facts
}

/** The steps that take these back: new lines go, changed ones are as they were in `known`. */
export function backSteps(known: readonly KeptLine[], steps: readonly LineStep[], at: string): readonly LineStep[] {
  return steps.flatMap((step): readonly LineStep[] => {
    if (step.do === 'addLine') return [{ do: 'removeLine', id: step.line.complaintId, lineId: step.line.id, at }]
    const old = known.find(({ id }) => id === step.lineId)
    if (old === undefined) return []
    const place = { id: step.id, lineId: step.lineId, at }
    if (step.do === 'line') {
      const { name, gate, trials } = old
      const was: Required<LinePatch> = { name, gate, trials }
      const patch = Object.fromEntries(Object.entries(was).filter(([key]) => key in step.patch)) as LinePatch
      return [{ do: 'line', ...place, patch, base: step.patch.name }]
    }
    if (step.do !== 'fact') return []
    const next = old.facts[step.fact]
    return [{ do: 'fact', ...place, fact: step.fact, base: step.next?.text ?? '', ...(next && { next }) }]
  })
}
