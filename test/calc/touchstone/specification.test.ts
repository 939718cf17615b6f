/** The examples the open specification of version 1.1 and 2.0 itself gives, and what it says of them. */
import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { readTouchstone } from '../../../src/calc/touchstone/read.ts'
import { impedanceAt } from '../../../src/calc/touchstone/two-port.ts'

function read(text: string, fileName?: string) {
  const reading = atOnce(readTouchstone(text, fileName === undefined ? {} : { fileName }))
  if (!reading.ok) throw new Error(reading.message)
  return reading
}

const polar = (magnitude: number, deg: number) => [
  magnitude * Math.cos((deg * Math.PI) / 180),
  magnitude * Math.sin((deg * Math.PI) / 180),
]

/** Magnitude and angle in the file, entry by entry, of the matrix at frequency k. */
function polars({ network: { re, im, portCount: n } }: ReturnType<typeof read>, k = 0) {
  return Array.from({ length: n * n }, (_, i) => {
    const [x, y] = [re[k * n * n + i] as number, im[k * n * n + i] as number]
    return [Math.hypot(x, y), (Math.atan2(y, x) * 180) / Math.PI]
  })
}

const FOUR_ROWS = `5.00000 0.60 161.24 0.40 -42.20 0.42 -66.58 0.53 -79.34 !row 1
        0.40 -42.20 0.60 161.20 0.53 -79.34 0.42 -66.58 !row 2
        0.42 -66.58 0.53 -79.34 0.60 161.24 0.40 -42.20 !row 3
        0.53 -79.34 0.42 -66.58 0.40 -42.20 0.60 161.24 !row 4\n`
const LOWER_ROWS = `5.00000 0.60 161.24 !row 1
  0.40 -42.20 0.60 161.20 !row 2
  0.42 -66.58 0.53 -79.34 0.60 161.24 !row 3
  0.53 -79.34 0.42 -66.58 0.40 -42.20 0.60 161.24 !row 4\n`
const UPPER_ROWS = `5.00000 0.60 161.24 0.40 -42.20 0.42 -66.58 0.53 -79.34 !row 1
  0.60 161.20 0.53 -79.34 0.42 -66.58 !row 2
  0.60 161.24 0.40 -42.20 !row 3
  0.60 161.24 !row 4\n`
const second = (matrix: string, rows: string, reference = '50 75 0.01 0.01') =>
  `! 4-port S-parameter data\n[Version] 2.0\n# GHz S MA R 50\n[Number of Ports] 4\n[Number of Frequencies] 1\n[Reference] ${reference}\n[Matrix Format] ${matrix}\n[Network Data]\n${rows}[End]\n`

