/** The cautions, in our own words. Checks, questions and outcomes name them by id; the wording stands only here. */

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
  'live 115 V AC and live 270 V DC',
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
    text: 'Before a connector is opened or an adapter fitted: power off and tagged, capacitors discharged through a resistor, then measured dead. Never mate or part a connector with power on it.',
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
    text: 'Fitting a trial value, even on the ground, needs the leave of the certifying staff or test conductor responsible for this aircraft or rig. It comes off again afterwards.',
  },
  'permanent-approved': {
    title: 'Permanent means approved data',
    text: 'An in-line adapter that stays is a design change. It needs approved data even if no box is opened.',
  },
  'lightning-hirf-fuel': {
    title: 'Compliance changes with the part',
    text: 'A filter or suppressor changes how the installation meets lightning, HIRF and fuel-tank safety. Have that assessed before it becomes permanent.',
  },
  hipot: {
    title: 'Insulation and high-pot tests',
    text: 'Isolate filtered and suppressed contacts before an insulation or high-pot test, unless the procedure says otherwise. A capacitor or a suppressor reads as a fault there, and can be damaged.',
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
  screening: {
    title: 'A screening estimate',
    text: 'These figures are a screening estimate, not approved data. The maintenance manual, the approved data of the type, local codes and the certifying staff decide.',
  },
  'bench-figure': {
    title: 'The 50 Ω figure is a bench figure',
    text: 'Attenuation between 50 Ω and 50 Ω compares parts on a bench. It does not predict what the part does in this circuit.',
  },
  'lethal-voltage': {
    title: 'This line can kill',
    text: '115 V AC and 270 V DC are lethal, and DC capacitors hold the charge. Work on paper; measure only with the equipment, training and second person your procedure asks for.',
  },
  'low-pressure': {
    title: 'Thin air breaks down sooner',
    text: 'Air breaks down at 327 V peak at the worst gap and pressure. A part that passes at sea level can flash over in an unpressurised bay: solid filling, more spacing, a test at altitude pressure.',
  },
  'matched-legs': {
    title: 'Keep both legs alike',
    text: 'Unequal capacitors on the two legs turn common-mode noise into signal. Use a matched pair, and never leave one leg of a pair filtered alone.',
  },
  'transmitter-hazard': {
    title: 'Before you key a transmitter',
    text: 'Check the radiation distance, refuelling and people near the antenna before keying. Test an ELT only in its legal window.',
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
