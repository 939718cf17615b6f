/** Marks made of a formula: a curve laid on a part of the sheet. */
import type { LineLook, Mark } from './types.ts'

/** Where on the sheet: left, top, width, height. */
export type Frame = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/** A curve over shares 0 to 1 across; `height`: 0 at the foot of the frame, 1 at its top, cut off there. */
export function curve(frame: Frame, height: (share: number) => number, look: LineLook = 'wire', steps = 80): Mark {
  const at = (i: number): readonly [number, number] => {
    const share = i / steps
    const up = Math.min(1, Math.max(0, height(share)))
    return [round(frame.x + share * frame.width), round(frame.y + (1 - up) * frame.height)]
  }
  const rest = Array.from({ length: steps - 1 }, (_, i) => at(i + 2))
  return { line: [at(0), at(1), ...rest], look }
}

/** The foot of a frame, as an axis. */
export const foot = ({ x, y, width, height }: Frame): Mark => ({
  line: [
    [x, y + height],
    [x + width, y + height],
  ],
})

const round = (value: number): number => Math.round(value * 10) / 10
