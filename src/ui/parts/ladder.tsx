import type { RefObject } from 'preact'
import { useContext, useEffect } from 'preact/hooks'
import { COMING, usePartsDrawn } from './coming.tsx'
import { Icon } from './icon.tsx'
import {
  type LadderLayout,
  type LadderPicture,
  LINE_PX,
  layOutLadder,
  type PlacedRung,
  voltsText,
} from './ladder-shape.ts'
import { ScrollX } from './scroll-x.tsx'
import { enterNow, UseButton, UseValues } from './use-values.tsx'
import { usePictureId, useWidth } from './width.ts'

const RUNG_PX = 18
const LEADER_PX = 12

/** Volts on two rails: what comes, and what holds. A rung above what must hold it is thick, named and points at it. */
export function Ladder({ picture }: { readonly picture: LadderPicture }) {
  const { box, widthPx } = useWidth<HTMLElement>()
  // on a first screen the drawing is a turn's work by itself
  const hasTable = usePartsDrawn(1) === 1
  useTaps(box, picture)
  const gapPx = Math.min(110, widthPx * 0.15)
  const labelPx = (Math.min(widthPx, 640) - gapPx) / 2 - RUNG_PX - LEADER_PX
  const layout = layOutLadder(picture, Math.max(8, Math.floor(labelPx / 8)))
  const middlePx = Math.min(widthPx, 640) / 2
  const rails = { comes: middlePx - gapPx / 2, holds: middlePx + gapPx / 2 }
  return (
    <figure class="picture ladder" ref={box}>
      <figcaption>{picture.title}</figcaption>
      <svg viewBox={`0 0 ${widthPx} ${layout.heightPx}`} role="img" aria-label={spoken(picture)}>
        <text class="rail-name" x={rails.comes} y="14" text-anchor="end" font-size="13">
          what comes
        </text>
        <text class="rail-name" x={rails.holds} y="14" text-anchor="start" font-size="13">
          what holds
        </text>
        <path class="rail" d={`M${rails.comes} 22V${layout.heightPx}`} />
        <path class="rail" d={`M${rails.holds} 22V${layout.heightPx}`} />
        {layout.placed.map((placed) => (
          <Rung key={placed.rung.id} placed={placed} railPx={rails[placed.rung.side]} />
        ))}
        <Arrows layout={layout} rails={rails} />
      </svg>
      {picture.faults.length > 0 && (
        <ul class="findings">
          {picture.faults.map((fault) => (
            <li key={fault} class="finding fails">
              <Icon name="fails" />
              <span>{fault}</span>
            </li>
          ))}
        </ul>
      )}
      {hasTable ? <AsTable picture={picture} /> : COMING}
    </figure>
  )
}

/** A tap on a rung of the drawing enters its value; by keyboard the rows of its table do. */
function useTaps(box: RefObject<HTMLElement | null>, { rungs }: LadderPicture): void {
  const enter = useContext(UseValues)
  useEffect(() => {
    const figure = box.current
    if (figure === null || enter === undefined) return
    const tapped = ({ target }: MouseEvent) => {
      const id = target instanceof Element && target.closest('[data-rung]')?.getAttribute('data-rung')
      const use = rungs.find((rung) => rung.id === id)?.use
      if (use !== undefined) enterNow(enter, use)
    }
    figure.addEventListener('click', tapped)
    return () => figure.removeEventListener('click', tapped)
  }, [box, enter, rungs])
}

