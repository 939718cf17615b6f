import { useRef, useState } from 'preact/hooks'
import type { Option } from '../../../calc/types.ts'
import { Icon } from '../../parts/icon.tsx'
import { OptionSearch } from '../../parts/option-search.tsx'

type Given = {
  readonly label: string
  readonly options: readonly Option[]
  readonly onPick: (value: string) => void
  readonly chosen?: string | undefined
  readonly last?: Option | undefined
}

/** A button that opens a list to search, and acts on what is picked from it. */
export function PickOne({ label, options, onPick, chosen, last }: Given) {
  const dialog = useRef<HTMLDialogElement>(null)
  const [isOpen, setOpen] = useState(false)
  const close = () => dialog.current?.close()
  return (
    <>
      <button
        type="button"
        class="button"
        aria-haspopup="dialog"
        onClick={() => {
          setOpen(true)
          dialog.current?.showModal()
        }}
      >
        <Icon name="search" />
        {label}
      </button>
      <dialog ref={dialog} class="sheet" aria-label={label} onClose={() => setOpen(false)}>
        {isOpen && (
          <>
            <div class="sheet-head">
              <h2>{label}</h2>
              <button type="button" class="icon-button" onClick={close}>
                <Icon name="close" />
                <span class="unseen">Close</span>
              </button>
            </div>
            <OptionSearch
              options={options}
              chosen={chosen}
              last={last}
              onPick={(value) => {
                close()
                onPick(value)
              }}
            />
          </>
        )}
      </dialog>
    </>
  )
}
