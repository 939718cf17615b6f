/** Input keys an outcome may prefill, per check that exists. A check that is not here has no link yet. */
import type { CheckId } from '../calc/types.ts'

const words = (text: string): readonly string[] => text.split(' ')

/** Keys of the address contract: permanent once landed. */
export const CHECK_KEYS: Partial<Readonly<Record<CheckId, readonly string[]>>> = {
  filter: words(
    'topology capacitanceF capacitance2F inductanceH inductance2H esrOhm eslH dcrOhm inductorParallelOhm inductorParallelF sourceOhm sourceH loadOhm loadF loadH bondOhm bondH frequencyHz',
  ),
  need: words('measuredDb limitDb marginDb'),
  window: words(
    'lineKind mode topology frequencyHz neededDb sourceOhm sourceH loadOhm loadF loadH inductanceH eslH esrOhm bondOhm bondH toleranceFrac temperatureFrac biasFrac ageingDecades ageingFracPerDecade suppressorF existingF crossF bitRateHz driverEdgeSec navyRule loadW maxBuildableF',
  ),
  loading: words('lineKind capacitanceF crossF inductanceH suppressorF existingF bitRateHz driverEdgeSec'),
  pair: words('capacitanceF capacitance2F legOhm frequencyHz'),
  surge: words(
    'waveform level openCircuitV sourceOhm lineOhm lineH suppressorLeadH topology placement capacitanceF capacitance2F inductanceH inductance2H dcrOhm loadOhm loadF standoffV breakdownV dynamicOhm bidirectional ratedPulseW ambientC suppressorF withstandV capacitorWithstandV busMaxV busSourceOhm derateZeroC decayQ ringHz peakSec halfSec polarity lineKind seriesCount',
  ),
  power: words('workingRmsV supplyHz capacitanceF lineCount loadW navyRule wiringOhm wiringH bleedOhm'),
}
