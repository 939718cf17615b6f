/** History: events are appended, the newest counts, and answers of earlier editions become events. */
import { describe, expect, it } from 'vitest'
import { replay } from '../../src/guide/engine.ts'
import { GUIDE } from '../../src/guide/guide.ts'
import { earlierLike } from '../../src/guide/investigate/earlier.ts'
import { answersOf, eventsFrom, newestOf } from '../../src/guide/investigate/events.ts'
import { translateEvents } from '../../src/guide/retired.ts'
import { restoreTriage } from '../../src/store/meta.ts'
import { restoreComplaint } from '../../src/store/restore-complaint.ts'
import v2 from '../store/fixtures/v2.json' with { type: 'json' }

const AT = '2026-11-20T08:00:00.000Z'
const OLD = { 'gate-danger': 'none', 'gate-lines': 'none', wrong: 'noise', path: 'volume', bond: 'shared' }

describe('events', () => {
  it('keep history; the newest of each item counts, in the order items were first met', () => {
    const events = [
      { at: AT, evidence: 'wrong', option: 'noise' },
      { at: AT, evidence: 'volume', option: 'dont-know' },
      { at: AT, evidence: 'wrong', option: 'receiver' },
    ]
    expect(Object.entries(answersOf(events))).toEqual([
      ['wrong', 'receiver'],
      ['volume', 'dont-know'],
    ])
    expect(newestOf(events, 'wrong')?.option).toBe('receiver')
  })

  it('are made of old answers at the last change, under the ids of today', () => {
    expect(translateEvents(eventsFrom(OLD, AT)).slice(2)).toEqual([
      { at: AT, evidence: 'wrong', option: 'noise' },
      { at: AT, evidence: 'volume', option: 'still' },
      { at: AT, evidence: 'grounds-mv', option: 'follows' },
    ])
    const complaint = restoreComplaint({ schemaVersion: 2, answers: OLD, updatedAt: AT, createdAt: AT }, 'stored')
    expect(complaint.events).toEqual(eventsFrom(OLD, AT))
    expect(complaint.answers).toEqual(OLD)
    expect(replay(GUIDE, answersOf(complaint.events ?? [])).unusedAnswers).toEqual([])
    expect(restoreTriage({ answers: OLD, updatedAt: AT }).events).toEqual(eventsFrom(OLD, AT))
  })

  it('come back from storage as they were written', () => {
    const stored = v2.stores.complaints.records.find(({ schemaVersion }) => schemaVersion === 3)
    const triage = v2.stores.meta.records.triagesAside.find(({ schemaVersion }) => schemaVersion === 2)
    expect(stored).toHaveProperty('events')
    expect(restoreComplaint(stored, 'stored')).toMatchObject({ events: Object(stored).events })
    expect(restoreTriage(triage)).toMatchObject({ events: Object(triage).events })
  })
})

describe('earlier complaints', () => {
  const closed = {
    id: 'c1',
    title: 'Whine on ship 2',
    cure: 'diode',
    proof: 'on, off, on',
    answers: { wrong: 'noise', when: 'engine', rhythm: 'whine', volume: 'gone', closed: 'alternator' },
  }

  it('are named when at least three answers agree and none contradicts', () => {
    const same = { wrong: 'noise', when: 'engine', rhythm: 'whine' }
    expect(earlierLike(same, [closed])).toEqual([closed])
    expect(earlierLike({ wrong: 'noise', when: 'engine' }, [closed])).toEqual([])
    expect(earlierLike({ ...same, volume: 'still' }, [closed])).toEqual([])
    expect(earlierLike({ ...same, wrong: 'receiver' }, [closed])).toEqual([])
    expect(earlierLike({ ...same, rhythm: 'dont-know' }, [closed])).toEqual([])
  })
})
