import { useMemo } from 'preact/hooks'
import { resolve } from '../../../calc/line/resolver.ts'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { circuitOfParts, type Fitted } from '../../../calc/touchstone/fit.ts'
import { lossCurves } from '../../../calc/touchstone/loss-curves.ts'
import { networkOf } from '../../../calc/touchstone/model.ts'
import type { Network } from '../../../calc/touchstone/types.ts'
import type { Desk } from '../../../state/desk.ts'
import { fits } from '../../../state/measured-filter.ts'
import type { TraceCurve } from '../../parts/trace-draw.ts'
import { TracePlot } from '../../parts/trace-plot.tsx'

type FilterGiven = {
  readonly desk: Desk
  readonly network: Network
  readonly name: string
  /** what parts are fitted to, where it is not this network itself: one leg of it */
  readonly leg?: Network
}

/** Bench and own loss in one picture. */
export function Losses({ network, name, desk, leg = network }: FilterGiven) {
  const resolution = resolve(desk.line.value)
  const sources = resolution.numbers(resolution.fact('noiseSourceOhm'), 'resistance')
  const [load] = resolution.numbers(resolution.fact('noiseLoadOhm'), 'resistance')
  const key = `${sources.join()} ${load}`
  const { hz, benchDb, ownDb } = useMemo(() => lossCurves(network, sources, load), [network, key])
  const best = fits.value?.of === leg ? fits.value.fits[0] : undefined
  const curves: readonly TraceCurve[] = [
    {
      id: 'bench',
      label: `on the bench, ${formatQuantity(network.referenceOhm[0] ?? 50, 'resistance')}`,
      look: 'dashed',
      hz,
      db: benchDb,
    },
    ...(ownDb ? [{ id: 'own', label: 'between your source and load', look: 'solid' as const, hz, db: ownDb }] : []),
    ...(best ? [fittedCurve(best, hz, leg)] : []),
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
  const { benchDb: db } = lossCurves(networkOf(circuitOfParts(parts), hz, referenceOhm[0] ?? 50), [], undefined)
  return { id: 'fit', label: 'fitted parts on the bench', look: 'dots', hz, db }
}
