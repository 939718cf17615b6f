/**
 * The way out where the storage cannot be used as it is.
 *
 * `rescueFile()`   everything that can be read, as a file that any copy of the app can bring in; or a sentence
 */
import { writeFile } from '../store/exchange/file.ts'
import { readWhatCanBeRead } from '../store/exchange/rescue.ts'
import { asStoreError } from '../store/trouble.ts'

export type RescueFile =
  | { readonly ok: true; readonly name: string; readonly text: string; readonly words: string }
  | { readonly ok: false; readonly message: string }

const NAMES: Readonly<Record<string, string>> = {
  complaints: 'titles and notes',
  lines: 'lines',
  connectors: 'connectors',
}

export async function rescueFile(): Promise<RescueFile> {
  try {
    const { wholes, absent } = await readWhatCanBeRead()
    if (wholes.length === 0) return { ok: false, message: 'No complaint can be read on this device.' }
    const count = wholes.length === 1 ? 'one complaint' : `${wholes.length} complaints`
    const lost = absent.length === 0 ? '' : ` Not found on this device: ${absent.map((one) => NAMES[one]).join(', ')}.`
    const words = `It holds ${count}.${lost} Photos, measured traces, what is under way and the answers to the safety questions are not in it.`
    return { ok: true, name: 'rescued.stillpin.json', text: writeFile(wholes), words }
  } catch (error) {
    return { ok: false, message: asStoreError(error).message }
  }
}
