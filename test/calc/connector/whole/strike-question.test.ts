import { describe, expect, it } from 'vitest'
import { surgeCheck } from '../../../../src/calc/checks/surge/check.ts'
import type { DecidedContact } from '../../../../src/calc/connector/decided.ts'
import type { Connector } from '../../../../src/calc/connector/types.ts'
import { acrossPart } from '../../../../src/calc/connector/whole/group-reach.ts'
import { groupPart } from '../../../../src/calc/connector/whole/part-of-group.ts'
import { strikeAnswer } from '../../../../src/calc/connector/whole/strike/answer.ts'
import { strikeFindings } from '../../../../src/calc/connector/whole/strike/findings.ts'
import { strikeQuestion } from '../../../../src/calc/connector/whole/strike/question.ts'
import type { StrikeQuestion } from '../../../../src/calc/connector/whole/strike/strike.ts'
import { suppressorFindings } from '../../../../src/calc/connector/whole/suppressor-findings.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import { resolve } from '../../../../src/calc/line/resolver.ts'
import type { Check, Figures } from '../../../../src/calc/types.ts'
import { connectorOf, contactOf, lineOf, type Texts } from '../../../support/decided-contact.ts'

const surge: Texts = {
  lineKind: 'discrete-28v',
  standoffV: '48',
  supplyCategory: 'do160-a',
  ratedPulseW: '1500',
  circuitWithstandV: '120',
  capacitorWithstandV: '200',
  toleranceFrac: '0',
}
const exactly = { capacitanceF: 10e-9, leastFrac: 1, mostFrac: 1 }
const wf4 = { strikeWaveform: 'wf4', strikeLevel: '3' }

const struck = (decided: readonly DecidedContact[], texts: Connector['texts'] = wf4, more: Partial<Connector> = {}) => {
  const connector = connectorOf(decided, { texts, shared: { bondOhm: '0', bondH: '0' }, ...more })
  const asked = strikeQuestion(connector, decided)
  if (asked.is === 'missing') throw new Error(asked.sentence)
  const { question } = asked
  const answer = atOnce(strikeAnswer(question))
  return { question, answer, findings: strikeFindings(question, answer) }
}

describe('one contact struck alone, its plate at rest', () => {
  it('is what the surge check of its line says', () => {
    const contact = contactOf('1', { ...surge, ambientC: '25' }, exactly)
    const { answer } = struck([contact])
    const line = lineOf('same', {
      ...surge,
      surgeWaveform: 'wf4',
      surgeLevel: '3',
      surgeTopology: 'C',
      markedF: '10n',
      temperatureFrac: '0',
      biasFrac: '0',
      ageingDecades: '0',
    })
    const { values } = resolve(line).figures(surgeCheck as unknown as Check) as Figures
    const [own] = answer.cases[0]?.contacts ?? []
    expect(own?.loadV).toBeCloseTo(Math.max(values['loadPeakV'] ?? 0, values['worstLoadPeakV'] ?? 0), 1)
    expect((own?.energyJ ?? 0) / (values['energyJ'] ?? 1)).toBeCloseTo(1, 2)
    expect((own?.usedFrac ?? 0) / (values['worstUsedFrac'] ?? 1)).toBeCloseTo(1, 1)
  }, 60_000)
})

