/** Runs a check from address-like texts, the way a screen does. */
import { evaluateNow } from '../../src/calc/line/evaluate.ts'
import { readFields } from '../../src/calc/line/fields.ts'
import type { Check, Success } from '../../src/calc/types.ts'

export function run(check: Check, texts: Readonly<Record<string, string>>): Success {
  const result = evaluateNow(check, readFields(check, texts))
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return result
}

export function issuesOf(check: Check, texts: Readonly<Record<string, string>>): readonly string[] {
  const result = evaluateNow(check, readFields(check, texts))
  return result.ok ? [] : result.issues.map((i) => `${i.key}: ${i.message}`)
}

/** The SI value of an output, or undefined when it is absent or has none. */
export function si(result: Success, key: string): number | undefined {
  const cell = result.outputs[key]?.cell
  return cell?.is === 'si' ? cell.si : undefined
}
