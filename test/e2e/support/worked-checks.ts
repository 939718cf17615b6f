/** One worked example for every check, with the outside figure it must come to. Write `+` and `;` as people would. */

export type Worked = {
  /** the query of the address */
  readonly query: string
  readonly expected: readonly {
    readonly key: string
    readonly si: number
    /** as far as the source prints it */
    readonly within: number
    readonly source: string
  }[]
}

export const WORKED: Readonly<Record<string, Worked>> = {
  filter: {
    query:
      'topology=LC&capacitanceF=10n&inductanceH=2.2u&sourceOhm=5&loadOhm=1k&frequencyHz=10M&esrOhm=0.02&eslH=0.5n&dcrOhm=0.02&inductorParallelOhm=5k&inductorParallelF=3p&bondOhm=0&bondH=0',
    expected: [
      {
        key: 'insertionLossDb',
        si: 39.049322,
        within: 1e-6,
        source: 'ngspice, circuit F06 of test/golden/ngspice-filters.json, 10 MHz',
      },
    ],
  },
  need: {
    query: 'measuredDb=105.0&limitDb=76.4639&marginDb=6',
    expected: [
      { key: 'neededDb', si: 34.5361, within: 1e-9, source: '115 V lead at 150 kHz, 105.0 − 76.4639 + 6, by hand' },
    ],
  },
  window: {
    query:
      'lineKind=power-115-vac-400&topology=C&frequencyHz=150k&neededDb=34.5361&sourceOhm=50&loadOhm=50&toleranceFrac=0 %25&temperatureFrac=0&biasFrac=0&ageingDecades=0&esrOhm=0&eslH=0&bondOhm=0&bondH=0',
    expected: [
      {
        key: 'leastCapacitanceF',
        si: 2.26213e-6,
        within: 1e-11,
        source: 'closed form √(10^(A/10) − 1)/(2π·f·Rs∥Rl), worked example of test/golden/filters-published.json',
      },
    ],
  },
  loading: {
    query: 'lineKind=arinc-429-high&capacitanceF=2n',
    expected: [
      { key: 'differentialF', si: 1e-9, within: 1e-18, source: 'C_dm = C/2 for equal legs' },
      {
        key: 'edgeSec',
        si: 1.509e-6,
        within: 5e-10,
        source: '√((1.5 µs)² + (ln 9 · 75 Ω · 1 nF)²) = 1.50903 µs, by hand from the nominal edge of ARINC 429',
      },
    ],
  },
  pair: {
    query: 'capacitanceF=1.2n&capacitance2F=0.8n&legOhm=50&frequencyHz=1M',
    expected: [
      { key: 'conversionDb', si: -18.8589, within: 5e-5, source: 'worked example of test/golden/pair.json' },
      { key: 'worstConversionDb', si: -13.9794, within: 5e-5, source: '20·log10(0.4/2.0)' },
      { key: 'worstHz', si: 3.248737e6, within: 0.5, source: '1/(2π·50 Ω·√(1.2 nF · 0.8 nF))' },
    ],
  },
  power: {
    query: 'workingRmsV=115&supplyHz=400&capacitanceF=20n&lineCount=1',
    expected: [{ key: 'currentRmsA', si: 5.78053e-3, within: 5e-9, source: '2π·400 Hz·20 nF·115 V, by hand' }],
  },
  surge: {
    query:
      'waveform=wf4&level=4&breakdownV=34.4&dynamicOhm=0.3323263&bidirectional=false&loadOhm=10k&suppressorLeadH=0&topology=none&withstandV=100&ambientC=25',
    expected: [
      {
        key: 'suppressorPeakV',
        si: 78.996,
        within: 0.009,
        source: 'ngspice, circuit R1 of test/golden/surge-decks.json',
      },
      { key: 'peakA', si: 134.19, within: 0.015, source: 'ngspice, circuit R1' },
      { key: 'energyJ', si: 0.65374, within: 8e-5, source: 'ngspice, circuit R1' },
    ],
  },
  trace: {
    query:
      'traceHz=100k;150k;500k&traceDb=60;105;50&traceUnit=dbuv&limit=ce102-base&nominalV=115&marginDb=6&bandwidthHz=10k&detector=peak&emission=narrowband',
    expected: [
      {
        key: 'neededDb',
        si: 34.5361,
        within: 5e-5,
        source: '115 V lead at 150 kHz: 105.0 − (94 − 20.0121·log10 15 + 6) + 6, by hand',
      },
      { key: 'worstExcessDb', si: 28.5361, within: 5e-5, source: 'the same without the margin' },
      { key: 'worstAtHz', si: 150e3, within: 1e-6, source: 'as entered' },
    ],
  },
  loop: {
    query: 'clampOhm=100&fallDb=9.5424&firstF=1n&firstDb=6&readAtHz=120M',
    expected: [
      { key: 'loopOhm', si: 50, within: 1e-3, source: '20·log10(1 + 100/50) = 9.5424 dB, by hand' },
      {
        key: 'parallelOhm',
        si: 2.29,
        within: 5e-3,
        source: '1 nF that gives 6 dB at 120 MHz stands against 2.29 Ω: √(10^(6/10) − 1)/(2π·120 MHz·1 nF)',
      },
    ],
  },
  trial: {
    query:
      'steps=bare;empty;100p;1n;10n;empty;bare&noise=%3Bsame;same;gone;gone;same;same&signal=%3B%3Bgood;good;good&adapterFrac=0',
    expected: [
      { key: 'provenLeastF', si: 1e-9, within: 1e-18, source: 'smallest that cleared, adapters as marked' },
      { key: 'provenMostF', si: 10e-9, within: 1e-17, source: 'largest without harm, adapters as marked' },
      { key: 'notClearedF', si: 100e-12, within: 1e-19, source: 'largest that did not clear' },
    ],
  },
  harmonics: {
    query: 'fundamentalHz=121.175M&waveforms=transmitter',
    expected: [
      { key: 'productHz', si: 1575.275e6, within: 1, source: '13 × 121.175 MHz, by hand' },
      { key: 'exactHz', si: 121.18615e6, within: 10, source: '1575.42 MHz / 13, by hand' },
    ],
  },
  tone: {
    query: 'toneHz=2400&pulses=6',
    expected: [{ key: 'predictedHz', si: 2400, within: 1e-9, source: 'six pulses in each period of 400 Hz' }],
  },
  resonance: {
    query: 'capacitanceF=10n&inductanceH=10n',
    expected: [{ key: 'partHz', si: 15.9155e6, within: 50, source: '1/(2π·√(10 nH · 10 nF)), by hand' }],
  },
}

/** The hash of a worked example. */
export const workedHash = (id: string): string => `#/check/${id}?${WORKED[id]?.query ?? ''}`