describe('the question of a strike', () => {
  const three = ['1', '2', '3'].map((id) => contactOf(id, surge, exactly))
  const missing = (texts: Connector['texts']) => {
    const asked = strikeQuestion(connectorOf(three, { texts }), three)
    return asked.is === 'missing' ? asked.sentence : ''
  }

  it('says what it waits for', () => {
    expect(missing({})).toMatch(/^Choose the waveform/u)
    expect(missing({ strikeWaveform: 'wf4' })).toMatch(/^Enter the pin level/u)
    expect(missing({ strikeWaveform: 'wf4', strikeLevel: 'three' })).toContain('“three” is no level')
    expect(missing({ strikeWaveform: 'wf4', strikeLevel: '9' })).not.toBe('')
    expect(missing({ strikeWaveform: 'wf4', bundleLevel: '3' })).toMatch(/^Enter the share/u)
  })

  const questionOf = (texts: Connector['texts']): StrikeQuestion => {
    const asked = strikeQuestion(connectorOf(three, { texts }), three)
    if (asked.is === 'missing') throw new Error(asked.sentence)
    return asked.question
  }

  it('strikes contacts alike once, and shares a bundle between those that clamp', () => {
    const { runs } = questionOf({ ...wf4, bundleLevel: '3', bundleShareFrac: '30 %' })
    for (const { struck: asked } of runs) expect(asked.lines.map(({ count }) => count)).toEqual([3])
    // 600 A of the bundle, 30 % on three contacts: 60 A each, 300 V behind 5 Ω
    const [bundle] = runs.filter(({ of }) => of === 'bundle')
    expect(bundle?.struck.lines[0]?.circuit.source.ohm).toBeCloseTo(5, 9)
  })

  // L from its least, which is entered, to 10 µH · 1.2/0.8; the suppressor from 30 % of its 0 V capacitance
  it('strikes every inductor and every suppressor’s capacitance at both ends as well', () => {
    const coiled = contactOf(
      '1',
      { ...surge, toleranceFrac: '20 %', suppressorF: '1n' },
      { topology: 'LC', capacitanceF: 10e-9, inductanceH: 10e-6 },
    )
    const asked = strikeQuestion(connectorOf([coiled], { texts: wf4 }), [coiled])
    if (asked.is === 'missing') throw new Error(asked.sentence)
    const circuits = asked.question.runs.flatMap(({ struck: { lines } }) => lines.map(({ circuit }) => circuit))
    const seen = (of: (circuit: (typeof circuits)[number]) => number | undefined) =>
      [...new Set(circuits.map(of))].sort()
    expect(seen(({ filter }) => Math.round(filter.inductanceH * 1e7))).toEqual([100, 150])
    expect(seen(({ filter }) => Math.round(filter.capacitanceF * 1e10))).toEqual([120, 80])
    expect(seen(({ suppressor }) => Math.round((suppressor?.capacitanceF ?? 0) * 1e10))).toEqual([10, 3])
  })

  it('goes into a worker as plain data', () => {
    const question = questionOf(wf4)
    expect(structuredClone(question)).toEqual(question)
  })

  it('names who is not struck, and why', () => {
    const open = contactOf('9', surge, undefined, { by: 'nobody' })
    const { findings } = struck([...three, open])
    expect(findings.find(({ id }) => id === 'strike-left')).toMatchObject({ verdict: 'unknown', contacts: ['9'] })
  })
})

