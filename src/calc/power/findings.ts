/** What the figures of a power line mean, in plain words. */
import { formatQuantity } from '../quantity/format.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Finding } from '../types.ts'
import { crestV, heatW, isThreePhase, lineCurrentRmsA, PASCHEN_MINIMUM_V, phaseLostCurrentRmsA } from './supply.ts'

export type PowerFacts = {
  readonly workingRmsV: number
  readonly supplyHz: number
  readonly farads: number
  readonly lineCount: number
}

const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)

/** Worst steady supply on a variable-frequency aircraft (MIL-STD-704F, from memory). */
const VARIABLE_WORST = { workingRmsV: 118, supplyHz: 800 } as const
const NEAR_PASCHEN = 0.9

/** Whether currents of the phases cancel, and what is left when one is lost. Nothing at DC. */
export function residualFinding(facts: PowerFacts): Finding | undefined {
  const lineA = lineCurrentRmsA(facts)
  if (lineA === 0) return undefined
  if (!isThreePhase(facts.lineCount))
    return facts.lineCount === 1
      ? undefined
      : {
          verdict: 'ok',
          sentence: `${facts.lineCount} lines are not a balanced three-phase set: their chassis currents are taken to add in full.`,
        }
  const lost = phaseLostCurrentRmsA({ lineA, lineCount: facts.lineCount })
  return {
    verdict: 'ok',
    sentence: `Balanced phases cancel at the fundamental. With one phase lost ${show(lost, 'current')} flow into the chassis; triplen harmonics always add.`,
  }
}

/** The worst steady case of a variable-frequency supply, when the one entered may be such a supply and is milder. */
export function variableFrequencyFinding(facts: PowerFacts): Finding | undefined {
  const { workingRmsV, supplyHz, farads } = facts
  const couldVary = supplyHz >= 360 && supplyHz <= 800 && workingRmsV >= 100 && workingRmsV <= 118
  if (!couldVary || (supplyHz === 800 && workingRmsV === 118)) return undefined
  const worstA = lineCurrentRmsA({ ...VARIABLE_WORST, farads })
  return {
    verdict: 'ok',
    sentence: `On a variable-frequency supply the worst is 118 V at 800 Hz: ${show(worstA, 'current')} in each line.`,
  }
}

/** Heat of the capacitor at two usual loss factors. Nothing at DC. */
export function heatFinding(facts: PowerFacts): Finding | undefined {
  if (lineCurrentRmsA(facts) === 0) return undefined
  const class2 = heatW({ ...facts, dissipationFrac: 0.025 })
  const class1 = heatW({ ...facts, dissipationFrac: 0.0015 })
  return {
    verdict: 'ok',
    sentence: `Heat in each capacitor: ${show(class2, 'power')} at a loss factor of 2.5 % (class 2), ${show(class1, 'power')} at 0.15 % (C0G).`,
  }
}

/** Air at low pressure: the working peak, the overshoot and the withstand test against the Paschen minimum. */
export function paschenFindings(facts: PowerFacts, overshootV: number | undefined, testV: number): readonly Finding[] {
  const peakV = crestV(facts)
  const minimum = show(PASCHEN_MINIMUM_V, 'voltage')
  if (peakV >= NEAR_PASCHEN * PASCHEN_MINIMUM_V)
    return [
      {
        verdict: 'marginal',
        sentence: `A working peak of ${show(peakV, 'voltage', 4)} is ${peakV >= PASCHEN_MINIMUM_V ? 'above' : 'close to'} the ${minimum} at which air can break down at the worst gap and pressure. Unpressurised: solid filling and more spacing.`,
      },
    ]
  if (overshootV !== undefined && overshootV >= PASCHEN_MINIMUM_V)
    return [
      {
        verdict: 'marginal',
        sentence: `The inrush peak of ${show(overshootV, 'voltage', 4)} is above the ${minimum} at which air can break down at low pressure.`,
      },
    ]
  if (testV >= PASCHEN_MINIMUM_V)
    return [
      {
        verdict: 'ok',
        sentence: `A withstand test of ${show(testV, 'voltage')} at low pressure can flash over where the same part passes at sea level: air breaks down from ${minimum}.`,
      },
    ]
  return []
}
