/** The cautions, in our own words. Checks, questions and outcomes name them by id; the wording stands only here. */

import { SCREENING } from './screening.ts'

export type SafetyText = { readonly title: string; readonly text: string }

/** Circuits in which nobody fits a trial part, each as one line of a list. */
export const NO_TRIAL_LIST: readonly string[] = [
  'pyrotechnic, fire-bottle and ejection circuits',
  'fuel quantity and anything in or to a fuel tank',
  'engine control and governor speed pick-ups',
  'flight control',
  'stall warning and stick shaker',
  'magneto leads and ignition exciters',
  'strobe high voltage',
  'antenna coax',
  'live 115 V AC and live 270 V DC, and any live supply above 60 V DC or 30 V AC rms',
  'lines whose voltage is not known',
  'attitude, air data, landing guidance or radio height that can mislead without a flag',
  'landing gear, brakes and steering',
  'thrust reverser and propeller pitch',
  'electric trim and autopilot servos',
  'fire detection',
  'intrinsically safe circuits',
]

export const SAFETY_TEXTS = {
  'no-trial': {
    title: 'Never a trial part in these',
    text: `Do not fit a trial part in: ${NO_TRIAL_LIST.join('; ')}. Stop, make the aircraft safe, and go to the maintenance manual and the design authority.`,
  },
  'power-off': {
    title: 'Off, tagged, discharged, measured dead',
    text: 'A connector is opened or an adapter fitted only with power off and tagged. Before it, capacitors are discharged through a resistor and measured dead. Never mate or part a connector with power on it.',
  },
  'stored-charge': {
    title: 'Capacitors keep their charge',
    text: 'A filter on a DC line stays charged after power-off. Bleed it through a resistor, never with a screwdriver, and measure before you touch.',
  },
  breakers: {
    title: 'Breakers on the ground, by the manual',
    text: 'Pull breakers only on the ground, only those the manual allows, and collar them. Never pull one in flight to look for noise. One that tripped is not closed again until its cause is found.',
  },
  'trial-not-for-flight': {
    title: 'A trial adapter is not for flight',
    text: 'A trial adapter is a test tool. It comes off before the aircraft is released, and both fitting and removal are recorded.',
  },
  'trial-authority': {
    title: 'Whose leave it needs',
    text: 'Fitting a trial value needs leave, even on the ground. The certifying staff or test conductor responsible for this aircraft or rig gives it. It comes off again afterwards.',
  },
  'permanent-approved': {
    title: 'Permanent means approved data',
    text: 'An in-line adapter that stays is a design change. It needs approved data even if no box is opened.',
  },
  'lightning-hirf-fuel': {
    title: 'Compliance changes with the part',
    text: 'A filter or suppressor changes how the installation meets lightning, HIRF (high-intensity radiated fields) and fuel-tank safety. Have that assessed before it becomes permanent.',
  },
  hipot: {
    title: 'Insulation and high-pot tests',
    text: 'Isolate filtered and suppressed contacts before an insulation or high-pot test, unless the procedure says otherwise. A capacitor or a suppressor reads as a fault there. It can be damaged.',
  },
  'after-strike': {
    title: 'After a lightning strike',
    text: 'Suspect every suppressor. One that failed short shows at once; one that failed open does not, and protects nothing.',
  },
  'chassis-capacitance': {
    title: 'Capacitance to chassis',
    text: 'A capacitor to chassis defeats an isolated return and can trip a ground-fault device. Add up every line of the box, on every phase.',
  },
  'ok-bounds': {
    title: 'What “ok” means',
    text: '“Ok” means inside the bounds that were entered. Facts that were not entered are listed beside it and were not judged.',
  },
  screening: SCREENING,
  'bench-figure': {
    title: 'The 50 Ω figure is a bench figure',
    text: 'Attenuation between 50 Ω and 50 Ω compares parts on a bench. It does not predict what the part does in this circuit.',
  },
  'lethal-voltage': {
    title: 'This line can kill',
    text: '115 V AC and 270 V DC are lethal, and DC capacitors hold the charge. Work on paper. Measure only with the equipment, training and second person your procedure asks for.',
  },
  'low-pressure': {
    title: 'Thin air breaks down sooner',
    text: 'Air breaks down at 327 V peak at the worst gap and pressure. A part that passes at sea level can flash over in an unpressurised bay. Solid filling, more spacing, a test at altitude pressure.',
  },
  'matched-legs': {
    title: 'Keep both legs alike',
    text: 'Unequal capacitors on the two legs turn common-mode noise into signal. Use a matched pair, and never leave one leg of a pair filtered alone.',
  },
  'transmitter-hazard': {
    title: 'Before you key a transmitter',
    text: 'Check the radiation distance, refuelling and people near the antenna before keying. An emergency beacon on 121.5 or 243 MHz is tested only in its legal window. A 406 MHz beacon is never live: the maker’s self-test, or a screened room.',
  },
  'key-down': {
    title: 'Key short, low, and nowhere near distress',
    text: 'Listen first. Key short and at low power, never on or near 121.5, 243, 156.525 or 156.8 MHz, nor on an HF distress channel. No keying with stores or explosive devices loaded. People and fuel stay clear.',
  },
  'running-engine': {
    title: 'Nobody listens beside a running engine',
    text: 'Propeller, rotor, intake and exhaust kill. With an engine running, test from the cockpit or from outside the arc, with a second person watching.',
  },
  'milliohm-fuel': {
    title: 'Milliohm testers near fuel',
    text: 'Near fuel or its vapour use only a tester approved for that zone. Its current is an ignition source.',
  },
  'high-voltage-map': {
    title: 'High-voltage mapping',
    text: 'Mapping static paths with a high-voltage wand is lethal work for trained staff only.',
  },
  'antenna-load': {
    title: 'A load on an antenna input',
    text: 'Use a rated 50 Ω load. A transmitter is never keyed into a small one. Active antennas need a DC block. Transponder, collision-avoidance and radio-altimeter ports are never loaded by hand.',
  },
  'battery-test': {
    title: 'A box on its own battery',
    text: 'Fused, polarity checked, ship’s feed open, nothing fed back into the bus. Only where case and minus are separate. Never feed a box in service out of its approved wiring.',
  },
  'no-back-probing': {
    title: 'No back-probing',
    text: 'Do not push a probe beside a contact. It spreads the contact, and that fault is the next complaint. Use the break-out box or a test lead of the right size.',
  },
} as const satisfies Readonly<Record<string, SafetyText>>

export type SafetyId = keyof typeof SAFETY_TEXTS

/** What every sheet that leaves this app carries, whatever its result. */
export const SHEET_CAUTIONS: readonly SafetyId[] = [
  'no-trial',
  'power-off',
  'breakers',
  'trial-authority',
  'trial-not-for-flight',
  'permanent-approved',
  'lightning-hirf-fuel',
  'hipot',
  'after-strike',
  'chassis-capacitance',
  'ok-bounds',
]

const IDS: ReadonlySet<string> = new Set(Object.keys(SAFETY_TEXTS))

/** Whether a text is the id of a caution. */
export const isSafetyId = (id: string): id is SafetyId => IDS.has(id)
