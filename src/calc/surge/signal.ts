/** What suppressor and filter together do to the signal of a line, against what it stands. */
import { lineKindById } from '../../reference/line-kinds.ts'
import { roomPerLegF, roomToChassisF } from '../bounds/room.ts'
import { permittedLabel, worksBasis, worksWhy } from '../explain/ceiling.ts'
import { loadingCeiling } from '../loading/ceiling.ts'
import { formatQuantity } from '../quantity/format.ts'
import { stripAxis } from '../strip-axis.ts'
import type { Basis, Picture, SaidBound, Verdict } from '../types.ts'
import type { FittedFilter } from './circuit.ts'
import { capacitanceAt, steeredF } from './suppressor.ts'

export type SignalAnswer =
  | { readonly is: 'none'; readonly why: string }
  | {
      readonly is: 'judged'
      readonly verdict: Verdict
      readonly sentence: string
      readonly basis: Basis
      readonly bounds: readonly SaidBound[]
      readonly picture?: Picture
      readonly hints: readonly string[]
    }

export type SignalQuestion = {
  readonly lineKind: string | undefined
  readonly filter: FittedFilter
  readonly hasSuppressor: boolean
  /** at 0 V, per leg; undefined = not known */
  readonly suppressorF: number | undefined
  readonly workingV: number | undefined
}

const farads = (si: number) => formatQuantity(si, 'capacitance')
/** A usual small rectifier in front of a suppressor. */
const RECTIFIER_F = 10e-12

/** Judges C per leg, suppressor in full at 0 V plus every capacitor of the filter. */
export function signalAnswer(q: SignalQuestion): SignalAnswer {
  const kind = q.lineKind === undefined ? undefined : lineKindById(q.lineKind)
  if (!kind) return { is: 'none', why: 'name the line to judge its signal' }
  if (kind.barredWhy !== undefined) return { is: 'none', why: kind.barredWhy }
  if (kind.loading.rule === 'none') return { is: 'none', why: 'this kind of line has no ceiling of its own' }
  const { works, permitted } = loadingCeiling({ kind })
  const why = worksWhy({ kind }, works)
  const basis = worksBasis({ kind }, works)
  if (works.farads === undefined) return judged('unknown', why, basis)
  if (q.hasSuppressor && q.suppressorF === undefined)
    return judged('unknown', 'Enter the capacitance of the suppressor at 0 V: it uses room of the signal.', basis)
  const suppressorF = q.hasSuppressor ? (q.suppressorF ?? 0) : 0
  const taken = { isPair: kind.isPair, existingF: 0, crossF: 0 }
  const wholeF = roomPerLegF(works.farads, { ...taken, suppressorF: 0 })
  const roomF = roomPerLegF(works.farads, { ...taken, suppressorF })
  const filterF = q.filter.capacitanceF + q.filter.capacitance2F
  const over = permitted.find((p) => {
    const left =
      p.per === 'leg'
        ? roomToChassisF(p.farads, { ...taken, suppressorF })
        : roomPerLegF(p.farads, { ...taken, suppressorF })
    return left < filterF
  })
  const share = suppressorF < wholeF ? formatQuantity(suppressorF / wholeF, 'fraction', 2) : 'more than all'
  const parts = [
    ...(q.hasSuppressor ? [`suppressor ${farads(suppressorF)} (${share} of the room)`] : []),
    ...(filterF > 0 ? [`filter ${farads(filterF)}`] : []),
  ].join(' and ')
  const verdict: Verdict = roomF < filterF ? 'fails' : over ? 'marginal' : 'ok'
  const sentence =
    verdict === 'fails'
      ? `The signal stands ${farads(Math.max(0, wholeF))} per leg: too little for ${parts}.`
      : over
        ? `The signal stands ${farads(wholeF)} per leg, room for ${parts}; but more than is permitted: ${permittedLabel(kind, over)}.`
        : `The signal stands ${farads(wholeF)} per leg: ${parts === '' ? 'nothing is added here' : `room for ${parts}`}.`
  return {
    ...judged(verdict, sentence, basis),
    bounds: [roomBound(Math.max(0, roomF), q.filter, { why, basis })],
    ...(roomF > 0 ? { picture: stripPicture({ roomF, wholeF, filter: q.filter, verdict, share }) } : {}),
    hints: hintsOf(q, suppressorF, wholeF),
  }
}

const judged = (verdict: Verdict, sentence: string, basis: Basis) =>
  ({ is: 'judged', verdict, sentence, basis, bounds: [], hints: [] }) as const

const countOf = ({ topology }: FittedFilter): number => (topology === 'PI' ? 2 : 1)

function roomBound(
  roomF: number,
  filter: FittedFilter,
  works: { readonly why: string; readonly basis: Basis },
): SaidBound {
  return {
    id: 'surge-signal-room',
    side: 'most',
    nature: 'works',
    topology: 'any',
    markedF: roomF / countOf(filter),
    why: `beside this suppressor: ${works.why}`,
    appliesTo: 'one capacitor of the filter at its largest, the suppressor counted in full at 0 V',
    openedBy: [],
    basis: works.basis,
  }
}

type Drawn = {
  readonly roomF: number
  readonly wholeF: number
  readonly filter: FittedFilter
  readonly verdict: Verdict
  readonly share: string
}

function stripPicture({ roomF, wholeF, filter, verdict, share }: Drawn): Picture {
  const mostF = roomF / countOf(filter)
  const takenToF = wholeF / countOf(filter)
  const isFitted = filter.capacitanceF > 0
  const topology = filter.topology === 'none' || filter.topology === 'L' ? 'C' : filter.topology
  return {
    is: 'strip',
    title: 'Room for the filter beside this suppressor',
    ...stripAxis([mostF, takenToF, isFitted ? filter.capacitanceF : undefined]),
    rows: [
      {
        topology,
        label: topology,
        best: true,
        state: 'half',
        mostF,
        ...(takenToF > mostF ? { takenToF } : {}),
        holes: [],
        verdict,
        note: `suppressor takes ${share}`,
      },
    ],
    marks: [],
    ...(isFitted ? { chosenF: filter.capacitanceF } : {}),
  }
}

function hintsOf(q: SignalQuestion, suppressorF: number, wholeF: number): readonly string[] {
  if (suppressorF <= 0) return []
  const biased =
    q.workingV === undefined || q.workingV <= 0
      ? []
      : [
          `At ${formatQuantity(q.workingV, 'voltage')} the suppressor is down to about ${farads(capacitanceAt({ zeroBiasF: suppressorF, volts: q.workingV }))}; the judgement takes it in full.`,
        ]
  if (suppressorF < wholeF / 2) return biased
  const steered = steeredF({ suppressorF, rectifierF: RECTIFIER_F })
  return [
    ...biased,
    `The low-capacitance form, a ${farads(RECTIFIER_F)} rectifier in series, would count ${farads(steered)}. One string blocks one polarity: use two the other way round, or a third diode.`,
  ]
}
