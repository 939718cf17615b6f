/** The windows and ladders of a sheet, each once however many contacts share it, two beside each other. */
import type { SheetBody } from '../../calc/connector/sheet/body.ts'
import type { SheetWindow } from '../../calc/connector/sheet/grounds.ts'
import { capital } from '../../calc/verdict.ts'
import { PictureView } from '../parts/picture.tsx'
import { StripKey } from '../parts/strip.tsx'
import { KnownWidth } from '../parts/width.ts'
import { AddressCode } from './address-code.tsx'
import { onContacts } from './connector-table.tsx'
import { Part } from './frame.tsx'
import { SHEET_PX } from './lay.tsx'

const GAP_PX = 20
const HALF_PX = (SHEET_PX - GAP_PX) / 2

/** `addressOf`: what brings a window back in the app, with all it rests on. */
type Given = { readonly body: SheetBody; readonly addressOf: (window: SheetWindow) => string }

export function Windows({ body: { grounds, rows }, addressOf }: Given) {
  const { windows } = grounds
  if (windows.length === 0) return null
  return (
    <Part title={`Windows (${windows.length}), each once`}>
      <StripKey pictures={windows.flatMap(({ picture }) => picture ?? [])} />
      <KnownWidth.Provider value={HALF_PX}>
        <div class="columns-2 windows">
          {windows.map((window) => (
            <section key={window.contacts[0]} class="window">
              <h3>
                {capital(onContacts({ contacts: window.contacts, rows }))}: {window.title}
              </h3>
              <p>{window.sentence}</p>
              {window.picture && <PictureView picture={window.picture} bounds={window.bounds} />}
              {window.build !== undefined && (
                <p>
                  <strong>To be built:</strong> {window.build}
                </p>
              )}
              <AddressCode address={addressOf(window)} />
            </section>
          ))}
        </div>
      </KnownWidth.Provider>
    </Part>
  )
}

export function Ladders({ body: { grounds, rows } }: Pick<Given, 'body'>) {
  const { ladders } = grounds
  if (ladders.length === 0) return null
  return (
    <Part title={`Voltage ladders (${ladders.length}), each once`}>
      <KnownWidth.Provider value={HALF_PX}>
        <div class="columns-2 windows">
          {ladders.map(({ contacts, sentence, picture }) => (
            <section key={contacts[0]} class="window">
              <h3>{capital(onContacts({ contacts, rows }))}</h3>
              <p>{sentence}</p>
              {picture && <PictureView picture={picture} />}
            </section>
          ))}
        </div>
      </KnownWidth.Provider>
    </Part>
  )
}
