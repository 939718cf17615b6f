/** The table of what lands where. */
import { expect, it } from 'vitest'
import { harmonicsCheck } from '../../../src/calc/checks/harmonics/check.ts'
import { run } from '../../support/run-check.ts'

it('heads every column and names the product of each row', () => {
  // 13 × 121.175 MHz lies on GNSS L1
  const { pictures } = run(harmonicsCheck, { fundamentalHz: '121.175M', waveforms: 'transmitter' })
  const table = pictures.find((picture) => picture.is === 'table')
  if (table?.is !== 'table') throw new Error('no table')
  for (const { key, label } of table.columns) expect(label, key).toMatch(/\w/u)
  // the screen tells columns apart by their keys
  const keys = table.columns.map(({ key }) => key)
  expect(keys.filter((key, i) => key === '' || keys.indexOf(key) !== i)).toEqual([])
  expect(table.rows[0]?.cells).toHaveLength(table.columns.length)
  expect(table.rows[0]?.cells[0]).toMatchObject({ is: 'word', word: '13 × 121.175\u00a0MHz' })
})
