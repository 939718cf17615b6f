/** Takes everything off a refuted window that its refutation can do without: the shortest address that still shows it. */
import { fight } from './battle.ts'
import type { WindowFacts } from './facts.ts'
import { drawing } from './judge.ts'
import { type RandomWindow, textsOf } from './random-window.ts'

/** What a fact is when it does not matter, one change at a time. */
const PLAIN: readonly ((facts: WindowFacts) => Partial<WindowFacts>)[] = [
  (facts) => (facts.needs.length > 1 ? { needs: facts.needs.slice(0, 1) } : {}),
  (facts) => (facts.needs.length > 1 ? { needs: facts.needs.slice(1) } : {}),
  (facts) => (facts.sourceOhm.length > 1 ? { sourceOhm: facts.sourceOhm.slice(0, 1) } : {}),
  (facts) => (facts.sourceOhm.length > 1 ? { sourceOhm: facts.sourceOhm.slice(1) } : {}),
  ...['sourceH', 'loadF', 'suppressorF', 'existingF', 'crossF', 'tolLow', 'tolHigh', 'temperature', 'bias'].map(
    nothing,
  ),
  ...['decades', 'perDecade', 'esrOhm', 'eslH', 'dcrOhm', 'inductorParallelF', 'bondOhm', 'bondH'].map(nothing),
  () => ({ loadH: Number.POSITIVE_INFINITY }),
  () => ({ inductorParallelOhm: Number.POSITIVE_INFINITY }),
  () => ({ driverEdgeSec: undefined }),
  () => ({ signalOhm: undefined }),
  () => ({ ownCeilingF: undefined }),
  () => ({ ownLossDb: undefined }),
  () => ({ ownPhaseDeg: undefined }),
  () => ({ usefulHz: undefined }),
  () => ({ maxBuildableF: undefined }),
  () => ({ navyRule: false }),
  () => ({ chassisLimitA: undefined }),
  () => ({ loadW: undefined }),
  () => ({ mostConversionDb: undefined }),
  () => ({ chokeMismatch: 0 }),
  () => ({ chokeH: 0 }),
  () => ({ chokeOhm: 0 }),
  () => ({ chokeF: 0 }),
  () => ({ chokeSide: 'source' }),
  () => ({ chokeLeakageH: undefined }),
  () => ({ mode: 'common' }),
  () => ({ bead: undefined }),
  () => ({ damper: undefined }),
  () => ({ dielectric: undefined }),
  () => ({ lostFrac: 0 }),
  () => ({ loadOhm: 50 }),
  () => ({ sourceOhm: [50] }),
]

function nothing(key: string): () => Partial<WindowFacts> {
  return () => ({ [key]: 0 })
}

export function simplest(window: RandomWindow, why: string): Readonly<Record<string, string>> {
  let { facts } = window
  // the same reason, whatever its figures
  const kindOf = (refutation: string | undefined) => refutation?.replace(/[^a-z]/g, '')
  const kind = kindOf(why)
  const isRefuted = (asked: WindowFacts) => {
    const texts = textsOf(asked, window.empty)
    try {
      return kindOf(fight({ ...window, facts: asked, texts, next: drawing(1) }).refutation) === kind
    } catch {
      return false
    }
  }
  for (const change of [...PLAIN, ...PLAIN]) {
    const asked = { ...facts, ...change(facts) }
    if (JSON.stringify(asked) !== JSON.stringify(facts) && isRefuted(asked)) facts = asked
  }
  return textsOf(facts, window.empty)
}
