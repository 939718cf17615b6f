import { useEffect, useState } from 'preact/hooks'

type Lock = { release: () => Promise<void> }

let held: Lock | undefined

/** Keeps the screen on while this page is in front; the wish ends with the visit. */
async function hold(): Promise<boolean> {
  try {
    held = await navigator.wakeLock.request('screen')
    return true
  } catch {
    return false
  }
}

function again(): void {
  if (held && document.visibilityState === 'visible') void hold()
}

export function AwakeSwitch() {
  const [isOn, setOn] = useState(held !== undefined)
  const [isRefused, setRefused] = useState(false)
  useEffect(() => {
    document.addEventListener('visibilitychange', again)
  }, [])
  if (!('wakeLock' in navigator)) return null
  const change = async (wanted: boolean) => {
    if (wanted) {
      const isHeld = await hold()
      setOn(isHeld)
      setRefused(!isHeld)
      return
    }
    await held?.release()
    held = undefined
    setOn(false)
  }
  return (
    <div class="field flag">
      <label for="awake">Keep the screen on</label>
      <input
        id="awake"
        type="checkbox"
        class="switch"
        checked={isOn}
        onChange={(event) => void change(event.currentTarget.checked)}
      />
      <p class="field-note" role="status">
        {isRefused ? 'The device refused, perhaps to save the battery.' : ''}
      </p>
    </div>
  )
}