describe('what is said of a strike', () => {
  const four = ['1', '2', '3', '4'].map((id) => contactOf(id, surge, exactly))
  const verdict = (found: ReturnType<typeof struck>, id: string) => found.findings.find((one) => one.id === id)?.verdict

  it('is yes where everything lives, and a no of the harsh case is with care', () => {
    expect(verdict(struck(four), 'strike-pins-circuits')).toBe('ok')
    const weak = four.map((one) => contactOf(one.id, { ...surge, circuitWithstandV: '50' }, exactly))
    expect(verdict(struck(weak), 'strike-pins-circuits')).toBe('marginal')
    const bundle = { strikeWaveform: 'wf4', bundleLevel: '3', bundleShareFrac: '40 %' }
    expect(verdict(struck(weak, bundle), 'strike-bundle-circuits')).toBe('fails')
    const mute = [contactOf('1', { ...surge, circuitWithstandV: '' }, exactly)]
    expect(verdict(struck(mute), 'strike-pins-circuits')).toBe('unknown')
  }, 60_000)

  it('is not known with a circuit of which nothing is known beside one the harsh case kills', () => {
    const weak = contactOf('1', { ...surge, circuitWithstandV: '50' }, exactly)
    const mute = contactOf('2', { ...surge, circuitWithstandV: '' }, exactly)
    expect(verdict(struck([weak, mute]), 'strike-pins-circuits')).toBe('unknown')
  }, 60_000)

  it('is no yes past volts that were entered between the legs of a pair, which it does not work out, and says that of every pair', () => {
    const legs = (texts: Texts) => {
      const first = contactOf('1', texts, exactly, { leg: 'a' })
      const line = first.line as NonNullable<typeof first.line>
      return struck([first, contactOf('2', texts, exactly, { leg: 'b', line })])
    }
    const open = legs(surge)
    expect(verdict(open, 'strike-pins-circuits')).toBe('ok')
    const told = open.findings.find(({ id }) => id === 'strike-pairs')
    expect(told?.sentence).toMatch(/^Between the legs of a pair nothing is judged here/u)
    expect(told?.contacts).toEqual(['1', '2'])
    expect(told?.verdict).toBeUndefined()
    const entered = legs({ ...surge, circuitPairWithstandV: '40' })
    expect(verdict(entered, 'strike-pins-circuits')).toBe('unknown')
    expect(entered.findings.find(({ id }) => id === 'strike-pins-circuits')?.sentence).toContain(
      'what stands between its legs is not judged against the 40\u00a0V entered there',
    )
    expect(struck(four).findings.some(({ id }) => id === 'strike-pairs')).toBe(false)
  }, 60_000)

  it('is no yes over a bond nobody entered, whose jump adds to every circuit', () => {
    for (const shared of [{}, { bondOhm: '1m' }]) {
      const found = struck(four, wf4, { shared })
      expect(verdict(found, 'strike-pins-circuits')).toBe('unknown')
      expect(found.findings[0]?.sentence).toContain('the bond is not entered')
    }
  }, 60_000)

  it('is no plain yes where unlike contacts are taken to share the bundle in equal parts', () => {
    const bundle = { strikeWaveform: 'wf4', bundleLevel: '1', bundleShareFrac: '1 %' }
    const cool = { ...surge, ambientC: '25', circuitWithstandV: '500', capacitorWithstandV: '900', surgeLineH: '0' }
    const alike = ['1', '2'].map((id) => contactOf(id, cool, exactly))
    const unlike = [...alike, contactOf('3', cool, { ...exactly, capacitanceF: 100e-9 })]
    for (const id of ['strike-bundle-circuits', 'strike-bundle-suppressors']) {
      expect(verdict(struck(alike, bundle), id)).toBe('ok')
      expect(verdict(struck(unlike, bundle), id)).toBe('marginal')
    }
  }, 60_000)

  // a 1500 W part has (150 − 85)/(150 − 25) = 52 % of its rating left at 85 °C
  it('takes the temperature of a suppressor strictly where nobody entered it, and says so', () => {
    const used = (more: Texts) => {
      const { answer, findings } = struck([contactOf('1', { ...surge, ...more }, exactly)])
      return {
        frac: answer.cases[0]?.contacts[0]?.usedFrac ?? 0,
        assumptions: findings.find(({ id }) => id === 'strike-pins-suppressors')?.basis?.assumptions.join('; ') ?? '',
      }
    }
    const cool = used({ ambientC: '25' })
    const hot = used({ ambientC: '85' })
    const unsaid = used({})
    expect(hot.frac / cool.frac).toBeGreaterThan(1.8)
    expect(unsaid.frac).toBeCloseTo(hot.frac, 12)
    expect(unsaid.assumptions).toContain('temperature 85\u00a0°C')
    expect(cool.assumptions).not.toContain('taken strictly')
  }, 60_000)

  it('is no plain yes on a steep front while the lead of a suppressor is not entered', () => {
    const steep = (more: Texts) => {
      const strong = {
        ...surge,
        ambientC: '25',
        circuitWithstandV: '500',
        capacitorWithstandV: '900',
        surgeLineH: '0',
        ...more,
      }
      const asked = strikeQuestion(
        connectorOf([contactOf('1', strong, exactly)], {
          texts: { strikeWaveform: 'wf2', bundleLevel: '1', bundleShareFrac: '10 %' },
          shared: { bondOhm: '0', bondH: '0' },
        }),
        [contactOf('1', strong, exactly)],
      )
      if (asked.is === 'missing') throw new Error(asked.sentence)
      expect(asked.question.isSteep).toBe(true)
      const calm = { connectorV: 60, loadV: 60, capacitorV: 60, clampA: 1, energyJ: 0, usedFrac: 0.1 }
      const found = {
        of: 'bundle' as const,
        groups: [],
        bounceV: 0,
        bondA: 0,
        isWhole: true,
        contacts: [{ id: '1', ...calm }],
      }
      return strikeFindings(asked.question, { cases: [found] }).find(({ id }) => id === 'strike-bundle-circuits')
    }
    expect(steep({})).toMatchObject({
      verdict: 'marginal',
      sentence: expect.stringContaining('lead of its suppressor'),
    })
    expect(steep({ suppressorLeadH: '0' })?.verdict).toBe('ok')
  })

  // 9.6e-4 of the breakdown a degree: 60 °C lift 59.1 V by 3.41 V, of which the line passes on R/(R + Rd)
  it('counts the breakdown of a hot suppressor in what the circuits see', () => {
    const at = (ambientC: string) => {
      const { answer } = struck([contactOf('1', { ...surge, dynamicOhm: '0.5', ambientC }, exactly)])
      return answer.cases[0]?.contacts[0]?.loadV ?? 0
    }
    const riseV = 48 * 1.11 * 1.11 * 9.6e-4 * 60
    expect((at('85') - at('25')) / (riseV * (5 / 5.5))).toBeCloseTo(1, 1)
    expect(at('25')).toBeLessThan(at('85'))
  }, 60_000)

  it('is not known where neither the line nor its peak is named', () => {
    const { lineKind: _kind, ...bare } = {
      ...surge,
      standoffV: '',
      circuitWithstandV: '900',
      capacitorWithstandV: '900',
    }
    const found = (more: Texts) => struck([contactOf('1', { ...bare, ...more }, exactly)])
    expect(verdict(found({}), 'strike-pins-circuits')).toBe('unknown')
    expect(found({}).findings.find(({ id }) => id === 'strike-pins-circuits')?.sentence).toContain(
      'what its line holds by itself is not known',
    )
    expect(verdict(found({ busMaxV: '0' }), 'strike-pins-circuits')).toBe('ok')
  }, 60_000)

  it('is no plain yes of a bundle whose cable may ring with a capacitor', () => {
    const bundle = { strikeWaveform: 'wf4', bundleLevel: '1', bundleShareFrac: '1 %' }
    const strong = { ...surge, circuitWithstandV: '500', capacitorWithstandV: '900' }
    const found = struck([contactOf('1', strong, exactly)], bundle)
    expect(verdict(found, 'strike-bundle-circuits')).toBe('marginal')
    expect(found.findings.find(({ id }) => id === 'strike-bundle-circuits')?.sentence).toContain(
      'inductance of the cable ahead of it is not entered',
    )
    const entered = contactOf('1', { ...strong, surgeLineH: '0' }, exactly)
    expect(verdict(struck([entered], bundle), 'strike-bundle-circuits')).toBe('ok')
  }, 60_000)

  it('puts the jump of the plate on every circuit', () => {
    const still = struck(four)
    const jumping = struck(four, wf4, { shared: { bondOhm: '50m', bondH: '20n' } })
    const [a, b] = [still.answer.cases[0], jumping.answer.cases[0]]
    expect(a?.bounceV).toBeLessThan(1e-6)
    expect(b?.bounceV).toBeGreaterThan(5)
    expect(b?.contacts[0]?.loadV ?? 0).toBeGreaterThan((a?.contacts[0]?.loadV ?? 0) + 5)
    expect(jumping.findings.find(({ id }) => id === 'strike-pins-bounce')?.sentence).toContain('the plate jumps')
  }, 60_000)

  it('of a ring is never more than with care: what lies between the ends is not searched', () => {
    const strong = [contactOf('1', { ...surge, circuitWithstandV: '500', capacitorWithstandV: '900' }, exactly)]
    const found = struck(strong, { strikeWaveform: 'wf3', strikeLevel: '1' })
    expect(verdict(found, 'strike-pins-circuits')).toBe('marginal')
  }, 60_000)
})

