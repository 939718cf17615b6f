/** The classes that would carry a pulse: up to which stand-off each does. */
import { expect, it } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { evaluate } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import { STAND_OFF_STEPS_V } from '../../../src/reference/suppressors.ts'
import { run } from '../../support/run-check.ts'

// level 1 of waveform 4 brings 50 V
const PART = { breakdownV: '34.4', dynamicOhm: '0.3323263', ratedPulseW: '1500' }
const SURGE = { level: '1', lineKind: 'power-28-vdc', withstandV: '3k', busMaxV: '32.2', busMinV: '0' }

it('reach to the highest stand-off there is where the circuit stands more than the surge ever brings', () => {
  const table = run(surgeCheck, { ...PART, ...SURGE }).pictures.find((picture) => picture.is === 'table')
  const rows = table?.is === 'table' ? table.rows : []
  expect(rows.length).toBeGreaterThan(1)
  for (const { cells } of rows) expect(cells[3]).toMatchObject({ si: Math.max(...STAND_OFF_STEPS_V) })
})

it('are tried one after the other, and all of it is done only at the end', () => {
  const running = evaluate(surgeCheck, readFields(surgeCheck, { ...PART, ...SURGE }))
  const seen: number[] = []
  for (let step = running.next(); !step.done; step = running.next()) seen.push(step.value.doneFrac)
  expect(seen.indexOf(Math.max(...seen))).toBe(seen.length - 1)
})
