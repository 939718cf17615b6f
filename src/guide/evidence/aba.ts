/** Off, on, off: the proof of a source that can be switched or taken away. One card for each, from one table. */
import { MOVED } from '../../reference/field-figures.ts'
import type { Evidence, SymptomId, Tool } from '../investigation.ts'
import { metres } from '../print.ts'
import { SOURCE_SUSPECTS } from '../suspects/sources.ts'
import { readings } from './define.ts'

type Switchable = {
  readonly suspect: string
  readonly text: string
  readonly how: readonly string[]
  readonly minutes: number
  readonly needs?: readonly Tool[]
  readonly cautions?: readonly string[]
  readonly note?: string
}

const TABLE: readonly Switchable[] = [
  {
    suspect: 'alternator',
    text: 'Alternator field off, engine running: is it gone?',
    how: ['On the ground, from the cockpit, by the manual: field off, on, off.', 'Hold the engine speed each time.'],
    minutes: 3,
    cautions: ['running-engine', 'breakers'],
    note: 'alternator-frequencies',
  },
  {
    suspect: 'regulator',
    text: 'Large load on and off at one engine speed: does the pitch move?',
    how: ['Hold the engine speed, from the cockpit.', 'Landing light on, off, on; then with a good regulator.'],
    minutes: 3,
    cautions: ['running-engine'],
    note: 'alternator-frequencies',
  },
  {
    suspect: 'ac-hum',
    text: 'Inverter or alternating bus off: is the hum gone?',
    how: ['Alternating bus off by the manual, off, on, off.', 'Change to the other inverter and compare the pitch.'],
    minutes: 3,
    needs: ['phone spectrum'],
    cautions: ['breakers'],
    note: 'audio-ground',
  },
  {
    suspect: 'rectifier',
    text: 'Rectifier unit off, or the other one on: is the whistle gone?',
    how: [
      'Change to the other unit by the manual, and back.',
      'Compare the pitch with six or twelve times the supply.',
    ],
    minutes: 3,
    needs: ['phone spectrum'],
    cautions: ['breakers'],
    note: 'alternator-frequencies',
  },
  {
    suspect: 'converter',
    text: 'Lamp, charger, converter or display off: does it follow?',
    how: [
      'Set the squelch so that it just closes, with a weak station on.',
      'Unit off, on, off; unplug what can be unplugged.',
    ],
    minutes: 3,
    cautions: ['breakers'],
    note: 'lamps-and-chargers',
  },
  {
    suspect: 'motor',
    text: 'Motor, pump or blower stopped: does it follow?',
    how: ['Motor off, on, off by its switch.', 'Change its speed if it has one.'],
    minutes: 3,
    cautions: ['breakers'],
    note: 'drives',
  },
  {
    suspect: 'drive',
    text: 'Dimmer, drive or speed control at zero or full: does it follow?',
    how: ['Turn it to zero, to half, to full.', 'Then its power off, on, off.'],
    minutes: 3,
    cautions: ['breakers'],
    note: 'drives',
  },
  {
    suspect: 'ignition',
    text: 'One magneto or ignition at a time: does it change?',
    how: ['By the manual, from the cockpit, one after the other.', 'Note which one changes it, and how.'],
    minutes: 3,
    needs: ['handheld receiver'],
    cautions: ['running-engine'],
    note: 'noise-signatures',
  },
  {
    suspect: 'strobe',
    text: 'Strobe off: is it gone?',
    how: ['Strobe off, on, off.', 'Listen for the charging whine between the flashes.'],
    minutes: 2,
    cautions: ['stored-charge'],
    note: 'noise-signatures',
  },
  {
    suspect: 'clock',
    text: 'That box off, a fixed channel open: is the tone gone?',
    how: ['Tune the channel, squelch open, a load on nothing.', 'Power the boxes one at a time, off, on, off.'],
    minutes: 5,
    cautions: ['breakers'],
    note: 'lamps-and-chargers',
  },
  {
    suspect: 'device',
    text: 'Device truly off, not in flight mode: is it gone?',
    how: ['Same seat, same place: off, on, off.', 'A device in a bag counts: ask for all of them.'],
    minutes: 2,
    note: 'cabin-devices',
  },
  {
    suspect: 'ground-power',
    text: 'Ground power unplugged and aircraft moved: is it gone?',
    how: [
      'On the battery: ground supply off, on, off.',
      `Move ${metres(MOVED.fromHangarM)} from the hangar and try again.`,
    ],
    minutes: 5,
    note: 'breaker-matrix',
  },
  {
    suspect: 'l-band',
    text: 'Each pulse set to standby: is it gone?',
    how: [
      'Transponder, distance and collision sets to standby, one at a time.',
      'Scope the suppression line at both ends.',
    ],
    minutes: 5,
    needs: ['oscilloscope'],
    note: 'l-band',
  },
  {
    suspect: 'two-sources',
    text: 'Each of the two alone, then both: is it only both?',
    how: ['First alone, second alone, both: three times.', 'Write the matrix; four cells are needed.'],
    minutes: 5,
    note: 'breaker-matrix',
  },
]

/** A name inside a sentence: L-band keeps its letter. */
const inSentence = (name: string): string => name.replace(/^\p{Lu}(?=\p{Ll})/u, (letter) => letter.toLowerCase())

function itemOf({ suspect, text, how, minutes, needs, cautions, note }: Switchable): Evidence {
  const source = SOURCE_SUSPECTS.find(({ id }) => id === suspect)
  if (source === undefined) throw new RangeError(`no source "${suspect}"`)
  const shows: readonly SymptomId[] = source.shows
  return {
    id: `aba-${suspect}`,
    chapter: 'Off, on, off',
    kind: 'test',
    about: 'source',
    text,
    why: `Three switchings that agree prove or clear it: ${inSentence(source.name)}.`,
    findOut: how.join(' '),
    minutes,
    ...(needs === undefined ? {} : { needs }),
    when: { symptoms: shows },
    card: {
      do: how,
      with: [{ instrument: 'ears, display or log', setting: 'same volume, squelch and channel each time' }],
      expect: 'The trouble goes and comes with it, three times out of three.',
    },
    options: readings(
      {
        id: 'follows',
        label: 'It follows, three times out of three',
        proves: suspect,
        othersAgainst: ['source'],
        means: 'This source is proven; the way in may still be open.',
      },
      {
        id: 'less',
        label: 'Less, but not gone',
        for: suspect,
        means: 'It is part of it; go on for the rest.',
      },
      { id: 'same', label: 'No change', out: suspect, means: 'It is not this source.' },
    ),
    ...(cautions === undefined ? {} : { cautions }),
    ...(note === undefined ? {} : { note }),
  }
}

/** The proofs of sources that can be switched. */
export const ABA_EVIDENCE: readonly Evidence[] = TABLE.map(itemOf)
