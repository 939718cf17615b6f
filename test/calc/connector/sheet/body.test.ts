import { describe, expect, it } from 'vitest'
import { scheduleOf } from '../../../../src/calc/connector/schedule.ts'
import { sheetBody } from '../../../../src/calc/connector/sheet/body.ts'
import { atOnce } from '../../../../src/calc/line/evaluate.ts'
import { connectorOfSize } from '../../../support/connector-of-size.ts'
import { connectorOf, contactOf, DISCRETE, lineOf } from '../some-connector.ts'

const bodyOf = (connector: Parameters<typeof scheduleOf>[0], lines: Parameters<typeof scheduleOf>[1]) =>
  atOnce(sheetBody({ connector, schedule: atOnce(scheduleOf(connector, lines)) }))

describe('the sheet of a connector', () => {
  it('draws windows that are alike once, with all their contacts, and none of a barred line', () => {
    const lines = [
      lineOf('a', DISCRETE),
      lineOf('b', DISCRETE),
      lineOf('c', { ...DISCRETE, neededDb: '30' }),
      lineOf('d', { lineKind: 'pyrotechnic' }),
    ]
    const contacts = [
      contactOf('1', 'a'),
      contactOf('2', 'b'),
      contactOf('3', 'c'),
      contactOf('4', 'd'),
      contactOf('5', 'a', { chosenF: '1n' }),
    ]
    const { grounds } = bodyOf(connectorOf(contacts), lines)
    expect(grounds.windows.map((one) => one.contacts)).toEqual([['1', '2'], ['3'], ['5']])
    for (const { picture, decided } of grounds.windows) {
      expect(picture?.rows.length).toBe(1)
      expect(picture?.rows[0]?.topology).toBe(decided.part?.topology)
      expect(picture?.chosenF).toBe(decided.part?.capacitanceF)
    }
  })

  it('runs a surge only where somebody entered one, with the part that was decided', () => {
    const surge = {
      ...DISCRETE,
      surgeWaveform: 'wf4',
      surgeLevel: '3',
      standoffV: '33',
      circuitWithstandV: '200',
      ratedPulseW: '1500',
      dynamicOhm: '0.3',
      busMaxV: '28',
    }
    const lines = [lineOf('a', DISCRETE), lineOf('b', surge), lineOf('c', surge)]
    const { grounds } = bodyOf(connectorOf([contactOf('1', 'a'), contactOf('2', 'b'), contactOf('3', 'c')]), lines)
    expect(grounds.ladders.map(({ contacts }) => contacts)).toEqual([['2', '3']])
    expect(grounds.ladders[0]?.picture?.rungs.length).toBeGreaterThan(2)
  })

  it('names an inductance that was assumed as such, and one that was chosen not', () => {
    const assumed = (texts: Parameters<typeof contactOf>[2]) =>
      bodyOf(connectorOf([contactOf('1', 'a', texts)]), [lineOf('a', DISCRETE)])
        .grounds.assumed.filter(({ field }) => field.key === 'inductanceH')
        .map(({ contacts }) => contacts)
    expect(assumed({ chosenTopology: 'PI', chosenF: '10n' })).toEqual([['1']])
    expect(assumed({ chosenTopology: 'PI', chosenF: '10n', chosenH: '2.2u' })).toEqual([])
  })

  it('names every assumption once with its contacts, and every source', () => {
    const lines = [
      lineOf('a', DISCRETE),
      lineOf('b', {
        lineKind: 'discrete-ground',
        noiseHz: '10M',
        neededDb: '20',
        noiseSourceOhm: '50',
        noiseLoadOhm: '50',
      }),
    ]
    const { grounds } = bodyOf(connectorOf([contactOf('1', 'a'), contactOf('2', 'b')]), lines)
    const existing = grounds.assumed.filter(({ field }) => field.key === 'existingF')
    expect(existing.map(({ contacts }) => contacts)).toEqual([['2']])
    const facts = grounds.assumed.map(({ field }) => `${field.input.fact} ${field.assumed?.text ?? field.text}`)
    expect(new Set(facts).size).toBe(facts.length)
    expect(grounds.absent.find(({ label }) => label === 'Dielectric')?.contacts).toEqual(['2'])
    expect(grounds.sources.length).toBeGreaterThan(3)
    expect(grounds.cautions).toContain('ok-bounds')
  })

  it('has trials of a pair once, parts by their contacts, and the sentence of the schedule beside each window', () => {
    const trial = {
      id: 't',
      at: '2026-11-26T08:00:00.000Z',
      steps: 'bare; empty; 1n; empty; bare',
      places: '',
      noise: '; same; gone; same; same',
      signal: '',
      repeats: '',
      times: '',
      removed: '',
    }
    const line = { ...lineOf('a', DISCRETE), trials: [trial] }
    const body = bodyOf(connectorOf([contactOf('1', 'a', {}, { leg: 'a' }), contactOf('2', 'a', {}, { leg: 'b' })]), [
      line,
    ])
    expect(body.trials).toEqual([{ contacts: ['1', '2'], trial }])
    expect(body.parts.map(({ contacts }) => contacts)).toEqual([['1', '2']])
    expect(body.rows[0]?.why).toContain(body.grounds.windows[0]?.sentence)
  })

  it('speaks of the value that was chosen, never of the one it would propose', () => {
    const body = bodyOf(connectorOf([contactOf('1', 'a', { chosenF: '1n' })]), [lineOf('a', DISCRETE)])
    const [window] = body.grounds.windows
    expect(window?.sentence).toContain('1\u00a0nF, your choice')
    expect(window?.picture?.rows[0]?.note).toBe('')
    expect(window?.picture?.rows[0]?.proposedF).toBeUndefined()
  })

  it('has a row for each contact, in the order of the connector', () => {
    const { connector, lines } = connectorOfSize(37)
    const body = bodyOf(connector, lines)
    expect(body.rows.map(({ id }) => id)).toEqual(connector.contacts.map(({ id }) => id))
  })
})
