/** Colours of a page as they are drawn, for measures that run in it. */
import type { JSHandle, Page } from 'playwright-core'

/** Red, green and blue of 255; how opaque, of 1. */
type Rgba = readonly [number, number, number, number]

/** Made in the page: it can name nothing from outside. */
function colourTools() {
  const pixel = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true })
  if (pixel === null) throw new Error('No canvas to read colours with.')
  const rgba = (colour: string): Rgba => {
    pixel.clearRect(0, 0, 1, 1)
    pixel.fillStyle = colour
    pixel.fillRect(0, 0, 1, 1)
    const [red = 0, green = 0, blue = 0, alpha = 0] = pixel.getImageData(0, 0, 1, 1).data
    return [red, green, blue, alpha / 255]
  }
  const over = (top: Rgba, below: Rgba, opacity = 1): Rgba => {
    const alpha = top[3] * opacity
    const mix = (at: 0 | 1 | 2) => top[at] * alpha + below[at] * (1 - alpha)
    return [mix(0), mix(1), mix(2), 1]
  }
  const luminance = ([red, green, blue]: Rgba): number => {
    const part = (value: number) => {
      const share = value / 255
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
    }
    return 0.2126 * part(red) + 0.7152 * part(green) + 0.0722 * part(blue)
  }
  /** That of WCAG 2, from 1 to 21. */
  const contrast = (a: Rgba, b: Rgba): number => {
    const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x)
    return (light + 0.05) / (dark + 0.05)
  }
  const around = (one: Element): Element[] => {
    const found: Element[] = []
    for (let at: Element | null = one; at !== null; at = at.parentElement) found.push(at)
    return found
  }
  /** The nearest ground that is not clear, with what lies half clear over it. */
  const groundOf = (one: Element): Rgba => {
    const layers = around(one).map((each) => rgba(getComputedStyle(each).backgroundColor))
    const solid = layers.findIndex(([, , , alpha]) => alpha === 1)
    const base: Rgba = solid < 0 ? [255, 255, 255, 1] : (layers[solid] ?? [255, 255, 255, 1])
    return layers.slice(0, Math.max(0, solid)).reduceRight((below, layer) => over(layer, below), base)
  }
  /** With every opacity above it. */
  const opacityOf = (one: Element): number =>
    around(one).reduce((all, each) => all * Number(getComputedStyle(each).opacity), 1)
  return { rgba, over, contrast, groundOf, opacityOf }
}

type ColourTools = ReturnType<typeof colourTools>

/** Runs a measure that is given the tools for colours in the page. */
export async function withColours<T>(page: Page, measure: (tools: JSHandle<ColourTools>) => Promise<T>): Promise<T> {
  const tools = await page.evaluateHandle(colourTools)
  try {
    return await measure(tools)
  } finally {
    await tools.dispose()
  }
}
