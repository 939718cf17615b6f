/**
 * Random connectors, any point of their tolerances solved by its nodes: no yes about the shared bond is refuted.
 * Another seed: SEED=…; more of them: PLATES=5000.
 */
import { expect, it } from 'vitest'
import { bondOf } from '../../src/calc/connector/whole/bond.ts'
import { bondFindings, bondVerdict } from '../../src/calc/connector/whole/bond-findings.ts'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import { loadVolts } from '../support/plate-nodes.ts'
import { anyPoint, randomPlate } from '../support/random-plate.ts'
import { random } from '../support/seeded.ts'

const SEED = Number(process.env['SEED'] ?? 20_461)
const PLATES = Number(process.env['PLATES'] ?? 300)
const POINTS = 80

it(`of ${PLATES} random connectors no yes is refuted, seed ${SEED}`, { timeout: 300_000 }, () => {
  const rand = random(SEED)
  const refuted: string[] = []
  let [yes, received, certain] = [0, 0, 0]
  for (let round = 0; round < PLATES; round++) {
    const plate = randomPlate(rand, 2 + Math.floor(11 * rand()))
    const bond = atOnce(bondOf(plate.connector, plate.decided))
    const said = bondFindings(bond).find(({ id }) => id === 'bond-received')?.verdict
    if (said === 'ok') received++
    for (const row of bond.rows) if (!row.isBare && bondVerdict(row) === 'ok') yes++
    for (let k = 0; k < POINTS; k++) {
      const quiet = k % 4 === 3 ? Math.floor(rand() * plate.drawn.length) : -1
      const point = anyPoint(plate, rand, k % 2 === 0, quiet)
      const bare = loadVolts(
        point.map((one) => ({ ...one, volts: 1 })),
        undefined,
        plate.hz,
      )
      const volts = loadVolts(point, plate.bond, plate.hz)
      bond.rows.forEach((row, i) => {
        const lossDb = 20 * Math.log10((bare[i] as number) / (volts[i] as number))
        if (row.isBare) return
        if (quiet < 0 && lossDb < row.certainDb - 1e-6) certain++
        if (quiet < 0 && bondVerdict(row) === 'ok' && lossDb < row.neededDb - 1e-6)
          refuted.push(`contact ${row.id} of ${JSON.stringify(plate.drawn)}: ${lossDb} dB of ${row.neededDb}`)
        if (i === quiet && said === 'ok' && lossDb < row.neededDb - 1e-6)
          refuted.push(`contact ${row.id} quiet: ${-lossDb} dB received, ${-row.neededDb} stood`)
      })
    }
  }
  expect(refuted).toEqual([])
  expect(certain).toBe(0)
  expect(yes).toBeGreaterThan(PLATES / 2)
  expect(received).toBeGreaterThan(PLATES / 20)
})
