// @vitest-environment happy-dom
/** Parts fitted to a measured filter, and what is said of those that are not taken over. */
import { signal } from '@preact/signals'
import { expect, it, vi } from 'vitest'
import type { Fitted } from '../../src/calc/touchstone/fit.ts'
import type { Network } from '../../src/calc/touchstone/types.ts'
import { scratchDesk } from '../../src/state/desk.ts'
import { newLine } from '../../src/store/line.ts'
import { Parts } from '../../src/ui/screens/trace/fitted-parts.tsx'
import { by, show, tap } from './support.ts'

const PARTS = { topology: 'C', capacitanceF: 47e-9, esrOhm: 0.02, eslH: 5e-10 } as const
const FITTED: Fitted = { parts: PARTS, residualFrac: 0.001, untold: ['eslH'] }

vi.mock('../../src/state/work.ts', () => ({ runInWorker: async () => [FITTED] }))

const hz = Float64Array.of(1e6)
const NETWORK: Network = { parameter: 'Z', portCount: 1, hz, re: hz, im: hz, referenceOhm: [50] }
const user = { by: 'user' } as const

const ESL = { eslH: { text: '1n', origin: user } }
const CAPACITOR = { ...ESL, esrOhm: { text: '10m', origin: user } }

it.each([
  ['nothing of a part on which nothing stands', [], {}, undefined],
  ['a text that stays', ['eslH'], CAPACITOR, 'On the line stands ESL 1n: it stays, so make sure it is of this filter.'],
  [
    'texts that stay',
    ['esrOhm', 'eslH'],
    CAPACITOR,
    'On the line stand ESR 10m and ESL 1n: they stay, so make sure they are of this filter.',
  ],
] as const)('says %s', async (_what, untold, facts, words) => {
  Object.assign(FITTED, { untold })
  const desk = { ...scratchDesk, line: signal({ ...newLine('line'), facts }) }
  const place = show(<Parts desk={desk} network={NETWORK} />)
  await tap(by('button', 'Fit C, ESR, ESL and L'))
  expect(place.textContent).toContain('C 47')
  if (words === undefined) expect(place.textContent).not.toContain('On the line')
  else expect(place.textContent).toContain(words)
})
