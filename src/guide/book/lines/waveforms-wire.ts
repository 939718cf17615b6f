/** Waveforms of supplies, switches, sensors, carriers, audio and video. */
import { formatQuantity } from '../../../calc/quantity/format.ts'
import type { Wave } from '../../../reference/line-cards.ts'
import type { LineKind } from '../../../reference/line-kinds.ts'
import type { Waveform } from '../types.ts'
import { curve, decay, type Point, sine } from './wave-shape.ts'

type Of<W extends Wave['is']> = Extract<Wave, { is: W }>

const volts = (si: number): string => formatQuantity(si, 'voltage')
const secs = (si: number): string => formatQuantity(si, 'time')
const hertz = (si: number): string => formatQuantity(si, 'frequency')
const peakOf = (rmsV: number): number => Math.SQRT2 * rmsV
const rmsOf = (peakV: number): number => peakV / Math.SQRT2

/** Highest steady volts of a kind, peak. */
const highestOf = ({ steadyPeakV, ownPeaks }: LineKind): number => steadyPeakV ?? ownPeaks?.leg[1] ?? 0

function supplied(supply: LineKind['supply']): NonNullable<LineKind['supply']> {
  if (supply === undefined) throw new RangeError('A supply is drawn for a kind that has none.')
  return supply
}

/** A good supply is drawn with this share of the ripple it may have. */
const GOOD_RIPPLE = 1 / 3

export function steady({ leastV, ripplePeakV, rippleHz }: Of<'steady'>, { supply }: LineKind): Waveform {
  const [nominalV, mostV] = supply === undefined ? [0, -leastV] : [supply.nominalRmsV, supply.worstRmsV]
  const spanSec = 6 / rippleHz
  return {
    title: 'To its return, under load',
    said: `A flat line at ${volts(nominalV)} with a small ripple. It may stand anywhere from ${volts(leastV)} to ${volts(mostV)}. The ripple may reach ${volts(ripplePeakV)} to each side; a good one has far less. Here it is ${hertz(rippleHz)}.`,
    spanSec,
    wires: [
      {
        label: 'line',
        points: curve(spanSec, 120, (sec) => nominalV + sine(GOOD_RIPPLE * ripplePeakV, rippleHz)(sec)),
      },
    ],
    levels: [
      { label: 'most', volt: mostV },
      { label: 'usual', volt: nominalV },
      { label: 'least', volt: leastV },
    ],
    marks: [{ label: 'ripple', fromSec: 2 / rippleHz, toSec: 3 / rippleHz }],
  }
}

export function sineWave({ leastRmsV }: Of<'sine'>, { supply }: LineKind): Waveform {
  const { nominalRmsV: rmsV, worstRmsV: mostRmsV, nominalHz: hz } = supplied(supply)
  const spanSec = 2 / hz
  return {
    title: 'Phase to neutral',
    said: `A clean sine of ${volts(rmsV)} rms, which peaks at ${volts(peakOf(rmsV))}. It may be ${volts(leastRmsV)} to ${volts(mostRmsV)} rms. One turn takes ${secs(1 / hz)}: ${hertz(hz)}. A flat top or a notch comes from rectifiers on it.`,
    spanSec,
    wires: [{ label: 'phase', points: curve(spanSec, 96, sine(peakOf(rmsV), hz)) }],
    levels: [
      { label: 'peak', volt: peakOf(rmsV) },
      { label: 'rms', volt: rmsV },
      { label: 'peak', volt: -peakOf(rmsV) },
    ],
    marks: [{ label: 'one turn', fromSec: 0.5 / hz, toSec: 1.5 / hz }],
  }
}

export function contact({ idleV, activeV, onFromV, bounceSec, settledSec }: Of<'contact'>): Waveform {
  const startSec = settledSec / 2
  const spanSec = 2.5 * settledSec
  const flips = bounceSec === 0 ? [0] : [0, 0.15, 0.3, 0.5, 0.65]
  const points: Point[] = [[0, idleV]]
  for (const [at, share] of flips.entries()) {
    const sec = startSec + share * bounceSec
    const [from, to] = at % 2 === 0 ? [idleV, activeV] : [activeV, idleV]
    points.push([sec, from], [sec, to])
  }
  points.push([spanSec, activeV])
  const bounces = bounceSec === 0 ? '' : ` It bounces for some ${secs(bounceSec)}.`
  const on = onFromV === undefined ? '' : ` It counts as on from ${volts(onFromV)}.`
  return {
    title: 'To ground, while the switch closes',
    said: `It rests at ${volts(idleV)} and goes to ${volts(activeV)} when the switch closes.${bounces} The box waits for about ${secs(settledSec)} and takes what stands then.${on}`,
    spanSec,
    wires: [{ label: 'contact', points }],
    levels: [
      { label: 'open', volt: idleV },
      ...(onFromV === undefined ? [] : [{ label: 'on from', volt: onFromV }]),
      { label: 'closed', volt: activeV },
    ],
    marks: [
      ...(bounceSec === 0 ? [] : [{ label: 'bounce', fromSec: startSec, toSec: startSec + bounceSec }]),
      { label: 'the box waits', fromSec: startSec, toSec: startSec + settledSec },
    ],
  }
}

