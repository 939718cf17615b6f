/** The texts of a screen in the order they stand there, and the short forms among them. */
import { SAFETY_TEXTS } from '../reference/safety.ts'
import type { Evidence } from './investigation.ts'
import type { AdviceItem, FieldNote, Outcome } from './types.ts'

const CAUTIONS: Readonly<Record<string, { readonly title: string; readonly text: string }>> = SAFETY_TEXTS
const cautionTexts = (ids: readonly string[] = []): readonly string[] =>
  ids.flatMap((id) => [CAUTIONS[id]?.title ?? '', CAUTIONS[id]?.text ?? ''])

/** Question, look or test: its card, its answers, why and how. Cautions last. */
export const itemTexts = ({ text, why, findOut, options, card }: Evidence): readonly string[] => [
  text,
  ...(card === undefined
    ? []
    : [...card.do, ...card.with.map((one) => `${one.instrument}: ${one.setting}`), card.expect]),
  ...options.flatMap(({ label, hint, means }) => [label, ...(hint === undefined ? [] : [hint]), means]),
  why,
  findOut,
]

/** What of an item is read and not tapped: its answers are buttons as a whole. */
export const readTexts = ({ why, findOut, card }: Evidence): readonly string[] => [
  ...(card === undefined
    ? []
    : [...card.do, ...card.with.map((one) => `${one.instrument}: ${one.setting}`), card.expect]),
  why,
  findOut,
]

/** An outcome without the advice its rules add. */
export const outcomeTexts = ({ headline, reason, steps, nextMeasurement, checks }: Outcome): readonly string[] => [
  headline,
  reason,
  ...steps,
  nextMeasurement,
  ...checks.map(({ why }) => why),
]

/** The advice of an outcome. */
export const adviceTexts = (items: readonly AdviceItem[]): readonly string[] =>
  items.flatMap(({ title, text, missing }) => [title, text, ...missing])

/** A field note with its table. */
export const noteTexts = ({ title, paragraphs, table }: FieldNote): readonly string[] => [
  title,
  ...paragraphs,
  ...(table === undefined ? [] : [...table.head, ...table.rows.flat()]),
]

/** Everything that stands on the screen of an item or an outcome, cautions included. */
export const withCautions = (texts: readonly string[], cautions?: readonly string[]): readonly string[] => [
  ...texts,
  ...cautionTexts(cautions),
]

const FORM = /(?<![\p{L}\p{N}-])[A-Z][A-Z0-9]+(?:-[A-Z0-9]+)*(?![\p{L}\p{N}-])/gu

/** The short forms of a screen, each once, in the order of their first use. */
export const formsIn = (texts: readonly string[]): readonly string[] => [...new Set(texts.join('\n').match(FORM) ?? [])]

/** Whether the text says what a short form means where it first uses it: "GNSS, the …", "(GNSS)", "ADF (automatic …". */
export function isExplained(form: string, texts: readonly string[]): boolean {
  const first = texts.find((text) => formsIn([text]).includes(form)) ?? ''
  return new RegExp(`\\b${form}(?:,? the | is | means | \\(|: [a-z])|\\(${form}\\)`).test(first)
}
