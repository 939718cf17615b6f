/** The window in words and pictures, written from its figures on demand. */
import { worksWhy } from '../../explain/ceiling.ts'
import { listed } from '../../explain/sentence.ts'
import { loadingCeiling } from '../../loading/ceiling.ts'
import type { Basis, Cell, Success } from '../../types.ts'
import { leastBasis, mostBasis, proposalBasis } from './basis.ts'
import { saidBounds } from './bounds.ts'
import type { Conversion } from './conversion.ts'
import { conversionBasis, conversionOf } from './conversion-words.ts'
import { allRows, type Barred, type OpenWindow, type WindowFigures } from './figures.ts'
import { findingsOf, openerOf, openerWords } from './findings.ts'
import { liftOf } from './gain.ts'
import type { WindowGiven } from './inputs.ts'
import { openersOf } from './openers.ts'
import { windowSaid } from './sentence.ts'
import type { WindowSetup } from './setup.ts'
import { stripOf, topologyTable } from './strip.ts'
import { labelOf, missingOf } from './words.ts'

export function explainWindow(given: WindowGiven, figures: WindowFigures): Success {
  return figures.is === 'barred' ? barredAnswer(figures) : openAnswer(given, figures)
}

/** A line that never gets a part: the reason in full. */
function barredAnswer({ kind, why }: Barred): Success {
  return {
    ok: true,
    verdict: 'fails',
    headline: `${kind.name}: no. ${why}`,
    findings: [{ verdict: 'fails', sentence: `${kind.name} is never fitted with a trial part.` }],
    outputs: {},
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: ['no-trial', 'permanent-approved'],
  }
}

function openAnswer(given: WindowGiven, figures: OpenWindow): Success {
  const { row, setup } = figures
  const rows = allRows(figures)
  const verdict = figures.verdict ?? 'unknown'
  const found = openersOf(row, rows, setup, given)
  const openers = found.map(openerOf)
  const missing = missingOf(given, setup)
  const converted = conversionOf(row, setup)
  const lift = liftOf(row, setup)
  return {
    ok: true,
    verdict,
    ...windowSaid({ given, row, setup, verdict, openers: found.map(openerWords), lift }),
    findings: findingsOf(figures, openers, converted, lift),
    outputs: outputsOf(figures, missing, converted),
    bounds: saidBounds(row, setup, openers),
    rungs: [],
    pictures: [stripOf(rows, row, setup, verdict), ...(setup.around ? [topologyTable(rows, row, setup)] : [])],
    asks: setup.asks,
    cautions: cautionsOf(setup),
  }
}

function outputsOf(
  { row, setup, values }: OpenWindow,
  missing: readonly string[],
  converted: Conversion | undefined,
): Success['outputs'] {
  const { need } = row
  const outputs: Record<string, { cell: Cell; basis: Basis }> = {}
  /** A figure that has to be there, with the reason where it does not exist. */
  const put = (key: string, basis: Basis, why: string) => {
    const si = values[key]
    outputs[key] = { cell: si === undefined ? { is: 'none', why } : { is: 'si', si }, basis }
  }
  const putKnown = (key: string, basis: Basis) => {
    if (values[key] !== undefined) put(key, basis, '')
  }
  const least = leastBasis(row, setup)
  const most = mostBasis(row, setup)
  const proposal = proposalBasis(row)
  if (need.is === 'inductor-only') {
    put('leastInductanceH', least, 'no inductor up to 1 H meets the need')
    put('leastCapacitanceF', least, 'this topology has no capacitor')
  } else {
    const whyNone = need.is === 'never' ? 'no capacitor is large enough' : `enter ${listed(missing)}`
    const noMost = setup.signal ? worksWhy(setup.signal, loadingCeiling(setup.signal).works) : 'choose the line'
    const noProposal =
      values['leastCapacitanceF'] === undefined
        ? whyNone
        : need.is === 'none-needed' || need.is === 'choke-alone'
          ? 'nothing needed'
          : 'no standard value inside'
    put('leastCapacitanceF', least, whyNone)
    put('mostCapacitanceF', most, noMost)
    put('proposedF', proposal, noProposal)
  }
  outputs['topologyUsed'] = { cell: { is: 'word', word: labelOf(row) }, basis: proposal }
  putKnown('worstLossDb', least)
  putKnown('overLeastRatio', proposal)
  putKnown('underMostRatio', proposal)
  putKnown('permittedF', most)
  putKnown('chassisRmsA', most)
  putKnown('leastChokeH', least)
  if (converted) outputs['conversionDb'] = { cell: { is: 'si', si: converted.db }, basis: conversionBasis(converted) }
  return outputs
}

function cautionsOf({ kind, isPair }: WindowSetup): string[] {
  const isPower = kind?.family === 'power-ac' || kind?.family === 'power-dc'
  return [
    'ok-bounds',
    ...(isPair ? ['matched-legs'] : []),
    ...(isPower ? ['stored-charge', 'chassis-capacitance'] : []),
    ...(kind?.noTrialWhy === undefined ? ['trial-not-for-flight'] : ['lethal-voltage', 'no-trial']),
    'permanent-approved',
    'lightning-hirf-fuel',
    'hipot',
  ]
}
