/** Invented connectors of any size: power beside data, pairs, ground, spare and feed-through contacts, one barred line. */
import type { Connector, Contact } from '../../src/calc/connector/types.ts'
import type { Fact, FactKey, Line } from '../../src/calc/types.ts'

type Row = {
  readonly name: string
  readonly facts?: Partial<Record<FactKey, string>>
  readonly pair?: true
  readonly type?: Exclude<Contact['type'], 'line'>
  readonly texts?: Contact['texts']
}

const NOISE = { noiseHz: '118 MHz; 137 MHz', neededDb: '20 dB', noiseSourceOhm: '50; 150', noiseLoadOhm: '75' } as const

const ROWS: readonly Row[] = [
  {
    name: 'Main supply',
    facts: {
      ...NOISE,
      lineKind: 'power-28-vdc',
      neededDb: '30 dB',
      toleranceFrac: '20 %',
      surgeWaveform: 'wf4',
      surgeLevel: '3',
      standoffV: '33 V',
      circuitWithstandV: '80 V',
      ratedPulseW: '1.5 kW',
      busMaxV: '32.2 V',
    },
    texts: { wire: 'W101-20', zone: 'unpressurised', chosenSuppressor: 'class 3', chosenPlace: 'receptacle' },
  },
  { name: 'Supply return', type: 'ground' },
  { name: 'Gear down', facts: { ...NOISE, lineKind: 'discrete-ground', existingF: '200 pF' } },
  {
    name: 'Bus 1',
    facts: { ...NOISE, lineKind: 'arinc-429-high', dielectric: 'c0g', toleranceFrac: '10 %' },
    pair: true,
  },
  { name: 'Intercom phones', facts: { ...NOISE, lineKind: 'audio' }, texts: { remark: 'hum when the inverter runs' } },
  { name: 'Spare 1', type: 'spare' },
  { name: 'Maintenance bus', facts: { ...NOISE, lineKind: 'can', neededDb: '40 dB' }, pair: true },
  { name: 'Exhaust temperature', facts: { ...NOISE, lineKind: 'thermocouple', noiseHz: '10 kHz' }, pair: true },
  { name: 'Straight through', type: 'feed-through' },
  { name: 'Squib', facts: { ...NOISE, lineKind: 'pyrotechnic' } },
  { name: 'Unknown wire' },
]

const typed = (texts: Partial<Record<FactKey, string>>): Line['facts'] =>
  Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, { text, origin: { by: 'user' } } satisfies Fact]))

/** `count` contacts, the rows in turn, each turn with needs of its own so that windows differ; and their lines. */
export function connectorOfSize(count: number): { readonly connector: Connector; readonly lines: readonly Line[] } {
  const lines: Line[] = []
  const contacts: Contact[] = []
  for (let at = 0; contacts.length < count; at += 1) {
    const row = ROWS[at % ROWS.length] as Row
    const turn = Math.floor(at / ROWS.length)
    const name = turn === 0 ? row.name : `${row.name}, ${turn + 1}`
    const add = (more: Partial<Contact>, end = '') =>
      contacts.push({
        id: String(contacts.length + 1),
        type: row.type ?? 'line',
        texts: { function: `${name}${end}`, ...row.texts },
        ...more,
      })
    if (row.type !== undefined || row.facts === undefined) {
      add({})
      continue
    }
    const id = `line-${at}`
    const facts = {
      ...row.facts,
      ...(turn > 0 && row.facts.neededDb !== undefined ? { neededDb: `${20 + (turn % 7)} dB` } : {}),
    }
    lines.push({ id, name, gate: 'clear', trials: [], facts: typed(facts) })
    if (row.pair && contacts.length + 1 < count) {
      add({ lineId: id, leg: 'a' }, ' A')
      add({ lineId: id, leg: 'b' }, ' B')
    } else add({ lineId: id })
  }
  return {
    connector: {
      id: 'j1',
      name: 'J1',
      shape: 'rectangular',
      contacts,
      shared: { bondOhm: '2 mΩ', bondH: '100 pH' },
      texts: {
        equipment: 'Audio control unit (invented)',
        half: 'receptacle',
        shell: 'size 23, jam nut',
        arrangement: '23-35',
        gender: 'pins',
        keying: 'normal',
        matingUnchanged: 'true',
        remark: 'behind the left side panel',
      },
      suppressors: [],
      adjacent: [],
    },
    lines,
  }
}
