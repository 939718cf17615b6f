/**
 * One invented 37-way box, so that a newcomer sees a whole connector: power beside data, windows that are shut, volts out
 * of order, a line nothing may be tried on. Every text of it is fiction; its figures are those of ordinary lines.
 */
import type { Connector, Contact, ContactText } from '../calc/connector/types.ts'
import type { Fact, FactKey, Line, LineKindId } from '../calc/types.ts'
import { newId } from './ids.ts'

type Texts = Partial<Record<FactKey, string>>

/** One circuit and the contacts it stands on: one, or the two legs of a pair. */
type Circuit = {
  readonly contacts: readonly [string] | readonly [string, string]
  readonly name: string
  readonly kind: LineKindId
  readonly wire: string
  readonly texts: Texts
  readonly gate?: 'barred'
  readonly contact?: { readonly [K in ContactText]?: string }
}

/** The noise of the second radio, which is what this box suffers from; the impedances are those a probe found on such wires. */
const RADIO: Texts = { noiseHz: '118 MHz; 137 MHz', noiseSourceOhm: '50; 150', noiseLoadOhm: '100' }
const ON_PAIR: Texts = { ...RADIO, noiseMode: 'common' }
const C0G: Texts = { dielectric: 'c0g', toleranceFrac: '10 %' }

const CIRCUITS: readonly Circuit[] = [
  {
    contacts: ['1'],
    name: '28 V essential feed',
    kind: 'power-28-vdc',
    wire: 'LB101-20',
    texts: { ...RADIO, neededDb: '30', maxBuildableF: '100 nF', chassisLimitA: '5 mA', busMaxV: '80', lineA: '2' },
    contact: { zone: 'pressurised' },
  },
  {
    contacts: ['3'],
    name: '28 V lamp supply',
    kind: 'power-28-vdc',
    wire: 'LB103-22',
    texts: { ...RADIO, neededDb: '30', maxBuildableF: '100 nF', chassisLimitA: '5 mA', busMaxV: '80' },
  },
  ...(['A', 'B', 'C'] as const).map((phase, at): Circuit => {
    const contacts = [String(4 + at)] as const
    const texts = {
      ...RADIO,
      neededDb: '25',
      navyRule: 'true',
      loadW: '60',
      chassisLimitA: '5 mA',
      maxBuildableF: '22 nF',
    }
    const name = `115 V phase ${phase}`
    return { contacts, name, kind: 'power-115-vac-400', wire: `LB10${4 + at}-20`, texts, contact: { phase } }
  }),
  {
    contacts: ['9'],
    name: 'flap lever down',
    kind: 'discrete-ground',
    wire: 'LB109-24',
    texts: { ...RADIO, ...C0G, neededDb: '20', signalOhm: '10k' },
  },
  {
    contacts: ['10'],
    name: 'hatch shut',
    kind: 'discrete-ground',
    wire: 'LB110-24',
    texts: { ...RADIO, ...C0G, neededDb: '20', signalOhm: '10k' },
  },
  {
    contacts: ['11'],
    name: 'wheels on ground',
    kind: 'discrete-28v',
    wire: 'LB111-24',
    texts: { ...RADIO, ...C0G, neededDb: '26', signalOhm: '4.7k' },
  },
  {
    contacts: ['12'],
    name: 'lantern relay drive',
    kind: 'discrete-28v',
    wire: 'LB112-22',
    // The suppressor of a quiet bench: on the bus it breaks down before the bus surge is over.
    texts: {
      ...RADIO,
      ...C0G,
      neededDb: '20',
      signalOhm: '1k',
      surgeWaveform: 'wf4',
      surgeLevel: '2',
      breakdownV: '33.3',
      ratedPulseW: '600',
      circuitWithstandV: '100',
      busMaxV: '80',
    },
  },
  {
    contacts: ['13'],
    name: 'push to talk, left',
    kind: 'push-to-talk',
    wire: 'LB113-24',
    texts: { ...RADIO, ...C0G, neededDb: '26', signalOhm: '1k' },
  },
  {
    contacts: ['14', '15'],
    name: 'ARINC 429 in, heading',
    kind: 'arinc-429-low',
    wire: 'LB114-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '10' },
  },
  {
    contacts: ['16', '17'],
    name: 'ARINC 429 out, mast lights',
    kind: 'arinc-429-high',
    wire: 'LB116-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '10' },
  },
  {
    contacts: ['18', '19'],
    name: 'RS-422 to the chart table',
    kind: 'rs-422',
    wire: 'LB118-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '20', bitRateHz: '10 Mb/s' },
  },
  {
    contacts: ['20', '21'],
    name: 'CAN, cabin lanterns',
    kind: 'can',
    wire: 'LB120-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '30', bitRateHz: '1 Mb/s' },
  },
  {
    contacts: ['22', '23'],
    name: 'Ethernet out',
    kind: 'ethernet-100base-tx',
    wire: 'LB122-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '20' },
  },
  {
    contacts: ['24', '25'],
    name: 'Ethernet in',
    kind: 'ethernet-100base-tx',
    wire: 'LB124-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '20' },
  },
  {
    contacts: ['26', '27'],
    name: 'rudder LVDT, excitation',
    kind: 'lvdt',
    wire: 'LB126-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '20', usefulHz: '3 kHz', signalOhm: '100' },
  },
  {
    contacts: ['28', '29'],
    name: 'rudder LVDT, secondary',
    kind: 'lvdt',
    wire: 'LB128-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '20', usefulHz: '3 kHz', signalOhm: '500' },
  },
  {
    contacts: ['30', '31'],
    name: 'intercom audio, left',
    kind: 'audio',
    wire: 'LB130-24',
    texts: { ...ON_PAIR, ...C0G, neededDb: '30', usefulHz: '6 kHz', signalOhm: '600' },
  },
  {
    contacts: ['32', '33'],
    name: 'heater thermocouple',
    kind: 'thermocouple',
    wire: 'LB132-22',
    texts: { ...ON_PAIR, ...C0G, neededDb: '30', usefulHz: '10 Hz', signalOhm: '50' },
  },
  { contacts: ['34'], name: 'tank probe', kind: 'fuel-quantity', wire: 'LB134-24', texts: RADIO, gate: 'barred' },
]

