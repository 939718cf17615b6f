import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { readTrace } from '../../../src/calc/trace/read.ts'
import type { ReadOptions } from '../../../src/calc/trace/types.ts'

const read = (text: string, options?: ReadOptions) => atOnce(readTrace(text, options))

function spectrum(text: string, options?: ReadOptions) {
  const reading = read(text, options)
  if (!reading.ok) throw new Error(reading.message)
  const { hz, db, unit } = reading.spectrum
  return { hz: [...hz], db: [...db].map((level) => Number(level.toFixed(6))), unit }
}

const AS_READ = { hz: [150e3, 500e3, 30e6], db: [66, 56, 60.5], unit: 'dBµV' }

describe('a spectrum is read from', () => {
  it.each([
    ['commas with a heading', 'Frequency (Hz),Level (dBµV)\n150000,66\n500000,56\n30000000,60.5\n'],
    ['semicolons and decimal commas', 'Frequenz [MHz];Pegel [dBuV]\r\n0,15;66,0\r\n0,5;56\r\n30;60,5\r\n'],
    ['tabs', 'freq kHz\tlevel dBuV\n150\t66\n500\t56\n30000\t60.5'],
    ['spaces and comments', '# measured in the hangar\n# f/GHz  dBuV\n0.00015 66\n\n! pause\n0.0005 56\n0.03 60.5\n'],
    ['units in the cells', 'a,b\n150 kHz,66 dBuV\n0.5 MHz,56 dBuV\n30 MHz,60.5 dBuV\n'],
    ['units beside the cells', '150 kHz 66 dBuV\n500 kHz 56 dBuV\n30000 kHz 60.5 dBuV\n'],
    [
      'a preamble of names and units',
      'Type;FS\nx-unit;Hz\ny-unit;dBuV\nValues;3\n150000;66\n500000;56\n30000000;60.5\n',
    ],
    ['units in a line of their own', 'Frequency;Level\nHz;dBuV\n150000;66\n500000;56\n30000000;60.5\n'],
    ['a column of counts', 'no,freq Hz,amplitude dBuV\n1,150000,66\n2,500000,56\n3,30000000,60.5'],
    ['columns that are not its', 'Freq MHz,Limit dBuV,Peak dBuV\n0.15,70,66\n0.5,60,56\n30,60,60.5'],
    ['falling frequencies', 'Hz,dBuV\n30000000,60.5\n500000,56\n150000,66\n'],
    ['a list in no order', 'Hz,dBuV\n500000,56\n30000000,60.5\n150000,66\n'],
    ['volts', 'Frequency (Hz),Voltage (V)\n150000,0.0019952623\n500000,0.00063095734\n30000000,0.00105925373\n'],
    ['dBmV', 'Hz,dBmV\n150000,6\n500000,-4\n30000000,0.5\n'],
    ['quoted cells', '"Frequency, Hz","Level, dBuV"\n"150000","66"\n"500000","56"\n"30000000","60.5"\n'],
    ['old line ends', 'Hz,dBuV\r150000,66\r500000,56\r30000000,60.5'],
    ['a byte-order mark', '\uFEFFHz,dBuV\n150000,66\n500000,56\n30000000,60.5'],
    ['a word after the table', 'Hz,dBuV\n150000,66\n500000,56\n30000000,60.5\nEND\n'],
    ['a typographic minus', 'Hz,dBuV\n150000,66\n500000,56\n30000000,60.5'],
  ])('%s', (_what, text) => {
    const { hz, db, unit } = spectrum(text)
    expect(hz.map((f) => Math.round(f))).toEqual(AS_READ.hz)
    expect(db.map((level) => Number(level.toFixed(4)))).toEqual(AS_READ.db)
    expect(unit).toBe(AS_READ.unit)
  })

  it.each([
    ['dBm', 'Hz,dBm\n1e8,-41\n2e8,-50', 'dBm', [-41, -50]],
    ['dBµA', 'Hz\tdBµA\n100000000\t53\n200000000\t20', 'dBµA', [53, 20]],
    ['amperes', 'MHz,current (mA)\n1,1\n2,10', 'dBµA', [60, 80]],
    ['a field', 'MHz,E (dBµV/m)\n30,24\n100,24', 'dBµV/m', [24, 24]],
    ['no unit', '100000000 -41\n200000000 −50', undefined, [-41, -50]],
    ['no current called A', 'MHz,Trace A\n1,41\n2,50', undefined, [41, 50]],
  ])('%s', (_what, text, unit, db) => {
    const found = spectrum(text)
    expect(found.unit).toBe(unit)
    expect(found.db).toEqual(db)
  })

  it('with the unit and the column the user chooses', () => {
    const text = '0.15 66 60\n0.5 56 50\n'
    expect(spectrum(text, { frequencyUnit: 'MHz', levelUnit: 'dBµV', levelAt: 2 })).toEqual({
      hz: [150e3, 500e3],
      db: [60, 50],
      unit: 'dBµV',
    })
  })

  it('says which column was taken and what was left out', () => {
    const reading = read('MHz,Peak dBuV,Average dBuV\n0,99,99\n0.15,66,60\n0.5,56,50\n')
    if (!reading.ok) throw new Error(reading.message)
    expect(reading.levelColumns.map(({ label }) => label)).toEqual(['Peak dBuV', 'Average dBuV'])
    expect(reading.remarks).toEqual([
      'There are 2 columns of figures; column 2 is taken as the level.',
      '1 row at 0 Hz left out.',
    ])
    expect([...reading.spectrum.hz]).toEqual([150e3, 500e3])
  })
})

