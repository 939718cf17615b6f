/**
 * Input keys an outcome may prefill, per check that exists. A check that is not here has no link yet.
 * Rewritten from the checks by test/addresses.test.ts; a copy, so that linting a guide does not load every check.
 */
import type { CheckId } from '../calc/types.ts'

const words = (text: string): readonly string[] => text.split(' ')

/** Keys of the address contract: permanent once landed. */
export const CHECK_KEYS: Partial<Readonly<Record<CheckId, readonly string[]>>> = {
  filter: words(
    'topology capacitanceF capacitance2F inductanceH inductance2H sourceOhm loadOhm frequencyHz neededDb lineKind mode esrOhm eslH dcrOhm inductorParallelOhm inductorParallelF inductorResonanceHz sourceH loadF loadH bondOhm bondH toleranceFrac dielectric voltageFrac caseSize temperatureFrac biasFrac ageingDecades ageingFracPerDecade saturationFrac saturationA lineA beadHz beadOhm beadReactanceOhm beadImpedanceOhm beadBiasFrac dampOhm dampF chokeH chokeLeakageH chokeMismatchFrac chokeOhm chokeF chokeSide chokeWires',
  ),
  harmonics: words('fundamentalHz offFrac waveforms riseSec victimHz widthHz'),
  loading: words(
    'lineKind capacitanceF crossF inductanceH topology suppressorF existingF nodeCount bitRateHz driverEdgeSec signalOhm ownCeilingF usefulHz ownLossDb ownPhaseDeg toleranceFrac temperatureFrac biasFrac ageingDecades ageingFracPerDecade chokeH chokeLeakageH chokeWires',
  ),
  loop: words(
    'clampOhm fallDb currentDb voltageDb firstF firstDb secondF secondDb readAtHz offDb higherEnd steps noise places adapterFrac leadH lineKind',
  ),
  need: words('measuredDb limitDb marginDb impedanceOhm'),
  pair: words(
    'capacitanceF capacitance2F legOhm frequencyHz chokeH chokeLeakageH chokeMismatchFrac chokeOhm chokeF chokeWires',
  ),
  power: words(
    'workingRmsV supplyHz capacitanceF crossF lineCount wiringOhm wiringH bleedOhm navyRule loadW chassisLimitA',
  ),
  resonance: words('seenHz cableM ends velocityFrac spacingM capacitanceF inductanceH strapH chassisF'),
  surge: words(
    'waveform level polarity surgeMode standoffV breakdownV ratedPulseW dynamicOhm withstandV topology placement capacitanceF capacitance2F inductanceH inductance2H dcrOhm capacitorWithstandV loadOhm loadF pairWithstandV insulationWithstandV busMaxV busMinV supplyCategory busSourceOhm lineKind existingF bitRateHz driverEdgeSec signalOhm ownCeilingF usefulHz ownLossDb ownPhaseDeg suppressorType suppressorPlace holdingA bidirectional seriesCount suppressorF suppressorLeadH ambientC derateZeroC toleranceFrac temperatureFrac biasFrac ageingDecades ageingFracPerDecade bundleLevel bundleShareFrac openCircuitV sourceOhm peakSec halfSec ringHz decayQ lineOhm lineH',
  ),
  tone: words('toneHz offFrac rpm driveRatio polePairs cylinders bars busHz pulses'),
  trace: words(
    'traceHz traceDb traceUnit limit nominalV marginDb bandwidthHz detector emission clamp impedanceOhm ownHz ownDb ownUnit ownSide ownBandwidthHz ownDetector traceRowCount traceSettledFor',
  ),
  trial: words(
    'lineKind steps noise signal places repeats times removed neededDb readAtHz offDb adapterFrac leadH sourceOhm loadOhm mode',
  ),
  window: words(
    'lineKind frequencyHz neededDb traceNeedHz traceNeedDb traceRowCount traceHeldFor sourceOhm loadOhm mode topology inductanceH suppressorF existingF nodeCount crossF bitRateHz driverEdgeSec signalOhm ownCeilingF usefulHz ownLossDb ownPhaseDeg toleranceFrac dielectric voltageFrac caseSize temperatureFrac biasFrac ageingDecades ageingFracPerDecade esrOhm eslH dcrOhm inductorParallelOhm inductorParallelF inductorResonanceHz bondOhm bondH sourceH loadF loadH saturationFrac saturationA lineA beadHz beadOhm beadReactanceOhm beadImpedanceOhm beadBiasFrac dampOhm dampF navyRule loadW chassisLimitA chokeH chokeLeakageH chokeMismatchFrac chokeOhm chokeF chokeSide chokeWires mostConversionDb trialLeastF trialMostF trialBelowF trialFromF sideReOhm sideImOhm maxBuildableF',
  ),
}
