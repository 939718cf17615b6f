/** Files another package made and read: the same numbers, to 1e-9 of the largest of the matrix. */
import { describe, expect, it } from 'vitest'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { pairModes } from '../../../src/calc/touchstone/mixed-mode.ts'
import { readTouchstone } from '../../../src/calc/touchstone/read.ts'
import { chainAt, chainLossDb, entriesOf, impedanceAt } from '../../../src/calc/touchstone/two-port.ts'
import type { Network, Parameter } from '../../../src/calc/touchstone/types.ts'
import golden from '../../golden/touchstone.json' with { type: 'json' }

type Complex = readonly number[]
const WITHIN = 1e-9

function read(text: string, fileName: string): Network {
  const reading = atOnce(readTouchstone(text, { fileName }))
  if (!reading.ok) throw new Error(reading.message)
  return reading.network
}

/** Largest difference over the largest entry. */
function apart(ours: readonly Complex[], theirs: readonly Complex[]): number {
  const largest = Math.max(...theirs.map(([re = 0, im = 0]) => Math.hypot(re, im)))
  return (
    Math.max(
      ...theirs.map(([re = 0, im = 0], i) =>
        Math.hypot((ours[i]?.[0] ?? Number.NaN) - re, (ours[i]?.[1] ?? Number.NaN) - im),
      ),
    ) / largest
  )
}

const matrixAt = ({ re, im, portCount }: Network, k: number): readonly Complex[] =>
  Array.from({ length: portCount ** 2 }, (_, i) => [
    re[k * portCount ** 2 + i] as number,
    im[k * portCount ** 2 + i] as number,
  ])

describe.each(golden.rows)('$id', (row) => {
  const network = read(row.text, row.file)

  it('reads frequencies, reference and matrices', () => {
    expect(network.parameter).toBe('S')
    expect(network.referenceOhm[0]).toBe(row.referenceOhm)
    expect(network.hz.length).toBe(row.hz.length)
    row.hz.forEach((hz, k) => {
      expect(Math.abs((network.hz[k] as number) / hz - 1)).toBeLessThan(WITHIN)
    })
    row.s.forEach((matrix, k) => {
      expect(apart(matrixAt(network, k), matrix)).toBeLessThan(WITHIN)
    })
  })

  if (network.portCount === 1)
    it('gives its impedance', () => {
      row.z?.forEach((matrix, k) => {
        expect(apart([impedanceAt(network, k)], matrix)).toBeLessThan(WITHIN)
      })
    })

  if (network.portCount === 2) {
    it.each(['Z', 'Y', 'H'] as const)('turned into %s', (parameter: Parameter) => {
      const theirs = { Z: row.z, Y: row.y, H: row.h, S: row.s, G: undefined }[parameter]
      theirs?.forEach((matrix, k) => {
        expect(apart(entriesOf(chainAt(network, k), parameter, network.referenceOhm), matrix)).toBeLessThan(WITHIN)
      })
    })

    it('between other sources and loads', () => {
      for (const { source, load, db } of row.loss ?? [])
        db.forEach((loss, k) => {
          const ours = chainLossDb(chainAt(network, k), source as [number, number], load as [number, number])
          expect(Math.abs(ours - loss)).toBeLessThan(WITHIN)
        })
    })
  }

  if (network.portCount === 4)
    it('as the modes of two pairs', () => {
      const modes = pairModes(network, { near: [1, 2], far: [3, 4] })
      if (!modes.ok) throw new Error(modes.message)
      // rows of the package: D near, D far, C near, C far
      row.mixed?.forEach((matrix, k) => {
        const at = (i: number, j: number) => matrix[4 * i + j] as Complex
        expect(apart(matrixAt(modes.differential, k), [at(0, 0), at(0, 1), at(1, 0), at(1, 1)])).toBeLessThan(WITHIN)
        expect(apart(matrixAt(modes.common, k), [at(2, 2), at(2, 3), at(3, 2), at(3, 3)])).toBeLessThan(WITHIN)
      })
    })
})