export function carrier({ hz, fromShare, toShare }: Of<'carrier'>, kind: LineKind): Waveform {
  const peakV = highestOf(kind)
  const spanSec = 9 / hz
  const excitation = sine(peakV, hz)
  const share = (sec: number): number => fromShare + (toShare - fromShare) * (sec / spanSec)
  return {
    title: 'Excitation and one secondary, while it moves',
    said: `The excitation is a sine of ${volts(rmsOf(peakV))} rms at ${hertz(hz)}. The secondary is a share of it. It shrinks to nothing at the middle and grows again upside down. Size is how far, phase is which way.`,
    spanSec,
    wires: [
      { label: 'secondary', points: curve(spanSec, 180, (sec) => share(sec) * excitation(sec)) },
      { label: 'excitation', points: curve(spanSec, 180, excitation) },
    ],
    levels: [
      { label: 'peak', volt: peakV },
      { label: 'middle', volt: 0 },
    ],
    marks: [{ label: 'one turn', fromSec: 1 / hz, toSec: 2 / hz }],
  }
}

const LEGS_DEG = [0, 120, 240] as const

export function threeLegs({ legRmsV, shaftDeg }: Of<'three-legs'>, kind: LineKind): Waveform {
  const hz = kind.usefulHz?.hz ?? 1
  const spanSec = 2 / hz
  const shares = LEGS_DEG.map((off) => Math.sin(((shaftDeg + off) * Math.PI) / 180))
  const names = ['legs 1 and 3', 'legs 3 and 2', 'legs 2 and 1']
  return {
    title: `Between the legs, shaft at ${formatQuantity(shaftDeg, 'angle')}`,
    said: `Three sines of ${hertz(hz)}, all in step with the reference of ${volts(rmsOf(highestOf(kind)))} rms or upside down to it. Their sizes tell the angle. None is larger than ${volts(legRmsV)} rms, which peaks at ${volts(peakOf(legRmsV))}. The three always add up to nothing.`,
    spanSec,
    wires: shares.map((share, at) => ({
      label: names[at] ?? '',
      points: curve(spanSec, 80, sine(share * peakOf(legRmsV), hz)),
    })),
    levels: [
      { label: 'most peak', volt: peakOf(legRmsV) },
      { label: 'most peak', volt: -peakOf(legRmsV) },
    ],
    marks: [{ label: 'one turn', fromSec: 0.5 / hz, toSec: 1.5 / hz }],
  }
}

export function slow({ fromV, toV, overSec, fromLabel, toLabel }: Of<'slow'>): Waveform {
  const smooth = (share: number): number => share * share * (3 - 2 * share)
  return {
    title: 'At the input, while it climbs',
    said: `A smooth curve from ${volts(fromV)} (${fromLabel}) to ${volts(toV)} (${toLabel}), here in ${secs(overSec)}. Nothing in it is fast. Every step, hum or spike in it is not the sensor.`,
    spanSec: overSec,
    wires: [{ label: 'sensor', points: curve(overSec, 60, (sec) => fromV + (toV - fromV) * smooth(sec / overSec)) }],
    levels: [
      { label: toLabel, volt: toV },
      { label: fromLabel, volt: fromV },
    ],
  }
}

export function pickUp({ peakV, leastV, hz }: Of<'pick-up'>, kind: LineKind): Waveform {
  const spanSec = 4 / hz
  return {
    title: 'Between the legs, at a steady speed',
    said: `One swing for each tooth, here ${hertz(hz)} and ${volts(peakV)} of peak. Both grow with speed: ${volts(leastV)} when it turns slowly, up to ${volts(highestOf(kind))} when it turns fast. What is counted is the crossing through nothing.`,
    spanSec,
    wires: [{ label: 'coil', points: curve(spanSec, 120, sine(peakV, hz)) }],
    levels: [
      { label: 'peak', volt: peakV },
      { label: 'counted at', volt: 0 },
      { label: 'peak', volt: -peakV },
    ],
    marks: [{ label: 'one tooth', fromSec: 1 / hz, toSec: 2 / hz }],
  }
}

/** Pitch and overtone of the speech that is drawn, Hz. */
const SPEECH_HZ = [200, 900] as const

export function voice({ rmsV, biasV }: Of<'voice'>): Waveform {
  const spanSec = 4 / SPEECH_HZ[0]
  const peakV = peakOf(rmsV)
  const swell = (sec: number): number => 0.35 + 0.65 * Math.sin((Math.PI * sec) / spanSec)
  const speech = (sec: number): number =>
    peakV * swell(sec) * (sine(0.6, SPEECH_HZ[0])(sec) + sine(0.4, SPEECH_HZ[1])(sec))
  const base = biasV === 0 ? 'It swings around nothing.' : `It rides on a bias of ${volts(biasV)}.`
  return {
    title: 'High to low, while somebody speaks',
    said: `Speech: it swells and fades. ${base} Loud speech is ${volts(rmsV)} rms and peaks at ${volts(peakV)}. Between words there is silence: no hum, no whine.`,
    spanSec,
    wires: [{ label: 'speech', points: curve(spanSec, 200, (sec) => biasV + speech(sec)) }],
    levels: [
      { label: 'loud peak', volt: biasV + peakV },
      { label: biasV === 0 ? 'silence' : 'bias', volt: biasV },
      { label: 'loud peak', volt: biasV - peakV },
    ],
  }
}