describe('examples of the specification', () => {
  it('a one-port of Z in version 1 is normalised to 75 Ω', () => {
    const reading = read(
      '! 1-port Z-parameter file, multiple frequency points\n# MHz Z MA R 75\n! freq magZ11 angZ11\n100 0.99 -4\n200 0.80 -22\n300 0.707 -45\n400 0.40 -62\n500 0.01 -89\n',
    )
    expect([...reading.network.hz]).toEqual([100e6, 200e6, 300e6, 400e6, 500e6])
    const [re, im] = impedanceAt(reading.network, 2)
    expect([re, im]).toEqual([
      expect.closeTo((75 * 707) / 1000 / Math.SQRT2, 9),
      expect.closeTo(-(75 * 707) / 1000 / Math.SQRT2, 9),
    ])
  })

  it('the same in version 2.0 is not', () => {
    const reading = read(
      '[Version] 2.0\n# MHz Z MA\n[Number of Ports] 1\n[Reference] 20.0\n[Number of Frequencies] 5\n[Network Data]\n100 74.25 -4\n200 60 -22\n300 53.025 -45\n400 30 -62\n500 0.75 -89\n[End]',
    )
    expect(reading.network.referenceOhm).toEqual([20])
    expect(Math.hypot(...impedanceAt(reading.network, 0))).toBeCloseTo(74.25, 9)
  })

  it('two ports of H in version 1: 11 over R, 22 times R, 21 before 12', () => {
    const reading = read(
      '! 2-port H-parameter file, single frequency point\n# kHz H MA R 1\n! freq magH11 angH11 magH21 angH21 magH12 angH12 magH22 angH22\n2 .95 -26 3.57 157 .04 76 .66 -14\n',
      'one.s2p',
    )
    expect([...reading.network.hz]).toEqual([2000])
    expect(polars(reading)).toEqual(
      [
        [0.95, -26],
        [0.04, 76],
        [3.57, 157],
        [0.66, -14],
      ].map((pair) => pair.map((x) => expect.closeTo(x, 9))),
    )
    const at50 = read('# kHz H MA R 50\n2 .95 -26 3.57 157 .04 76 .66 -14\n', 'one.s2p')
    expect(polars(at50).map(([magnitude]) => magnitude)).toEqual(
      [0.95 * 50, 0.04, 3.57, 0.66 / 50].map((x) => expect.closeTo(x, 9)),
    )
  })

  it('the same in version 2.0, in both orders', () => {
    const file = (order: string, row: string) =>
      `[Version] 2.0\n# kHz H MA R 1\n[Number of Ports] 2\n[Two-Port Data Order] ${order}\n[Number of Frequencies] 1\n[Matrix Format] Full\n[Network Data]\n${row}\n[End]`
    const odd = polars(read(file('21_12', '2 .95 -26 3.57 157 .04 76 .66 -14')))
    const even = polars(read(file('12_21', '2 .95 -26 .04 76 3.57 157 .66 -14')))
    expect(odd).toEqual(even)
    expect(odd[2]).toEqual([expect.closeTo(3.57, 9), expect.closeTo(157, 9)])
  })

  it.each([
    ['Full', FOUR_ROWS],
    ['Lower', LOWER_ROWS],
    ['Upper', UPPER_ROWS],
  ])('four ports, %s, each with its own reference', (matrix, rows) => {
    const reading = read(second(matrix, rows))
    expect(reading.network.referenceOhm).toEqual([50, 75, 0.01, 0.01])
    expect(polars(reading)).toEqual(polars(read(second('Full', FOUR_ROWS))))
    expect(polars(reading)[7]).toEqual([expect.closeTo(0.42, 9), expect.closeTo(-66.58, 9)])
  })

  it('references in lines of their own', () => {
    expect(read(second('Lower', LOWER_ROWS, '50 75\n0.01 0.01')).network.referenceOhm).toEqual([50, 75, 0.01, 0.01])
    expect(read(second('Lower', LOWER_ROWS, '\n50 75 0.01 0.01')).network.referenceOhm).toEqual([50, 75, 0.01, 0.01])
  })

  it('references one a port on the option line', () => {
    expect(read(`# GHz S MA R 0.01 0.01 50.0 50.0\n${FOUR_ROWS}`).network.referenceOhm).toEqual([0.01, 0.01, 50, 50])
  })

  it('modes of six ports', () => {
    const reading = read(
      '[Version] 2.0\n# MHz Y RI R 50\n[Number of Ports] 6\n[Number of Frequencies] 1\n[Reference] 50 75 75 50 0.01 0.01\n[Mixed-Mode Order] D2,3 D6,5 C2,3 C6,5 S4 S1\n[Network Data]\n5.00 8.0 9.0 2.0 -1.0 3.0 -2.0 1.0 3.0 1.0 0.1 0.2 -0.2\n2.0 -1.0 7.0 7.0 1.8 -2.0 -1.0 -1.0 -0.5 0.5 0.2 -0.1\n3.0 -2.0 1.8 -2.0 5.8 6.0 1.2 0.8 0.9 0.7 0.3 -0.5\n1.0 3.0 -1.0 -1.0 1.2 0.8 6.3 8.0 2.0 -0.5 1.5 0.6\n1.0 0.1 -0.5 0.5 0.9 0.7 2.0 -0.5 4.7 -6.0 -1.0 2.0\n0.2 -0.2 0.2 -0.1 0.3 -0.5 1.5 0.6 -1.0 2.0 5.5 -7.0\n[End]',
    )
    expect(reading.network.modes).toEqual([
      { is: 'differential', ports: [2, 3] },
      { is: 'differential', ports: [6, 5] },
      { is: 'common', ports: [2, 3] },
      { is: 'common', ports: [6, 5] },
      { is: 'single', port: 4 },
      { is: 'single', port: 1 },
    ])
    expect(reading.network.re[5]).toBe(0.2)
    expect(reading.network.im[35]).toBe(-7)
  })

  it.each([
    [
      'version 1',
      '! 2-port network, S-parameter and noise data\n#\n! NETWORK PARAMETERS\n2 .95 -26 3.57 157 .04 76 .66 -14\n22 .60 -144 1.30 40 .14 40 .56 -85\n! NOISE PARAMETERS\n4 .7 .64 69 .38\n18 2.7 .46 -33 .40\n',
    ],
    [
      'version 2.0',
      '[Version] 2.0\n#\n[Number of Ports] 2\n[Number of Frequencies] 2\n[Number of Noise Frequencies] 2\n[Reference] 50 25.0\n[Network Data]\n2 .95 -26 3.57 157 .04 76 .66 -14\n22 .60 -144 1.30 40 .14 40 .56 -85\n[Noise Data]\n4 .7 .64 69 19\n18 2.7 .46 -33 20\n[End]',
    ],
  ])('noise figures behind the network are left out: %s', (_what, text) => {
    const reading = read(text)
    expect([...reading.network.hz]).toEqual([2e9, 22e9])
    expect(polars(reading, 1)[2]).toEqual([expect.closeTo(1.3, 9), expect.closeTo(40, 9)])
    expect(reading.remarks[0]).toBe('The noise figures behind the network were left out.')
  })

  it('four ports of version 1 at three frequencies, without a name', () => {
    const text = `# GHz S MA R 50\n${FOUR_ROWS}${FOUR_ROWS.replace('5.0', '6.0')}${FOUR_ROWS.replace('5.0', '7.0')}`
    const reading = read(text)
    expect(reading.network.portCount).toBe(4)
    expect([...reading.network.hz]).toEqual([5e9, 6e9, 7e9])
  })

  it('information is passed over', () => {
    const text = second('Full', FOUR_ROWS).replace(
      '[Network Data]',
      '[Begin Information]\n[Manufacturer] nobody\n1 2 3\n[End Information]\n[Network Data]',
    )
    expect(polars(read(text))).toEqual(polars(read(second('Full', FOUR_ROWS))))
  })

  it('one port of each format is the same', () => {
    const [x, y] = polar(0.894, -12.136) as [number, number]
    const ma = read('# MHz S MA R 50\n1 0.894 -12.136\n', 'a.s1p').network
    const ri = read(`# MHz S RI R 50\n1 ${x} ${y}\n`, 'a.s1p').network
    const db = read(`# MHz S DB R 50\n1 ${20 * Math.log10(0.894)} -12.136\n`, 'a.s1p').network
    for (const network of [ri, db]) {
      expect(network.re[0]).toBeCloseTo(ma.re[0] as number, 14)
      expect(network.im[0]).toBeCloseTo(ma.im[0] as number, 14)
    }
  })
})

