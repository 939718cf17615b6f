/** Waveforms of data lines: bits with their levels, edges and thresholds. */
import { i2cFarads } from '../../../calc/loading/buses.ts'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import type { Wave } from '../../../reference/line-cards.ts'
import type { LineKind } from '../../../reference/line-kinds.ts'
import type { Waveform } from '../types.ts'
import { decay, type Point, stepped } from './wave-shape.ts'

type Of<W extends Wave['is']> = Extract<Wave, { is: W }>

const volts = (si: number): string => formatQuantity(si, 'voltage')
const secs = (si: number): string => formatQuantity(si, 'time')
const rate = (si: number): string => formatQuantity(si, 'bitRate', 5)

/** What is drawn on every data line: enough ones and zeros to see both changes and a repetition. */
const BITS = [1, 0, 1, 1, 0] as const
const signs = BITS.map((bit) => (bit === 1 ? 1 : -1))
/** The bit that is measured in the picture. */
const MARKED = 2

const bitMark = (bitSec: number) => ({ label: 'one bit', fromSec: MARKED * bitSec, toSec: (MARKED + 1) * bitSec })

export function returnToZero({ levelV, leastV, nullV }: Of<'return-to-zero'>, kind: LineKind): Waveform {
  const bitSec = 1 / (kind.bitRateHz ?? 1)
  const edgeSec = kind.loading.rule === 'edge-rss' ? kind.loading.driverEdgeSec : 0
  const halves = signs.flatMap((sign) => [sign * levelV, 0])
  // each bit starts with its level and rests at zero in its second half
  const points = stepped([0, ...halves], bitSec / 2, edgeSec)
  const startSec = bitSec / 2
  return {
    title: 'Between the legs, at a receiver',
    said: `Three levels. A one goes up to ${volts(levelV)}, a zero down to as much below. Each falls back to nothing in its second half. A bit takes ${secs(bitSec)}, an edge ${secs(edgeSec)}. A receiver takes ${volts(leastV)} and more for a one, less than ${volts(nullV)} for nothing. Each leg carries half of it.`,
    spanSec: BITS.length * bitSec + startSec,
    wires: [{ label: 'leg A less leg B', points }],
    levels: [
      { label: 'one from', volt: leastV },
      { label: 'nothing to', volt: nullV },
      { label: 'nothing to', volt: -nullV },
      { label: 'zero from', volt: -leastV },
    ],
    marks: [
      { label: 'one bit', fromSec: startSec + MARKED * bitSec, toSec: startSec + (MARKED + 1) * bitSec },
      { label: 'edge', fromSec: startSec - edgeSec / 2, toSec: startSec + edgeSec / 2 },
    ],
  }
}

export function manchester(
  { one, leastSentV: leastV, heardFromV, edgeSec }: Of<'manchester'>,
  kind: LineKind,
): Waveform {
  const bitSec = 1 / (kind.bitRateHz ?? 1)
  const mostV = kind.steadyPeakV ?? kind.ownPeaks?.pair?.[1] ?? leastV
  const middleV = (leastV + mostV) / 2
  const turn = one === 'down' ? 1 : -1
  const points = stepped(
    signs.flatMap((sign) => [turn * sign * middleV, -turn * sign * middleV]),
    bitSec / 2,
    edgeSec,
  )
  return {
    title: 'Between the legs, sent',
    said: `It changes sign in the middle of every bit: ${one} for a one, ${one === 'up' ? 'down' : 'up'} for a zero. A bit takes ${secs(bitSec)}. Sent are ${volts(leastV)} to ${volts(mostV)} of either sign. It must still be heard from ${volts(heardFromV)} on.`,
    spanSec: BITS.length * bitSec,
    wires: [{ label: 'leg A less leg B', points }],
    levels: [
      { label: 'most sent', volt: mostV },
      { label: 'least sent', volt: leastV },
      { label: 'heard from', volt: heardFromV },
      { label: 'least sent', volt: -leastV },
    ],
    marks: [bitMark(bitSec), { label: 'edge', fromSec: bitSec / 2 - edgeSec / 2, toSec: bitSec / 2 + edgeSec / 2 }],
  }
}

export function balanced({ middleV, swingV, thresholdV, rateHz, edgeShare }: Of<'balanced'>): Waveform {
  const bitSec = 1 / rateHz
  const leg = (turn: 1 | -1) =>
    stepped(
      signs.map((sign) => middleV + (turn * sign * swingV) / 2),
      bitSec,
      edgeShare * bitSec,
    )
  return {
    title: `Each leg to ground, at ${rate(rateHz)}`,
    said: `Two legs swing against each other around ${volts(middleV)}: one up, one down, and back. Between them stand ${volts(swingV)} of one sign or the other. A receiver tells them apart from ${volts(thresholdV)} on. A bit takes ${secs(bitSec)}.`,
    spanSec: BITS.length * bitSec,
    wires: [
      { label: 'leg A', points: leg(1) },
      { label: 'leg B', points: leg(-1) },
    ],
    levels: [
      { label: 'high', volt: middleV + swingV / 2 },
      { label: 'middle', volt: middleV },
      { label: 'low', volt: middleV - swingV / 2 },
    ],
    marks: [bitMark(bitSec)],
  }
}