describe('the kinds of suppressor a connector takes', () => {
  const kinds = (decided: readonly DecidedContact[], more: Partial<Connector> = {}) =>
    suppressorFindings(connectorOf(decided, more), decided).find(({ id }) => id === 'suppressor-classes')
  const two = [contactOf('1', surge, exactly), contactOf('2', surge, exactly)]

  it('are counted where every contact has its own and none is shared', () => {
    const own = kinds([...two, contactOf('3', { ...surge, standoffV: '33', ratedPulseW: '600' }, exactly)])
    expect(own?.contacts).toEqual(['1', '2', '3'])
    expect(own?.sentence.replaceAll('\u00a0', ' ')).toBe(
      'Suppressors, 2 kinds: 2 × 48 V stand-off, 1.5 kW, one sign; 1 × 33 V stand-off, 600 W, one sign.',
    )
  })

  it('tell a part of both signs from one of one sign', () => {
    const both = kinds([...two, contactOf('3', { ...surge, suppressorBidirectional: 'true' }, exactly)])
    expect(both?.sentence).toMatch(/2 × [^;]+, one sign; 1 × [^;]+, both signs\.$/u)
  })

  it('are not spoken of where there is none', () => {
    const { standoffV: _, ratedPulseW: __, ...without } = surge
    expect(kinds([contactOf('1', without, exactly)])).toBeUndefined()
  })
})

