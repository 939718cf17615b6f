import { useRef, useState } from 'preact/hooks'

/** What is under way in a part of a screen: how far it is, and a way out that leaves everything as it was. */
export type UnderWay = { readonly what: string; readonly doneFrac: number; readonly stop: () => void }

type Job = (onProgress: (doneFrac: number) => void, signal: AbortSignal) => Promise<void>

/** Runs one job at a time; one that was stopped ends silently. */
export function useUnderWay(): readonly [UnderWay | undefined, (what: string, job: Job) => Promise<void>] {
  const [now, setNow] = useState<UnderWay>()
  const running = useRef<AbortController>(undefined)
  const start = async (what: string, job: Job) => {
    running.current?.abort()
    const stopping = new AbortController()
    running.current = stopping
    const stop = () => stopping.abort()
    const isLast = () => running.current === stopping
    const tell = (doneFrac: number) => {
      if (isLast()) setNow({ what, doneFrac, stop })
    }
    tell(0)
    try {
      await job(tell, stopping.signal)
    } catch (error) {
      if (!stopping.signal.aborted) throw error
    } finally {
      if (isLast()) setNow(undefined)
    }
  }
  return [now, start]
}

export function ShownUnderWay({ now }: { readonly now: UnderWay | undefined }) {
  if (now === undefined) return null
  return (
    <div role="status">
      <label class="progress">
        {now.what}, {Math.round(now.doneFrac * 100)} %
        <progress max="1" value={now.doneFrac} />
      </label>
      <button type="button" class="button" onClick={now.stop}>
        Cancel
      </button>
    </div>
  )
}
