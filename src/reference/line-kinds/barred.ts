/** Lines in which nobody fits a trial part: the triage stops with the reason. */
import { DERIVED, memory, PRACTICE } from './cite.ts'
import type { Citation, LineKind } from './types.ts'

type BarredRow = Pick<LineKind, 'id' | 'name' | 'aliases' | 'isPair'> & {
  readonly why: string
  readonly notes: readonly string[]
  readonly sources: readonly [Citation, ...Citation[]]
}

const barred = ({ why, ...row }: BarredRow): LineKind => ({
  ...row,
  family: 'barred',
  barredWhy: why,
  loading: { rule: 'none', why },
  loadingSource: PRACTICE,
  permitted: [],
})

export const BARRED_KINDS: readonly LineKind[] = [
  barred({
    id: 'pyrotechnic',
    name: 'Pyrotechnic, fire-bottle or ejection cartridge',
    aliases: ['squib', 'EED', 'pyro', 'fire bottle', 'ejection', 'cartridge', 'initiator', 'bridgewire'],
    isPair: true,
    why: 'No field trial on a firing line: stray current can fire it. Only the design authority touches it.',
    notes: [
      'Bridgewire about 1 Ω, no-fire class 1 A and 1 W; interference margin 16.5 dB (MIL-STD-464) or 20 dB (MIL-E-6051D). From memory.',
    ],
    sources: [memory('R37'), memory('mil-std-464'), memory('mil-std-6051')],
  }),
  barred({
    id: 'fuel-quantity',
    name: 'Fuel quantity or other fuel-tank wiring',
    aliases: ['fuel', 'FQIS', 'fuel probe', 'fuel tank', 'fuel level', 'quantity indication'],
    isPair: true,
    why: 'No field trial on fuel-tank wiring. Its energy is limited for safety. It is a capacitance gauge, so one picofarad matters.',
    notes: [
      'Energy and current limits of the AC 25.981-1 family apply (from memory); changes are controlled design limits.',
    ],
    sources: [memory('ac-25-981'), PRACTICE],
  }),
  barred({
    id: 'engine-control',
    name: 'Engine control or governor, speed pick-ups included',
    aliases: ['FADEC', 'EEC', 'engine control', 'governor', 'throttle', 'N2 speed signal', 'torque motor'],
    isPair: true,
    why: 'No field trial on an engine control or governor signal. Added capacitance can change the counted speed and the power.',
    notes: [
      'Radio fields on a governor’s speed signal have closed a throttle (case C01). The cure is an approved design change.',
    ],
    sources: [PRACTICE, { id: 'C01', standing: 'read' }],
  }),
  barred({
    id: 'flight-control',
    name: 'Flight control or autopilot servo',
    aliases: ['fly-by-wire', 'flight control', 'autopilot servo', 'trim', 'stabilator', 'actuator', 'yaw damper'],
    isPair: true,
    why: 'No field trial on a flight control: a changed signal can move a surface.',
    notes: ['The cure is a design change with approved data.'],
    sources: [PRACTICE],
  }),
  barred({
    id: 'stall-warning',
    name: 'Stall warning or stick shaker',
    aliases: ['stall', 'stick shaker', 'stick pusher', 'angle of attack', 'AOA', 'stall horn'],
    isPair: false,
    why: 'No field trial on stall warning: it must speak when it is needed.',
    notes: ['Its buzzer can be the source of noise: find that with breakers on the ground, by the manual (case C17).'],
    sources: [PRACTICE, { id: 'C17', standing: 'read' }],
  }),
  barred({
    id: 'fire-detection',
    name: 'Fire or smoke detection',
    aliases: ['fire detection', 'fire loop', 'smoke detector', 'overheat loop', 'fire wire'],
    isPair: false,
    why: 'No field trial on fire detection. It must not fail silent, and some loops measure capacitance.',
    notes: ['Only by the maintenance manual and approved data.'],
    sources: [PRACTICE],
  }),
  barred({
    id: 'magneto-lead',
    name: 'Magneto P-lead or ignition exciter',
    aliases: ['magneto', 'P-lead', 'ignition', 'exciter', 'mag switch', 'spark', 'igniter'],
    isPair: false,
    why: 'No field trial on a magneto lead. An open P-lead leaves the magneto hot, and capacitance changes the spark.',
    notes: [
      'Sparks per second are rpm/60 × cylinders/2: at 2400 rpm 80 for four cylinders, 120 for six. 200 to 400 V on the primary.',
      'The cure is the shield and its ends.',
    ],
    sources: [PRACTICE, DERIVED],
  }),
  barred({
    id: 'strobe-high-voltage',
    name: 'Strobe high voltage',
    aliases: ['strobe', 'flash tube', 'anti-collision', 'HV', 'strobe power supply'],
    isPair: false,
    why: 'No field trial on strobe high voltage. Some 400 to 600 V stays stored after switching off.',
    notes: ['Work on the supply’s 28 V input and on its cable shield instead.'],
    sources: [PRACTICE],
  }),
  barred({
    id: 'antenna-coax',
    name: 'Antenna coax',
    aliases: ['antenna', 'coax', 'RF', 'VHF antenna', 'GPS antenna', 'transponder coax', '50 ohm'],
    isPair: false,
    why: 'Never a filter contact in an antenna line: it carries the wanted signal and the transmitter’s power. Use a coaxial filter made for the band.',
    notes: [
      'A return loss of 20 dB leaves almost nothing: ADF 366 pF, HF 21 pF, VHF COM 4.7 pF, glideslope 1.9 pF, DME 0.53 pF, GNSS L1 0.41 pF.',
      'A VHF transmitter of 10 to 25 W puts 22 to 35 Vrms on 50 Ω.',
    ],
    sources: [DERIVED, PRACTICE],
  }),
  barred({
    id: 'intrinsically-safe',
    name: 'Intrinsically safe circuit',
    aliases: ['intrinsically safe', 'IS circuit', 'barrier', 'hazardous area', 'explosive atmosphere'],
    isPair: false,
    why: 'No field trial on an intrinsically safe circuit. Added capacitance stores energy the safety case does not allow.',
    notes: ['Its capacitance and inductance are part of its certificate.'],
    sources: [PRACTICE],
  }),
]
