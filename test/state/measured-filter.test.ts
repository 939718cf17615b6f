import { signal } from '@preact/signals'
import { describe, expect, it } from 'vitest'
import { filterCheck } from '../../src/calc/checks/filter/check.ts'
import { resolve } from '../../src/calc/line/resolver.ts'
import { withFact } from '../../src/calc/line/with-fact.ts'
import type { Fitted } from '../../src/calc/touchstone/fit.ts'
import type { Fact, FactKey } from '../../src/calc/types.ts'
import { scratchDesk } from '../../src/state/desk.ts'
import { staying, takeParts, textsOf } from '../../src/state/measured-filter.ts'
import { newLine } from '../../src/store/line.ts'

const PARTS = {
  topology: 'LC',
  capacitanceF: 22.00049e-9,
  esrOhm: 0.0300004,
  eslH: 1e-9,
  inductanceH: 2.2e-6,
  dcrOhm: 0.1,
} as const

const FITTED: Fitted = { parts: PARTS, residualFrac: 0.001, untold: [] }

describe('fitted parts', () => {
  it('are texts of four digits', () => {
    expect(
      textsOf({ parts: PARTS, untold: [] }).map(([fact, text]) => `${fact} ${text.replaceAll('\u00A0', ' ')}`),
    ).toEqual(['topology LC', 'markedF 22 nF', 'esrOhm 30 mΩ', 'eslH 1 nH', 'inductanceH 2.2 µH', 'dcrOhm 100 mΩ'])
  })

  it('that are nothing stand as 0, and a loss that is none is left out', () => {
    const nothing = {
      topology: 'L',
      inductanceH: 1e-6,
      dcrOhm: 3e-15,
      inductorParallelF: 7e-24,
      inductorParallelOhm: 6e14,
    } as const
    expect(
      textsOf({ parts: nothing, untold: [] }).map(([fact, text]) => `${fact} ${text.replaceAll('\u00A0', ' ')}`),
    ).toEqual(['topology L', 'inductanceH 1 µH', 'dcrOhm 0 Ω', 'inductorParallelF 0 F'])
  })

  it('stand in every check once they are taken over', () => {
    const line = signal(newLine('line'))
    const write = (fact: FactKey, next: Fact | undefined) => {
      line.value = withFact(line.value, fact, next) as typeof line.value
    }
    takeParts({ ...scratchDesk, line, write }, FITTED)
    const values = Object.fromEntries(
      resolve(line.value)
        .fields(filterCheck)
        .map(({ key, value }) => [key, value]),
    )
    expect(values).toMatchObject({
      topology: 'LC',
      capacitanceF: 22e-9,
      esrOhm: 0.03,
      eslH: 1e-9,
      inductanceH: 2.2e-6,
      dcrOhm: 0.1,
    })
  })

  it('that the measurement does not tell are not taken over: what the data say of them stays to be entered', () => {
    const line = signal(newLine('line'))
    const write = (fact: FactKey, next: Fact | undefined) => {
      line.value = withFact(line.value, fact, next) as typeof line.value
    }
    takeParts({ ...scratchDesk, line, write }, { ...FITTED, untold: ['eslH', 'dcrOhm'] })
    expect(line.value.facts).toMatchObject({ markedF: {}, esrOhm: {}, inductanceH: {} })
    expect([line.value.facts.eslH, line.value.facts.dcrOhm]).toEqual([undefined, undefined])
  })

  it('that are not taken over are told where the line holds a text of them, which stays', () => {
    const line = signal(newLine('line'))
    const write = (fact: FactKey, next: Fact | undefined) => {
      line.value = withFact(line.value, fact, next) as typeof line.value
    }
    const desk = { ...scratchDesk, line, write }
    const coil = { topology: 'LC', capacitanceF: 22e-9, inductanceH: 2.2e-6, inductorParallelOhm: 4700 } as const
    takeParts(desk, FITTED)
    takeParts(desk, { ...FITTED, parts: coil })
    const other = { ...coil, capacitanceF: 47e-9, eslH: 3e-9, dcrOhm: 0.2, inductorParallelOhm: 1e12 }
    const next: Fitted = { parts: other, residualFrac: 0.001, untold: ['eslH'] }
    takeParts(desk, next)
    // of a part this fit has none of, nothing counts
    const held = staying({ ...next, parts: { ...other } }, line.value)
    expect(held.map(([fact, text]) => `${fact} ${text.replaceAll('\u00A0', ' ')}`)).toEqual([
      'eslH 1 nH',
      'inductorParallelOhm 4.7 kΩ',
    ])
    expect([staying(FITTED, line.value), staying(next, newLine('line'))]).toEqual([[], []])
  })

  it('of a pair bring the mode along in which alone they count', () => {
    const line = signal(newLine('line'))
    const write = (fact: FactKey, next: Fact | undefined) => {
      line.value = withFact(line.value, fact, next) as typeof line.value
    }
    takeParts({ ...scratchDesk, line, write }, FITTED, 'differential')
    expect(line.value.facts.noiseMode?.text).toBe('differential')
  })
})