/** The contacts no circuit of ours stands on. */
const OTHERS: readonly Contact[] = [
  { id: '2', type: 'ground', texts: { function: '28 V return', wire: 'LB102-20' } },
  { id: '7', type: 'ground', texts: { function: '115 V neutral', wire: 'LB107-20', phase: 'neutral' } },
  { id: '8', type: 'ground', texts: { function: 'chassis', wire: 'LB108-16' } },
  { id: '35', type: 'spare', texts: {} },
  { id: '36', type: 'feed-through', texts: { function: 'panel heater, straight through', wire: 'LB136-20' } },
  { id: '37', type: 'ground', texts: { function: 'shields', wire: 'LB137-20' } },
]

const fact = (text: string): Fact => ({ text, origin: { by: 'user' } })

function lineOf({
  name,
  kind,
  texts,
  gate = 'clear',
}: Pick<Circuit, 'name' | 'kind' | 'texts'> & Partial<Pick<Line, 'gate'>>): Line {
  const typed = Object.entries(texts).map(([key, text]) => [key, fact(text)] as const)
  return { id: newId(), name, gate, trials: [], facts: { lineKind: fact(kind), ...Object.fromEntries(typed) } }
}

function contactsOf({ contacts, name, wire, contact = {} }: Circuit, lineId: string): readonly Contact[] {
  const isPair = contacts.length === 2
  return contacts.map((id, at) => ({
    id,
    type: 'line',
    lineId,
    ...(isPair && { leg: at === 0 ? ('a' as const) : ('b' as const) }),
    texts: { function: name, wire: isPair ? `${wire}${at === 0 ? 'WH' : 'BL'}` : wire, ...contact },
  }))
}

/** A fresh copy of the box, with ids of its own: the connector, and the lines its contacts carry. */
export function demoConnector(): { readonly connector: Connector; readonly lines: readonly Line[] } {
  const all = CIRCUITS.map((circuit) => {
    const line = lineOf(circuit)
    return { line, contacts: contactsOf(circuit, line.id) }
  })
  const contacts = [...all.flatMap((one) => one.contacts), ...OTHERS]
  const connector: Connector = {
    id: newId(),
    name: 'J1',
    shape: 'rectangular',
    contacts: contacts.sort((a, b) => Number(a.id) - Number(b.id)),
    shared: { bondOhm: '0.5 mΩ', bondH: '20 pH' },
    texts: {
      equipment: 'Lantern mast box (invented)',
      half: 'receptacle',
      arrangement: '37-way',
      gender: 'pins',
      matingUnchanged: 'true',
      chassisLimitA: '100 mA',
      strikeWaveform: 'wf4',
      strikeLevel: '2',
    },
    suppressors: [],
    adjacent: [{ a: '30', b: '31', text: '15 pF' }],
  }
  return { connector, lines: all.map(({ line }) => line) }
}
