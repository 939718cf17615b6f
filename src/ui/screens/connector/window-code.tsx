import type { SheetWindow } from '../../../calc/connector/sheet/grounds.ts'
import type { Connector } from '../../../calc/connector/types.ts'
import { windowHash } from '../../../state/window-hash.ts'
import { AddressCode } from '../../paper/address-code.tsx'
import './code.css'

type Given = {
  readonly connector: Connector
  readonly window: Pick<SheetWindow, 'line' | 'decided' | 'chosenH'>
}

/** The code that brings another device to the window of a contact, with all its answer rests on. */
export function WindowCode({ connector, window }: Given) {
  return (
    <div class="on-screen">
      <AddressCode address={new URL(windowHash(window, connector), document.baseURI).href} />
    </div>
  )
}
