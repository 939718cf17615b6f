/** What the line stands across a part, and that it is said. */
import { describe, expect, it } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { linePeaksOf } from '../../../src/calc/surge/line.ts'
import { lineKindById } from '../../../src/reference/line-kinds.ts'
import { run } from '../../support/run-check.ts'

it('takes a typed peak for both signs where the kind swings both ways, else for its own', () => {
  const part = { place: 'leg', bidirectional: false } as const
  const peaks = (id: string, busMaxV: number) =>
    linePeaksOf({ part, kind: lineKindById(id), busMaxV, busMinV: undefined })
  // ARINC 429 puts its two legs at plus and minus 5 V, a 28 V bus stays above ground
  expect(peaks('arinc-429-high', 9)).toEqual({ highV: 9, lowV: -9 })
  expect(peaks('power-28-vdc', 40)).toMatchObject({ highV: 40, lowV: lineKindById('power-28-vdc')?.ownPeaks?.leg?.[0] })
})

it('says between what the line stays and what the part blocks', () => {
  const { findings } = run(surgeCheck, {
    level: '3',
    standoffV: '15',
    ratedPulseW: '1500',
    bidirectional: 'true',
    lineKind: 'arinc-429-high',
    withstandV: '100',
  })
  // 5 V ± 10 % from leg to ground
  expect(findings.map(({ sentence }) => sentence.replaceAll('\u00a0', ' ')).join(' ')).toMatch(
    /The line stays between −5\.5 V and 5\.5 V; at any temperature the part blocks between −15\.\d V and 15\.\d V\./u,
  )
})

describe('a peak typed below what the document of the kind allows', () => {
  const lineSaid = (changed: Readonly<Record<string, string>>) =>
    run(surgeCheck, {
      level: '3',
      standoffV: '8.5',
      ratedPulseW: '1500',
      bidirectional: 'true',
      lineKind: 'rs-232',
      withstandV: '100',
      ...changed,
    }).findings.map(({ verdict, sentence }) => `${verdict} ${sentence.replaceAll('\u00a0', ' ')}`)

  // TIA-232 lets a driver put ±15 V on a loaded line
  it('is said where the part would conduct there, as a yes with that limit', () => {
    expect(lineSaid({ busMaxV: '6' }).join(' ')).toMatch(
      /marginal 6(\.0)? V is entered as the peak of the line, and lines of this kind may go to 15(\.0)? V/u,
    )
    expect(lineSaid({ busMaxV: '6' }).join(' ')).not.toMatch(/ok The line stays/u)
  })

  it('is the whole story where the part blocks all the kind allows', () => {
    expect(lineSaid({ busMaxV: '6', standoffV: '18' }).join(' ')).not.toContain('is entered as the peak')
    expect(lineSaid({ busMaxV: '15', standoffV: '18' }).join(' ')).not.toContain('is entered as the peak')
  })
})

describe('a line beyond the stand-off that is blocked all the same', () => {
  // 32.5 V blocks 32.5 · 1.11 · (1 - 80 · 9.6e-4) = 33.3 V at -55 °C, both ways: 33 V only leaks
  const part = (changed: Readonly<Record<string, string>>) => {
    const result = run(surgeCheck, {
      level: '1',
      ratedPulseW: '30000',
      suppressorLeadH: '0',
      suppressorF: '5p',
      ambientC: '25',
      standoffV: '32.5',
      bidirectional: 'true',
      withstandV: '80',
      ...changed,
    })
    const cell = result.outputs['suppressorVerdict']?.cell
    const said = result.findings.map(({ sentence }) => sentence.replaceAll('\u00a0', ' ')).join(' ')
    return { verdict: cell?.is === 'word' ? cell.verdict : undefined, said }
  }

  it('leaks the same above chassis and below', () => {
    expect(part({ busMaxV: '33', busMinV: '-5' }).verdict).toBe('marginal')
    const below = part({ busMaxV: '5', busMinV: '-33' })
    expect(below.verdict).toBe('marginal')
    expect(below.said).toMatch(/The line peak of 33(\.0)? V is above the stand-off of 32\.5 V/)
  })

  it('does not leak within the stand-off on either side', () => {
    expect(part({ busMaxV: '5', busMinV: '-32' }).verdict).toBe('ok')
  })
})
