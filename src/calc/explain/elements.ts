/** What is missing of an inductor, bead or choke, in a sentence each. */
import type { ElementLack } from '../network/lacks.ts'

/** The fact that is missing, and what can be said without it. */
export function lackSentence(lack: ElementLack): string {
  switch (lack) {
    case 'line-current':
      return 'How much inductance is left at the line current is not known: enter the line current, or the connected load.'
    case 'saturation-share':
      return 'A saturation current says nothing without its share: enter how much of the inductance is lost there (often 20 or 30 %).'
    case 'beyond-saturation':
      return 'The line current is above the saturation current: nothing is known of the inductance there. Enter the share lost at the line current itself, or take a larger part.'
    case 'bead-frequencies':
      return 'A bead needs three frequencies or more at which its curve is read: enter them, rising.'
    case 'bead-resistance':
      return 'Enter the resistance R of the bead at each of its frequencies.'
    case 'bead-reactance':
      return 'Enter the reactance X of the bead, or its |Z|, at each of its frequencies.'
    case 'bead-range':
      return 'A noise frequency lies outside those at which the bead is known: it earns nothing there. Enter R and X of a frequency on either side.'
    case 'bead-band':
      return 'The signal reaches above the last frequency at which the bead is known: enter R and X up to there.'
  }
}

/** The field that is missing first, and its fact as a sentence names it. */
export function lackField(lack: ElementLack): { readonly key: string; readonly name: string } {
  switch (lack) {
    case 'line-current':
      return { key: 'lineA', name: 'the line current' }
    case 'saturation-share':
      return { key: 'saturationFrac', name: 'the share of the inductance lost at the saturation current' }
    case 'beyond-saturation':
      return { key: 'saturationFrac', name: 'the share of the inductance lost at the line current' }
    case 'bead-frequencies':
      return { key: 'beadHz', name: 'three frequencies of the bead' }
    case 'bead-resistance':
      return { key: 'beadOhm', name: 'the resistance of the bead' }
    case 'bead-reactance':
      return { key: 'beadReactanceOhm', name: 'the reactance of the bead' }
    case 'bead-range':
      return { key: 'beadHz', name: 'the impedance of the bead on either side of the noise' }
    case 'bead-band':
      return { key: 'beadHz', name: 'the impedance of the bead up to the end of the signal’s band' }
  }
}
