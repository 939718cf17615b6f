import { untracked } from '@preact/signals'
import type { Express } from '../../calc/line/fields.ts'
import { resolveFact } from '../../calc/line/resolver.ts'
import { offeredOn } from '../../calc/line/trial-offer.ts'
import { printText } from '../../calc/quantity/format.ts'
import type { FactKey, Line } from '../../calc/types.ts'
import { lineKindById } from '../../reference/line-kinds.ts'
import { Part, SheetCautions, SheetFoot, SheetHead } from './frame.tsx'
import { lay } from './lay.tsx'

/** Lays out a card to fill in by pencil: a row a step, boxes to tick, who gave leave, who took the adapter out. */
export function layTrialCard(line: Line, steps: readonly string[], express: Express): () => void {
  return untracked(() => lay(<TrialCard line={line} steps={steps} express={express} />))
}

const CAUTIONS = ['trial-authority', 'power-off', 'trial-not-for-flight', 'no-trial']
/** Rows without a value, for what is at hand. */
const FREE_ROWS = 3

type Given = { readonly line: Line; readonly steps: readonly string[]; readonly express: Express }

function TrialCard({ line, steps, express }: Given) {
  const kind = lineKindById(line.facts.lineKind?.text ?? '')
  const refused = line.gate === 'barred' || (kind?.barredWhy ?? kind?.noTrialWhy) !== undefined
  return (
    <>
      <SheetHead title={`Trial card${line.name === '' ? '' : `: ${line.name}`}`}>
        <p>
          Line: <strong>{kind?.name ?? 'not named'}</strong>. Noise frequency {known(line, 'noiseHz', express)}, needed{' '}
          {known(line, 'neededDb', express)}.
        </p>
      </SheetHead>
      {refused ? (
        <p>No trial on this line. {kind?.barredWhy ?? kind?.noTrialWhy ?? ''}</p>
      ) : (
        <Card line={line} steps={steps} express={express} />
      )}
      <SheetCautions ids={CAUTIONS} />
      <SheetFoot />
    </>
  )
}

const known = (line: Line, fact: FactKey, express: Express): string =>
  resolveFact(line, fact, express)?.text ?? '________'

function Card({ line, steps, express }: Given) {
  const offered =
    line.gate === 'clear' ? offeredOn(line, express).map((farads) => printText(farads, 'capacitance')) : []
  const parts = steps.length > 0 ? steps : ['bare', 'empty', ...offered, 'empty', 'bare']
  const end = parts.length - 2
  const rows = [...parts.slice(0, end), ...Array.from({ length: FREE_ROWS }, () => ''), ...parts.slice(end)]
  return (
    <>
      <p class="sign">
        <span>Aircraft, connector and contact</span>
        <span>Leave given by</span>
        <span>Reading in (unit, bandwidth)</span>
      </p>
      <Part title="Step by step: power off, discharged and measured dead before each change">
        <table class="pencil">
          <thead>
            <tr>
              {['Step', 'Time', 'Noise', 'Reading', 'Signal', 'Again'].map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((part, index) => (
              // rows are only ever printed
              <tr key={`${index} ${part}`}>
                <td>{part === 'empty' ? 'empty adapter' : part}</td>
                <td />
                <td>☐ gone ☐ less ☐ same ☐ more</td>
                <td />
                <td>{part === 'bare' ? '' : '☐ good ☐ degraded'}</td>
                <td>{part === 'bare' ? '' : '☐ agreed ☐ differed'}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p>
          Bare runs that differ, or an empty adapter that changes anything, void the trial: begin again. Adapter leads:
          ______ cm. Each on ☐ one wire to chassis ☐ each wire to chassis ☐ between the wires.
        </p>
      </Part>
      <Part title="Removed and recorded">
        <p>☐ Every adapter counted in ☐ plugs mated ☐ breakers and collars ☐ loads ☐ function tested ☐ inspected</p>
        <p class="sign">
          <span>Removed by</span>
          <span>Date and time</span>
          <span>Recorded in</span>
        </p>
      </Part>
    </>
  )
}
