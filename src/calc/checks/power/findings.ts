/** What the figures of a power line mean, in plain words. */
import { navyWhy } from '../../explain/navy-rule.ts'
import type { PowerJudgement, PowerReason, PowerRules } from '../../power/judge.ts'
import {
  acrossLinesV,
  bleedSec,
  crestV,
  heatW,
  isThreePhase,
  lineCurrentRmsA,
  PASCHEN_MINIMUM_V,
  type PowerLine,
  phaseLostCurrentRmsA,
  TOUCH_V,
  withstandV,
} from '../../power/supply.ts'
import { formatEstimate, formatQuantity } from '../../quantity/format.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Finding } from '../../types.ts'
import { worstFirst } from '../../verdict.ts'
import { wireWords } from './sentence.ts'

const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)
/** A current that flows is brought up. */
const flows = (si: number): string => formatEstimate(si, 'current', 'least')
const MINIMUM = show(PASCHEN_MINIMUM_V, 'voltage')

/** Worst steady supply on a variable-frequency aircraft (MIL-STD-704F, from memory). */
const VARIABLE_WORST = { workingRmsV: 118, supplyHz: 800 } as const

type Question = {
  readonly line: PowerLine
  readonly judgement: PowerJudgement
  readonly rules: PowerRules
  /** sentences of the ladder's faults, in the order of the reasons */
  readonly faults: readonly string[]
}

/** Reasons of the judgement, then what is worth knowing beside them. */
export function powerFindings(q: Question): readonly Finding[] {
  const faults = [...q.faults]
  const judged = q.judgement.reasons.map((reason): Finding => {
    const sentence = reason.is === 'ladder' ? (faults.shift() ?? '') : reasonSentence(q, reason)
    return { verdict: reason.verdict, sentence }
  })
  const told = [
    crossFinding(q.line),
    crossChargeFinding(q),
    testInThinAir(q),
    residualFinding(q.line),
    variableFrequencyFinding(q.line),
    heatFinding(q.line),
  ]
  return worstFirst([...judged, ...told.filter((finding) => finding !== undefined)])
}

function reasonSentence({ line, judgement, rules }: Question, reason: Exclude<PowerReason, { is: 'ladder' }>): string {
  const has = `${show(line.capacitanceF, 'capacitance')} from each line to ground`
  switch (reason.is) {
    case 'no-limit':
      return `No limit for the capacitance was given: choose the Navy rule if it applies${line.supplyHz === 0 ? '' : ', or enter the chassis current your specification allows'}.`
    case 'navy-lacks':
      return judgement.navy === undefined
        ? ''
        : navyWhy(judgement.navy, { supplyHz: line.supplyHz, loadW: rules.loadW })
    case 'navy':
      return reason.verdict === 'fails'
        ? `${has} is over the ${show(reason.limitF, 'capacitance')} of the Navy rule: put the capacitor from line to line, or add an inductor.`
        : `${has} is inside the ${show(reason.limitF, 'capacitance')} of the Navy rule.`
    case 'chassis-limit': {
      const current = flows(lineCurrentRmsA({ ...line, farads: line.capacitanceF }))
      const may = `the ${show(reason.limitA, 'current')} allowed (${show(reason.limitF, 'capacitance')} on this supply)`
      return reason.verdict === 'fails'
        ? `${current} to chassis in each line is over ${may}.`
        : `${current} to chassis in each line is inside ${may}.`
    }
    case 'wire-long':
      return `${wireWords(reason.henries)}. If metres were meant, enter about 1 µH for each: 4u for 2 m there and back.`
    case 'cross-withstand':
      return `The inrush peak of ${show(reason.peakV, 'voltage', 4)} from line to line is above the ${show(reason.holdsV, 'voltage', 4)} of the withstand test of the capacitor there.`
    case 'thin-air':
      return reason.by === 'inrush'
        ? `The inrush peak of ${show(reason.peakV, 'voltage', 4)}${across(reason)} is above the ${MINIMUM} at which air can break down at low pressure.`
        : `A working peak of ${show(reason.peakV, 'voltage', 4)}${across(reason)} is ${reason.peakV >= PASCHEN_MINIMUM_V ? 'above' : 'close to'} the ${MINIMUM} at which air can break down at the worst gap and pressure. Unpressurised: solid filling and more spacing.`
  }
}

/** Where the peak stands, if not on the line itself. */
const across = ({ isAcross }: { readonly isAcross: boolean }): string => (isAcross ? ' from line to line' : '')

