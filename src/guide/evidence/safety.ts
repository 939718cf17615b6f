/** The safety gate: it bars parts and trials, never looking and thinking. */
import { BARRED_LINES } from '../chapters/safety.ts'
import type { Evidence, Reading } from '../investigation.ts'

const CHAPTER = 'Safety first'
const GOES_ON = 'No part and no trial; looking and thinking go on.'

const GATE_DANGER: Evidence = {
  id: 'gate-danger',
  chapter: CHAPTER,
  kind: 'ask',
  about: 'safety',
  text: 'Is there smoke, heat, or a control or engine that acted by itself?',
  why: 'These are not noise complaints. Nothing else in this guide matters before they are dealt with.',
  findOut:
    'Read the log entry and ask the crew. Look, smell and feel for heat with the power off. Until you know, treat it as yes.',
  minutes: 1,
  options: [
    {
      id: 'smoke',
      label: 'Smoke, a burning smell or a hot part',
      gate: 'barred',
      stop: 'stop-smoke',
      says: {},
      means: GOES_ON,
    },
    {
      id: 'uncommanded',
      label: 'A control, engine or release acted by itself',
      hint: 'control surface, autopilot, governor, power loss, jettison',
      gate: 'barred',
      stop: 'stop-uncommanded',
      says: {},
      means: GOES_ON,
    },
    { id: 'none', label: 'No, none of these', says: {}, means: 'The line itself is asked for next.' },
    {
      id: 'dont-know',
      label: "Don't know",
      hint: 'stays closed until it is known',
      gate: 'barred',
      stop: 'stop-danger-open',
      says: {},
      means: GOES_ON,
    },
  ],
}

const barred = ({ id, label, hint }: (typeof BARRED_LINES)[number]): Reading => ({
  id,
  label,
  ...(hint === undefined ? {} : { hint }),
  gate: 'barred',
  stop: `stop-${id}`,
  says: {},
  means: GOES_ON,
})

const GATE_LINES: Evidence = {
  id: 'gate-lines',
  chapter: CHAPTER,
  kind: 'ask',
  about: 'safety',
  text: 'What will be looked at or touched: is it one of these?',
  why: 'These never get a trial part. The line itself is asked for again later; this is about what you are sent to work on.',
  findOut:
    'Take the wiring diagram. Read every contact of the connectors you would open: an adapter sits on all of them.',
  minutes: 1,
  options: [
    {
      id: 'none',
      label: 'None of these',
      hint: 'checked on the wiring diagram',
      gate: 'clear',
      says: {},
      means: 'Parts and trials may be advised.',
    },
    ...BARRED_LINES.map(barred),
    {
      id: 'dead-design',
      label: 'One of these, dead, tagged and measured: a design question only',
      gate: 'barred',
      says: {},
      means: 'A design on paper; nothing is fitted or tried.',
    },
    {
      id: 'dont-know',
      label: "Don't know",
      hint: 'stays closed until it is known',
      gate: 'barred',
      stop: 'stop-lines-open',
      says: {},
      means: GOES_ON,
    },
  ],
  cautions: ['no-trial'],
}

/** What is asked before everything else. */
export const SAFETY_EVIDENCE: readonly Evidence[] = [GATE_DANGER, GATE_LINES]
