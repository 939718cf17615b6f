/** The runs of a strike: every sign, both ends of the breakdown, of every capacitor and of every inductor; lines alike once. */
import { CAPACITANCE_SHARE } from '../../../../reference/suppressors.ts'
import type { Waveform } from '../../../../reference/waveforms.ts'
import type { Express } from '../../../line/fields.ts'
import { type SurgeAsked, spreadOf } from '../../../surge/asked.ts'
import { type AxisKey, axesOf, setupAt } from '../../../surge/box.ts'
import type { Suppressor } from '../../../surge/circuit.ts'
import { variantsOf } from '../../../surge/part.ts'
import { circuitOf, type SurgeSetup } from '../../../surge/setup.ts'
import { hotBreakdownV } from '../../../surge/suppressor.ts'
import type { DecidedContact } from '../../decided.ts'
import { typedBond } from '../../plate/bond.ts'
import type { Connector } from '../../types.ts'
import { pairsOf } from '../../unlike-legs.ts'
import { needsBridge, reachOf } from '../group-reach.ts'
import { groupOfContact, groupPart, membersOf } from '../part-of-group.ts'
import { STRIKE_CASES, type StrikeCase, type StrikeContact, type StrikeQuestion, type StrikeRun } from './strike.ts'
import type { SharedPart, StruckLine } from './together.ts'

/** A contact with what is asked of it, and its setup in each case. */
export type Ready = {
  readonly contact: DecidedContact
  readonly asked: SurgeAsked
  readonly isLeadOpen: boolean
  readonly setups: ReadonlyMap<StrikeCase, SurgeSetup>
}

const ENDS = ['least', 'most'] as const
type End = (typeof ENDS)[number]

/** Everything of a question, from contacts that are ready. */
export function questionOf(q: {
  readonly connector: Connector
  readonly decided: readonly DecidedContact[]
  readonly ready: readonly Ready[]
  readonly level: StrikeQuestion['level']
  readonly left: StrikeQuestion['left']
  readonly taken: StrikeQuestion['taken']
  readonly share: number | undefined
  readonly row: Waveform
  readonly riseSec: number
  readonly express: Express | undefined
}): StrikeQuestion {
  const { connector, decided, ready, level, express } = q
  const { bondOhm, bondH, typed } = typedBond(connector.shared, express)
  const bond = { ohm: bondOhm, henries: bondH, isTyped: typed.ohm && typed.henries }
  const groupOf = groupOfContact(connector)
  const parts = connector.suppressors.map((group) => groupPart(membersOf(group, decided), express))
  const isOneSign =
    ready.every(({ setups }) =>
      [...setups.values()].every(
        ({ met, restV }) => (met === undefined || met.bidirectional) && restV.every((volts) => volts === 0),
      ),
    ) && parts.length === 0
  const runs = STRIKE_CASES.filter((of) => level[of] !== undefined).flatMap((of) =>
    (isOneSign ? ([1] as const) : ([1, -1] as const)).flatMap((sign) =>
      ENDS.flatMap((breakdown) =>
        ENDS.flatMap((capacitance) =>
          ENDS.map((inductance) =>
            runOf({ of, sign, breakdown, capacitance, inductance, ready, groupOf, parts, bond }),
          ),
        ),
      ),
    ),
  )
  const known = new Map<string, StrikeRun>()
  for (const run of runs) known.set(JSON.stringify([run.of, run.struck]), run)
  return {
    waveform: q.row.id,
    name: q.row.name,
    level,
    isSteep: q.riseSec < 1e-6,
    isRing: q.row.ring !== undefined,
    isWayOpen: ready.some(
      ({ asked, setups }) =>
        asked.lineH === undefined && [...setups.values()].some(({ filter }) => filter.capacitanceF > 0),
    ),
    runs: [...known.values()],
    contacts: ready.map((one) => contactOf(one, groupOf.get(one.contact.id))),
    pairs: pairsOf(ready.map(({ contact }) => contact)).map(({ a, b }) => [a.id, b.id]),
    groups: connector.suppressors.map(({ id, contacts }, g) => {
      const part = parts[g]
      return {
        id,
        contacts,
        rating:
          part?.is === 'part' && part.ratedPulseW !== undefined
            ? { ratedW: part.ratedPulseW, ambientC: part.ambientC, derateZeroC: part.derateZeroC, type: part.part.type }
            : undefined,
      }
    }),
    left: q.left,
    taken: q.taken,
    share: q.share,
    bond,
  }
}

