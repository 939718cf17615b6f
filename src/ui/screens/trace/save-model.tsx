import { useState } from 'preact/hooks'
import type { CheckModel } from '../../../state/check.ts'
import { fileWaysHere, saveFile } from '../../../state/files.ts'
import { modelFile } from '../../../state/model-file.ts'

/** The filter of the check as a file of network parameters. */
export function SaveModel({ model }: { readonly model: CheckModel }) {
  const [refusal, setRefusal] = useState<string>()
  const save = () => {
    const made = modelFile(model.fields.peek())
    setRefusal(made.ok ? undefined : made.message)
    if (made.ok) saveFile(made.file, fileWaysHere())
  }
  return (
    <div>
      <button type="button" class="button" onClick={save}>
        Save as Touchstone (.s2p)
      </button>
      {refusal !== undefined && (
        <p class="notice" role="alert">
          {refusal}
        </p>
      )}
    </div>
  )
}