describe('a refusal names line and column', () => {
  it.each([
    ['Hz,dBuV\n150000,66\n500000,abc\n', 3, 2, 'Line 3, column 2: “abc” is no level'],
    ['Hz,dBuV\n150000,66\n5oo000,56\n', 3, 1, 'Line 3, column 1: “5oo000” is no frequency'],
    ['Hz,dBuV\n150000,66\n500000\n', 3, 2, 'Line 3, column 2: there is no level. Cells are divided by commas'],
    ['Hz,dBuV\n150000,66\n-500000,56\n', 3, 1, 'Line 3, column 1: a frequency of “-500000” is below 0'],
    ['Hz,V\n150000,0.1\n500000,0\n', 3, 2, 'Line 3, column 2: “0” has no level in dB'],
    ['Hz,dBuV\n150000,66\n500000,9000\n', 3, 2, 'outside −400 to 400 dB'],
    ['Hz,dBuV\n150000,66\n500000,5 dBm\n', 3, 2, 'is in another unit than the rows before'],
    ['Hz;dBuV\n150,000;66,100\n500,000;56,200\n', 2, 1, 'could be 150000 or 150.000'],
    ['Hz,dBuV\n150000,66\nTrace 2\n150000,66\n', 4, undefined, 'figures go on on line 4'],
    [`Hz,dBuV\n150000,66\n${'9'.repeat(30_000)}\n`, 3, undefined, 'Line 3 is longer than'],
  ])('%j', (text, line, column, sentence) => {
    const reading = read(text)
    if (reading.ok) throw new Error('was read')
    expect(reading.message).toContain(sentence)
    expect([reading.line, reading.column]).toEqual([line, column])
  })

  it('where the unit of the frequency is not said, it asks', () => {
    const reading = read('150 66\n500 56\n')
    expect(reading).toMatchObject({ ok: false, asks: 'frequency-unit' })
  })

  it.each(['', 'hello', 'a,b\nc,d\n', '{"json": true}', '\u0000\u0001', '1\n2\n3\n'])(
    'and says there is no table in %j',
    (text) => {
      const reading = read(text)
      expect(reading.ok).toBe(false)
    },
  )

  it('where a long list goes up and down', () => {
    const rows = Array.from({ length: 20_001 }, (_, i) => `${1e6 + (i % 7)},10`).join('\n')
    expect(read(`Hz,dBuV\n${rows}`)).toMatchObject({
      ok: false,
      message: expect.stringContaining('neither rise nor fall'),
    })
  })

  it('where there are more rows than a million', () => {
    const row = '1000000,10\n'
    const reading = read(`Hz,dBuV\n${row.repeat(1_000_001)}`)
    expect(reading).toMatchObject({ ok: false, line: 1_000_002 })
  })
})

describe('a long file', () => {
  it('is read in slices, with progress, and can be left', () => {
    const text = `Hz,dBuV\n${Array.from({ length: 50_000 }, (_, i) => `${1e6 + i},${(i % 90) / 2}`).join('\n')}`
    const fractions: number[] = []
    const running = readTrace(text)
    let step = running.next()
    for (; !step.done; step = running.next()) fractions.push(step.value.doneFrac)
    expect(fractions.length).toBeGreaterThan(20)
    expect(fractions.every((frac, i) => frac >= 0 && frac <= 1 && frac >= (fractions[i - 1] ?? 0))).toBe(true)
    expect(step.value.ok && step.value.spectrum.hz.length).toBe(50_000)
  })
})

describe('the plain rows of a long file', () => {
  it('are the same numbers to the last digit as read one by one', () => {
    const texts = [
      '0.1',
      '150000.123456',
      '-45.2',
      '99.99',
      '1e3',
      '123456789012345678',
      '.5',
      '7.',
      '+3',
      '0.30000000000000004',
      '10kHz',
      '5 dBuV',
    ]
    for (const cell of texts) {
      const rows = `MHz,dBuV\n1,${cell}\n2,3\n`
      const reading = read(rows)
      const expected = Number.parseFloat(cell)
      if (!reading.ok) expect(Math.abs(expected) > 400 || /kHz/.test(cell), cell).toBe(true)
      else expect(reading.spectrum.db[0], cell).toBe(expected)
    }
  })

  it.each([
    ['three columns and blanks', 'MHz ; dBuV ; note\n1 ; 40,5 ; 9\n2 ; 41 ; 9\n', [40.5, 41]],
    ['the level before the frequency', 'level dBuV,freq MHz\n40.5,1\n41,2\n', [40.5, 41]],
    ['blanks and tabs mixed', 'f/MHz dBuV\n 1   40.5\n\t2\t 41\n', [40.5, 41]],
    ['a trailing divider', 'MHz,dBuV,\n1,40.5,\n2,41,\n', [40.5, 41]],
  ])('%s', (_what, text, db) => {
    expect(spectrum(text).db).toEqual(db)
    expect(spectrum(text).hz).toEqual([1e6, 2e6])
  })
})
