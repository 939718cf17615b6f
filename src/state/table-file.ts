/** The text of a table in a file: UTF-8, UTF-16 as spreadsheets save it, else the code page of an older spreadsheet. */

export type TableFile = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: string }

const MOST_BYTES = 4_000_000

/** Reads the file; a sentence where it is no text, or the whole spreadsheet program's own file. */
export async function readTableFile(file: Blob & { readonly name?: string }): Promise<TableFile> {
  const name = file.name === undefined || file.name === '' ? 'The file' : `“${file.name}”`
  if (file.size > MOST_BYTES) return refused(`${name} has more than four million bytes; save the one table as CSV.`)
  let bytes: Uint8Array
  try {
    bytes = new Uint8Array(await file.arrayBuffer())
  } catch {
    return refused(`${name} could not be read; copy it to this device and choose it again.`)
  }
  return textOf(bytes, name)
}

/** The text of the bytes; exported for those who hold them already. */
export function textOf(bytes: Uint8Array, name: string): TableFile {
  if (startsWith(bytes, [0x50, 0x4b]) || startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0]))
    return refused(`${name} is a whole spreadsheet; save the table as CSV, or copy its cells and paste them.`)
  if (startsWith(bytes, [0x25, 0x50, 0x44, 0x46])) return refused(`${name} is a PDF; a table is read from CSV or text.`)
  const text = decoded(bytes)
  if (text.includes('\0')) return refused(`${name} is no text; a table is read from CSV or text.`)
  return { ok: true, text }
}

function decoded(bytes: Uint8Array): string {
  if (startsWith(bytes, [0xff, 0xfe])) return new TextDecoder('utf-16le').decode(bytes)
  if (startsWith(bytes, [0xfe, 0xff])) return new TextDecoder('utf-16be').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

const startsWith = (bytes: Uint8Array, signs: readonly number[]): boolean => signs.every((sign, i) => bytes[i] === sign)

const refused = (message: string): TableFile => ({ ok: false, message })
