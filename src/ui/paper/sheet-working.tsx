/** Figures with the working behind them, each step and each source once, however many figures rest on it. */
import type { Basis, Check, Source, Step, Success } from '../../calc/types.ts'
import { SOURCES } from '../../reference/sources.ts'
import { STANDING_WORDS } from '../../reference/standing.ts'
import { outputText, printed } from '../parts/figure.ts'
import { Part } from './frame.tsx'

const STEP_DIGITS = 5

/** Every figure of the answer. */
export function SheetFigures(given: { readonly check: Check; readonly result: Success; readonly columns: 1 | 3 }) {
  const { check, result, columns } = given
  const shown = check.outputs.flatMap((output) => {
    const cell = result.outputs[output.key]?.cell
    return cell ? [{ output, text: outputText(cell, output) }] : []
  })
  if (shown.length === 0) return null
  return (
    <Part title="Figures">
      <dl class={`inputs columns-${columns}`}>
        {shown.map(({ output, text }) => (
          <div key={output.key} class="row">
            <dt>{output.label}:</dt>{' '}
            <dd>
              <strong>{text}</strong>
            </dd>
          </div>
        ))}
      </dl>
    </Part>
  )
}

type Worked = { readonly name: string; readonly basis: Basis }

function workedOf(check: Check, result: Success): readonly Worked[] {
  const figures = check.outputs.flatMap((output): readonly Worked[] => {
    const shown = result.outputs[output.key]
    return shown && shown.cell.is !== 'none' ? [{ name: output.label, basis: shown.basis }] : []
  })
  const bounds = result.bounds.map(({ why, side, markedF, basis }): Worked => {
    const sign = side === 'least' ? 'at least' : 'at most'
    return { name: `${printed(markedF, 'capacitance')} ${sign}: ${why}`, basis }
  })
  return [...figures, ...bounds, ...result.rungs.map(({ label, basis }): Worked => ({ name: label, basis }))]
}

/** Steps not seen before, under the name of the first that needs them. */
export function freshSteps(
  worked: readonly Worked[],
): readonly { readonly name: string; readonly steps: readonly Step[] }[] {
  const seen = new Set<string>()
  return worked.flatMap(({ name, basis }) => {
    const steps = basis.steps.filter(({ formula, withNumbers }) => {
      const key = `${formula} ${withNumbers}`
      if (seen.has(key)) return false
      seen.add(key)
      return true
    })
    return steps.length === 0 ? [] : [{ name, steps }]
  })
}

export function SheetWorking({ check, result }: { readonly check: Check; readonly result: Success }) {
  const worked = workedOf(check, result)
  const groups = freshSteps(worked)
  const granted = [...new Set(worked.flatMap(({ basis }) => basis.assumptions))]
  return (
    <>
      {groups.length > 0 && (
        <Part title="Working" columns={2}>
          {groups.map(({ name, steps }) => (
            <div key={name} class="row">
              <strong>{name}</strong>
              {steps.map((step) => (
                <p key={`${step.formula}${step.withNumbers}`} class="formula">
                  {step.formula}: {step.withNumbers} = {printed(step.si, step.quantity, STEP_DIGITS)}
                </p>
              ))}
            </div>
          ))}
        </Part>
      )}
      {granted.length > 0 && (
        <Part title="Taken for granted">
          <p>{granted.join('; ')}.</p>
        </Part>
      )}
      <SheetSources sources={worked.flatMap(({ basis }) => basis.sources)} />
    </>
  )
}

/** Sources by title, clauses and standing, each once. */
export function SheetSources({ sources }: { readonly sources: readonly Source[] }) {
  const lines = [...new Set(sources.map(sourceLine))]
  if (lines.length === 0) return null
  return (
    <Part title="Sources">
      <p>{lines.join('; ')}.</p>
    </Part>
  )
}

const sourceLine = ({ id, clause, standing }: Source): string =>
  `${SOURCES[id].title}${clause ? `, ${clause}` : ''} (${STANDING_WORDS[standing]})`
