import { useMemo } from 'preact/hooks'
import type { SheetBody } from '../../../calc/connector/sheet/body.ts'
import { contactList } from '../../../calc/connector/sheet/contact-list.ts'
import { tableFile } from '../../../calc/connector/sheet/table.ts'
import { sheetWords } from '../../../calc/connector/sheet/words.ts'
import type { Line } from '../../../calc/types.ts'
import { fileName, type OwnFile } from '../../../state/files.ts'
import { supplierCopy, supplierFile } from '../../../state/supplier-copy.ts'
import type { Complaint } from '../../../store/complaint.ts'
import { FileButtons } from '../../parts/file-buttons.tsx'
import { FileOut } from '../../parts/file-out.tsx'
import { Icon } from '../../parts/icon.tsx'
import { ShareButton } from '../../parts/share-button.tsx'

const CSV = 'text/csv'
const JSON_TYPE = 'application/json'
const FILE_ENDING = 'stillpin.json'
/** Spreadsheets take a text for UTF-8 by it; a table that is pasted is read without it. */
const BYTE_ORDER_MARK = '\uFEFF'

type Given = { readonly complaint: Complaint; readonly body: SheetBody; readonly onPrint: () => void }

/** The whole sheet: on paper, as a table, in words. */
export function OwnSheet({ complaint, body, onPrint }: Given) {
  const title = `Contact schedule of ${body.connector.name || 'a connector'}`
  return (
    <div class="actions">
      <PrintButton what="the sheet" onPrint={onPrint} />
      <FileButtons
        what="table (CSV)"
        title={title}
        type={CSV}
        make={() => tableOf(body, complaint.lines, [body.connector.name, 'contacts'])}
      />
      <ShareButton title={title} words={() => sheetWords(body)} />
    </div>
  )
}

/** The same for the maker of the connector, and what of it stays here. */
export function SupplierSheet({ complaint, body, onPrint }: Given) {
  const copy = useMemo(() => supplierCopy(body, complaint), [body, complaint])
  const name = body.connector.name || 'a connector'
  const order = body.rows.map(({ id }) => id)
  return (
    <>
      <p>
        Goes out: every contact with its need, part, window and verdict, function and remark as typed, and the open
        questions. Stays here: the complaint, aircraft, note, answers, readings, trials, equipment and names.
      </p>
      {copy.leftOut.length > 0 && (
        <p class="notice" role="status">
          A text of contact {contactList(copy.leftOut, order)} holds a text of the complaint; the copy says “left out”
          there.
        </p>
      )}
      <div class="actions">
        <PrintButton what="the supplier’s copy" onPrint={onPrint} />
        <FileButtons
          what="supplier’s table (CSV)"
          title={`Contact schedule of ${name}, supplier’s copy`}
          type={CSV}
          make={() => tableOf(copy.body, copy.lines, [body.connector.name, 'supplier'])}
        />
        <FileButtons
          what="supplier’s file (JSON)"
          title={`${name}, supplier’s copy`}
          type={JSON_TYPE}
          make={() => ({
            name: fileName([body.connector.name, 'supplier'], FILE_ENDING),
            type: JSON_TYPE,
            content: supplierFile(copy),
          })}
        />
      </div>
    </>
  )
}

/** The complaint with all its lines and connectors, exactly as it is here: what comes back from it is the same. */
export function WholeComplaint({ complaint }: Pick<Given, 'complaint'>) {
  return (
    <>
      <p>One file with every line and connector. Another device, or this one, brings it in again as it is.</p>
      <div class="actions">
        <FileOut id={complaint.id} what="complaint (JSON)" title={complaint.title} />
      </div>
    </>
  )
}

function tableOf({ connector, rows }: SheetBody, lines: readonly Line[], name: readonly string[]): OwnFile {
  const content = `${BYTE_ORDER_MARK}${tableFile({ connector, lines, rows })}`
  return { name: fileName(name, 'csv'), type: CSV, content }
}

function PrintButton({ what, onPrint }: { readonly what: string; readonly onPrint: () => void }) {
  return (
    <button type="button" class="button" onClick={onPrint}>
      <Icon name="print" />
      Print {what}
    </button>
  )
}
