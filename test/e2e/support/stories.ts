/** The checks as a user fills them in: what a page holds when its answer is asked for. */

export type Story = {
  readonly name: string
  readonly hash: string
  /** most screens of 800 px the page may take */
  readonly mostScreens: number
}

export const STORIES: readonly Story[] = [
  {
    name: 'a bus with a capacitor',
    hash: '#/check/loading?lineKind=can&bitRateHz=500k&capacitanceF=10n',
    mostScreens: 2,
  },
  { name: 'the ceiling of a fast port', hash: '#/check/loading?lineKind=ethernet-100base-tx', mostScreens: 2 },
  {
    name: 'a transmitter on a data line',
    hash: '#/check/window?lineKind=arinc-429-high&frequencyHz=12M&neededDb=20&sourceOhm=150&loadOhm=12k',
    mostScreens: 3,
  },
  {
    name: 'a pulse on a supply, no suppressor yet',
    hash: '#/check/surge?waveform=wf4&level=3&lineKind=power-28-vdc&withstandV=100',
    mostScreens: 3.5,
  },
  {
    name: 'a pulse on a supply with a suppressor',
    hash: '#/check/surge?waveform=wf4&level=3&lineKind=power-28-vdc&supplyCategory=do160-a&standoffV=40&ratedPulseW=1500&withstandV=100&loadOhm=1k',
    mostScreens: 3.5,
  },
  {
    name: 'a reading against a limit',
    hash: '#/check/need?measuredDb=105.0&limitDb=76.4639&marginDb=6',
    mostScreens: 2,
  },
  {
    name: 'unequal legs',
    hash: '#/check/pair?capacitanceF=1.2n&capacitance2F=0.8n&legOhm=50&frequencyHz=1M',
    mostScreens: 2,
  },
  {
    name: 'a filter on a supply',
    hash: '#/check/power?workingRmsV=115&supplyHz=400&capacitanceF=20n&lineCount=1&chassisLimitA=50m',
    mostScreens: 2,
  },
  {
    name: 'a filter at a frequency',
    hash: '#/check/filter?topology=LC&capacitanceF=10n&inductanceH=2.2u&sourceOhm=5&loadOhm=1k&frequencyHz=10M',
    mostScreens: 2,
  },
]
