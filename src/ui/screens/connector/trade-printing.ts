/** Which sheet of a connector a printer gets: its own, unless the supplier's copy was asked for. */
import { useEffect, useState } from 'preact/hooks'
import type { SheetBody } from '../../../calc/connector/sheet/body.ts'
import { guide } from '../../../state/guide-content.ts'
import { supplierCopy } from '../../../state/supplier-copy.ts'
import { windowHash } from '../../../state/window-hash.ts'
import type { Complaint } from '../../../store/complaint.ts'
import { offerSheet, printNow } from '../../shell/offered-sheet.ts'

export type Copy = 'own' | 'supplier'

type Given = { readonly complaint: Complaint; readonly body: SheetBody }

/** Offers the sheet for as long as the screen is shown; gives what prints one of the two. */
export function usePrinting({ complaint, body }: Given): (copy: Copy) => void {
  const [asked, setAsked] = useState<Copy | undefined>(undefined)
  useEffect(
    () => offerSheet(import('../../paper/connector-sheet.tsx').then((paper) => () => lay(paper, asked ?? 'own'))),
    [complaint, body, asked],
  )
  useEffect(() => {
    if (asked === undefined) return
    // the copy stays the one that is printed until the browser says it is done: some do not wait here
    const done = () => setAsked(undefined)
    addEventListener('afterprint', done, { once: true })
    void printNow()
    return () => removeEventListener('afterprint', done)
  }, [asked])
  const lay = ({ layConnectorSheet }: typeof import('../../paper/connector-sheet.tsx'), copy: Copy) => {
    const addressOf = (window: Parameters<typeof windowHash>[0]) =>
      new URL(windowHash(window, body.connector), document.baseURI).href
    return copy === 'own'
      ? layConnectorSheet({ body, addressOf, story: { complaint, guide: guide.peek() } })
      : layConnectorSheet({ body: supplierCopy(body, complaint).body, addressOf })
  }
  return setAsked
}
