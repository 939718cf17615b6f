/** The address of a sheet as a square code. Pure. */
import { encode } from 'uqr'

/** Above this a code printed beside the head has modules too fine for a phone to read off paper. */
export const LONGEST_CODE = 800

export type Code = { readonly modules: number; readonly path: string }

/** Light modules around the code, as ISO/IEC 18004 wants them: without them it is not found. */
const QUIET = 4

/** Dark modules as one path of unit squares, quiet zone included; undefined for a text that is too long. */
export function codeOf(text: string): Code | undefined {
  if (text.length > LONGEST_CODE) return undefined
  const { data, size } = encode(text, { ecc: 'L', border: QUIET })
  const rows = data.map((row, y) => runsOf(row).map(([x, width]) => `M${x} ${y}h${width}v1h-${width}z`))
  return { modules: size, path: rows.flat().join('') }
}

/** Stretches of dark modules in a row: where each begins, and how long it is. */
function runsOf(row: readonly boolean[]): readonly (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = []
  let from = -1
  for (let x = 0; x <= row.length; x += 1) {
    const isDark = row[x] === true
    if (isDark && from < 0) from = x
    if (!isDark && from >= 0) runs.push([from, x - from])
    if (!isDark) from = -1
  }
  return runs
}
