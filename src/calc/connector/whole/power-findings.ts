/** What the supplies of a connector put into the chassis and take when switched on, in sentences. */
import type { Express } from '../../line/fields.ts'
import type { Verdict } from '../../types.ts'
import type { ConnectorFinding } from '../finding.ts'
import type { Connector } from '../types.ts'
import { type Charges, chargesOf } from './charges.ts'
import { type ChassisCurrents, chassisCurrents, LIVE_PHASES } from './currents.ts'
import { typedNumber } from './given.ts'
import { basisOf, contactsNamed, DERIVED, exact, PRACTICE, show, step } from './said.ts'
import { bySupply, isAllCounted, type PowerContacts, type Supplied } from './supplied.ts'

const AMPS = (si: number) => show(si, 'current', 'least')
const COUNTED =
  'every capacitor at its most over its tolerances; volts and frequency of the supply as its Line has them'

/** Chassis currents, then what is charged, then what could not be counted. */
export function powerFindings(
  connector: Connector,
  { supplied, unread, unnamed }: PowerContacts,
  express?: Express,
): readonly ConnectorFinding[] {
  const limit = typedNumber(
    connector.texts.chassisLimitA,
    { quantity: 'current', what: 'chassis current', example: '10m', least: 1e-12 },
    express,
  )
  const refused: readonly ConnectorFinding[] =
    limit.refused === undefined
      ? []
      : [{ id: 'chassis-limit-unread', verdict: 'unknown', sentence: limit.refused, contacts: [] }]
  const lacking: readonly ConnectorFinding[] =
    unread.length === 0
      ? []
      : [
          {
            id: 'supply-unread',
            verdict: 'unknown',
            sentence: `Volts or frequency of the supply cannot be read, or are not those of its kind, on ${contactsNamed(unread)}: its capacitance is in no sum of chassis current, Navy rule or inrush.`,
            contacts: unread,
          },
        ]
  const unsaid: readonly ConnectorFinding[] =
    unnamed.length === 0
      ? []
      : [
          {
            id: 'supply-unsaid',
            verdict: 'unknown',
            sentence: `What ${contactsNamed(unnamed)} ${unnamed.length === 1 ? 'carries' : 'carry'} is not said: ${unnamed.length === 1 ? 'its' : 'their'} capacitance is in no sum of chassis current, Navy rule or inrush. Choose the kind of line, or enter the working voltage and its frequency.`,
            contacts: unnamed,
          },
        ]
  const isWhole = isAllCounted({ unread, unnamed })
  const ac = bySupply(supplied.filter(({ supplyHz, mostF }) => supplyHz > 0 && mostF > 0))
  return [
    ...refused,
    ...lacking,
    ...unsaid,
    ...ac.flatMap((one, i) => currentFindings(one, i, ac.length, { limitA: limit.si, isWhole })),
    ...totalFinding(ac, { limitA: limit.si, isWhole }),
    ...chargeFindings(chargesOf(supplied), supplied),
  ]
}

/** What the whole box may put into the chassis, and whether every contact that could is in the sum. */
type Limit = { readonly limitA: number | undefined; readonly isWhole: boolean }

/** A part of the sum can be too much; only the whole of it is little enough. */
const atLimit = (amps: number, { limitA, isWhole }: Limit): Verdict | undefined =>
  limitA === undefined ? undefined : amps > limitA ? 'fails' : isWhole ? 'ok' : 'unknown'

/** A supply with its currents. */
function currentFindings(
  supply: readonly Supplied[],
  at: number,
  supplies: number,
  box: Limit,
): readonly ConnectorFinding[] {
  const [first] = supply
  if (first === undefined) return []
  const currents = chassisCurrents(supply)
  const name = `${first.name}, ${exact(first.workingRmsV, 'voltage')} at ${exact(first.supplyHz, 'frequency')}`
  const id = supplies === 1 ? '' : `-${at + 1}`
  const worstA = Math.max(currents.netA, currents.phaseLostA ?? 0)
  const verdict = supplies > 1 ? undefined : atLimit(worstA, box)
  const limit = limitWords(verdict, box)
  const contacts = supply.map((one) => one.id)
  const unphased = supply.filter(({ phase }) => phase === undefined).map((one) => one.id)
  const byPhase = LIVE_PHASES.filter((phase) => currents.byPhaseA[phase] > 0)
    .map((phase) => `${phase} ${AMPS(currents.byPhaseA[phase])}`)
    .join(', ')
  const lost =
    currents.phaseLostA === undefined ? '' : `; with phase ${currents.lost} lost ${AMPS(currents.phaseLostA)}`
  const shares = byPhase === '' ? '' : `phases ${byPhase}; `
  return [
    {
      id: `chassis-current${id}`,
      ...(verdict === undefined ? {} : { verdict }),
      sentence: `Into the chassis from ${name}: ${shares}at most ${AMPS(currents.netA)} in all${lost}${limit}.`,
      contacts,
      basis: basisOf(currentSteps(supply, currents), [COUNTED, ...assumedOf(unphased)]),
    },
    ...(unphased.length > 1
      ? [
          {
            id: `phase-missing${id}`,
            ...(verdict === 'fails' ? { verdict: 'unknown' as const } : {}),
            sentence: `No phase is said for ${contactsNamed(unphased)}: the currents are added in full. Write A, B, C or neutral as the phase, and balanced ones cancel.`,
            contacts: unphased,
          },
        ]
      : []),
  ]
}

