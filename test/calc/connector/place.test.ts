/** Where the parts of a contact go, said for each circuit. */
import { expect, it } from 'vitest'
import { placeWords, reachOf } from '../../../src/calc/connector/place.ts'
import type { Topology } from '../../../src/calc/types.ts'
import { contactOf, lineOf } from '../../support/decided-contact.ts'

const words = (topology: Topology, capacitanceF = 1e-9) =>
  placeWords(contactOf('1', {}, { topology, capacitanceF }), undefined)

it.each([
  ['C', 'in this connector: capacitor to the plate'],
  ['L', 'in this connector: inductor in the line'],
  ['LC', 'in this connector: capacitor to the plate and inductor on the side the noise comes from'],
  ['CL', 'in this connector: capacitor to the plate and inductor on the side away from the noise'],
  ['PI', 'in this connector: capacitor to the plate and inductor in the line'],
  ['T', 'in this connector: capacitor to the plate and inductor in the line'],
] as const)('%s', (topology, said) => {
  expect(words(topology)).toBe(said)
})

it('asks for a place on the board where a capacitor is larger than a contact usually takes', () => {
  expect(words('C', 220e-9)).toContain('more than a contact usually takes')
  expect(words('L', 220e-9)).not.toContain('more than a contact')
})

it('of a line of no kind the reach is what was entered, and of one of which nothing was entered it is not known', () => {
  expect(reachOf(lineOf('l', {}))).toBeUndefined()
  expect(reachOf(lineOf('l', { busMaxV: '33', busMinV: '-2' }))).toMatchObject({ highV: 33, lowV: -2 })
})
