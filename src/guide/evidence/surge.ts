/** What decides a suppressor: what reaches the contacts, how strong, how many there are, and whether they can share. */
import type { Evidence } from '../investigation.ts'
import { readings } from './define.ts'

const CHAPTER = 'Suppressor'
const level = (text: string) => [{ fact: 'surgeLevel', text }] as const

/** Items about surges on contacts; about the line, so that they never settle a cause. */
export const SURGE_EVIDENCE: readonly Evidence[] = [
  {
    id: 'surge-threat',
    chapter: CHAPTER,
    kind: 'ask',
    about: 'line',
    text: 'What reaches these contacts beside noise?',
    why: 'A suppressor that nothing reaches only costs the signal room. Each threat has its own pulse.',
    findOut: 'Follow the cable. Does it leave the metal skin, can hands touch it, do coils or a bus hang on it?',
    minutes: 1,
    options: readings(
      {
        id: 'lightning',
        label: 'Lightning: the cable leaves the metal skin or runs along it',
        sets: [
          { fact: 'surgeThreat', text: 'lightning' },
          { fact: 'surgeWaveform', text: 'wf4' },
          { fact: 'surgeMode', text: 'common' },
        ],
        means: 'Every contact of the cable gets the pulse at once.',
      },
      {
        id: 'static',
        label: 'Only hands and tools, when it is unmated',
        sets: [
          { fact: 'surgeThreat', text: 'static' },
          { fact: 'surgeWaveform', text: 'iec-esd' },
          { fact: 'surgeMode', text: 'common' },
        ],
        means: 'One contact at a time, for nanoseconds.',
      },
      {
        id: 'switching',
        label: 'A coil, or a supply that switches',
        sets: [
          { fact: 'surgeThreat', text: 'switching' },
          { fact: 'surgeWaveform', text: 'custom' },
        ],
        means: 'The coil or the bus first; what is left is measured.',
      },
      {
        id: 'none',
        label: 'Nothing: it stays inside one bonded box or rack',
        sets: [{ fact: 'surgeThreat', text: 'none' }],
        means: 'No suppressor.',
      },
    ),
    note: 'suppressor-facts',
  },
  {
    id: 'surge-level',
    chapter: CHAPTER,
    kind: 'ask',
    about: 'line',
    text: 'Which test level does the plan or the category of the box give?',
    why: 'The level sets volts and amperes. Without it nothing is sized.',
    findOut: 'Pin-injection category such as A3 means level 3. Static has levels 1 to 4.',
    minutes: 1,
    options: readings(
      { id: 'level-1', label: 'Level 1', sets: level('1'), means: 'Goes to the surge check.' },
      { id: 'level-2', label: 'Level 2', sets: level('2'), means: 'Goes to the surge check.' },
      { id: 'level-3', label: 'Level 3', sets: level('3'), means: 'Goes to the surge check.' },
      { id: 'level-4', label: 'Level 4', sets: level('4'), means: 'Goes to the surge check.' },
      {
        id: 'level-5',
        label: 'Level 5',
        hint: 'pin injection only',
        sets: level('5'),
        means: 'Goes to the surge check.',
      },
      { id: 'dont-know', label: "Don't know, or volts and amperes instead", means: 'The surge check asks for them.' },
    ),
    note: 'suppressor-facts',
  },
  {
    id: 'surge-contacts',
    chapter: CHAPTER,
    kind: 'ask',
    about: 'line',
    text: 'How many contacts of this connector are exposed to it?',
    why: 'Sharing one suppressor pays only where there are many.',
    findOut: 'Count the contacts whose wires run in the exposed cable, or that a finger can touch.',
    minutes: 1,
    options: readings(
      { id: 'one', label: 'One', sets: [{ fact: 'exposedContacts', text: 'one' }], means: 'One suppressor.' },
      {
        id: 'few',
        label: 'Two to six',
        sets: [{ fact: 'exposedContacts', text: 'few' }],
        means: 'One each: sharing saves too little.',
      },
      {
        id: 'many',
        label: 'Seven or more',
        sets: [{ fact: 'exposedContacts', text: 'many' }],
        means: 'Sharing may pay, if they are alike.',
      },
    ),
  },
  {
    id: 'surge-alike',
    chapter: CHAPTER,
    kind: 'ask',
    about: 'line',
    text: 'Are their voltages alike, and do they share one ground beside them?',
    why: 'A shared suppressor stands off the highest of them and clamps all at that.',
    findOut: 'Wiring diagram: highest and lowest volts of each contact, and where their returns meet.',
    minutes: 1,
    when: { answered: [{ evidence: 'surge-contacts', options: ['few', 'many'] }] },
    options: readings(
      {
        id: 'alike',
        label: 'Alike, never below ground, one ground in the shell',
        sets: [{ fact: 'contactsAlike', text: 'alike' }],
        means: 'They can share through steering diodes.',
      },
      {
        id: 'bipolar',
        label: 'Alike, but they swing above and below ground',
        sets: [{ fact: 'contactsAlike', text: 'bipolar' }],
        means: 'Each takes one that clamps both ways.',
      },
      {
        id: 'different',
        label: 'Different voltages',
        sets: [{ fact: 'contactsAlike', text: 'different' }],
        means: 'One each: the lowest would not be protected.',
      },
      {
        id: 'apart',
        label: 'No common ground there',
        sets: [{ fact: 'contactsAlike', text: 'apart' }],
        means: 'One each: a shared one would tie grounds together.',
      },
    ),
  },
]
