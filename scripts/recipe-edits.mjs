/** What somebody who follows the recipes of DEVELOPERS.md would write, for an invented example of each. */

/**
 * @typedef {{ readonly file: string, readonly text: string } | { readonly file: string, readonly find: string | RegExp, readonly put: string }} Edit
 */

const CHECK = `/** How long a quarter of a period lasts. */
import { formatQuantity } from '../../quantity/format.ts'
import type { Check, Figures, Input } from '../../types.ts'

const inputs = [
  {
    key: 'frequencyHz',
    fact: 'noiseHz',
    label: 'Frequency',
    help: 'The frequency of the noise.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e11, many: true },
    defaultText: '2 MHz',
    whenEmpty: { do: 'assume', text: '2 MHz', why: 'the lowest of HF', favourable: false },
  },
] as const satisfies readonly Input[]

type WaveFigures = Figures & { readonly delaySec: number }

/** Quarter of a period in s: 1/(4·f), f in Hz above 0. Definition. */
const quarterSec = (hz: number): number => 1 / (4 * hz)

export const waveCheck: Check<typeof inputs, WaveFigures> = {
  id: 'wave',
  title: 'Wave',
  question: 'How long is a quarter of a period?',
  inputs,
  outputs: [{ key: 'quarterSec', label: 'Quarter period', quantity: 'time', digits: 4, lead: true }],
  figures: ({ frequencyHz }) => {
    const sec = quarterSec(Math.min(...frequencyHz))
    return { values: { quarterSec: sec }, bounds: [], rungs: [], delaySec: sec }
  },
  explain: (_given, { delaySec }) => ({
    ok: true,
    headline: \`A quarter of the period lasts \${formatQuantity(delaySec, 'time')}.\`,
    findings: [],
    outputs: {
      quarterSec: {
        cell: { is: 'si', si: delaySec },
        basis: { steps: [], assumptions: [], sources: [{ id: 'derived', standing: 'derived' }] },
      },
    },
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: [],
  }),
}
`

const KIND = `  {
    id: 'recipe-loop',
    name: 'A loop made up for the recipe',
    family: 'audio',
    aliases: ['recipe loop'],
    isPair: false,
    ownPeaks: { leg: [-1, 1], source: PRACTICE },
    loading: { rule: 'none', why: 'Nothing is known of a line that does not exist.' },
    loadingSource: PRACTICE,
    permitted: [],
    notes: ['It does not exist.'],
    sources: [PRACTICE],
  },
]

/** For a line that no row describes. */`

const WAVEFORM = `  {
    id: 'recipe-pulse',
    name: 'A pulse made up for the recipe',
    form: 'voltage',
    shape: { form: 'front-tail', k: 1.019, frontSec: 3.827e-6, tailSec: 1404e-6 },
    shapeSource: memory('none'),
    note: 'It does not exist.',
    sourceOhm: { ohm: 2, why: 'made up', source: memory('none') },
    levels: [level(1, 500, 2, 'none')],
    repeats: [],
  },
]
`

/** @type {Readonly<Record<string, readonly Edit[]>>} */
export const RECIPE_EDITS = {
  'Add a check': [
    { file: 'src/calc/checks/wave/check.ts', text: CHECK },
    { file: 'src/calc/ids.ts', find: "  'trace',\n", put: "  'trace',\n  'wave',\n" },
    {
      file: 'src/calc/plain-checks.ts',
      find: /(import \{ toneCheck \}[^\n]*\n)([\s\S]*)(\n\])/,
      put: "import { waveCheck } from './checks/wave/check.ts'\n$1$2\n  waveCheck,$3",
    },
    {
      file: 'test/e2e/support/worked-checks.ts',
      find: 'Record<string, Worked>> = {\n',
      put: `Record<string, Worked>> = {
  wave: {
    query: 'frequencyHz=2M',
    expected: [{ key: 'quarterSec', si: 125e-9, within: 1e-15, source: 'a quarter of 500 ns, by hand' }],
  },
`,
    },
  ],
  'Add a line kind': [
    { file: 'src/reference/line-kinds/analog.ts', find: ']\n\n/** For a line that no row describes. */', put: KIND },
  ],
  'Add a suspect': [
    {
      file: 'src/guide/evidence/victim.ts',
      find: /\]\n$/,
      put: `  {
    id: 'recipe-smell',
    chapter: 'Box',
    kind: 'look',
    about: 'victim',
    text: 'Does the box smell burnt?',
    why: 'What is burnt is looked at before anything is filtered.',
    findOut: 'Smell at its vents.',
    minutes: 5,
    when: { symptoms: ['broken'] },
    options: readings(
      { id: 'yes', label: 'Yes', for: 'box-fault', against: 'water', means: 'Something inside got hot.' },
      { id: 'no', label: 'No', against: 'box-fault', means: 'Nothing inside got hot.' },
    ),
  },
]
`,
    },
    { file: 'src/guide/guide.ts', find: /version: (\d+)/, put: 'version: 1$1' },
    { file: 'src/store/demo.ts', find: /WRITTEN_FOR_GUIDE = (\d+)/, put: 'WRITTEN_FOR_GUIDE = 1$1' },
  ],
  'Add a waveform': [
    { file: 'src/reference/waveforms/iec.ts', find: /\]\n$/, put: WAVEFORM },
    { file: 'src/reference/waveforms/types.ts', find: "  'iec-8-20',\n", put: "  'iec-8-20',\n  'recipe-pulse',\n" },
  ],
  'Add a stored field': [
    {
      file: 'src/store/complaint.ts',
      find: /COMPLAINT_SCHEMA = \d+([\s\S]*?)( {2}readonly rivals\?: readonly ComplaintRival)/,
      put: 'COMPLAINT_SCHEMA = 7$1  readonly station?: string\n$2',
    },
    {
      file: 'src/store/restore.ts',
      find: '  rivals: { read: listOf(item(RIVAL))',
      put: '  station: { read: text, or: () => undefined },\n  rivals: { read: listOf(item(RIVAL))',
    },
    {
      file: 'src/store/exchange/schema.ts',
      find: '    purpose: oneOf(PURPOSES),\n',
      put: '    purpose: oneOf(PURPOSES),\n    station: text,\n',
    },
    {
      file: 'test/store/fixtures/v4.json',
      find: /(\n {8}\})(\n {6}\]\n {4}\},\n {4}"lines")/,
      put: `$1,
        {
          "id": "abcdabcdabcdabcdabcdabcdabcdabcd",
          "schemaVersion": 7,
          "guideVersion": 1,
          "title": "",
          "aircraft": "",
          "note": "",
          "createdAt": "2026-01-11T10:00:00.000Z",
          "updatedAt": "2026-01-11T10:00:00.000Z",
          "deletedAt": "2026-01-12T10:00:00.000Z",
          "isDemo": false,
          "purpose": "design",
          "answers": {},
          "events": [],
          "tables": {},
          "checks": [],
          "station": "north",
          "rivals": [],
          "kept": []
        }$2`,
    },
  ],
}
