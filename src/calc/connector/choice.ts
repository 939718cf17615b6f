/** What the user chose for one contact, as numbers, apart from anything proposed. */
import { type Express, numbersIn } from '../line/fields.ts'
import { hasCapacitor, hasInductor, TOPOLOGIES } from '../network/circuit.ts'
import type { Topology } from '../types.ts'
import type { Contact, ContactText } from './types.ts'

/** `bare`: no part on purpose. Figures that cannot be read, or have no place, stand in `refused`, as the sentence that says so. */
export type Choice = {
  readonly isBare: boolean
  readonly topology?: Topology
  readonly valueF?: number
  readonly inductanceH?: number
  readonly suppressor?: string
  readonly place?: string
  readonly refused: readonly string[]
}

/** The word that stands for a contact left bare on purpose. */
export const BARE = 'none'

const MOST_F = 1
const MOST_H = 100

/** The choice of a contact; undefined where nothing was chosen. */
export function choiceOf({ texts }: Contact, express?: Express): Choice | undefined {
  const text = (key: ContactText): string => texts[key]?.trim() ?? ''
  const [word, farads, henries] = [text('chosenTopology'), text('chosenF'), text('chosenH')]
  const [suppressor, place] = [text('chosenSuppressor'), text('chosenPlace')]
  if ([word, farads, henries, suppressor, place].every((one) => one === '')) return undefined
  const refused: string[] = []
  const topology = TOPOLOGIES.find((one) => one === word)
  if (word !== '' && word !== BARE && topology === undefined)
    refused.push(`“${word}” is no topology; choose one of ${TOPOLOGIES.join(', ')}, or ${BARE} for a bare contact.`)
  const number = (typed: string, quantity: 'capacitance' | 'inductance', most: number): number | undefined => {
    if (typed === '') return undefined
    const [si, ...others] = numbersIn(typed, quantity, express)
    if (si !== undefined && others.length === 0 && si > 0 && si <= most) return si
    const example = quantity === 'capacitance' ? '4.7n' : '2.2u'
    refused.push(`“${typed}” is no ${quantity} of one part; write it as ${example}.`)
    return undefined
  }
  const valueF = number(farads, 'capacitance', MOST_F)
  const inductanceH = number(henries, 'inductance', MOST_H)
  if (topology !== undefined && valueF !== undefined && !hasCapacitor(topology))
    refused.push(`“${farads}” has no place in the topology ${topology}: empty it, or choose one with a capacitor.`)
  if (topology !== undefined && inductanceH !== undefined && !hasInductor(topology))
    refused.push(`“${henries}” has no place in the topology ${topology}: empty it, or choose one with an inductor.`)
  return {
    isBare: word === BARE,
    ...(topology === undefined ? {} : { topology }),
    ...(valueF === undefined ? {} : { valueF }),
    ...(inductanceH === undefined ? {} : { inductanceH }),
    ...(suppressor === '' ? {} : { suppressor }),
    ...(place === '' ? {} : { place }),
    refused,
  }
}
