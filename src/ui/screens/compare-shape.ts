/** What stands in a comparison. Pure, so that it can be tested without a screen. */
import type { Field } from '../../calc/line/fields.ts'
import type { Cell, Check, Success } from '../../calc/types.ts'
import { wordOf } from '../../calc/verdict.ts'
import type { Span } from '../parts/axis.ts'
import { outputText } from '../parts/figure.ts'
import { type StripPicture, stripSpan } from '../parts/strip-shape.ts'
import type { TablePicture } from '../parts/table.tsx'

export type Variant = {
  readonly name: string
  readonly fields: readonly Field[]
  readonly result: Success | undefined
}

/** The axis that holds every strip. */
export function sharedSpan(results: readonly Success[]): Span | undefined {
  const spans = results.flatMap(({ pictures }) =>
    pictures.flatMap((picture) => (picture.is === 'strip' ? [stripSpan(picture)] : [])),
  )
  if (spans.length === 0) return undefined
  return { min: Math.min(...spans.map(({ min }) => min)), max: Math.max(...spans.map(({ max }) => max)) }
}

/** The row that is spoken of, on a given axis. */
export function onSpan(picture: StripPicture, { min, max }: Span): StripPicture {
  const best = picture.rows.filter((row) => row.best)
  return { ...picture, rows: best.length > 0 ? best : picture.rows.slice(0, 1), minF: min, maxF: max }
}

/** The text of a field as people read it: the words of a choice, yes or no of a switch. */
export function fieldWords(field: Field | undefined): string {
  if (field === undefined) return ''
  const { input, text, assumed } = field
  if (text.trim() === '') return assumed === undefined ? 'not entered' : `assumed ${assumed.text}`
  if (input.type.is === 'flag') return text.trim() === 'true' ? 'yes' : 'no'
  if (input.type.is === 'choice') return input.type.options.find(({ value }) => value === text.trim())?.label ?? text
  return text
}

const word = (text: string): Cell => ({ is: 'word', word: text })

/** Changed inputs, the verdict, and every figure, a column for each variant. */
export function comparedTable(check: Check, keys: readonly string[], all: readonly Variant[]): TablePicture {
  const inputs = keys.map((key) => ({
    id: `in-${key}`,
    strong: true,
    cells: [
      word(check.inputs.find((input) => input.key === key)?.label ?? key),
      ...all.map(({ fields }) => word(fieldWords(fields.find((field) => field.key === key)))),
    ],
  }))
  const verdicts = {
    id: 'answer',
    cells: [
      word('Answer'),
      ...all.map(
        ({ result }): Cell =>
          result === undefined
            ? { is: 'none', why: 'no answer' }
            : {
                is: 'word',
                word: wordOf(result) || result.headline,
                ...(result.verdict && { verdict: result.verdict }),
              },
      ),
    ],
  }
  const outputs = check.outputs.flatMap((output) => {
    const cells = all.map(({ result }) => result?.outputs[output.key]?.cell)
    if (cells.every((cell) => cell === undefined || cell.is === 'none')) return []
    const texts = cells.map((cell) => word(cell === undefined || cell.is === 'none' ? '–' : outputText(cell, output)))
    return [{ id: output.key, cells: [word(output.label), ...texts] }]
  })
  return {
    is: 'table',
    title: 'Compared',
    columns: [{ key: 'what', label: 'What' }, ...all.map(({ name }) => ({ key: name, label: name }))],
    rows: [...inputs, verdicts, ...outputs],
  }
}