describe('one suppressor for several contacts', () => {
  const group = { suppressors: [{ id: 'g1', contacts: ['1', '2', '3'] }] }
  const bare = (id: string, more: Texts = {}) =>
    contactOf(
      id,
      {
        lineKind: 'discrete-28v',
        supplyCategory: 'do160-a',
        circuitWithstandV: '120',
        capacitorWithstandV: '200',
        ...more,
      },
      exactly,
    )
  const withPart = (more: Texts = {}) => [contactOf('1', { ...surge, ...more }, exactly), bare('2'), bare('3')]
  const said = (decided: readonly DecidedContact[]) =>
    suppressorFindings(connectorOf(decided, group), decided).find(({ id }) => id === 'shared-suppressor-g1')

  it('stands at the highest of its lines, with both drops, and says what fails when it opens or shorts', () => {
    const found = said(withPart())
    expect(found?.verdict).toBe('ok')
    expect(found?.sentence).toMatch(/If the part opens, all 3 are bare/u)
    expect(found?.basis?.steps[1]?.si).toBeCloseTo(48 * 1.11 * 1.11 + 2, 9)
    expect(said(withPart({ standoffV: '24' }))?.verdict).toBe('fails')
  })

  it('is no where a line does not withstand it, and with care where the lines are unlike', () => {
    expect(said([contactOf('1', surge, exactly), bare('2', { circuitWithstandV: '50' }), bare('3')])?.verdict).toBe(
      'fails',
    )
    expect(said([contactOf('1', surge, exactly), bare('2', { lineKind: 'rs-232' }), bare('3')])?.sentence).toContain(
      'bridge',
    )
    expect(said([contactOf('1', surge, exactly), bare('2', { lineKind: 'thermocouple' }), bare('3')])?.verdict).toBe(
      'marginal',
    )
  })

  const between = (volts: readonly (readonly [busMinV: string, busMaxV: string])[], more: Texts = {}) =>
    said(
      volts.map(([busMinV, busMaxV], i) =>
        contactOf(
          `${i + 1}`,
          { ...surge, lineKind: 'not-listed', supplyCategory: '', busMinV, busMaxV, ...more },
          exactly,
        ),
      ),
    )

  // it breaks down from 53.3 V; a bridge puts it between +30 V of one line and −30 V of another: 60 V for ever
  it('in a bridge stands between the highest and the lowest of its lines', () => {
    const swing = ['-30', '30'] as const
    expect(
      between([
        ['0', '30'],
        ['0', '30'],
        ['0', '30'],
      ])?.verdict,
    ).toBe('ok')
    expect(between([swing, swing, swing])?.verdict).toBe('fails')
    expect(between([swing, swing, swing])?.sentence).toContain('60\u00a0V from each other (contacts 1 and 2)')
    expect(between([swing, ['0', '15'], ['0', '15']])?.sentence).not.toContain('from each other')
    expect(
      acrossPart([
        { highV: 30, lowV: -30 },
        { highV: 15, lowV: 0 },
      ]),
    ).toEqual({ volts: 45, lines: [1, 0] })
    expect(acrossPart([{ highV: 10, lowV: -30 }])).toEqual({ volts: 30, lines: [0] })
  })

  it('is not known where nobody says whether a line goes below chassis, nor where a contact hangs on two', () => {
    const mute = between([
      ['0', '30'],
      ['', '30'],
      ['0', '30'],
    ])
    expect(mute?.verdict).toBe('unknown')
    expect(mute?.sentence).toMatch(/^Whether contact 2 goes below chassis/u)
    const decided = withPart()
    const two = { suppressors: [...group.suppressors, { id: 'g2', contacts: ['3', '4'] }] }
    const found = suppressorFindings(connectorOf(decided, two), decided)
    expect(found.find(({ id }) => id === 'shared-suppressor-g1')).toMatchObject({
      verdict: 'unknown',
      sentence: expect.stringContaining('Contact 3 is named by two shared suppressors'),
    })
  })

  it('is struck behind a bridge where a lowest peak below chassis was entered', () => {
    const decided = ['-30', '0'].map((busMinV, i) =>
      contactOf(`${i + 1}`, { ...surge, busMinV, busMaxV: '30', standoffV: '64' }, exactly),
    )
    const shared = { suppressors: [{ id: 'g1', contacts: ['1', '2'] }] }
    const asked = strikeQuestion(connectorOf(decided, { texts: wf4, ...shared }), decided)
    if (asked.is === 'missing') throw new Error(asked.sentence)
    expect(asked.question.runs.every(({ struck: one }) => one.groups[0]?.isBridge)).toBe(true)
  })

  // 61.1 V at 25 °C are 59.1 V · (1 + 9.6e-4 · 60) + 2 V = 64.5 V at 85 °C
  it('is with care where a line hardly withstands it hot', () => {
    const weak = bare('2', { circuitWithstandV: '66' })
    const found = said([contactOf('1', surge, exactly), weak, bare('3')])
    expect(found?.verdict).toBe('marginal')
    expect(found?.sentence).toContain('from 64.6\u00a0V at 85\u00a0°C')
    expect(said([contactOf('1', { ...surge, ambientC: '25' }, exactly), weak, bare('3')])?.verdict).toBe('ok')
  })

  // it conducts from 48 · 1.11 · 1.11 + 2 V = 61.1 V at most, before any strike adds to it
  it('is with care where a line hardly withstands it', () => {
    expect(said([contactOf('1', surge, exactly), bare('2', { circuitWithstandV: '62' }), bare('3')])?.verdict).toBe(
      'marginal',
    )
  })

  it('that latches is no yes on a line whose current may hold it', () => {
    const crowbar = { suppressorType: 'crowbar', busSourceOhm: '0.1' }
    expect(said(withPart(crowbar))?.verdict).toBe('unknown')
    expect(said(withPart({ ...crowbar, suppressorHoldingA: '0.2' }))?.verdict).not.toBe('ok')
    expect(said(withPart(crowbar))?.sentence).toContain('may keep it on')
  })

  it('has the temperature of its hottest line that names it, and one type', () => {
    const hot = contactOf('2', { ...surge, ambientC: '125' }, exactly)
    const cool = contactOf('1', { ...surge, ambientC: '25' }, exactly)
    for (const pair of [
      [cool, hot],
      [hot, cool],
    ])
      expect(groupPart(pair)).toMatchObject({ is: 'part', ambientC: 125 })
    expect(groupPart([contactOf('1', surge, exactly), bare('2')])).toMatchObject({ is: 'part', ambientC: 85 })
    expect(groupPart([cool, contactOf('2', { ...surge, suppressorType: 'varistor' }, exactly)]).is).toBe('unlike')
  })

  it('is not known without a part, or with unlike ones', () => {
    expect(said([bare('1'), bare('2'), bare('3')])?.verdict).toBe('unknown')
    expect(said([...withPart().slice(0, 2), contactOf('3', { ...surge, standoffV: '51' }, exactly)])?.verdict).toBe(
      'unknown',
    )
  })

  it('takes what all its contacts bring, struck together', () => {
    const decided = withPart()
    const alone = struck([decided[0] as DecidedContact], wf4)
    const shared = struck(decided, wf4, { ...group })
    const one = alone.answer.cases[0]?.contacts[0]?.energyJ ?? 0
    const all = shared.answer.cases[0]?.groups[0]?.energyJ ?? 0
    expect(all).toBeGreaterThan(2.5 * one)
    expect(shared.findings.find(({ id }) => id === 'strike-pins-suppressors')?.sentence).toContain(
      'the one shared by contacts 1, 2 and 3',
    )
  }, 60_000)
})
