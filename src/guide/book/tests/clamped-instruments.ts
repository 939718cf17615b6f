/** Instruments that touch nothing: the current probe, the clamp ferrite, the handheld receiver, the spectrum view. */
import { clampFallDb } from '../../../calc/network/clamp.ts'
import { RECEIVE_ATTENUATOR } from '../../../reference/field-figures.ts'
import { CLAMP_FERRITE, CURRENT_PROBE, HANDHELD, PHONE_AUDIO } from '../../../reference/instruments.ts'
import { HIGH_LOOP_OHM, LOW_LOOP_OHM } from '../../figures.ts'
import { decibels, hertz, metres, ohms } from '../../print.ts'
import { drawing, type Instrument } from './instrument.ts'

/** Common current over both wires is twice that of one, in decibels. */
const BOTH_OVER_ONE_DB = 20 * Math.log10(2)

function currentProbe(): Instrument {
  const [low, high] = CURRENT_PROBE.transferOhm
  return {
    tools: ['current probe'],
    id: 'test-with-current-probe',
    title: 'The current probe',
    inShort: 'Which cable carries it, in which mode, and from which end.',
    words: ['current clamp', 'RF current probe', 'transfer impedance', 'common mode', 'dBµA'],
    set: [
      [
        'Range',
        `Volts divided by its transfer impedance, ${ohms(low)} to ${ohms(high)} in its band; use the curve it came with.`,
      ],
      ['Bandwidth', 'The same each time, written down. Another bandwidth is another reading.'],
      ['Coupling', 'Closed all round, its case touching nothing.'],
      ['Where', 'Over the whole cable, then over both wires, then over one. At the victim, then at the source.'],
    ],
    pictures: [
      drawing('clamp-places'),
      drawing('probe-readings'),
      {
        is: 'rows',
        rows: [
          { label: 'Common', text: `Both wires read ${decibels(BOTH_OVER_ONE_DB)} more than one.` },
          { label: 'Differential', text: 'Both wires together read next to nothing.' },
          { label: 'Direction', text: 'The larger end points to the source; a standing wave can lie: move it.' },
        ],
      },
    ],
    fools: [
      'A large supply current saturates it: try it at small load.',
      'The field of an antenna couples into its lead: turn the probe round; the reading must stay.',
      'Ambient signals: first everything off, then on.',
      'It gives current, not the impedance that made it.',
    ],
    cautions: ['running-engine', 'key-down'],
    links: [{ page: 'current-probe' }, { page: 'common-or-differential' }, { check: 'need' }],
  }
}

function clamp(): Instrument {
  const [low, high] = CLAMP_FERRITE.ohm
  const falls = (loopOhm: number) => decibels(clampFallDb({ clampOhm: high, loopOhm }))
  return {
    tools: ['clamp ferrite'],
    id: 'test-with-clamp',
    title: 'The clamp ferrite',
    inShort: 'Snapped on without opening anything: it finds the cable and tells the mode.',
    words: ['ferrite', 'clip-on', 'snap-on', 'choke', 'bead', 'core', 'toroid'],
    set: [
      ['Range', `${ohms(low)} to ${ohms(high)} each at ${hertz(CLAMP_FERRITE.atHz)}; several in a row add up.`],
      ['Bandwidth', `From about ${hertz(CLAMP_FERRITE.usefulFromHz)}. Lower needs turns: they count by their square.`],
      [
        'Where',
        'Close to the victim over the whole cable; then legs together; then each leg; then a quarter wave away.',
      ],
    ],
    pictures: [
      drawing('clamp-places'),
      {
        is: 'rows',
        rows: [
          {
            label: 'It helps',
            text: `Around ${ohms(high)} in a loop of ${ohms(LOW_LOOP_OHM)} takes ${falls(LOW_LOOP_OHM)}; in a loop of ${ohms(HIGH_LOOP_OHM)} only ${falls(HIGH_LOOP_OHM)}.`,
          },
          {
            label: 'No change',
            text: 'High loop, wrong cable, wrong mode, or below its band. It rules out nothing alone.',
          },
        ],
      },
    ],
    fools: [
      'Where a cable resonates, one place does everything and the next nothing: use two.',
      'Halves that do not close tightly are worth a tenth.',
      'Over one supply wire it saturates. Over supply and return together it does not.',
      'A little worse with it on is a resonance, and still says: this cable.',
    ],
    never: ['Left on afterwards: count them out and in.'],
    cautions: ['trial-not-for-flight'],
    links: [{ page: 'clamp-ferrites' }, { check: 'loop' }],
  }
}

