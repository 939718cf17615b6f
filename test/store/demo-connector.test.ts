/** The invented box shows what it is there to show: computed, not said. */
import { describe, expect, it } from 'vitest'
import { choiceOf } from '../../src/calc/connector/choice.ts'
import { scheduleOf } from '../../src/calc/connector/schedule.ts'
import { ladderFaults } from '../../src/calc/ladder.ts'
import { lineFigures } from '../../src/calc/line/line-figures.ts'
import { checkById } from '../../src/calc/registry.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import { keptConnector, restoreConnector } from '../../src/store/connector.ts'
import { demoConnector } from '../../src/store/demo-connector.ts'
import { keptLine, restoreKeptLine } from '../../src/store/line.ts'

const { connector, lines } = demoConnector()
const nameOf = (lineId: string | undefined) => lines.find(({ id }) => id === lineId)?.name
const WINDOW = checkById('window')

function finished<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

describe('the invented box', () => {
  it('passes the gate unchanged, and has ids of its own in every copy', () => {
    const kept = keptConnector(connector, 'demo', 0)
    expect(restoreConnector(kept)).toEqual(kept)
    for (const line of lines) {
      const own = keptLine(line, 'demo', 0)
      expect(restoreKeptLine(own)).toEqual(own)
    }
    const other = demoConnector()
    expect(other.connector.id).not.toBe(connector.id)
    expect(other.lines[0]?.id).not.toBe(lines[0]?.id)
  })

  it('has 37 contacts in their order, each line on one contact or on the two legs of a pair', () => {
    const { contacts } = connector
    expect(contacts.map(({ id }) => id)).toEqual(Array.from({ length: 37 }, (_, i) => String(i + 1)))
    for (const { id } of lines) {
      const legs = contacts.filter(({ lineId }) => lineId === id).map(({ leg }) => leg)
      expect([[undefined], ['a', 'b']]).toContainEqual(legs)
    }
    // no two contacts are on one wire: the legs of a pair are two colours of it
    const wires = contacts.flatMap(({ texts: { wire } }) => (wire === undefined ? [] : [wire]))
    expect(wires.filter((wire, i) => wires.indexOf(wire) !== i)).toEqual([])
    expect(contacts.filter(({ lineId, type }) => (lineId === undefined) === (type === 'line'))).toEqual([])
    expect(contacts.filter((contact) => choiceOf(contact) !== undefined)).toEqual([])
  })

  it('has power of two voltages, discretes, buses, sensors, audio, and every type of contact', () => {
    const kinds = new Set(lines.map(({ facts }) => facts.lineKind?.text))
    for (const kind of [
      'power-28-vdc',
      'power-115-vac-400',
      'discrete-ground',
      'discrete-28v',
      'arinc-429-high',
      'arinc-429-low',
      'rs-422',
      'can',
      'ethernet-100base-tx',
      'lvdt',
      'audio',
      'thermocouple',
    ])
      expect(kinds).toContain(kind)
    for (const kind of kinds) expect(LINE_KINDS.map(({ id }) => id)).toContain(kind)
    expect(new Set(connector.contacts.map(({ type }) => type))).toEqual(
      new Set(['line', 'ground', 'spare', 'feed-through']),
    )
  })

  it('has shut windows, a barred line, and for the rest a part that stands in the shared bond', () => {
    const all = finished(scheduleOf(connector, lines)).rows
    const rows = all.filter(({ contact }) => contact.lineId !== undefined)
    const withVerdict = (...verdicts: (string | undefined)[]) => [
      ...new Set(rows.filter(({ verdict }) => verdicts.includes(verdict)).map(({ contact }) => nameOf(contact.lineId))),
    ]
    expect(withVerdict('fails')).toEqual(['lantern relay drive', 'Ethernet out', 'Ethernet in', 'tank probe'])
    expect(withVerdict('unknown')).toEqual([])
    expect(rows.filter(({ decided }) => decided.by === 'barred').map(({ contact }) => contact.id)).toEqual(['34'])
    expect(withVerdict('marginal')).toEqual([
      'ARINC 429 in, heading',
      'ARINC 429 out, mast lights',
      'CAN, cabin lanterns',
    ])
    expect(rows.filter(({ verdict, decided }) => verdict === 'ok' && decided.part === undefined)).toEqual([])
    const shut = lines.filter((line) => {
      const verdict = WINDOW && lineFigures(line, undefined, [WINDOW]).verdicts.get('window')
      return verdict === 'fails' && line.gate !== 'barred'
    })
    expect(shut.map(({ name }) => name)).toEqual(['Ethernet out', 'Ethernet in'])
  })

  it('has volts out of order on one line: its suppressor breaks down below the peak of the bus', () => {
    const surge = checkById('surge')
    const outOfOrder = lines.flatMap((line) => {
      const { rungs } = lineFigures(line, undefined, surge === undefined ? [] : [surge])
      const faults = ladderFaults(rungs).filter(({ comesId }) => comesId === 'surge-bus')
      return faults.map(({ comesV, holdsV }) => ({ name: line.name, isOver: comesV > holdsV }))
    })
    expect(outOfOrder).toEqual([{ name: 'lantern relay drive', isOver: true }])
  })
})
