import { Head } from './head.tsx'

/** An address that leads nowhere, said by name, with ways on. */
export function Nowhere({ path, what = 'page' }: { readonly path: string; readonly what?: string }) {
  return (
    <>
      <Head title={`No such ${what}`} />
      <div class="stack">
        <p>
          <code>{path}</code> is not an address of this version. The link may be cut off, or come from a newer version.
        </p>
        <ul class="rows">
          <li>
            <a href="#/ask">Ask: find the cause, question by question</a>
          </li>
          <li>
            <a href="#/check">Check: the calculators</a>
          </li>
          <li>
            <a href="#/log">Log: saved complaints</a>
          </li>
          <li>
            <a href="#/notes">Book: notes, cards and tables</a>
          </li>
        </ul>
      </div>
    </>
  )
}