function runOf(q: {
  readonly of: StrikeCase
  readonly sign: 1 | -1
  readonly breakdown: End
  readonly capacitance: End
  readonly inductance: End
  readonly ready: readonly Ready[]
  readonly groupOf: ReadonlyMap<string, number>
  readonly parts: readonly ReturnType<typeof groupPart>[]
  readonly bond: StrikeQuestion['bond']
}): StrikeRun {
  const lines = new Map<string, { readonly line: StruckLine; readonly contacts: string[] }>()
  let pulse: SurgeSetup['pulse'] | undefined
  for (const one of q.ready) {
    const { contact, setups } = one
    const setup = setups.get(q.of)
    if (setup === undefined) continue
    pulse = setup.pulse
    const at = setupAt(setup, placeOf(one, setup, q))
    const variants = variantsOf(at.met)
    const suppressor = q.breakdown === 'most' ? hot(variants[0], one.asked.ambientC) : variants.at(-1)
    // the sign of the strike adds to the crest that has it
    const restV = q.sign > 0 ? Math.max(...setup.restV) : Math.min(...setup.restV)
    const group = q.groupOf.get(contact.id)
    const isShared = group !== undefined && q.parts[group]?.is === 'part'
    const line = { circuit: circuitOf(at, suppressor, { sign: q.sign, restV }), ...(isShared ? { group } : {}) }
    const key = JSON.stringify(line)
    const before = lines.get(key)
    lines.set(key, {
      line: { ...line, count: (before?.line.count ?? 0) + 1 },
      contacts: [...(before?.contacts ?? []), contact.id],
    })
  }
  if (pulse?.row.shape === undefined) throw new RangeError('a strike needs a shape')
  const isNegative = (group: number) =>
    needsBridge(
      q.ready
        .filter(({ contact }) => q.groupOf.get(contact.id) === group)
        .map(({ asked: { busMaxV, busMinV }, setups }) =>
          reachOf({ kind: [...setups.values()][0]?.kind, busMaxV, busMinV }),
        ),
    )
  return {
    of: q.of,
    struck: {
      spec: pulse.row.shape,
      ...(pulse.ring === undefined ? {} : { ring: pulse.ring }),
      bondOhm: q.bond.ohm,
      bondH: q.bond.henries,
      lines: [...lines.values()].map(({ line }) => line),
      groups: q.parts.map((answer, g): SharedPart => {
        if (answer.is !== 'part') return { breakdownV: 1e6, dynamicOhm: 1, capacitanceF: 0, isBridge: false }
        const { part } = answer
        return {
          breakdownV:
            q.breakdown === 'most' ? hotBreakdownV({ mostV: part.mostV, ambientC: answer.ambientC }) : part.leastV,
          dynamicOhm: part.dynamicOhm,
          capacitanceF: part.capacitanceF * CAPACITANCE_SHARE[q.capacitance],
          isBridge: isNegative(g),
        }
      }),
    },
    contacts: [...lines.values()].map(({ contacts }) => contacts),
  }
}

/** The high end of a breakdown is that of a part as hot as it was entered, or taken. */
const hot = (part: Suppressor | undefined, ambientC: number): Suppressor | undefined =>
  part && { ...part, breakdownV: hotBreakdownV({ mostV: part.breakdownV, ambientC }) }

/** Where in its tolerances a contact is struck; its capacitors as they were decided. */
function placeOf(
  { contact: { part }, asked }: Ready,
  setup: SurgeSetup,
  { capacitance, inductance }: { readonly capacitance: End; readonly inductance: End },
) {
  const axes = axesOf(setup, spreadOf(asked))
  const at = (of: AxisKey, end: End) => axes.find(({ key }) => key === of)?.[end === 'least' ? 'low' : 'high']
  const frac = capacitance === 'least' ? (part?.leastFrac ?? 1) : (part?.mostFrac ?? 1)
  const { capacitanceF, capacitance2F } = setup.filter
  return {
    capacitanceF: capacitanceF * frac,
    capacitance2F: capacitance2F * frac,
    ...given('inductanceH', at('inductanceH', inductance)),
    ...given('inductance2H', at('inductance2H', inductance)),
    ...given('suppressorF', at('suppressorF', capacitance)),
  }
}

const given = (key: AxisKey, value: number | undefined) => (value === undefined ? {} : { [key]: value })

function contactOf({ contact, asked, setups, isLeadOpen }: Ready, group: number | undefined): StrikeContact {
  const { kind, met, part, filter } = [...setups.values()][0] as SurgeSetup
  return {
    id: contact.id,
    withstandV: asked.withstandV,
    pairWithstandV: asked.pairWithstandV,
    isRestOpen: kind === undefined && asked.busMaxV === undefined,
    isInsulated: kind?.transformer !== undefined,
    insulationV: asked.insulationWithstandV ?? kind?.transformer?.insulationPeakV,
    capacitorWithstandV: asked.capacitorWithstandV,
    hasCapacitor: filter.capacitanceF > 0,
    hasPart: met !== undefined,
    isLeadOpen,
    rating:
      asked.ratedPulseW === undefined || part === undefined
        ? undefined
        : { ratedW: asked.ratedPulseW, ambientC: asked.ambientC, derateZeroC: asked.derateZeroC, type: part.type },
    group,
  }
}
