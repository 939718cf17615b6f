import type { Connector } from '../../../calc/connector/types.ts'

const HALF_WORDS: Readonly<Record<string, string>> = {
  receptacle: 'box receptacle',
  plug: 'plug',
  adapter: 'in-line adapter',
}

/** What a connector is, in one line: "37 contacts, box receptacle, audio panel". */
export function connectorWords({ contacts, texts }: Connector): string {
  const count =
    contacts.length === 0 ? 'no contacts yet' : contacts.length === 1 ? '1 contact' : `${contacts.length} contacts`
  const half = HALF_WORDS[texts.half ?? ''] ?? ''
  return [count, half, texts.equipment?.trim() ?? ''].filter((part) => part !== '').join(', ')
}