/** What charges the capacitor between the lines, and how long it holds: the figures shown are those of one to chassis. */
function crossChargeFinding({ line, judgement: { crossInrush } }: Question): Finding | undefined {
  if (line.crossF === 0) return undefined
  const fromV = crestV({ workingRmsV: acrossLinesV(line), supplyHz: line.supplyHz })
  const bled =
    line.bleedOhm === undefined
      ? 'without a bleed resistor of its own its charge stays'
      : `the same resistor across it takes ${formatEstimate(bleedSec({ ohm: line.bleedOhm, farads: line.crossF, fromV, toV: TOUCH_V }), 'time', 'least')} to bring it to ${show(TOUCH_V, 'voltage')}`
  const drawn =
    crossInrush === undefined ? '' : `draws ${formatEstimate(crossInrush.peakA, 'current', 'least')} at switch-on and `
  return {
    verdict: 'ok',
    sentence: `Inrush and bleed are shown for one capacitor to chassis; that from line to line ${drawn}holds its own charge: ${bled}.`,
  }
}

/** What a capacitor between the lines is for, and what it is not. */
function crossFinding({ crossF }: PowerLine): Finding | undefined {
  return crossF === 0
    ? undefined
    : {
        verdict: 'ok',
        sentence:
          'The capacitor from line to line puts nothing into the chassis and does nothing for common mode: each rule for line to ground counts the others alone.',
      }
}

/** The withstand test at low pressure, where nothing else comes near the Paschen minimum. */
function testInThinAir({ line, judgement }: Question): Finding | undefined {
  const testV = withstandV(line)
  if (testV < PASCHEN_MINIMUM_V || judgement.reasons.some(({ is }) => is === 'thin-air')) return undefined
  return {
    verdict: 'ok',
    sentence: `A withstand test of ${show(testV, 'voltage')} at low pressure can flash over where the same part passes at sea level: air breaks down from ${MINIMUM}.`,
  }
}

/** Whether currents of the phases cancel, and what is left when one is lost. Nothing at DC. */
function residualFinding(line: PowerLine): Finding | undefined {
  const lineA = lineCurrentRmsA({ ...line, farads: line.capacitanceF })
  if (lineA === 0) return undefined
  if (!isThreePhase(line.lineCount))
    return line.lineCount === 1
      ? undefined
      : {
          verdict: 'ok',
          sentence: `${line.lineCount} lines are not a balanced three-phase set: their chassis currents are taken to add in full.`,
        }
  const lost = phaseLostCurrentRmsA({ lineA, lineCount: line.lineCount })
  return {
    verdict: 'ok',
    sentence: `Balanced phases cancel at the fundamental. With one phase lost ${flows(lost)} flow into the chassis; triplen harmonics always add.`,
  }
}

/** The worst steady case of a variable-frequency supply, when the one entered may be such a supply and is milder. */
function variableFrequencyFinding({ workingRmsV, supplyHz, capacitanceF }: PowerLine): Finding | undefined {
  const couldVary = supplyHz >= 360 && supplyHz <= 800 && workingRmsV >= 100 && workingRmsV <= 118
  if (!couldVary || (supplyHz === 800 && workingRmsV === 118)) return undefined
  const worstA = lineCurrentRmsA({ ...VARIABLE_WORST, farads: capacitanceF })
  return {
    verdict: 'ok',
    sentence: `On a variable-frequency supply the worst is 118 V at 800 Hz: ${flows(worstA)} in each line.`,
  }
}

/** Heat of the capacitor at two usual loss factors. Nothing at DC. */
function heatFinding(line: PowerLine): Finding | undefined {
  const facts = { ...line, farads: line.capacitanceF }
  if (lineCurrentRmsA(facts) === 0) return undefined
  const class2 = heatW({ ...facts, dissipationFrac: 0.025 })
  const class1 = heatW({ ...facts, dissipationFrac: 0.0015 })
  return {
    verdict: 'ok',
    sentence: `Heat in each capacitor: ${show(class2, 'power')} at a loss factor of 2.5 % (class 2), ${show(class1, 'power')} at 0.15 % (C0G).`,
  }
}

/** Whether the working peak or the withstand test comes where thin air breaks down. */
export const isNearAir = (line: PowerLine): boolean =>
  withstandV(line) >= PASCHEN_MINIMUM_V || crestV(line) >= 0.9 * PASCHEN_MINIMUM_V