function handheld(): Instrument {
  const [near, far] = HANDHELD.walkM
  return {
    tools: ['handheld receiver'],
    id: 'test-with-handheld-receiver',
    title: 'The handheld receiver',
    inShort: 'On its own battery, outside: it hears what radiates, and where from.',
    words: ['portable radio', 'handheld', 'sniffer', 'walk around', 'direction'],
    set: [
      ['Range', 'A weak channel near the one that suffers, squelch open, volume fixed.'],
      ['Bandwidth', 'Same modulation as the victim. Amplitude modulation hears sparks and converters.'],
      ['Coupling', 'Short antenna first, then a probe loop of one turn close to a lamp or a box.'],
      [
        'Where',
        `On a walk around ${metres(near)} to ${metres(far)} from the skin. Stay outside the propeller arc, never under a turning rotor.`,
      ],
    ],
    pictures: [
      drawing('receiver-walk'),
      {
        is: 'rows',
        rows: [
          { label: 'Tells', text: 'Louder to one lamp, to the cowling or to the hangar: that is the way.' },
          { label: 'Does not tell', text: 'The same everywhere: it comes from outside, or it does not radiate.' },
        ],
      },
    ],
    fools: [
      'Its gain control evens out loud and soft. Bring it down with a shorter antenna until the noise is just there.',
      'Your body turns the antenna: hold it the same way.',
      'The squelch that closes is not silence.',
    ],
    never: ['Transmitting, or any key on a distress channel.'],
    cautions: ['running-engine'],
    links: [{ page: 'sound-ignition' }, { page: 'sound-led-lighting' }],
  }
}

function spectrum(): Instrument {
  return {
    tools: ['phone spectrum'],
    id: 'test-with-spectrum',
    title: 'The spectrum view',
    inShort: 'Lines that move with the engine, steps that are equal, a floor that comes up.',
    words: ['spectrum analyser', 'spectrum analyzer', 'phone app', 'FFT', 'waterfall', 'audio spectrum'],
    set: [
      ['Range', 'Top of the screen just above the strongest; pre-amplifier off until you know nothing overloads.'],
      ['Bandwidth', 'The one the limit or the victim has, written down. Narrower lowers noise and leaves a line.'],
      [
        'Audio',
        `A telephone at the headset sees ${hertz(PHONE_AUDIO.fromHz)} to ${hertz(PHONE_AUDIO.toHz)}: two speeds of the engine, two pictures.`,
      ],
      ['Detector', 'Peak to find, the method’s own to judge.'],
      ['Where', 'Probe on the cable, or the antenna input through an attenuator. First everything off.'],
    ],
    pictures: [drawing('spectrum-shapes')],
    fools: [
      `A pad of ${decibels(RECEIVE_ATTENUATOR.db)} in front, and a line falls by more than that: the analyser made it itself.`,
      'A raised floor with everything off is the analyser’s own.',
      'A telephone filters voice: hum and high whistles may be missing.',
      'Two sweeps differ where a source comes and goes: hold the maximum for some time.',
    ],
    cautions: ['running-engine', 'antenna-load'],
    links: [{ check: 'trace' }, { check: 'tone' }, { check: 'harmonics' }],
  }
}

export const CLAMPED_INSTRUMENTS = (): readonly Instrument[] => [currentProbe(), clamp(), handheld(), spectrum()]
