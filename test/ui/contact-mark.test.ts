/** Where the sign of a contact stands, against the rules of SVG 2 for paths (chapter 9.3): what moves, what only grows, what stays. */
import { expect, test } from 'vitest'
import { placedPath } from '../../src/ui/parts/contact-mark.tsx'

test.each([
  ['points move and grow', 'M-.2 .02L-.05 .18L.22 -.17', 'M0.9 2.01L0.975 2.09L1.11 1.915'],
  [
    'an arc to a point: its radii grow, its flags stay, its end moves',
    'M0 -.1A.13 .26 30 1 0 .03 .04z',
    'M1 1.95A0.065 0.13 30 1 0 1.015 2.02z',
  ],
  [
    'an arc by so much: its end grows and does not move',
    'M-.4 0a.4 .4 0 1 0 .8 0a.4 .4 0 1 0 -.8 0z',
    'M0.8 2a0.2 0.2 0 1 0 0.4 0a0.2 0.2 0 1 0 -0.4 0z',
  ],
])('%s', (_, path, placed) => {
  expect(placedPath(path, 1, 2, 0.5)).toBe(placed)
})
