/** What the columns of a pasted table can hold, and by which words of a heading each is known. */

/** Texts stay as typed; the fields of the checks read them. */
export const COLUMNS = [
  'contact',
  'name',
  'kind',
  'type',
  'pair',
  'leg',
  'wire',
  'pin',
  'zone',
  'phase',
  'frequencyHz',
  'neededDb',
  'sourceOhm',
  'loadOhm',
  'existingF',
  'busMaxV',
  'remark',
] as const
export type Column = (typeof COLUMNS)[number]

export const COLUMN_LABEL: Readonly<Record<Column, string>> = {
  contact: 'Contact',
  name: 'Function',
  kind: 'Line kind',
  type: 'Contact type',
  pair: 'Pair with',
  leg: 'Leg',
  wire: 'Wire',
  pin: 'Pin part',
  zone: 'Zone',
  phase: 'Phase',
  frequencyHz: 'Noise frequency',
  neededDb: 'Needed attenuation',
  sourceOhm: 'Noise source impedance',
  loadOhm: 'Noise load impedance',
  existingF: 'Capacitance on the line',
  busMaxV: 'Highest line voltage',
  remark: 'Remark',
}

/** Words of a heading, small letters; the longest word found in it decides. */
const HEADER_WORDS: Readonly<Record<Column, readonly string[]>> = {
  contact: ['contact', 'pin', 'position', 'way', 'cavity', 'terminal', 'pos', 'id', 'no', 'nr', '#'],
  name: ['function', 'signal', 'name', 'description', 'circuit', 'use', 'signal name'],
  kind: ['line kind', 'kind', 'type', 'line', 'interface', 'signal type', 'standard', 'bus', 'class'],
  type: ['contact type', 'contact use', 'pin type'],
  pair: ['pair', 'pair with', 'paired with', 'mate', 'partner', 'twisted with', 'twisted'],
  leg: ['leg', 'leg of the pair', 'side of the pair'],
  wire: ['wire', 'wire no', 'wire number', 'cable', 'conductor', 'wire id'],
  pin: ['pin', 'pin part', 'pin part number', 'contact part', 'contact part number', 'contact size', 'pin size'],
  zone: ['zone', 'pressurised', 'pressurized', 'pressure', 'area'],
  phase: ['phase', 'ph'],
  frequencyHz: ['noise frequency', 'frequency', 'freq', 'hz', 'noise'],
  neededDb: ['needed attenuation', 'attenuation needed', 'attenuation', 'need', 'needed', 'db', 'loss'],
  sourceOhm: ['noise source impedance', 'noise source', 'source impedance', 'source', 'zs', 'source ohm'],
  loadOhm: ['noise load impedance', 'noise load', 'load impedance', 'load', 'zl', 'load ohm'],
  existingF: [
    'capacitance on the line',
    'already on the line',
    'existing',
    'existing capacitance',
    'wiring capacitance',
  ],
  busMaxV: [
    'highest line voltage',
    'highest line peak',
    'highest voltage',
    'voltage',
    'volts',
    'volt',
    'v',
    'max voltage',
  ],
  remark: ['remark', 'remarks', 'note', 'notes', 'comment', 'comments'],
}

/** What a heading may say, its longest word that is known; two columns where both are called so. */
function columnsOf(heading: string): readonly Column[] {
  const said = ` ${heading
    .toLowerCase()
    .replaceAll(/[^a-z#]+/g, ' ')
    .trim()} `
  const longest = (column: Column) =>
    HEADER_WORDS[column].reduce((most, word) => (said.includes(` ${word} `) ? Math.max(most, word.length) : most), 0)
  const lengths = COLUMNS.map((column) => ({ column, length: longest(column) }))
  const most = lengths.reduce((found, { length }) => Math.max(found, length), 0)
  return most === 0 ? [] : lengths.filter(({ length }) => length === most).map(({ column }) => column)
}

export const isContactHeading = (heading: string): boolean =>
  columnsOf(heading).includes('contact') && !/\d/.test(heading)

/** The column of each heading; each is taken once, by the heading that can mean nothing else, then by the first. */
export function columnsByHeading(headings: readonly string[]): readonly (Column | undefined)[] {
  const said = headings.map(columnsOf)
  const found: (Column | undefined)[] = headings.map(() => undefined)
  const take = (isSure: boolean) =>
    said.forEach((columns, i) => {
      if (found[i] !== undefined || (isSure && columns.length !== 1)) return
      found[i] = columns.find((column) => !found.includes(column))
    })
  take(true)
  take(false)
  return found
}

/** The unit a heading gives for its column: “Need (dB)”, “Frequency [MHz]”, “Noise, MHz”, “Load / Ω”. */
export function unitOfHeading(heading: string): string | undefined {
  const bracketed = /[([]([^()[\]]{1,8})[)\]]\s*$/.exec(heading)
  const [, unit = ''] = bracketed ?? /[\s,/]([^\s,/]{1,4})$/.exec(heading.trim()) ?? []
  return unit.trim() === '' ? undefined : unit.trim()
}
