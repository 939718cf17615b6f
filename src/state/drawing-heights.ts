/** How high each drawing is on its sheet, and how long its title: a page is laid out before its drawing is fetched. */
import { DRAWINGS } from '../guide/drawings/drawings.ts'

type Height = readonly [units: number, titleLetters: number]

export const built: Readonly<Record<string, Height>> = Object.fromEntries(
  DRAWINGS.map(({ id, height, title }) => [id, [height, title.length] as const]),
)
