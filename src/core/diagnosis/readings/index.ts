export { believeReadings, type BelieveOptions } from './believe-readings.ts';
export type { Baseline, ReadingEvidence, SimulatePairs, Stretch } from './evidence.ts';
export { faultGroups, groupOfRows, type FaultGroup } from './fault-groups.ts';
export { fillRow, kernelsOf, type Kernels } from './kernels.ts';
export {
  CHANGE_MINUTES,
  nextReadings,
  type BenchState,
  type NextReadings,
  type RankedReading,
  type ReadingChoice,
  type ReadingOutcome,
} from './next-readings.ts';
export { outcomeBands, type OutcomeBands } from './outcome-bands.ts';
export type { ReadingBelief } from './reading-belief.ts';
export type { MeterLimit, ReadingDictionary, ReadingFault, ReadingPoint } from './reading-dictionary.ts';
export { mendingOf, quickRow, worthByRow, type Mending } from './mending.ts';
export { assertReadingBelief } from './assert-reading-belief.ts';
export { repeatReading, type RepeatedReading } from './repeat-reading.ts';