describe('a sentence where it cannot be read', () => {
  it.each([
    ['1 2 3\n', 1, 'figures before the option line'],
    ['', undefined, 'There is no option line'],
    ['# MHz S RI R 50\n', undefined, 'How many ports there are cannot be told'],
    ['# MHz S RI R 50\n1 0.5 x\n', 2, 'Line 2, column 3: “x” is no number'],
    ['# MHz S RI R 50\n2 0.5 0.1\n1 0.5 0.1\n', 3, 'Line 3: the frequency does not rise'],
    ['# MHz S RI R 50\n1 0.5 0.1\n2 0.5\n', 3, '1 port takes 3 figures a frequency, and 2 are left over'],
    ['# MHz Q RI R 50\n1 0.5 0.1\n', 1, '“Q” is no word of an option line'],
    ['# MHz S RI R\n1 0.5 0.1\n', 1, '“R” has no resistance behind it'],
    ['# MHz S RI R 0\n1 0.5 0.1\n', 1, 'no resistance above 0'],
    ['[Version] 3.0\n', 1, '[Version] is followed by “3.0”; it takes 2.0'],
    ['[Version] 2.0\n# MHz S RI\n[Network Data]\n1 0 0\n[End]', undefined, '[Number of Ports] is missing'],
    ['[Version] 2.0\n# MHz S RI\n[Number of Ports] 1\n1 0 0\n', 4, 'figures before [Network Data]'],
    [
      '[Version] 2.0\n# MHz S RI\n[Number of Ports] 1\n[Number of Frequencies] 2\n[Network Data]\n1 0 0\n[End]',
      undefined,
      'says 2 and there is 1',
    ],
    [
      '[Version] 2.0\n# MHz S RI\n[Number of Ports] 2\n[Reference] 50 50 50\n[Network Data]\n1 0 0 0 0 0 0 0 0\n[End]',
      undefined,
      'There are 3 reference resistances for 2 ports',
    ],
    [
      '[Version] 2.0\n# MHz S RI\n[Number of Ports] 2\n[Mixed-Mode Order] D1,2 D1,2\n[Network Data]\n1 0 0 0 0 0 0 0 0\n[End]',
      undefined,
      '[Mixed-Mode Order] has to name every port once',
    ],
    ['[Version] 2.0\n[Colour] red\n', 2, '“[Colour]” is no keyword'],
  ])('%j', (text, line, sentence) => {
    const reading = atOnce(readTouchstone(text))
    if (reading.ok) throw new Error('was read')
    expect(reading.message).toContain(sentence)
    expect(reading.line).toBe(line)
  })
})
