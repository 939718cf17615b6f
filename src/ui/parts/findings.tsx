import type { Finding } from '../../calc/types.ts'
import { Icon } from './icon.tsx'

/** A finding that harms nothing is a remark, often a condition: it carries no tick, which would say more than it does. */
const markOf = (verdict: Finding['verdict']) => (verdict === 'ok' ? 'about' : verdict)

export function Findings({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0) return null
  return (
    <ul class="findings" aria-label="Findings">
      {findings.map((finding) => (
        <li key={finding.sentence} class={`finding ${finding.verdict}`}>
          <Icon name={markOf(finding.verdict)} />
          <span>{finding.sentence}</span>
        </li>
      ))}
    </ul>
  )
}
