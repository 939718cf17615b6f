/**
 * What the texts about a connector say against each other and against its contacts. Nothing is judged but contradiction:
 * a text alone is taken as it is written.
 */
import { RECTANGULAR_ROWS } from './face.ts'
import type { Connector, ConnectorText } from './types.ts'

export type Contradiction = { readonly field: ConnectorText | 'shape'; readonly sentence: string }

type Said = Pick<Connector, 'shape' | 'texts'> & { readonly contacts: readonly unknown[] }

/** Every contradiction, in the order of the fields. */
export function contradictions(connector: Said): readonly Contradiction[] {
  return [...ofHalf(connector), ...ofShape(connector), ...ofCount(connector), ...ofGender(connector)]
}

const PLUG = /\b(?:free |cable )?plug\b/i
const RECEPTACLE = /\breceptacle\b/i
/** “37 pins” counts, it does not say which half. */
const PINS = /(?<!\d[\s-]?)\b(?:pins?|male)\b/i
const SOCKETS = /(?<!\d[\s-]?)\b(?:sockets?|female)\b/i
const ROUND = /\b(?:circular|round|bayonet|threaded)\b/i
const RECTANGULAR = /\b(?:rectangular|d-?sub(?:miniature)?|trapezoid)/i

function ofHalf({ texts: { half = '', shell = '', matingUnchanged } }: Said): readonly Contradiction[] {
  const found: Contradiction[] = []
  if (half === 'receptacle' && PLUG.test(shell) && !RECEPTACLE.test(shell))
    found.push({ field: 'shell', sentence: 'The shell is written as a plug, the half is the receptacle of the box.' })
  if (half === 'plug' && RECEPTACLE.test(shell) && !PLUG.test(shell))
    found.push({ field: 'shell', sentence: 'The shell is written as a receptacle, the half is the plug.' })
  if (half === 'adapter' && matingUnchanged === 'false')
    found.push({
      field: 'matingUnchanged',
      sentence: 'An adapter goes between two halves that stay as they are, yet the mating half is said to change.',
    })
  return found
}

function ofShape({ shape, texts: { shell = '', arrangement = '' }, contacts }: Said): readonly Contradiction[] {
  const words = `${shell} ${arrangement}`
  const found: Contradiction[] = []
  if (shape === 'rectangular' && ROUND.test(words))
    found.push({ field: 'shell', sentence: 'The text says a round shell, the face is chosen rectangular.' })
  if (shape === 'ring' && RECTANGULAR.test(words))
    found.push({ field: 'shell', sentence: 'The text says a rectangular shell, the face is chosen round.' })
  if (shape === 'rectangular' && contacts.length > 0 && RECTANGULAR_ROWS[contacts.length] === undefined)
    found.push({
      field: 'shape',
      sentence:
        `A rectangular face is drawn for ${Object.keys(RECTANGULAR_ROWS).join(', ')} contacts; this connector has ` +
        `${contacts.length}, so that plain rings are drawn.`,
    })
  return found
}

/** A number of contacts that is written out: "37-way", "37 contacts", "37W", "37 pos". */
const WRITTEN_COUNT = /(?<![\d-])(\d{1,3})[\s-]?(?:ways?|w|contacts?|pins?|sockets?|pos(?:itions?)?|poles?)(?![a-z])/gi

function ofCount({ texts: { shell = '', arrangement = '' }, contacts }: Said): readonly Contradiction[] {
  if (contacts.length === 0) return []
  for (const field of ['shell', 'arrangement'] as const) {
    const text = field === 'shell' ? shell : arrangement
    const counts = [...text.matchAll(WRITTEN_COUNT)].map(([, digits]) => Number(digits))
    const [count] = counts
    if (counts.length === 1 && count !== contacts.length)
      return [
        { field, sentence: `The text says ${count} contacts, the connector has ${contacts.length} of them listed.` },
      ]
  }
  return []
}

/** The letter after an insert arrangement of a circular connector, such as 17-35SN: P pins, S sockets. Common practice. */
const STYLE_LETTER = /\d{1,2}-\d{1,3}([PS])(?:[NA-EU-Z]|\b)/

function ofGender({ texts: { half, gender = '', arrangement = '', shell = '' } }: Said): readonly Contradiction[] {
  // an adapter has both, one at each end
  if (half === 'adapter' || (gender !== 'pins' && gender !== 'sockets')) return []
  const words = `${shell} ${arrangement}`
  const letter = STYLE_LETTER.exec(words)?.[1]
  const saysPins = letter === 'P' || (PINS.test(words) && !SOCKETS.test(words))
  const saysSockets = letter === 'S' || (SOCKETS.test(words) && !PINS.test(words))
  if (gender === 'pins' && saysSockets && !saysPins)
    return [{ field: 'gender', sentence: 'The text says sockets, the contacts are chosen as pins.' }]
  if (gender === 'sockets' && saysPins && !saysSockets)
    return [{ field: 'gender', sentence: 'The text says pins, the contacts are chosen as sockets.' }]
  return []
}