const limitWords = (verdict: Verdict | undefined, { limitA = 0, isWhole }: Limit): string =>
  verdict === undefined
    ? ''
    : `, ${verdict === 'fails' ? 'over' : 'inside'} the ${exact(limitA, 'current')} this box may put into the chassis${isWhole ? '' : ', contacts left out not counted'}`

const assumedOf = (unphased: readonly string[]): readonly string[] => [
  'balanced phases cancel at the fundamental alone: triplen harmonics of three phases add',
  ...(unphased.length === 0 ? [] : ['a current whose phase is not said adds in full to the worst of the others']),
]

function currentSteps(supply: readonly Supplied[], currents: ChassisCurrents) {
  const [first] = supply
  if (first === undefined) return []
  const amps = LIVE_PHASES.map((phase) => exact(currents.byPhaseA[phase], 'current'))
  const allF = supply.reduce((sum, one) => sum + one.mostF, 0)
  return [
    step(
      'I = Σ 2π·f·C·V',
      `2π · ${exact(first.supplyHz, 'frequency')} · ${exact(allF, 'capacitance')} · ${exact(first.workingRmsV, 'voltage')}`,
      currents.totalA,
      'current',
    ),
    step(
      'I_net = |I_A + I_B∠−120° + I_C∠+120°| + I_unsaid',
      `${amps.join(', ')} over their tolerances; ${exact(currents.unphasedA, 'current')} without a phase`,
      currents.netA,
      'current',
    ),
    ...(currents.phaseLostA === undefined
      ? []
      : [step('the same with one phase away', `phase ${currents.lost}`, currents.phaseLostA, 'current')]),
  ]
}

/** Several supplies: their currents are of different frequencies or phases, and count together at the limit. */
function totalFinding(ac: readonly (readonly Supplied[])[], box: Limit): readonly ConnectorFinding[] {
  if (ac.length < 2) return []
  const each = ac.map((supply) => chassisCurrents(supply))
  const worst = each.map(({ netA, phaseLostA }) => Math.max(netA, phaseLostA ?? 0))
  const totalA = worst.reduce((sum, amps) => sum + amps, 0)
  const verdict = atLimit(totalA, box)
  const limit = limitWords(verdict, box)
  return [
    {
      id: 'chassis-current-all',
      ...(verdict === undefined ? {} : { verdict }),
      sentence: `All ${ac.length} AC supplies together put at most ${AMPS(totalA)} into the chassis, each with its worst phase lost${limit}.`,
      contacts: ac.flatMap((supply) => supply.map(({ id }) => id)),
      basis: basisOf(
        [
          step(
            'I = Σ worst of each supply',
            worst.map((amps) => exact(amps, 'current')).join(' + '),
            totalA,
            'current',
          ),
        ],
        [COUNTED, 'the supplies add in full, whatever their frequencies'],
      ),
    },
  ]
}

function chargeFindings(charges: Charges, supplied: readonly Supplied[]): readonly ConnectorFinding[] {
  const filtered = supplied.filter(({ mostF, crossF }) => mostF + crossF > 0)
  if (filtered.length === 0) return []
  const contacts = filtered.map(({ id }) => id)
  const { inrushA, inrushV, withoutWiring, chargeC, withoutBleed } = charges
  const steps = filtered
    .slice(0, 12)
    .map((one) =>
      step(
        `½·C·V² of ${one.id}`,
        `½ · ${exact(one.mostF + one.crossF, 'capacitance')} · (${exact(one.crestV, 'voltage')})²`,
        0.5 * (one.mostF + one.crossF) * one.crestV ** 2,
        'energy',
      ),
    )
  const charge = `${Number((chargeC * 1e6).toPrecision(3))} µC`
  return [
    {
      id: 'inrush',
      ...(inrushA === undefined ? { verdict: 'unknown' as const } : {}),
      sentence:
        inrushA === undefined
          ? `Switched on together, the supplies charge ${charge}; the peak current needs resistance or inductance of the wiring of ${contactsNamed(withoutWiring)}.`
          : `Switched on together, the supplies are drawn on for at most ${AMPS(inrushA)}, and a capacitor reaches ${show(inrushV ?? 0, 'voltage', 'least')}.`,
      contacts,
      basis: basisOf(
        [step('Q = Σ C·V', `${filtered.length} contacts at their crests`, chargeC, 'number'), ...inrushSteps(charges)],
        [
          COUNTED,
          'every contact peaks at the same moment, each through its own wiring',
          'the volts: every capacitor at its least; twice the crest where no inductance of the wiring is entered',
        ],
      ),
    },
    {
      id: 'stored',
      sentence: `Charged, they hold ${show(charges.storedJ, 'energy', 'least')}${bleedWords(charges)}.`,
      contacts: withoutBleed.length > 0 ? withoutBleed : contacts,
      basis: basisOf(
        [...steps, step('E = Σ ½·C·V²', `${filtered.length} contacts at their crests`, charges.storedJ, 'energy')],
        [COUNTED],
        [DERIVED, PRACTICE],
      ),
    },
  ]
}

const inrushSteps = ({ inrushA }: Charges) =>
  inrushA === undefined
    ? []
    : [step('I = Σ peaks of V into R, L and C in series', 'each contact by its own wiring', inrushA, 'current')]

function bleedWords({ bleedSec, withoutBleed }: Charges): string {
  const down = bleedSec === undefined ? '' : `; the slowest is down to 34 V after ${show(bleedSec, 'time', 'least')}`
  return withoutBleed.length === 0
    ? down
    : `${down}; no bleed is entered on ${contactsNamed(withoutBleed)}, which hold more than 34 V`
}
