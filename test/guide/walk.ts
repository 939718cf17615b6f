/** Walks a guide for tests: every distinct path, with answers of equal effect taken together. */
import { nextOf } from '../../src/guide/engine.ts'
import { type Choice, choicesOf } from '../../src/guide/paths.ts'
import type { Answers, Guide, GuideNode, Next, Outcome, Question, TrailStep } from '../../src/guide/types.ts'

export type Path = { readonly steps: readonly TrailStep[]; readonly outcome: Outcome }

/** Calls `visit` for every distinct path from the start to an outcome. */
export function eachPath(guide: Guide, visit: (path: Path) => void): void {
  const byId = new Map(guide.nodes.map((node) => [node.id, node]))
  const choices = choicesOf(guide)
  const walk = (node: GuideNode | undefined, steps: readonly TrailStep[]): void => {
    if (node === undefined) throw new Error(`a path ends nowhere after ${steps.map((s) => s.optionId).join(' > ')}`)
    if (node.is === 'outcome') {
      visit({ steps, outcome: node })
      return
    }
    for (const { option } of choices.get(node.id) ?? []) {
      const path = [...steps, { node, optionId: option.id, label: option.label }]
      walk(byId.get(nextOf(option.next, path) ?? ''), path)
    }
  }
  walk(byId.get(guide.start), [])
}

export const answersOf = (path: Path): Answers =>
  Object.fromEntries(path.steps.map((step) => [step.node.id, step.optionId]))

const branchWords = (next: Next): string =>
  typeof next === 'string'
    ? next
    : next
        .map(({ when, go }) => {
          if (when === undefined) return `otherwise ${go}`
          const answered = when.answered && `${when.answered.node} is ${when.answered.options.join(' or ')}`
          const family = when.kindFamily && `family is ${when.kindFamily.join(' or ')}`
          return `if ${[answered, family].filter(Boolean).join(' and ')}: ${go}`
        })
        .join('; ')

const choiceWords = (choice: Choice): string => {
  const { sets = [], gate } = choice.option
  const facts = sets
    .filter(({ fact }) => fact !== 'lineKind')
    .map((s) => `${s.fact} ${s.text}${s.assumed ? ' (assumed)' : ''}`)
  const notes = [...(gate === undefined ? [] : [`gate ${gate}`]), ...facts]
  return `  ${choice.alike.join(' | ')}${notes.length > 0 ? ` [${notes.join(', ')}]` : ''} -> ${branchWords(choice.option.next)}`
}

const pathWords = (path: Path): string => path.steps.map((step) => `${step.node.id}=${step.optionId}`).join(' > ')

/** The reviewable file: every transition, then the shortest and the longest path to each outcome. */
export function pathsFile(guide: Guide): string {
  let count = 0
  let most = 0
  const ends = new Map<string, { shortest: Path; longest: Path }>()
  eachPath(guide, (path) => {
    count += 1
    most = Math.max(most, path.steps.length)
    const known = ends.get(path.outcome.id)
    if (known === undefined) ends.set(path.outcome.id, { shortest: path, longest: path })
    else if (path.steps.length < known.shortest.steps.length) known.shortest = path
    else if (path.steps.length > known.longest.steps.length) known.longest = path
  })
  const questions = guide.nodes.filter((node): node is Question => node.is === 'question')
  const outcomes = guide.nodes.filter((node): node is Outcome => node.is === 'outcome')
  const choices = choicesOf(guide)
  return [
    `Guide version ${guide.version}: ${questions.length} questions, ${outcomes.length} outcomes, ${count} distinct paths, at most ${most} taps.`,
    'Answers of equal effect stand together; at a picker one answer for each family of lines.',
    'Over 5,000 paths, so: every transition, then the shortest and the longest path to each outcome.',
    '',
    'TRANSITIONS',
    ...questions.flatMap((question) => ['', question.id, ...(choices.get(question.id) ?? []).map(choiceWords)]),
    '',
    'OUTCOMES',
    ...outcomes.flatMap((outcome) => {
      const end = ends.get(outcome.id)
      if (end === undefined) return ['', `${outcome.id} (${outcome.class}): never reached`]
      return [
        '',
        `${outcome.id} (${outcome.class}): ${outcome.headline}`,
        `  ${end.shortest.steps.length} taps: ${pathWords(end.shortest)}`,
        ...(end.longest.steps.length === end.shortest.steps.length
          ? []
          : [`  ${end.longest.steps.length} taps: ${pathWords(end.longest)}`]),
      ]
    }),
    '',
  ].join('\n')
}
