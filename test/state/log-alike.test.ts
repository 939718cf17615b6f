/** A misspelt word still finds the complaint that is meant, and what holds it as typed stands before. */
import { describe, expect, it } from 'vitest'
import { gatherWords, lettersOff, nearlyWithWords } from '../../src/state/log-alike.ts'
import { withWords } from '../../src/state/log-search.ts'
import { COMPLAINT_SCHEMA, type Complaint } from '../../src/store/complaint.ts'
import fc from '../support/property.ts'

const AT = '2026-01-01T00:00:00.000Z'
const complaint = (id: string, title: string, note = '', aircraft = ''): Complaint => ({
  ...{ id, title, note, aircraft, createdAt: AT, updatedAt: AT, schemaVersion: COMPLAINT_SCHEMA, guideVersion: 5 },
  ...{ isDemo: false, answers: {}, events: [], checks: [], kept: [], lines: [] },
})

const LOG: readonly Complaint[] = [
  complaint(
    'whine',
    'Whine in the headsets',
    'Follows the engine, gone with the alternator field off',
    'Row 4, trainer',
  ),
  complaint('squelch', 'Squelch opens on the second radio', 'Only with the landing light on. Transponder is fine.'),
  complaint('bus', 'Data bus drops out', 'CAN between the pump controller and the panel; terminator measured', 'Twin'),
  complaint('compass', 'Compass swings', 'With the windshield heat, and after the seat was changed'),
  complaint('gnss', 'Satellite position lost', 'While keying the transmitter on two channels'),
  complaint('static', 'Roar in snow', 'Dischargers missing on the left wing; precipitation'),
  complaint('strobe', 'Tick and rising whine', 'Strobe supply; suppressor proposed'),
  complaint('governor', 'Propeller surges', 'Governor pick-up beside the coaxial cable'),
  complaint('intercom', 'Buzz in the intercom of seat three', 'Ground of the jack'),
  complaint('typo', 'Suppresor burnt', 'written in a hurry'),
]
const gather = (log: readonly Complaint[]) => [...gatherWords(log)]
gather(LOG)

const found = (text: string) => [...withWords(LOG, text), ...nearlyWithWords(LOG, text)].map(({ id }) => id)

describe('the search of the Log', () => {
  it.each([
    ['altenator', 'whine'],
    ['altrenator', 'whine'],
    ['headsest whine', 'whine'],
    ['sqelch', 'squelch'],
    ['squlech', 'squelch'],
    ['transponer', 'squelch'],
    ['terminater', 'bus'],
    ['contoller', 'bus'],
    ['windsheild heat', 'compass'],
    ['compas swing', 'compass'],
    ['satelite', 'gnss'],
    ['sattelite position', 'gnss'],
    ['transmiter', 'gnss'],
    ['precipation', 'static'],
    ['discharers', 'static'],
    ['strobbe', 'strobe'],
    ['govenor', 'governor'],
    ['propellor surges', 'governor'],
    ['coaxal', 'governor'],
    ['intrecom', 'intercom'],
    ['intercomm buzz', 'intercom'],
    // as far as it is typed
    ['sattel', 'gnss'],
    ['govenr', 'governor'],
    // as typed before nearly so
    ['suppressor', 'strobe', 'typo'],
    ['suppresor', 'typo', 'strobe'],
    // the fewer misspelt words the better
    ['strobe suppressor', 'strobe'],
  ])('finds by “%s” what is meant', (typed, ...ids) => {
    expect(found(typed)).toEqual(ids)
  })

  it('does not take a short word, a figure or a word of another meaning for a misspelt one', () => {
    for (const typed of ['buss', 'whin3', '4291', 'heater gone', 'panels off']) {
      const exact = withWords(LOG, typed).map(({ id }) => id)
      expect(found(typed), typed).toEqual(exact)
    }
  })

  it('finds nothing of a complaint that is no longer in the Log, and what was changed by its new words', () => {
    const changed = LOG.map((one) => (one.id === 'strobe' ? complaint('strobe', 'Beacon hums') : one))
    gather(changed)
    expect(nearlyWithWords(changed, 'strobbe')).toEqual([])
    expect(nearlyWithWords(changed, 'beacom').map(({ id }) => id)).toEqual(['strobe'])
    expect(nearlyWithWords(LOG.slice(1), 'altenator')).toEqual([])
  })
})

/** The whole table, as the definition has it: the least over every beginning of the word. */
function byDefinition(typed: string, word: string): number {
  const off = (i: number, j: number): number => {
    if (i === 0 || j === 0) return i + j
    const same = typed[i - 1] === word[j - 1] ? 0 : 1
    const ways = [off(i - 1, j) + 1, off(i, j - 1) + 1, off(i - 1, j - 1) + same]
    const isSwapped = i > 1 && j > 1 && typed[i - 1] === word[j - 2] && typed[i - 2] === word[j - 1]
    return Math.min(...ways, isSwapped ? off(i - 2, j - 2) + 1 : Number.POSITIVE_INFINITY)
  }
  return Math.min(...Array.from({ length: word.length + 1 }, (_, j) => off(typed.length, j)))
}

describe('letters off', () => {
  it('are counted as the definition has it', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), minLength: 1, maxLength: 5 })
    fc.assert(
      fc.property(word, word, fc.integer({ min: 1, max: 2 }), (typed, other, most) => {
        const off = byDefinition(typed, other)
        expect(lettersOff(typed, other, most)).toBe(off > most ? Number.POSITIVE_INFINITY : off)
      }),
    )
  })
})
