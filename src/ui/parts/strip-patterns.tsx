import type { Zone } from './strip-shape.ts'

/** Zones that are told apart by their hatching, and the pattern of each. */
export const HATCHED: Readonly<Partial<Record<Zone, string>>> = {
  small: 'small',
  hole: 'small',
  care: 'care',
  excluded: 'cross',
}

/** Slanted lines: too small. Dots: with care. Crossed lines: excluded. What is allowed is plain. */
export function Patterns({ id }: { readonly id: string }) {
  const size = { patternUnits: 'userSpaceOnUse', width: 6, height: 6 } as const
  return (
    <defs>
      <pattern id={`${id}small`} {...size} patternTransform="rotate(45)">
        <path class="hatch" d="M0 0V6" />
      </pattern>
      <pattern id={`${id}care`} {...size}>
        <circle class="dot" cx="1.5" cy="1.5" r="1.3" />
        <circle class="dot" cx="4.5" cy="4.5" r="1.3" />
      </pattern>
      <pattern id={`${id}cross`} {...size} patternTransform="rotate(45)">
        <path class="hatch" d="M0 0V6M0 0H6" />
      </pattern>
    </defs>
  )
}
