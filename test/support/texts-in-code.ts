/** The texts that stand in a file of ours, read from its syntax. */
import { parseAst } from 'vite'

/** Keys whose texts are no words of a page. */
const KEYS = new Set(
  'id source sources clause page item check related words prefix drawing sound table lineKind shelf signature suspect cites fillIn prefill'.split(
    ' ',
  ),
)

type Node = { readonly type: string; readonly [key: string]: unknown }
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string'

const nameOf = (key: unknown): string => (isNode(key) ? String(key['name'] ?? key['value'] ?? '') : '')

function textsIn(node: unknown, found: string[] = []): string[] {
  if (Array.isArray(node)) for (const each of node) textsIn(each, found)
  if (!isNode(node)) return found
  const { type } = node
  if (/^(Import|ExportAll)/.test(type) || type.startsWith('TS')) {
    // `x as const` and `x satisfies T` hold the value they speak of
    if (isNode(node['expression'])) textsIn(node['expression'], found)
    return found
  }
  if (type === 'Literal' && typeof node['value'] === 'string') found.push(node['value'])
  if (type === 'TemplateElement') found.push(String((node['value'] as { readonly raw: string }).raw))
  if (type === 'Property' && KEYS.has(nameOf(node['key']))) return found
  for (const [key, value] of Object.entries(node)) {
    if (key === 'key' && type === 'Property') continue
    textsIn(value, found)
  }
  return found
}

/** Every piece of text in a file that is written out, keys and addresses left out. */
export const textsOfCode = (code: string): readonly string[] => textsIn(parseAst(code, { lang: 'ts' }))
