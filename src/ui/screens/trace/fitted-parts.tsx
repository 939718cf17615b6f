import { listed } from '../../../calc/explain/sentence.ts'
import { TOPOLOGY_LABEL } from '../../../calc/network/circuit.ts'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { circuitOfParts, type Fitted } from '../../../calc/touchstone/fit.ts'
import { networkOf } from '../../../calc/touchstone/model.ts'
import type { Network } from '../../../calc/touchstone/types.ts'
import { writeTouchstone } from '../../../calc/touchstone/write.ts'
import type { FactKey, Line } from '../../../calc/types.ts'
import type { Desk } from '../../../state/desk.ts'
import { fileWaysHere, saveFile } from '../../../state/files.ts'
import { FACT_OF, fitParts, fits, staying, takeParts, textsOf } from '../../../state/measured-filter.ts'

export type PairMode = 'common' | 'differential'
const MODE_WORDS: Readonly<Record<PairMode, string>> = { common: 'common mode', differential: 'differential mode' }

type PartsGiven = {
  readonly desk: Desk
  readonly network: Network
  /** of a pair: the mode this network is one leg of */
  readonly mode?: PairMode
}

/** The parts closest to it, with what is left over, taken over or written as a file. */
export function Parts({ network, desk, mode }: PartsGiven) {
  const ofMode = mode === undefined ? '' : ` of one leg, ${MODE_WORDS[mode]}`
  const found = fits.value?.of === network ? fits.value.fits : undefined
  return (
    <>
      <button type="button" class="button" onClick={() => void fitParts(network)}>
        Fit C, ESR, ESL and L{ofMode}
      </button>
      {found && !found.some(isClose) && (
        <p class="notice">
          No filter of the model comes near it: the closest leaves{' '}
          {formatQuantity(found[0]?.residualFrac ?? 1, 'fraction', 2)}. It is no simple filter, or its leads are in the
          measurement.
        </p>
      )}
      {found && (
        <ul class="rows">
          {found.filter(isClose).map((one) => (
            <li key={one.parts.topology}>
              <span>
                <strong>{TOPOLOGY_LABEL[one.parts.topology]}</strong>
                <span class="row-note">{wordsOf(one, desk.line.value)}</span>
              </span>
              <span class="actions">
                <button type="button" class="button" onClick={() => takeParts(desk, one, mode)}>
                  Use in every check{mode === undefined ? '' : `, in ${MODE_WORDS[mode]}`}
                  <span class="unseen"> {TOPOLOGY_LABEL[one.parts.topology]}</span>
                </button>
                {network.portCount === 2 && (
                  <button type="button" class="button" onClick={() => saveModel(one, network, mode)}>
                    Save as .s2p<span class="unseen"> {TOPOLOGY_LABEL[one.parts.topology]}</span>
                  </button>
                )}
              </span>
            </li>
          ))}
        </ul>
      )}
      {found?.some(isClose) && (
        <p class="muted small">
          Measured from {formatQuantity(network.hz.find((f) => f > 0) ?? 0, 'frequency', 3)} to{' '}
          {formatQuantity(network.hz.at(-1) ?? 0, 'frequency', 3)}: beyond that the parts are a guess.
        </p>
      )}
      {found && mode !== undefined && found.some(isClose) && (
        <p class="muted small">
          Parts of one leg, both legs alike, in {MODE_WORDS[mode]} alone: a choke or a capacitor between the wires is
          another part in the other mode.
        </p>
      )}
    </>
  )
}

/** A fit that leaves more than this is of another circuit. */
const MOST_LEFT_FRAC = 0.3
const isClose = ({ residualFrac }: Fitted): boolean => residualFrac <= MOST_LEFT_FRAC

const nameAndText = ([fact, text]: readonly [FactKey, string]): string => `${PART_NAME[fact] ?? fact} ${text}`

function wordsOf(fitted: Fitted, line: Line): string {
  const { residualFrac, worstDb, worstAtHz, untold } = fitted
  const named = textsOf(fitted).slice(1).map(nameAndText)
  const left = `residual ${formatQuantity(residualFrac, 'fraction', 2)}`
  const worst =
    worstDb === undefined || worstAtHz === undefined
      ? ''
      : `, loss off by ${formatQuantity(worstDb, 'decibel', 2)} at most, at ${formatQuantity(worstAtHz, 'frequency', 3)}`
  const names = untold.map((name) => PART_NAME[FACT_OF[name][0]] ?? name)
  const open =
    names.length === 0 ? '' : ` The measurement does not tell ${listed(names)}: not taken over, enter it from its data.`
  return `${named.join(', ')}; ${left}${worst}.${open}${staysWords(staying(fitted, line).map(nameAndText))}`
}

function staysWords(held: readonly string[]): string {
  if (held.length === 0) return ''
  if (held.length === 1) return ` On the line stands ${held[0]}: it stays, so make sure it is of this filter.`
  return ` On the line stand ${listed(held)}: they stay, so make sure they are of this filter.`
}

const PART_NAME: Readonly<Record<string, string>> = {
  markedF: 'C',
  marked2F: 'second C',
  esrOhm: 'ESR',
  eslH: 'ESL',
  inductanceH: 'L',
  inductance2H: 'second L',
  dcrOhm: 'winding',
  inductorParallelF: 'across the coil',
  inductorParallelOhm: 'loss across the coil',
}

function saveModel(fitted: Fitted, { hz, referenceOhm }: Network, mode: PairMode | undefined): void {
  const { parts } = fitted
  const used = hz.filter((f) => f > 0)
  const content = writeTouchstone(networkOf(circuitOfParts(parts), used, referenceOhm[0] ?? 50), {
    version: '1',
    unit: 'Hz',
    format: 'RI',
    comments: [
      'A model of fitted parts: a screening estimate, not a measurement',
      ...(mode === undefined ? [] : [`One leg of a pair in ${MODE_WORDS[mode]}`]),
      ...textsOf(fitted).map(([fact, text]) => `${fact} ${text}`),
    ],
  })
  saveFile(
    {
      name: `model-${mode === undefined ? '' : `${mode}-`}${parts.topology.toLowerCase()}.s2p`,
      type: 'text/plain',
      content,
    },
    fileWaysHere(),
  )
}
