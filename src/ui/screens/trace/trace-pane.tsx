import { useEffect, useLayoutEffect, useMemo } from 'preact/hooks'
import { TOPOLOGY_LABEL } from '../../../calc/network/circuit.ts'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { measuredLoss } from '../../../calc/trace/compare.ts'
import type { Settled } from '../../../calc/trace/settle.ts'
import type { Desk } from '../../../state/desk.ts'
import { readingRow, takeReading } from '../../../state/measured-reading.ts'
import { forgetSettled, groundsOf, settled, settleOn, settling, stopSettling } from '../../../state/settle-trace.ts'
import { leaveTraceWork } from '../../../state/trace-work.ts'
import { kept, openTraces, type SpectrumTrace } from '../../../state/traces.ts'
import type { TraceCurve } from '../../parts/trace-draw.ts'
import { TracePlot } from '../../parts/trace-plot.tsx'
import '../../styles/trace.css'
import { MeasuredFilter } from './measured-filter.tsx'
import { TraceFiles } from './trace-files.tsx'

/** Typing rests for this long before the points are worked out anew. */
const REST_MS = 700

const spectrumOf = (role: 'before' | 'after'): SpectrumTrace | undefined =>
  kept.value?.find((one): one is SpectrumTrace => one.is === 'spectrum' && one.role === role)

/** A measured file for the fields of the trace check: opened, drawn, brought to the points that decide. */
export function TracePane({ desk }: { readonly desk: Desk }) {
  const { id } = desk.line.value
  // before a file can be chosen: it belongs to this line
  useLayoutEffect(() => {
    void openTraces(id)
    return () => {
      leaveTraceWork()
      forgetSettled()
    }
  }, [id])
  const before = spectrumOf('before')
  const after = spectrumOf('after')
  const grounds = groundsOf(desk.line.value)
  const rows = before?.rows
  useEffect(() => {
    if (before === undefined) return forgetSettled()
    const timer = setTimeout(() => void settleOn(desk, before), settled.peek() === undefined ? 0 : REST_MS)
    return () => {
      clearTimeout(timer)
      stopSettling()
    }
  }, [rows, grounds])
  return (
    <section class="trace-pane stack" aria-label="Measured files">
      <TraceFiles />
      {before && (
        <TracePlot
          curves={curvesOf(before, after, settled.value)}
          unit={before.spectrum.unit ?? 'dB'}
          label={labelOf(before, settled.value)}
        />
      )}
      {before && <Points rows={before.spectrum.hz.length} />}
      {before && after && <Loss before={before} after={after} desk={desk} />}
      <MeasuredFilter desk={desk} />
    </section>
  )
}

function curvesOf(
  before: SpectrumTrace,
  after: SpectrumTrace | undefined,
  found: Settled | undefined,
): readonly TraceCurve[] {
  const { hz, db } = before.spectrum
  const long = { hz, db, blocks: before.blocks }
  const curves: TraceCurve[] = [{ id: 'before', label: before.name, look: 'solid', ...long }]
  if (after)
    curves.push({
      id: 'after',
      label: after.name,
      look: 'dashed',
      hz: after.spectrum.hz,
      db: after.spectrum.db,
      blocks: after.blocks,
    })
  if (found?.ok && found.part)
    curves.push({
      id: 'left',
      label: 'left behind the part',
      look: 'dots',
      ...long,
      less: { hz: found.part.hz, db: found.part.lossDb },
    })
  if (found?.ok && found.limitHz.length > 0)
    curves.push({ id: 'limit', label: 'limit', look: 'limit', hz: found.limitHz, db: found.limitDb })
  return curves
}

function labelOf({ name, spectrum }: SpectrumTrace, found: Settled | undefined): string {
  const rows = spectrum.hz.length.toLocaleString('en')
  const span = `${hertz(spectrum.hz[0] ?? 0)} to ${hertz(spectrum.hz.at(-1) ?? 0)}`
  const over =
    found?.ok && found.judgedCount > 0
      ? `, ${found.overCount.toLocaleString('en')} ${found.overCount === 1 ? 'row' : 'rows'} over the limit`
      : ''
  return `${name}: ${rows} rows, ${span}${over}.`
}

const hertz = (hz: number): string => formatQuantity(hz, 'frequency', 4)
const decibels = (db: number): string => formatQuantity(db, 'decibel', 3)

/** Which rows stand in the fields, and what the part proposed for them does on all. */
function Points({ rows }: { readonly rows: number }) {
  const found = settled.value
  if (settling.value !== undefined)
    return (
      <div>
        <label class="progress">
          Trying every row, {Math.round(settling.value * 100)} %
          <progress max="1" value={settling.value} />
        </label>
        <button type="button" class="button" onClick={stopSettling}>
          Cancel
        </button>
      </div>
    )
  if (found === undefined) return null
  if (!found.ok) return <p class="notice">{found.message}</p>
  return (
    <p role="status">
      {found.pointsHz.length} of {rows.toLocaleString('en')} rows stand in the fields below. {partWords(found)}
    </p>
  )
}

function partWords({ part, judgedCount, limitHz, settledFor }: Extract<Settled, { ok: true }>): string {
  if (part === undefined && limitHz.length > 0 && settledFor === '')
    return 'What stands against comparing them with the limit is said above.'
  if (part === undefined)
    return judgedCount === 0
      ? 'Choose the limit to see which of them decide.'
      : 'They carry the need of all; the window finds the part once it knows the line, its source and its load.'
  const { topology, markedF, holds, spareDb, spareAtHz } = part
  const named = `${TOPOLOGY_LABEL[topology]}${markedF === undefined ? '' : `, ${formatQuantity(markedF, 'capacitance')}`}`
  return holds
    ? `With ${named} every row is met over the whole box of tolerances, the closest by ${decibels(Math.max(0, spareDb))} at ${hertz(spareAtHz)}.`
    : `With ${named} rows are missed, the worst by ${decibels(-spareDb)} at ${hertz(spareAtHz)}.`
}

type LossGiven = { readonly before: SpectrumTrace; readonly after: SpectrumTrace; readonly desk: Desk }

/** Before less after: the insertion loss as it was measured. */
function Loss({ before, after, desk }: LossGiven) {
  const loss = useMemo(() => measuredLoss(before.spectrum, after.spectrum), [before, after])
  if (!loss.ok) return <p class="notice">{loss.message}</p>
  let [least, most] = [0, 0]
  for (let i = 1; i < loss.db.length; i++) {
    if ((loss.db[i] as number) < (loss.db[least] as number)) least = i
    if ((loss.db[i] as number) > (loss.db[most] as number)) most = i
  }
  const row = readingRow(desk, loss)
  const at = (one: number) => `${decibels(loss.db[one] as number)} at ${hertz(loss.hz[one] as number)}`
  return (
    <>
      <h3>Measured insertion loss</h3>
      <p>
        Before less after, from {at(least)} to {at(most)}. Where it sinks towards nothing the floor of the receiver is
        all that was read.
      </p>
      <TracePlot
        curves={[{ id: 'loss', label: 'before less after', look: 'solid', hz: loss.hz, db: loss.db }]}
        unit="dB"
        label={`Measured insertion loss, from ${at(least)} to ${at(most)}.`}
      />
      <button type="button" class="button" onClick={() => takeReading(desk, loss, row)}>
        Enter {at(row)} as what the capacitor did
      </button>
      <p class="muted small">
        The loop check then says what source and load this speaks of, and the window works with them:{' '}
        <a href={desk.addressOf('loop')} onClick={desk.enter}>
          Loop
        </a>
        .
      </p>
    </>
  )
}
