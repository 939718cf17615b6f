import { useMemo, useState } from 'preact/hooks'
import { resolve } from '../../../calc/line/resolver.ts'
import { TOPOLOGY_LABEL } from '../../../calc/network/circuit.ts'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { circuitOfParts, type Fitted } from '../../../calc/touchstone/fit.ts'
import { lossCurves } from '../../../calc/touchstone/loss-curves.ts'
import { type PairPorts, pairModes } from '../../../calc/touchstone/mixed-mode.ts'
import { networkOf } from '../../../calc/touchstone/model.ts'
import type { Network } from '../../../calc/touchstone/types.ts'
import { writeTouchstone } from '../../../calc/touchstone/write.ts'
import type { Desk } from '../../../state/desk.ts'
import { fileWaysHere, saveFile } from '../../../state/files.ts'
import { fitParts, fits, takeParts, textsOf } from '../../../state/measured-filter.ts'
import { kept } from '../../../state/traces.ts'
import type { TraceCurve } from '../../parts/trace-draw.ts'
import { TracePlot } from '../../parts/trace-plot.tsx'

type Given = { readonly desk: Desk }

/** A filter by its Touchstone file: on the bench, between the line's own ends, and as parts of the model. */
export function MeasuredFilter({ desk }: Given) {
  const file = kept.value?.find((one) => one.is === 'network')
  if (file?.is !== 'network') return null
  const { network, name } = file
  return (
    <section class="stack" aria-label="Measured filter">
      <h3>Measured filter</h3>
      {network.portCount === 2 && <Losses network={network} name={name} desk={desk} />}
      {network.portCount === 1 && (
        <p>One port gives an impedance, not a loss: a part of its own can be fitted to it.</p>
      )}
      {network.portCount > 2 && <Pair network={network} name={name} desk={desk} />}
      {network.portCount <= 2 && <Parts network={network} desk={desk} />}
    </section>
  )
}

type FilterGiven = Given & { readonly network: Network; readonly name: string }

/** Bench and own loss in one picture. */
function Losses({ network, name, desk }: FilterGiven) {
  const resolution = resolve(desk.line.value)
  const sources = resolution.numbers(resolution.fact('noiseSourceOhm'), 'resistance')
  const [load] = resolution.numbers(resolution.fact('noiseLoadOhm'), 'resistance')
  const key = `${sources.join()} ${load}`
  const { hz, benchDb, ownDb } = useMemo(() => lossCurves(network, sources, load), [network, key])
  const best = fits.value?.of === network ? fits.value.fits[0] : undefined
  const curves: readonly TraceCurve[] = [
    {
      id: 'bench',
      label: `on the bench, ${formatQuantity(network.referenceOhm[0] ?? 50, 'resistance')}`,
      look: 'dashed',
      hz,
      db: benchDb,
    },
    ...(ownDb ? [{ id: 'own', label: 'between your source and load', look: 'solid' as const, hz, db: ownDb }] : []),
    ...(best ? [fittedCurve(best, hz, network)] : []),
  ]
  return (
    <>
      <TracePlot curves={curves} unit="dB" label={`Insertion loss of ${name}.`} />
      <p class="muted small">
        {ownDb
          ? 'All four parameters are turned into your source and load; of several sources the least loss counts. The bench figure is |S21| alone.'
          : 'Shown is the bench figure, |S21| alone. Enter noise source and load of the line to see its loss there.'}
      </p>
    </>
  )
}

function fittedCurve({ parts }: Fitted, hz: Float64Array, { referenceOhm }: Network): TraceCurve {
  const { db } = benchOf(networkOf(circuitOfParts(parts), hz, referenceOhm[0] ?? 50))
  return { id: 'fit', label: 'fitted parts on the bench', look: 'dots', hz, db }
}

const benchOf = (network: Network) => ({ db: lossCurves(network, [], undefined).benchDb })

