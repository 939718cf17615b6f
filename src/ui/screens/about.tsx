import { useEffect, useRef, useState } from 'preact/hooks'
import { offlineReady, updatedElsewhere, updateReady } from '../../offline/updates.ts'
import { keepsStorage } from '../../state/complaints.ts'
import { guide } from '../../state/guide-content.ts'
import { setTheme, type ThemeChoice, themeChoice } from '../../state/theme.ts'
import { appVersion, buildDate, dataEdition } from '../../state/version.ts'
import { bytesKept, isStorageKept } from '../../store/browser-storage-facts.ts'
import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
import { Screening } from '../parts/screening.tsx'
import { isAboutOpen } from '../shell/head.tsx'
import { AwakeSwitch } from './awake.tsx'
import { Erase } from './erase.tsx'
import { Install } from './install.tsx'
import { KeysSwitch } from './keys-switch.tsx'
import { Licences } from './licences.tsx'

const THEMES: readonly { readonly value: ThemeChoice; readonly label: string }[] = [
  { value: 'auto', label: 'Auto' },
  { value: 'day', label: 'Day' },
  { value: 'dark', label: 'Dark' },
  { value: 'night', label: 'Night red' },
  { value: 'glare', label: 'Glare' },
]

/** What this app is, which version, whether it works offline; theme and screen. */
export function About() {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    dialog.current?.showModal()
  }, [])
  const close = () => dialog.current?.close()
  return (
    <dialog
      ref={dialog}
      class="sheet"
      aria-labelledby="about-title"
      onClose={() => {
        isAboutOpen.value = false
      }}
    >
      <div class="sheet-head">
        <h2 id="about-title">Stillpin</h2>
        <button type="button" class="icon-button" onClick={close}>
          <Icon name="close" />
          <span class="unseen">Close</span>
        </button>
      </div>
      <div class="stack">
        <fieldset class="field choice">
          <legend>Theme</legend>
          <div class="choices">
            {THEMES.map(({ value, label }) => (
              <label key={value} class="choice-button">
                <input
                  type="radio"
                  name="theme"
                  value={value}
                  checked={themeChoice.value === value}
                  onChange={() => setTheme(value)}
                />
                <span>{label}</span>
              </label>
            ))}
          </div>
        </fieldset>
        <AwakeSwitch />
        <KeysSwitch />
        <Facts />
        <Install />
        <Screening />
        <WhatChanged />
        <Licences />
        <Erase />
      </div>
    </dialog>
  )
}

const Changes = lazy(async () => (await import('./changes.tsx')).Changes)

/** Fetched when it is unfolded. */
function WhatChanged() {
  const [isOpen, setOpen] = useState(false)
  return (
    <details class="fold" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>What changed</summary>
      {isOpen && <Changes />}
    </details>
  )
}

function Facts() {
  const [usedBytes, setUsedBytes] = useState<number | undefined>(undefined)
  const [before, setBefore] = useState<boolean | undefined>(undefined)
  useEffect(() => {
    void isStorageKept().then(setBefore)
    void bytesKept().then(setUsedBytes)
  }, [])
  const rows: readonly (readonly [string, string])[] = [
    ['Version', `${appVersion}, built ${buildDate}`],
    ['Data', guide.value ? `${dataEdition}, guide version ${guide.value.version}` : dataEdition],
    ['Offline copy', offlineWords()],
    ['Storage', storageWords(usedBytes, keepsStorage.value ?? before)],
  ]
  return (
    <dl class="facts">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  )
}

function offlineWords(): string {
  if (updateReady.value || updatedElsewhere.value) return 'complete; a newer version is ready'
  return offlineReady.value ? 'complete: works without a network' : 'not yet complete; stay online for a moment'
}

function storageWords(usedBytes: number | undefined, isKept: boolean | undefined): string {
  const used = usedBytes === undefined ? '' : `${(usedBytes / 1e6).toFixed(1)} MB on this device. `
  if (isKept === true) return `${used}The browser promised to keep it.`
  return `${used}The browser may clear it when space runs short; save the Log as a file now and then.`
}