export function pictureLine(wave: Of<'picture-line'>): Waveform {
  const { whiteV, syncV, lineSec, syncSec, blankSec, frontSec } = wave
  const pictureSec = blankSec - frontSec
  const bars = [1, 0.85, 0.6, 0.45, 0.3, 0.15]
  const barSec = (lineSec - blankSec) / bars.length
  const points: Point[] = [
    [0, syncV],
    [syncSec, syncV],
    [syncSec, 0],
    [pictureSec, 0],
  ]
  for (const [at, share] of bars.entries())
    points.push([pictureSec + at * barSec, share * whiteV], [pictureSec + (at + 1) * barSec, share * whiteV])
  const endSec = lineSec - frontSec
  points.push([endSec, 0], [lineSec, 0], [lineSec, syncV], [lineSec + syncSec, syncV], [lineSec + syncSec, 0])
  return {
    title: 'Centre to shield, one line of bars',
    said: `First the sync, down to ${volts(syncV)} for ${secs(syncSec)}. Then black, then the picture up to ${volts(whiteV)} for white, and black again. The whole line takes ${secs(lineSec)}. From sync to white it is ${volts(whiteV - syncV)}.`,
    spanSec: lineSec + blankSec - frontSec,
    wires: [{ label: 'video', points: [...points, [lineSec + blankSec - frontSec, 0]] }],
    levels: [
      { label: 'white', volt: whiteV },
      { label: 'black', volt: 0 },
      { label: 'sync', volt: syncV },
    ],
    marks: [
      { label: 'sync', fromSec: 0, toSec: syncSec },
      { label: 'one line', fromSec: 0, toSec: lineSec },
    ],
  }
}

export function chopped({ supplyV, hz, onShare, kickV }: Of<'chopped'>): Waveform {
  const periodSec = 1 / hz
  const spanSec = 3 * periodSec
  const isLowSide = kickV !== undefined
  const [onV, offV] = isLowSide ? [0, supplyV] : [supplyV, 0]
  const points: Point[] = []
  for (const at of [0, 1, 2]) {
    const [fromSec, offSec, toSec] = [at * periodSec, (at + onShare) * periodSec, (at + 1) * periodSec]
    points.push([fromSec, offV], [fromSec, onV], [offSec, onV])
    if (isLowSide)
      points.push(...decay({ fromSec: offSec, toSec, fromV: supplyV + kickV, toV: offV, tauSec: periodSec / 20 }))
    else points.push([offSec, offV], [toSec, offV])
  }
  const kick = isLowSide
    ? ` When it lets go, the coil kicks up to ${volts(supplyV + kickV)}: that is its clamp. Hundreds of volts mean that there is none.`
    : ' No spike stands on its edges.'
  return {
    title: isLowSide ? 'At the switched end of the coil' : 'At the lamps, dimmed',
    said: `It goes between ${volts(0)} and ${volts(supplyV)}, ${hertz(hz)} here, on for ${formatQuantity(onShare, 'fraction')} of the time.${kick}`,
    spanSec,
    wires: [{ label: isLowSide ? 'switched end' : 'lamp bus', points }],
    levels: [
      ...(isLowSide ? [{ label: 'clamped kick', volt: supplyV + kickV }] : []),
      { label: 'supply', volt: supplyV },
      { label: 'ground', volt: 0 },
    ],
    marks: [
      { label: 'on', fromSec: periodSec, toSec: (1 + onShare) * periodSec },
      { label: 'one period', fromSec: periodSec, toSec: 2 * periodSec },
    ],
  }
}

/** Before the first pulse, as a share of the time between two. */
const LEAD = 0.2

export function pulse({ highV, everySec, forSec }: Of<'pulse'>): Waveform {
  const firstSec = LEAD * everySec
  const once = (sec: number): readonly Point[] => [
    [sec, 0],
    [sec, highV],
    [sec + forSec, highV],
    [sec + forSec, 0],
  ]
  const spanSec = (2 * LEAD + 1) * everySec + forSec
  return {
    title: 'To its ground',
    said: `One pulse of ${volts(highV)} every ${secs(everySec)}, here ${secs(forSec)} long. Its rising edge is the mark. It arrives as steep as it left.`,
    spanSec,
    wires: [{ label: 'pulse', points: [[0, 0], ...once(firstSec), ...once(firstSec + everySec), [spanSec, 0]] }],
    levels: [
      { label: 'high', volt: highV },
      { label: 'low', volt: 0 },
    ],
    marks: [
      { label: 'pulse', fromSec: firstSec, toSec: firstSec + forSec },
      { label: 'to the next', fromSec: firstSec, toSec: firstSec + everySec },
    ],
  }
}
