import { useRef, useState } from 'preact/hooks'
import { COLUMN_LABEL, COLUMNS } from '../../../calc/connector/pasted-columns.ts'
import type { PasteModel } from '../../../state/paste.ts'
import { readTableFile } from '../../../state/table-file.ts'

/** Where the table is put: pasted, typed, or from a file. */
export function PasteText({ model }: { readonly model: PasteModel }) {
  const [refused, setRefused] = useState<string | undefined>(undefined)
  const input = useRef<HTMLInputElement>(null)
  const open = async (file: File | undefined) => {
    if (file === undefined) return
    const read = await readTableFile(file)
    setRefused(read.ok ? undefined : read.message)
    if (read.ok) model.type(read.text)
    // the same file chosen again is read again
    if (input.current) input.current.value = ''
  }
  return (
    <section aria-label="The table" class="stack">
      <div class="field wide">
        <label for="table-text">Table, pasted from a spreadsheet</label>
        <textarea
          id="table-text"
          class="table-text"
          rows={model.pasted.value?.ok ? 3 : 7}
          value={model.text.value}
          autocomplete="off"
          autocapitalize="none"
          spellcheck={false}
          placeholder={'contact\tfunction\tline kind\n1\tMic high\tmicrophone'}
          onInput={(event) => model.type(event.currentTarget.value)}
        />
      </div>
      <label class="button file-button">
        Open a CSV file
        <input
          ref={input}
          type="file"
          class="unseen"
          accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
      </label>
      {refused !== undefined && (
        <p class="against" role="alert">
          {refused}
        </p>
      )}
      <details class="fold">
        <summary>What the columns may be</summary>
        <p>
          One row a contact, cells divided by tabs, semicolons or commas. Headings are read by their words, in any
          order: {COLUMNS.map((column) => COLUMN_LABEL[column].toLowerCase()).join(', ')}. A unit in a heading, “Need
          (dB)”, goes to every number below it. An empty cell says nothing and takes nothing away.
        </p>
      </details>
    </section>
  )
}
