import { checkById } from '../../calc/registry.ts'
import { addressFor } from '../../state/check.ts'
import { type Complaint, complaints, remove } from '../../state/complaints.ts'
import { expressionReading } from '../../state/expression.ts'
import { guide } from '../../state/guide-content.ts'
import { goTo } from '../../state/router.ts'
import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
import { PrintButton, ShareButton } from '../parts/share-button.tsx'
import { complaintWords } from './decided.ts'

const FileOut = lazy(async () => (await import('../parts/file-out.tsx')).FileOut, null)

export const NOT_SHARED = '#/log'

/** A line of somebody else's device is not at that address: what travels is its first check with all that it rests on. */
export function sharedHash({ checks, lines }: Complaint): string {
  for (const { check: id, lineId, address } of checks) {
    const check = checkById(id)
    const line = lines.find((each) => each.id === lineId)
    if (check && line) return addressFor(check, line, expressionReading)
    if (address !== undefined) return address
  }
  return NOT_SHARED
}

/** What can be done with the whole of it. */
export function ComplaintActions({ complaint }: { readonly complaint: Complaint }) {
  return (
    <div class="actions">
      <ShareButton
        title={complaint.title}
        words={() =>
          complaintWords(complaints.peek()?.find(({ id }) => id === complaint.id) ?? complaint, guide.peek())
        }
        hash={sharedHash(complaint)}
      />
      <PrintButton />
      <FileOut id={complaint.id} what="as a file" title={complaint.title} />
      <button
        type="button"
        class="button"
        onClick={() => {
          remove(complaint.id)
          goTo('#/log')
        }}
      >
        <Icon name="close" />
        Delete
      </button>
    </div>
  )
}
