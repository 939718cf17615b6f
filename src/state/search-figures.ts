/** Figures in what is searched for: "10 nF on CAN at 500 kbit/s" already says what to fill in. */

export type SoughtFigures = {
  /** the words without the figures */
  readonly words: string
  /** texts for the fields of a check, as they would be typed */
  readonly texts: Readonly<Record<'capacitanceF' | 'bitRateHz', string | undefined>>
}

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`
const FARADS = new RegExp(String.raw`(?<![\w.,])${NUMBER}\s?([pnuµμ])(?:F|f)?(?![\p{L}\d])`, 'u')
const RATE = new RegExp(
  String.raw`(?<![\w.,])${NUMBER}\s?([kKM])?(?:bit\/s|bits\/s|b\/s|bps|bit|bd|Bd|baud)(?![\p{L}])`,
  'u',
)

/** Takes a capacitance and a bit rate out of a text; everything else stays words. */
export function figuresIn(text: string): SoughtFigures {
  const farads = FARADS.exec(text)
  const rest = farads === null ? text : text.replace(farads[0], ' ')
  const rate = RATE.exec(rest)
  const words = rate === null ? rest : rest.replace(rate[0], ' ')
  return {
    words: words.replace(/\s+/g, ' ').trim(),
    texts: {
      capacitanceF: farads === null ? undefined : `${farads[1]} ${farads[2]}F`,
      bitRateHz: rate === null ? undefined : `${rate[1]} ${(rate[2] ?? '').replace('K', 'k')}bit/s`,
    },
  }
}
