import { describe, expect, it } from 'vitest'
import { scheduleOf } from '../../src/calc/connector/schedule.ts'
import { classQuestion } from '../../src/calc/connector/whole/strike/power-class.ts'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import { leastClasses } from '../../src/calc/surge/least-class.ts'
import { run } from '../../src/worker/power-class.ts'
import { connectorOf, contactOf, DISCRETE, lineOf } from '../calc/connector/some-connector.ts'

/** A discrete of which everything is said that the least class rests on. */
const STRUCK = {
  ...DISCRETE,
  busMaxV: '25',
  busMinV: '0',
  ambientC: '25',
  suppressorLeadH: '0',
  circuitWithstandV: '200',
  capacitorWithstandV: '500',
}

describe('power classes in the worker', () => {
  it('are those of this thread, from plain data to plain data', () => {
    const connector = connectorOf([contactOf('1', 'a', { chosenTopology: 'none' })], {
      texts: { strikeWaveform: 'wf4', strikeLevel: '3' },
    })
    const { rows } = atOnce(scheduleOf(connector, [lineOf('a', STRUCK)]))
    const { stresses } = classQuestion(connector, rows)
    const there = atOnce(run(structuredClone(stresses)))
    expect(there.length).toBe(1)
    expect(there[0]?.found?.ratedPulseW).toBeGreaterThan(0)
    expect(structuredClone(there)).toEqual(atOnce(leastClasses(stresses)))
  })
})