/** The parts closest to it, with what is left over, taken over or written as a file. */
function Parts({ network, desk }: Given & { readonly network: Network }) {
  const found = fits.value?.of === network ? fits.value.fits : undefined
  return (
    <>
      <button type="button" class="button" onClick={() => void fitParts(network)}>
        Fit C, ESR, ESL and L
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
                <span class="row-note">{wordsOf(one)}</span>
              </span>
              <span class="actions">
                <button type="button" class="button" onClick={() => takeParts(desk, one.parts)}>
                  Use in every check<span class="unseen"> {TOPOLOGY_LABEL[one.parts.topology]}</span>
                </button>
                {network.portCount === 2 && (
                  <button type="button" class="button" onClick={() => saveModel(one, network)}>
                    Save as .s2p<span class="unseen"> {TOPOLOGY_LABEL[one.parts.topology]}</span>
                  </button>
                )}
              </span>
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

/** A fit that leaves more than this is of another circuit. */
const MOST_LEFT_FRAC = 0.3
const isClose = ({ residualFrac }: Fitted): boolean => residualFrac <= MOST_LEFT_FRAC

function wordsOf({ parts, residualFrac, worstDb, worstAtHz }: Fitted): string {
  const named = textsOf(parts)
    .slice(1)
    .map(([fact, text]) => `${PART_NAME[fact] ?? fact} ${text}`)
  const left = `residual ${formatQuantity(residualFrac, 'fraction', 2)}`
  const worst =
    worstDb === undefined || worstAtHz === undefined
      ? ''
      : `, loss off by ${formatQuantity(worstDb, 'decibel', 2)} at most, at ${formatQuantity(worstAtHz, 'frequency', 3)}`
  return `${named.join(', ')}; ${left}${worst}.`
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

function saveModel({ parts }: Fitted, { hz, referenceOhm }: Network): void {
  const used = hz.filter((f) => f > 0)
  const content = writeTouchstone(networkOf(circuitOfParts(parts), used, referenceOhm[0] ?? 50), {
    version: '1',
    unit: 'Hz',
    format: 'RI',
    comments: [
      'A model of fitted parts: a screening estimate, not a measurement',
      ...textsOf(parts).map(([fact, text]) => `${fact} ${text}`),
    ],
  })
  saveFile({ name: `model-${parts.topology.toLowerCase()}.s2p`, type: 'text/plain', content }, fileWaysHere())
}

const ORDERS: readonly { readonly id: string; readonly label: string; readonly ports: PairPorts }[] = [
  { id: '12-34', label: '1 and 2 in, 3 and 4 out', ports: { near: [1, 2], far: [3, 4] } },
  { id: '13-24', label: '1 and 3 in, 2 and 4 out', ports: { near: [1, 3], far: [2, 4] } },
]

/** A pair by its four ports, mode by mode, or why not. */
function Pair({ network, name, desk }: FilterGiven) {
  const [order, setOrder] = useState<string>()
  const modes = useMemo(() => pairModes(network, ORDERS.find(({ id }) => id === order)?.ports), [network, order])
  return (
    <>
      {!modes.ok && <p class="notice">{modes.message}</p>}
      {((!modes.ok && modes.asks === 'pairs') || order !== undefined) && (
        <div class="actions">
          {ORDERS.map(({ id, label }) => (
            <button key={id} type="button" class="button" aria-pressed={id === order} onClick={() => setOrder(id)}>
              {label}
            </button>
          ))}
        </div>
      )}
      {modes.ok && (
        <>
          <h4>Common mode</h4>
          <Losses network={modes.common} name={`${name}, common mode`} desk={desk} />
          <h4>Differential mode</h4>
          <Losses network={modes.differential} name={`${name}, differential mode`} desk={desk} />
          {modes.conversionDb !== undefined && (
            <p class="muted small">
              From one mode to the other passes {formatQuantity(modes.conversionDb, 'decibel', 3)} at most; it is not in
              the curves.
            </p>
          )}
        </>
      )}
    </>
  )
}
