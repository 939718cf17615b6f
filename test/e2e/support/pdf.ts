/** A printed sheet read back: its words page by page, and how large each is set. */
import { getDocumentProxy } from 'unpdf'

export type PdfWord = {
  readonly text: string
  readonly sizePt: number
  readonly xPt: number
  readonly yPt: number
  readonly widthPt: number
}
export type PdfPage = {
  readonly widthPt: number
  readonly heightPt: number
  readonly words: readonly PdfWord[]
  /** all its letters, without a space */
  readonly squeezed: string
}

/** Letters without the spaces, which a line break puts in or takes out; one letter for micro, however it was written. */
export const squeeze = (text: string): string => text.normalize('NFKC').replaceAll(/\s/g, '').replaceAll('μ', 'u')

export async function readPdf(file: Uint8Array): Promise<readonly PdfPage[]> {
  const pdf = await getDocumentProxy(new Uint8Array(file))
  const pages: PdfPage[] = []
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number)
    const { width, height } = page.getViewport({ scale: 1 })
    const { items } = await page.getTextContent()
    const words = items.flatMap((item): PdfWord[] => {
      if (!('str' in item) || item.str.trim() === '') return []
      const [, , c = 0, d = 0, e = 0, f = 0] = item.transform as readonly number[]
      return [{ text: item.str, sizePt: Math.hypot(c, d), xPt: e, yPt: f, widthPt: item.width }]
    })
    pages.push({
      widthPt: width,
      heightPt: height,
      words,
      squeezed: squeeze(words.map(({ text }) => text).join('')),
    })
  }
  await pdf.destroy()
  return pages
}
