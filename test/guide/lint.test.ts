import { describe, expect, it } from 'vitest'
import { GUIDE } from '../../src/guide/guide.ts'
import { lint } from '../../src/guide/lint.ts'
import type { Guide, GuideNode, GuideOption, Outcome, Question } from '../../src/guide/types.ts'

const DONT_KNOW: GuideOption = { id: 'dont-know', label: "Don't know", next: 'end' }
const ask = (id: string, part: Partial<Question> = {}): Question => ({
  is: 'question',
  id,
  chapter: 'Test',
  text: 'Is it so?',
  why: 'It splits.',
  findOut: 'Look.',
  options: [{ id: 'yes', label: 'Yes', next: 'end' }, DONT_KNOW],
  ...part,
})
const end = (id = 'end', part: Partial<Outcome> = {}): Outcome => ({
  is: 'outcome',
  id,
  class: 'measure',
  headline: 'Measure it',
  reason: 'Nobody knows.',
  sources: [{ id: 'practice', standing: 'practice' }],
  rules: [],
  steps: ['Measure.'],
  checks: [],
  cautions: [],
  nextMeasurement: 'The level.',
  ...part,
})
const guideOf = (...nodes: readonly GuideNode[]): Guide => ({ version: 3, edition: 'test', start: 'start', nodes })
const codes = (guide: Guide): readonly string[] => lint(guide).map((each) => each.code)
const chain = (length: number): Guide =>
  guideOf(
    ...Array.from({ length }, (_, at): Question => {
      const next = at === length - 1 ? 'end' : `q${at + 1}`
      return ask(at === 0 ? 'start' : `q${at}`, { options: [{ ...DONT_KNOW, next }] })
    }),
    end(),
  )

describe('the linter', () => {
  it('finds no fault in the shipped guide', () => {
    expect(lint(GUIDE)).toEqual([])
  })

  it('finds no fault in a sound small guide', () => {
    expect(lint(guideOf(ask('start'), end()))).toEqual([])
  })

  it('allows 12 taps and not 13', () => {
    expect(codes(chain(12))).toEqual([])
    expect(codes(chain(13))).toEqual(['too-deep'])
  })

  it('counts only taps that answers can really take', () => {
    const last = {
      ...DONT_KNOW,
      next: [{ when: { answered: { node: 'start', options: ['yes'] } }, go: 'extra' }, { go: 'end' }],
    }
    const nodes = chain(12).nodes.map((node): GuideNode => {
      if (node.id === 'start')
        return ask('start', {
          options: [
            { id: 'yes', label: 'Yes', next: 'q5' },
            { ...DONT_KNOW, next: 'q1' },
          ],
        })
      return node.id === 'q11' ? ask('q11', { options: [last] }) : node
    })
    expect(codes(guideOf(...nodes, ask('extra')))).toEqual([])
  })

  const broken: readonly (readonly [string, Guide])[] = [
    ['start-missing', { ...guideOf(ask('first'), end()), start: 'start' }],
    ['unreachable', guideOf(ask('start'), end(), end('island'))],
    [
      'cycle',
      guideOf(
        ask('start', { options: [{ ...DONT_KNOW, next: 'b' }] }),
        ask('b', { options: [{ ...DONT_KNOW, next: 'start' }] }),
      ),
    ],
    ['dead-end', guideOf(ask('start', { options: [{ id: 'yes', label: 'Yes', next: 'nowhere' }, DONT_KNOW] }), end())],
    ['id-twice', guideOf(ask('start'), end(), end())],
    ['id-form', guideOf(ask('start', { options: [{ id: 'Yes_1', label: 'Yes', next: 'end' }, DONT_KNOW] }), end())],
    ['option-twice', guideOf(ask('start', { options: [DONT_KNOW, DONT_KNOW] }), end())],
    ['dont-know-missing', guideOf(ask('start', { options: [{ id: 'yes', label: 'Yes', next: 'end' }] }), end())],
    ['why-missing', guideOf(ask('start', { why: ' ' }), end())],
    ['find-out-missing', guideOf(ask('start', { findOut: '' }), end())],
    ['text-length', guideOf(ask('start', { text: `${'long '.repeat(18)}?` }), end())],
    ['label-length', guideOf(ask('start', { options: [{ ...DONT_KNOW, label: 'x'.repeat(61) }] }), end())],
    [
      'branch-open',
      guideOf(
        ask('start', { options: [{ ...DONT_KNOW, next: [{ when: { kindFamily: ['audio'] }, go: 'end' }] }] }),
        end(),
      ),
    ],
    [
      'condition-unknown',
      guideOf(
        ask('start', {
          options: [
            {
              ...DONT_KNOW,
              next: [{ when: { answered: { node: 'start', options: ['perhaps'] } }, go: 'end' }, { go: 'end' }],
            },
          ],
        }),
        end(),
      ),
    ],
    ['reason-missing', guideOf(ask('start'), end('end', { reason: '' }))],
    ['headline-missing', guideOf(ask('start'), end('end', { headline: '' }))],
    ['steps-missing', guideOf(ask('start'), end('end', { steps: [] }))],
    ['measurement-missing', guideOf(ask('start'), end('end', { nextMeasurement: '' }))],
    ['rule-unknown', guideOf(ask('start'), end('end', { rules: ['magic'] }))],
    ['caution-unknown', guideOf(ask('start', { cautions: ['be-nice'] }), end())],
    [
      'check-unknown',
      guideOf(ask('start'), end('end', { checks: [{ check: 'tone', prefill: {}, why: 'dead link' }] })),
    ],
    [
      'key-unknown',
      guideOf(ask('start'), end('end', { checks: [{ check: 'need', prefill: { wantedDb: '20' }, why: 'x' }] })),
    ],
  ]

  it.each(broken)('finds %s', (code, guide) => {
    expect(codes(guide)).toContain(code)
  })

  it('finds a source, a missing source and a fact that nobody knows in stored content', () => {
    const stored: Guide = JSON.parse(
      JSON.stringify(
        guideOf(
          ask('start', { options: [{ ...DONT_KNOW, sets: [{ fact: 'noiseHz', text: '7 MHz' }] }] }),
          end('end', { sources: [{ id: 'S1', standing: 'read' }] }),
        ),
      )
        .replace('"S1"', '"S99"')
        .replace('"noiseHz"', '"noiseColour"'),
    )
    expect(codes(stored)).toEqual(expect.arrayContaining(['source-unknown', 'fact-unknown']))
    const bare: Guide = JSON.parse(
      JSON.stringify(guideOf(ask('start'), end())).replace(/"sources":\[[^\]]*\]/, '"sources":[]'),
    )
    expect(codes(bare)).toContain('source-missing')
  })
})
