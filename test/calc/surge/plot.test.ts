/** The curve of a surge over time keeps its highest point, and enough others to be read. */
import { expect, it } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { run, si } from '../../support/run-check.ts'

it('draws enough points, and the peak of the answer is one of them', () => {
  const answer = run(surgeCheck, { level: '4', breakdownV: '34.4', dynamicOhm: '0.3323263', ratedPulseW: '1500' })
  const plot = answer.pictures.find((picture) => picture.is === 'plot')
  const load = plot?.is === 'plot' ? plot.curves.find(({ id }) => id === 'load') : undefined
  expect(load?.x.length).toBeGreaterThan(50)
  // what stands on the suppressor is drawn beside it, where there is one
  const drawn = (texts: Readonly<Record<string, string>>) =>
    run(surgeCheck, { level: '4', ...texts }).pictures.flatMap((one) =>
      one.is === 'plot' ? one.curves.filter(({ id }) => id === 'suppressor').map(({ label }) => label) : [],
    )
  expect(drawn({ breakdownV: '34.4', dynamicOhm: '0.3323263' })).toEqual(['suppressor'])
  expect(drawn({})).toEqual([])
  // drawn on a grid of its own, within a thousandth
  expect(Math.abs(Math.max(...(load?.y ?? [])) / (si(answer, 'loadPeakV') ?? 0) - 1)).toBeLessThan(1e-3)
})
