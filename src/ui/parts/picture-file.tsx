/** A drawing as a file of its own: everything that a stylesheet says of it stands in it, in the colours of paper. */
import { type ComponentChild, render } from 'preact'
import { textWidth } from './axis.ts'
import { KnownWidth } from './width.ts'
import './picture-file.css'

export type PictureFile = { readonly svg: string; readonly widthPx: number; readonly heightPx: number }

const NAMESPACE = 'http://www.w3.org/2000/svg'
/** Wide enough for a report, and for the labels of a strip. */
const WIDTH_PX = 720
const EDGE_PX = 16
const TITLE_PX = 26
const ROW_PX = 20
const SAMPLE_PX = 26
const LETTER_PX = 13

/** What a stylesheet may say of a shape or a letter, by the name it has as an attribute too. */
const LOOKS = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'paint-order',
  'text-anchor',
  'font-size',
  'font-weight',
] as const

/** Draws a picture out of sight, and gives it with its title, its legend and its faults as one file. */
export function pictureFile(view: ComponentChild): PictureFile | undefined {
  const host = document.createElement('div')
  host.className = 'for-file'
  // beside the body: what a theme says of every letter of the page does not reach it
  document.documentElement.append(host)
  try {
    render(<KnownWidth.Provider value={WIDTH_PX}>{view}</KnownWidth.Provider>, host)
    return fileOf(host)
  } finally {
    render(null, host)
    host.remove()
  }
}

function fileOf(host: HTMLElement): PictureFile | undefined {
  const drawing = host.querySelector<SVGSVGElement>('svg[role="img"]')
  if (drawing === null) return undefined
  const [, , ownWidth = WIDTH_PX, ownHeight = WIDTH_PX] = boxOf(drawing)
  const scale = WIDTH_PX / ownWidth
  const root = document.createElementNS(NAMESPACE, 'svg')
  const title = host.querySelector('figcaption')?.textContent ?? drawing.getAttribute('aria-label') ?? ''
  let atPx = EDGE_PX
  const put = (text: string, xPx: number, bold: boolean) => root.append(words(text, xPx, atPx + LETTER_PX, bold))
  if (title !== '') {
    put(title, EDGE_PX, true)
    atPx += TITLE_PX
  }
  root.append(placed(drawing, { xPx: EDGE_PX, yPx: atPx, widthPx: WIDTH_PX, heightPx: ownHeight * scale }))
  atPx += ownHeight * scale + EDGE_PX
  let xPx = EDGE_PX
  for (const item of host.querySelectorAll('.legend > li')) {
    const said = item.textContent ?? ''
    const wide = SAMPLE_PX + textWidth(said, LETTER_PX) + EDGE_PX
    if (xPx > EDGE_PX && xPx + wide > WIDTH_PX + EDGE_PX) {
      xPx = EDGE_PX
      atPx += ROW_PX
    }
    const sample = item.querySelector('svg')
    if (sample) root.append(placed(sample, { xPx, yPx: atPx + 1, widthPx: SAMPLE_PX - 6, heightPx: 14 }))
    put(said, xPx + SAMPLE_PX, false)
    xPx += wide
  }
  if (xPx > EDGE_PX) atPx += ROW_PX
  for (const item of host.querySelectorAll('.findings > li')) {
    for (const line of broken(item.textContent ?? '')) {
      put(line, EDGE_PX, true)
      atPx += ROW_PX
    }
  }
  const [widthPx, heightPx] = [WIDTH_PX + 2 * EDGE_PX, Math.ceil(atPx + EDGE_PX / 2)]
  const size = { viewBox: `0 0 ${widthPx} ${heightPx}`, width: widthPx, height: heightPx, role: 'img' }
  for (const [name, value] of Object.entries(size)) root.setAttribute(name, String(value))
  root.setAttribute('font-family', 'B612, Arial, Helvetica, sans-serif')
  const ground = document.createElementNS(NAMESPACE, 'path')
  ground.setAttribute('d', `M0 0h${widthPx}v${heightPx}h${-widthPx}z`)
  ground.setAttribute('fill', '#fff')
  const name = document.createElementNS(NAMESPACE, 'title')
  name.textContent = title
  root.prepend(name, ground)
  return { svg: new XMLSerializer().serializeToString(root), widthPx, heightPx }
}

