import type { ComponentChild } from 'preact'
import { useState } from 'preact/hooks'
import type { SheetBody } from '../../../calc/connector/sheet/body.ts'
import { contactList } from '../../../calc/connector/sheet/contact-list.ts'
import type { Connector } from '../../../calc/connector/types.ts'
import { fileName, type OwnFile } from '../../../state/files.ts'
import { SheetFace } from '../../paper/connector-face.tsx'
import { FileButtons } from '../../parts/file-buttons.tsx'
import { PictureView } from '../../parts/picture.tsx'
import { type PictureFile, pictureFile, pngOf } from '../../parts/picture-file.tsx'
import { WindowCode } from './window-code.tsx'

type Given = { readonly connector: Connector; readonly body: SheetBody }

type Choice = { readonly name: string; readonly view: () => ComponentChild }

/** A drawing of the sheet as a file of its own, chosen from a list. */
export function Pictures({ connector, body }: Given) {
  const choices = choicesOf(body)
  const [at, setAt] = useState(0)
  const chosen = choices[at] ?? choices[0]
  if (chosen === undefined) return null
  const file = (): PictureFile => {
    const drawn = pictureFile(chosen.view())
    if (drawn === undefined) throw new Error('There is nothing drawn here to save.')
    return drawn
  }
  const name = [connector.name, chosen.name]
  const svg = (): OwnFile => ({ name: fileName(name, 'svg'), type: 'image/svg+xml', content: file().svg })
  const png = async (): Promise<OwnFile> => ({
    name: fileName(name, 'png'),
    type: 'image/png',
    content: await pngOf(file()),
  })
  return (
    <>
      <label class="pick">
        <span>Which drawing</span>
        <select value={String(at)} onChange={(event) => setAt(Number(event.currentTarget.value))}>
          {choices.map((choice, i) => (
            <option key={choice.name} value={String(i)}>
              {choice.name}
            </option>
          ))}
        </select>
      </label>
      {chosen.view()}
      <div class="actions">
        <FileButtons what="as SVG" title={chosen.name} type="image/svg+xml" make={svg} />
        <FileButtons what="as PNG" title={chosen.name} type="image/png" make={png} />
      </div>
    </>
  )
}

function choicesOf(body: SheetBody): readonly Choice[] {
  const { connector, grounds, rows } = body
  const order = rows.map(({ id }) => id)
  const named = (what: string, contacts: readonly string[]) => `${what}, contact ${contactList(contacts, order)}`
  return [
    { name: 'Face', view: () => <SheetFace body={body} /> },
    ...grounds.windows.flatMap(({ contacts, picture, bounds }): Choice[] =>
      picture === undefined
        ? []
        : [
            {
              name: named('Window', contacts),
              view: () => (
                <PictureView picture={{ ...picture, title: named(picture.title, contacts) }} bounds={bounds} />
              ),
            },
          ],
    ),
    ...grounds.windows.map((window): Choice => {
      return {
        name: named('Code', window.contacts),
        view: () => <WindowCode connector={connector} window={window} />,
      }
    }),
    ...grounds.ladders.flatMap(({ contacts, picture }): Choice[] =>
      picture === undefined
        ? []
        : [
            {
              name: named('Voltage ladder', contacts),
              view: () => <PictureView picture={{ ...picture, title: named(picture.title, contacts) }} />,
            },
          ],
    ),
  ]
}
