/** What the surge parts do to the signal, in words. */
import { worksBasis, worksWhy } from '../../../explain/ceiling.ts'
import { judgementFindings } from '../../../explain/loading.ts'
import type { FittedFilter } from '../../../surge/circuit.ts'
import type { JudgedSignal, SignalAnswer } from '../../../surge/signal.ts'
import { countOf } from '../../../surge/signal.ts'
import { capacitanceAt, steeredF } from '../../../surge/suppressor.ts'
import type { Basis, Cell, Finding, SaidBound } from '../../../types.ts'
import { VERDICT_WORDS } from '../../../verdict.ts'
import { F, percent, V } from './show.ts'

/** A usual small rectifier in front of a suppressor. */
const RECTIFIER_F = 10e-12

/** The judgement, the share the suppressor takes, and what would take less. */
export function signalFindings(signal: SignalAnswer, workingV: number | undefined): readonly Finding[] {
  if (signal.is === 'none') return []
  if (signal.is === 'suppressor-unknown')
    return [
      {
        verdict: 'unknown',
        sentence: 'Enter the capacitance of the suppressor at 0 V: it uses room of the signal.',
      },
    ]
  return [
    ...judgementFindings(signal.facts, signal.judgement),
    ...hints(signal, workingV).map((sentence): Finding => ({ verdict: 'ok', sentence })),
  ]
}

function hints({ suppressorF, room }: JudgedSignal, workingV: number | undefined): readonly string[] {
  if (suppressorF <= 0) return []
  const share = room ? [`The suppressor takes ${shareWords(suppressorF, room.wholeF)} of the room.`] : []
  const biased =
    workingV === undefined || workingV <= 0
      ? []
      : [
          `At ${V(workingV)} the suppressor is down to about ${F(capacitanceAt({ zeroBiasF: suppressorF, volts: workingV }))}; the judgement takes it in full.`,
        ]
  if (!room || suppressorF < room.wholeF / 2) return [...share, ...biased]
  const steered = steeredF({ suppressorF, rectifierF: RECTIFIER_F })
  return [
    ...share,
    ...biased,
    `The low-capacitance form, a ${F(RECTIFIER_F)} rectifier in series, would count ${F(steered)}. One string blocks one polarity: use two the other way round, or a third diode.`,
  ]
}

export const shareWords = (suppressorF: number, wholeF: number): string =>
  suppressorF < wholeF ? percent(suppressorF / wholeF) : 'more than all'

/** The verdict on the signal as a figure. */
export function signalFigure(signal: SignalAnswer): { readonly cell: Cell; readonly basis: Basis } {
  if (signal.is === 'none')
    return {
      cell: { is: 'none', why: noneWhy(signal) },
      basis: { steps: [], assumptions: [], sources: [{ id: 'derived', standing: 'derived' }] },
    }
  const basis: Basis =
    signal.is === 'judged'
      ? worksBasis(signal.facts, signal.judgement.ceiling.works)
      : { steps: [], assumptions: [], sources: [signal.facts.kind.loadingSource] }
  return { cell: { is: 'word', word: VERDICT_WORDS[signal.verdict], verdict: signal.verdict }, basis }
}

function noneWhy({ why, kind }: Extract<SignalAnswer, { is: 'none' }>): string {
  switch (why) {
    case 'no-line':
      return 'name the line to judge its signal'
    case 'barred':
      return kind?.barredWhy ?? 'this line is barred'
    case 'no-rule':
      return 'this kind of line has no ceiling of its own'
  }
}

/** What is left for the filter beside this suppressor, as a bound on one of its capacitors. */
export function roomBounds(signal: SignalAnswer, filter: FittedFilter): readonly SaidBound[] {
  if (signal.is !== 'judged' || !signal.room) return []
  const { works } = signal.judgement.ceiling
  return [
    {
      id: 'surge-signal-room',
      side: 'most',
      nature: 'works',
      topology: 'any',
      markedF: Math.max(0, signal.room.roomF) / countOf(filter),
      why: `beside this suppressor: ${worksWhy(signal.facts, works)}`,
      appliesTo: 'one capacitor of the filter at its largest, the suppressor counted in full at 0 V',
      openedBy: [],
      basis: worksBasis(signal.facts, works),
    },
  ]
}
