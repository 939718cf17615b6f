/** The answer of the surge check in words and pictures, from its numbers. */
import type { SafetyId } from '../../../reference/safety.ts'
import { FORWARD_STARTS } from '../../../reference/suppressors.ts'
import { waveformById } from '../../../reference/waveforms.ts'
import { listed, notKnown } from '../../explain/sentence.ts'
import { stripAxis } from '../../strip-axis.ts'
import type { SurgeSetup } from '../../surge/setup.ts'
import { countOf } from '../../surge/signal.ts'
import type { Picture, Success } from '../../types.ts'
import { worstFirst } from '../../verdict.ts'
import type { SurgeFigures, SurgeFound, SurgeWaiting } from './figures.ts'
import { type SurgeGiven, surgeInputs } from './inputs.ts'
import { plainShapePlot, shapePlot, voltsPlot } from './plots.ts'
import { capacitorFindings, circuitFindings, suppressorFindings } from './words/findings.ts'
import { wantedNames } from './words/refusals.ts'
import { remarks } from './words/remarks.ts'
import { saidRungs, surgeLadder } from './words/rungs.ts'
import { surgeSaid } from './words/sentence.ts'
import { roomBounds, shareWords, signalFindings } from './words/signal.ts'
import { sizingTable, supplyTable } from './words/sizing.ts'
import { saidOutputs } from './words/workings.ts'

export function explainSurge(given: SurgeGiven, figures: SurgeFigures): Success {
  const { surge } = figures
  return surge.is === 'waiting' ? waiting(surge, given.waveform) : told(figures, surge)
}

/** What is missing, with the shape of the waveform chosen so far. */
function waiting({ wanted }: SurgeWaiting, waveform: string | undefined): Success {
  const row = waveform === undefined ? undefined : waveformById(waveform)
  const shape = row && plainShapePlot(row)
  return {
    ok: true,
    verdict: 'unknown',
    ...notKnown(surgeInputs, wanted[0]?.[0] ?? '', `${listed(wantedNames(wanted))}.`),
    findings: row ? [{ verdict: 'ok', sentence: row.note }] : [],
    outputs: {},
    bounds: [],
    rungs: [],
    pictures: shape ? [shape] : [],
    cautions: ['lightning-hirf-fuel', 'screening'],
  }
}

function told(figures: SurgeFigures, found: SurgeFound): Success {
  const { asked, setup, judged, runs, sizes } = found
  const rungs = saidRungs(figures.rungs, found)
  const { lowV } = judged.peaks ?? {}
  const isBothWays = !asked.bidirectional && lowV !== undefined && lowV <= -FORWARD_STARTS.value
  const table = sizingTable(sizes, isBothWays) ?? supplyTable(found)
  const isFirst = setup.met === undefined && table !== undefined
  const strip = roomStrip(found)
  return {
    ok: true,
    verdict: figures.verdict,
    ...surgeSaid(found, figures.verdict),
    findings: worstFirst([
      ...circuitFindings(judged.circuit.reasons),
      ...suppressorFindings(judged.suppressor?.reasons ?? []),
      ...capacitorFindings(judged.capacitor?.reasons ?? []),
      ...signalFindings(judged.signal, setup.part?.standoffV),
      ...remarks(found),
    ]),
    outputs: saidOutputs(figures, found),
    bounds: roomBounds(judged.signal, setup.filter),
    rungs,
    pictures: [
      ...(isFirst ? [table] : []),
      surgeLadder(rungs),
      voltsPlot({
        pulse: setup.pulse,
        trace: runs.run.trace,
        hasSuppressor: setup.met !== undefined,
        loadPeak: runs.run.load,
        withstandV: setup.withstandV,
      }),
      shapePlot(setup.pulse, setup.sign),
      ...(strip ? [strip] : []),
      ...(table && !isFirst ? [table] : []),
    ],
    cautions: cautionsOf(setup),
  }
}

/** Ids of safety texts: stored charge where there is a capacitor, power off where the pulse can hurt. */
function cautionsOf({ pulse, filter }: SurgeSetup): readonly SafetyId[] {
  return [
    'permanent-approved',
    'lightning-hirf-fuel',
    'hipot',
    'after-strike',
    ...(filter.topology === 'none' ? [] : (['stored-charge'] as const)),
    ...(pulse.openCircuitV >= 60 ? (['power-off'] as const) : []),
    'ok-bounds',
    'screening',
  ]
}

/** What is left for the filter beside this suppressor. */
function roomStrip({ judged, setup }: SurgeFound): Picture | undefined {
  const { signal } = judged
  if (signal.is !== 'judged' || !signal.room || signal.room.roomF <= 0) return undefined
  const { filter } = setup
  const mostF = signal.room.roomF / countOf(filter)
  const takenToF = signal.room.wholeF / countOf(filter)
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
        verdict: signal.verdict,
        note: `suppressor takes ${shareWords(signal.suppressorF, signal.room.wholeF)}`,
      },
    ],
    marks: [],
    ...(isFitted ? { chosenF: filter.capacitanceF } : {}),
  }
}