export function dominant(wave: Of<'dominant'>, kind: LineKind): Waveform {
  const { recessiveV, highV, lowV, seenFromV, notSeenToV, rateHz, busF } = wave
  const bitSec = 1 / rateHz
  const tauSec = (kind.signalOhm?.ohm ?? 0) * busF
  const edgeSec = bitSec / 40
  const leg = (driven: number): readonly Point[] => {
    const points: Point[] = [[0, recessiveV]]
    for (const [at, bit] of BITS.entries()) {
      const [fromSec, toSec] = [(at + 1) * bitSec, (at + 2) * bitSec]
      const isDriven = bit === 0
      const wasDriven = BITS[at - 1] === 0
      if (isDriven && !wasDriven) points.push([fromSec, recessiveV], [fromSec + edgeSec, driven])
      if (!isDriven && wasDriven) points.push(...decay({ fromSec, toSec, fromV: driven, toV: recessiveV, tauSec }))
      points.push([toSec, isDriven ? driven : recessiveV])
    }
    return [...points, ...decay({ fromSec: spanSec - bitSec, toSec: spanSec, fromV: driven, toV: recessiveV, tauSec })]
  }
  const spanSec = (BITS.length + 2) * bitSec
  return {
    title: `Each leg to ground, at ${rate(rateHz)}`,
    said: `Let go, both legs rest at ${volts(recessiveV)}. Driven, one goes up to ${volts(highV)}, the other down to ${volts(lowV)}. From ${volts(seenFromV)} between them a node takes them for driven, up to ${volts(notSeenToV)} for let go. Driving is quick. Letting go is a slope, and every capacitance makes it slower. A bit takes ${secs(bitSec)}.`,
    spanSec,
    wires: [
      { label: 'leg H', points: leg(highV) },
      { label: 'leg L', points: leg(lowV) },
    ],
    levels: [
      { label: 'driven', volt: highV },
      { label: 'let go', volt: recessiveV },
      { label: 'driven', volt: lowV },
    ],
    marks: [{ label: 'one bit', fromSec: 2 * bitSec, toSec: 3 * bitSec }],
  }
}

export function single({ highV, lowV, highFromV, lowToV, rateHz, edgeSec }: Of<'single'>): Waveform {
  const bitSec = 1 / rateHz
  const points = stepped(
    BITS.map((bit) => (bit === 1 ? lowV : highV)),
    bitSec,
    edgeSec,
  )
  return {
    title: `To its ground, at ${rate(rateHz)}`,
    said: `One wire goes between ${volts(highV)} and ${volts(lowV)}. It is seen as high from ${volts(highFromV)} on, as low up to ${volts(lowToV)}. Between them it is nothing. A bit takes ${secs(bitSec)}, an edge about ${secs(edgeSec)}.`,
    spanSec: BITS.length * bitSec,
    wires: [{ label: 'wire', points }],
    levels: [
      { label: 'high', volt: highV },
      { label: 'high from', volt: highFromV },
      { label: 'low to', volt: lowToV },
      { label: 'low', volt: lowV },
    ],
    marks: [bitMark(bitSec)],
  }
}

export function pulledUp({ supplyV, highShare, lowShare }: Of<'pulled-up'>, kind: LineKind): Waveform {
  const { loading } = kind
  const bitSec = 1 / (kind.bitRateHz ?? 1)
  const riseSec = loading.rule === 'i2c-rise' ? loading.riseSec : 0
  // what the slowest rise allowed has as time constant, whatever the pull-up
  const tauSec = i2cFarads({ pullUpOhm: 1, riseSec })
  const fallSec = bitSec / 20
  const points: readonly Point[] = [
    [0, 0],
    ...decay({ fromSec: bitSec / 2, toSec: 1.5 * bitSec, fromV: 0, toV: supplyV, tauSec }),
    [1.5 * bitSec + fallSec, 0],
    ...decay({ fromSec: 2 * bitSec, toSec: 3 * bitSec, fromV: 0, toV: supplyV, tauSec }),
  ]
  const upSec = (share: number): number => bitSec / 2 - tauSec * Math.log(1 - share)
  return {
    title: `To ground, at ${rate(1 / bitSec)}`,
    said: `A chip pulls the wire down at once. Let go, the pull-up lifts it on a slope that capacitance makes slower. It is low up to ${volts(lowShare * supplyV)} and high from ${volts(highShare * supplyV)} on, at ${volts(supplyV)} of supply. From one to the other it may take ${secs(riseSec)}; the picture shows that limit.`,
    spanSec: 3 * bitSec,
    wires: [{ label: 'data wire', points }],
    levels: [
      { label: 'supply', volt: supplyV },
      { label: 'high from', volt: highShare * supplyV },
      { label: 'low to', volt: lowShare * supplyV },
    ],
    marks: [{ label: 'rise', fromSec: upSec(lowShare), toSec: upSec(highShare) }],
  }
}

const THREE = [0, 1, 0, -1, 0, 0, 1, 1, 0, -1] as const
const FIVE = [0, 0.5, 1, -0.5, 0.5, -1, 0, 1, -1, 0.5] as const

export function steps({ peakV, count, rateHz, edgeSec }: Of<'steps'>): Waveform {
  const stepSec = 1 / rateHz
  const shares = count === 3 ? THREE : FIVE
  const levels = [...new Set(shares)].toSorted((a, b) => b - a)
  return {
    title: 'Between the legs of one pair',
    said: `${count === 3 ? 'Three' : 'Five'} levels, up to ${volts(peakV)} of either sign. A new one comes every ${secs(stepSec)}. An edge takes about ${secs(edgeSec)}.`,
    spanSec: shares.length * stepSec,
    wires: [
      {
        label: 'leg A less leg B',
        points: stepped(
          shares.map((share) => share * peakV),
          stepSec,
          edgeSec,
        ),
      },
    ],
    levels: levels.map((share) => ({ label: share === 0 ? 'nothing' : 'level', volt: share * peakV })),
    marks: [{ label: 'one step', fromSec: 2 * stepSec, toSec: 3 * stepSec }],
  }
}
