/** Files of measurements, damaged in the ways files are: cut, doubled, mixed, with signs nobody expects. */
import fc from '../../support/property.ts'

const scrap = fc.string({
  unit: fc.constantFrom(
    ...[
      '0',
      '1',
      '9',
      '150',
      '1e9',
      '1e999',
      '-',
      '+',
      '.',
      ',',
      ';',
      '\t',
      ' ',
      '\n',
      '\r',
      '\r\n',
      '"',
      '#',
      '!',
      '%',
      '*',
    ],
    ...[
      'Hz',
      'kHz',
      'MHz',
      'GHz',
      'dBuV',
      'dBµV',
      'dBm',
      'dBuA',
      'V',
      'Freq',
      'Level',
      'NaN',
      'Infinity',
      '−',
      'µ',
      '\u0000',
      '\uFEFF',
      '😀',
    ],
    ...['[Version] 2.0', '[Network Data]', '[Reference]', 'S', 'RI', 'MA', 'DB', 'R', '50', '[', ']', '//', 'x-unit'],
  ),
  maxLength: 120,
})

/** What changes a file and may leave it whole. */
const small = fc.constantFrom('', '0', '7', ' ', '\n', '\r\n', '\n! said\n', '\n\n', '\t', 'e1', '-')

type Damage = { readonly at: number; readonly length: number; readonly put: string; readonly doubled: boolean }
const damage: fc.Arbitrary<Damage> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof(fc.constant(0), fc.nat(2), fc.nat(40)),
  put: fc.oneof(small, small, scrap, fc.string({ unit: 'binary', maxLength: 8 })),
  doubled: fc.boolean(),
})

function damagedBy(text: string, damages: readonly Damage[]): string {
  return damages.reduce((now, { at, length, put, doubled }) => {
    const from = Math.floor(at * now.length)
    return (
      now.slice(0, from) +
      put +
      (doubled ? now.slice(from, from + length) : '') +
      now.slice(from + (doubled ? 0 : length))
    )
  }, text)
}

/** Whole scraps, and good files with one to six damages. */
export function damagedFiles(good: readonly string[]): fc.Arbitrary<string> {
  const hurt = fc
    .tuple(fc.constantFrom(...good), fc.array(damage, { minLength: 1, maxLength: 6 }))
    .map(([text, damages]) => damagedBy(text, damages))
  return fc.oneof({ arbitrary: hurt, weight: 4 }, { arbitrary: scrap, weight: 1 })
}
