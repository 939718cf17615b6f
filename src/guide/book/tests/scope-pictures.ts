/** What the screen of an oscilloscope shows where things are well, and where they are not. Shapes, worked out, not recorded. */
import { resonantHz } from '../../../calc/resonance/resonances.ts'
import { SCOPE_PROBE, WIRE_H_PER_M } from '../../../reference/instruments.ts'
import type { Waveform } from '../types.ts'

type Points = readonly (readonly [sec: number, volt: number])[]

const COUNT = 160

/** Points of a formula, evenly over the time. */
export const along = (spanSec: number, volt: (sec: number) => number): Points =>
  Array.from({ length: COUNT + 1 }, (_, i) => {
    const sec = (spanSec * i) / COUNT
    return [sec, volt(sec)] as const
  })

/** Where the usual ground lead rings with the probe's own capacitance. */
export const leadRingsAtHz = (leadM: number): number => resonantHz(SCOPE_PROBE.inputF, leadM * WIRE_H_PER_M.henriesPerM)

/** One edge seen with the spring at the tip and with the usual lead. The edge is shorter than a period of the ringing. */
export function edgeBySpringAndLead(swingV: number): readonly [Waveform, Waveform] {
  const ringHz = leadRingsAtHz(SCOPE_PROBE.groundLeadM)
  const spanSec = 8 / ringHz
  const startSec = spanSec / 8
  const clean = (sec: number) => (sec < startSec ? 0 : swingV * (1 - Math.exp(-(sec - startSec) * ringHz * 6)))
  const ringing = (sec: number) => {
    const t = sec - startSec
    return clean(sec) - (t < 0 ? 0 : 0.7 * swingV * Math.exp(-t * ringHz * 0.5) * Math.sin(-2 * Math.PI * ringHz * t))
  }
  const levels = [{ label: 'the level', volt: swingV }]
  return [
    {
      title: 'Good: one edge, ground spring at the tip',
      said: 'The trace rises once and stays at the level.',
      spanSec,
      levels,
      wires: [{ label: 'edge', points: along(spanSec, clean) }],
    },
    {
      title: 'Misleading: the same edge, usual ground lead',
      said: 'The trace rises past the level and swings around it, smaller each time. The ringing belongs to the lead.',
      spanSec,
      levels,
      wires: [{ label: 'edge', points: along(spanSec, ringing) }],
    },
  ]
}

/** The supply of a box while a large load starts: it sags and comes back, above or below what the box holds up to. */
export function supplyAtStart(q: {
  readonly busV: number
  readonly leastV: number
  readonly spanSec: number
}): readonly [Waveform, Waveform] {
  const sag = (toV: number) => (sec: number) => {
    const t = sec / q.spanSec - 0.2
    if (t < 0) return q.busV
    return q.busV - (q.busV - toV) * Math.exp(-t * 5) * Math.min(1, t * 40)
  }
  const picture = (title: string, said: string, toV: number): Waveform => ({
    title,
    said,
    spanSec: q.spanSec,
    levels: [{ label: 'least the box runs on', volt: q.leastV }],
    wires: [{ label: 'supply at the box', points: along(q.spanSec, sag(toV)) }],
  })
  const depth = q.busV - q.leastV
  return [
    picture('Good: the dip stays above', 'The supply dips, stays above the line and comes back.', q.leastV + depth / 3),
    picture(
      'Bad: the dip goes below',
      'The supply dips below the line. The box resets here, not by noise.',
      q.leastV - depth / 2,
    ),
  ]
}

/** A coil switched off: with nothing across it the contact flies up, with a diode it stays a drop above the supply. */
export function coilAtSwitchOff(q: {
  readonly busV: number
  readonly kickV: number
  readonly heldV: number
}): readonly [Waveform, Waveform] {
  const spanSec = 2e-3
  const offSec = spanSec / 4
  const kick = (sec: number) => {
    const t = (sec - offSec) / spanSec
    if (t < 0) return 0
    return q.busV + (q.kickV - q.busV) * Math.exp(-t * 14) * Math.min(1, t * 60)
  }
  const held = (sec: number) => {
    const t = (sec - offSec) / spanSec
    if (t < 0) return 0
    return t < 0.45 ? q.heldV : q.busV
  }
  const levels = [{ label: 'supply', volt: q.busV }]
  return [
    {
      title: 'Good: the suppressor at the coil holds it',
      said: 'At switching off the contact rises a little above the supply, stays there while the coil runs down, and settles.',
      spanSec,
      levels,
      wires: [{ label: 'contact', points: along(spanSec, held) }],
    },
    {
      title: 'Bad: nothing at the coil',
      said: 'At switching off the contact shoots up to many times the supply and falls back.',
      spanSec,
      levels,
      wires: [{ label: 'contact', points: along(spanSec, kick) }],
    },
  ]
}
