/**
 * A connector as it is kept: what was typed about it and its contacts, and which contact carries which Line. Facts about
 * a circuit stand on its Line alone; nothing here is a result.
 */

/** What a contact is for. A pair is one Line on two contacts; ground, spare and feed-through contacts have no Line. */
export const CONTACT_TYPES = ['line', 'ground', 'spare', 'feed-through'] as const
export type ContactType = (typeof CONTACT_TYPES)[number]

/**
 * Texts that are typed about a contact. `zone`: pressurised or unpressurised (the voltage class follows it); `phase`: of a
 * supply, A, B, C or neutral. The last five are what the user chose, apart from anything proposed; absent = not chosen.
 */
export const CONTACT_TEXTS = [
  'function',
  'wire',
  'pin',
  'zone',
  'phase',
  'remark',
  'chosenTopology',
  'chosenF',
  'chosenH',
  'chosenSuppressor',
  'chosenPlace',
] as const
export type ContactText = (typeof CONTACT_TEXTS)[number]

/** Of a pair. */
export type Leg = 'a' | 'b'

export type Contact = {
  /** its name on the insert, no other contact of the connector has it */
  readonly id: string
  readonly type: ContactType
  readonly lineId?: string
  readonly leg?: Leg
  readonly texts: { readonly [K in ContactText]?: string }
}

/**
 * Texts that are typed about the whole connector: whose it is and what it is; how values are grouped; what may flow to
 * chassis; what strikes it. `half`: receptacle, plug, adapter; `gender`: pins or sockets; `matingUnchanged`: true or false.
 * `valueRatio`: largest ratio of values the maker builds in one plane; `prefer`: values, topologies or margin.
 */
export const CONNECTOR_TEXTS = [
  'equipment',
  'half',
  'shell',
  'arrangement',
  'gender',
  'keying',
  'matingUnchanged',
  'remark',
  'prefer',
  'mostParts',
  'valueRatio',
  'toleranceFrac',
  'navyRule',
  'loadW',
  'chassisLimitA',
  'strikeWaveform',
  'strikeLevel',
  'bundleLevel',
  'bundleShareFrac',
] as const
export type ConnectorText = (typeof CONNECTOR_TEXTS)[number]

/** One suppressor shared by several contacts through steering. */
export type SuppressorGroup = { readonly id: string; readonly contacts: readonly string[] }

/** Capacitance between two contacts, where it is known. */
export type AdjacentPair = { readonly a: string; readonly b: string; readonly text: string }

/** The shared path from the filters' common plate to the reference of the protected circuits, as typed. */
export type SharedTexts = { readonly bondOhm?: string; readonly bondH?: string }

export type Connector = {
  readonly id: string
  /** its label, as on the drawing */
  readonly name: string
  readonly shape: 'rectangular' | 'ring'
  readonly contacts: readonly Contact[]
  readonly shared: SharedTexts
  readonly texts: { readonly [K in ConnectorText]?: string }
  readonly suppressors: readonly SuppressorGroup[]
  readonly adjacent: readonly AdjacentPair[]
}
