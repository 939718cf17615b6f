import { codeOf, LONGEST_CODE } from './qr.ts'

/** The code that brings a phone to this answer, or a word why it is left out. */
export function AddressCode({ address }: { readonly address: string }) {
  const code = codeOf(address)
  if (!code) {
    return (
      <p class="no-code">
        No code: the address has {address.length} characters, more than the {LONGEST_CODE} that can be read off paper.
        Every input is written out beside it.
      </p>
    )
  }
  return (
    <figure class="code">
      <svg viewBox={`0 0 ${code.modules} ${code.modules}`} role="img" aria-label="Code of this address">
        <path d={code.path} />
      </svg>
      <figcaption>opens this in the app</figcaption>
    </figure>
  )
}