const boxOf = (drawing: SVGSVGElement): readonly number[] =>
  (drawing.getAttribute('viewBox') ?? '').split(/[\s,]+/).map(Number)

type Place = { readonly xPx: number; readonly yPx: number; readonly widthPx: number; readonly heightPx: number }

/** A copy with its looks written into it, at its place. */
function placed(drawing: SVGSVGElement, { xPx, yPx, widthPx, heightPx }: Place): SVGElement {
  const copy = drawing.cloneNode(true) as SVGSVGElement
  const parts = [...drawing.querySelectorAll<SVGElement>('*')]
  const copies = [...copy.querySelectorAll<SVGElement>('*')]
  parts.forEach((part, i) => {
    const own = copies[i] as SVGElement
    writeLooks(part, own)
  })
  for (const own of [copy, ...copies])
    for (const name of own.getAttributeNames())
      if (/^(class|style|role|tabindex|focusable|aria-.*|data-.*)$/.test(name)) own.removeAttribute(name)
  const place = { x: xPx, y: yPx, width: widthPx, height: heightPx, overflow: 'visible' }
  for (const [name, value] of Object.entries(place)) copy.setAttribute(name, String(value))
  return copy
}

/** What is as it is anyway is left out; a hatching stays the one it names. */
function writeLooks(from: SVGElement, to: SVGElement): void {
  const looks = getComputedStyle(from)
  const isText = from instanceof SVGTextElement || from instanceof SVGTSpanElement
  for (const name of LOOKS) {
    const said = looks.getPropertyValue(name)
    if (said === '' || said.includes('url(') || (name.startsWith('font') && !isText)) continue
    if (to.getAttribute(name)?.includes('url(')) continue
    if (USUAL[name] === said) to.removeAttribute(name)
    else to.setAttribute(name, said)
  }
}

const USUAL: Readonly<Partial<Record<(typeof LOOKS)[number], string>>> = {
  'fill-opacity': '1',
  stroke: 'none',
  'stroke-dasharray': 'none',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  opacity: '1',
  'paint-order': 'normal',
  'text-anchor': 'start',
  'font-weight': '400',
}

function words(text: string, xPx: number, yPx: number, bold: boolean): SVGElement {
  const element = document.createElementNS(NAMESPACE, 'text')
  const looks = { x: xPx, y: yPx, 'font-size': LETTER_PX, ...(bold ? { 'font-weight': 700 } : {}) }
  for (const [name, value] of Object.entries(looks)) element.setAttribute(name, String(value))
  element.textContent = text
  return element
}

/** A sentence in lines that fit. */
function broken(text: string): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`
    if (lines.length > 0 && textWidth(longer, LETTER_PX) <= WIDTH_PX) lines[lines.length - 1] = longer
    else lines.push(word)
  }
  return lines
}

/** Pixels of a picture for each of its own: fine enough for paper. */
const FINENESS = 3

/** The same drawing as pixels. Throws a sentence where this browser cannot. */
export async function pngOf({ svg, widthPx, heightPx }: PictureFile): Promise<Blob> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
  try {
    const image = new Image(widthPx, heightPx)
    image.src = url
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = widthPx * FINENESS
    canvas.height = heightPx * FINENESS
    const pen = canvas.getContext('2d')
    if (pen === null) throw new Error('This browser draws no pixels; save the picture as SVG.')
    pen.drawImage(image, 0, 0, canvas.width, canvas.height)
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'))
    if (blob === null) throw new Error('This browser made no picture of it; save it as SVG.')
    return blob
  } finally {
    URL.revokeObjectURL(url)
  }
}
