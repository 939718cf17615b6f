/** What stands on every sheet: its head with the code of its address, and its foot with who, when and from what. */
import type { ComponentChildren } from 'preact'
import { RULES_EDITION } from '../../calc/edition.ts'
import { isSafetyId, SAFETY_TEXTS } from '../../reference/safety.ts'
import { appVersion, buildDate, dataEdition } from '../../state/version.ts'
import { AddressCode } from './address-code.tsx'

type HeadGiven = { readonly title: string; readonly address?: string; readonly children?: ComponentChildren }

export function SheetHead({ title, address, children }: HeadGiven) {
  return (
    <header class="sheet-top">
      <div>
        <h1>{title}</h1>
        {children}
      </div>
      {address !== undefined && <AddressCode address={address} />}
    </header>
  )
}

type PartGiven = { readonly title: string; readonly columns?: 2 | 3; readonly children: ComponentChildren }

/** One part of a sheet under its heading, in columns where its rows are short. */
export function Part({ title, columns, children }: PartGiven) {
  return (
    <section class="part">
      <h2>{title}</h2>
      {columns === undefined ? children : <div class={`columns-${columns}`}>{children}</div>}
    </section>
  )
}

/** The cautions that fit, each in full. */
export function SheetCautions({ ids }: { readonly ids: readonly string[] }) {
  const known = [...new Set(ids)].filter(isSafetyId).filter((id) => id !== 'screening')
  if (known.length === 0) return null
  return (
    <Part title="Cautions" columns={2}>
      {known.map((id) => (
        <p key={id} class="row">
          <strong>{SAFETY_TEXTS[id].title}.</strong> {SAFETY_TEXTS[id].text}
        </p>
      ))}
    </Part>
  )
}

/** The day of the user's own calendar, as ISO writes it. */
function today(): string {
  const now = new Date()
  const two = (value: number) => String(value).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** The screening notice, a place to sign (for each who does), and what this sheet was made by. */
export function SheetFoot({ signs = ['Name'] }: { readonly signs?: readonly string[] }) {
  return (
    <footer class="sheet-foot">
      <p>
        <strong>{SAFETY_TEXTS.screening.title}.</strong> {SAFETY_TEXTS.screening.text}
      </p>
      {signs.map((who) => (
        <p key={who} class="sign">
          <span>{who}</span>
          <span>Date</span>
          <span>Signature</span>
        </p>
      ))}
      <p>
        Printed {today()} by Stillpin {appVersion}, built {buildDate}; {dataEdition}; edition {RULES_EDITION} of the
        rules. Not approved data.
      </p>
    </footer>
  )
}