function Rung({ placed, railPx }: { readonly placed: PlacedRung; readonly railPx: number }) {
  const out = placed.rung.side === 'comes' ? -1 : 1
  const middlePx = (placed.highPx + placed.lowPx) / 2
  const textPx = railPx + out * (RUNG_PX + LEADER_PX + 2)
  const anchor = out < 0 ? 'end' : 'start'
  const firstPx = placed.labelPx - ((placed.lines.length + 1) * LINE_PX) / 2 + 12
  const ends = `M${railPx + out * RUNG_PX} ${middlePx}L${railPx + out * (RUNG_PX + LEADER_PX)} ${placed.labelPx}`
  return (
    <g
      class={placed.faulty ? `rung ${placed.rung.side} faulty` : `rung ${placed.rung.side}`}
      data-rung={placed.rung.use && placed.rung.id}
    >
      {placed.lowPx - placed.highPx > 2 && (
        <rect
          class="spread"
          x={out < 0 ? railPx - RUNG_PX : railPx}
          y={placed.highPx}
          width={RUNG_PX}
          height={placed.lowPx - placed.highPx}
        />
      )}
      <path class="tread" d={`M${railPx} ${placed.highPx}h${out * RUNG_PX}`} />
      {placed.lowPx - placed.highPx > 2 && <path class="tread" d={`M${railPx} ${placed.lowPx}h${out * RUNG_PX}`} />}
      <path class="leader" d={ends} />
      {placed.lines.map((line, index) => (
        <text key={line} x={textPx} y={firstPx + index * LINE_PX} text-anchor={anchor} font-size="13">
          {line}
        </text>
      ))}
      <text class="volts" x={textPx} y={firstPx + placed.lines.length * LINE_PX} text-anchor={anchor} font-size="13">
        {placed.volts}
      </text>
    </g>
  )
}

type Rails = { readonly comes: number; readonly holds: number }

function Arrows({ layout, rails }: { readonly layout: LadderLayout; readonly rails: Rails }) {
  const head = usePictureId()
  const faulty = layout.placed.filter((placed) => placed.faulty)
  if (faulty.length === 0) return null
  return (
    <>
      <defs>
        <marker id={head} viewBox="0 0 8 8" refX="7" refY="4" markerWidth="8" markerHeight="8" orient="auto">
          <path class="arrow-head" d="M0 0L8 4L0 8z" />
        </marker>
      </defs>
      {faulty.map((placed) => {
        const target = layout.placed.find((other) => other.rung.id === placed.rung.exceeds)
        if (!target) return null
        const back = placed.rung.side === 'comes' ? 1 : -1
        const fromPx = rails[placed.rung.side] + back * 4
        const toPx = rails[target.rung.side] - back * 4
        const path = `M${fromPx} ${placed.highPx}L${toPx} ${target.lowPx}`
        return <path key={placed.rung.id} class="arrow" d={path} marker-end={`url(#${head})`} />
      })}
    </>
  )
}

function AsTable({ picture }: { readonly picture: LadderPicture }) {
  const rungs = [...picture.rungs].sort((a, b) => b.maxV - a.maxV)
  const enter = useContext(UseValues)
  const isUsed = enter !== undefined && rungs.some((rung) => rung.use !== undefined)
  return (
    <details class="fold as-table">
      <summary>The ladder as a table</summary>
      <ScrollX label={`${picture.title}, as a table`}>
        <table>
          <thead>
            <tr>
              <th scope="col">Rung</th>
              <th scope="col">Side</th>
              <th scope="col">Volts</th>
              <th scope="col">Exceeds</th>
              {isUsed && (
                <th scope="col">
                  <span class="unseen">Enter</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {rungs.map((rung) => (
              <tr key={rung.id}>
                <th scope="row">{rung.label}</th>
                <td data-label="Side">{rung.side === 'comes' ? 'what comes' : 'what holds'}</td>
                <td data-label="Volts">{voltsText(rung)}</td>
                <td data-label="Exceeds">{rungs.find((other) => other.id === rung.exceeds)?.label ?? '–'}</td>
                {isUsed && (
                  <td class="use">{rung.use && <UseButton name={voltsText(rung)} use={rung.use} enter={enter} />}</td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </details>
  )
}

function spoken(picture: LadderPicture): string {
  const rails = (['comes', 'holds'] as const).map((side) => {
    const rungs = picture.rungs.filter((rung) => rung.side === side).sort((a, b) => b.maxV - a.maxV)
    return `What ${side}: ${rungs.map((rung) => `${rung.label} ${voltsText(rung)}`).join(', ') || 'nothing'}`
  })
  return [picture.title, ...rails, ...picture.faults].map((part) => part.replace(/\.$/, '')).join('. ')
}
