export { assertReckoning } from './assert-reckoning.ts';
export { ReworkError } from './rework-error.ts';
export type { Reckoning } from './reckoning.ts';
export { FOILS, foilThickness, type Foil } from './conductors/foil.ts';
export {
  COPPER,
  copperResistivity,
  dropOf,
  FOIL_ABOVE_STANDARD,
  sheetResistance,
  trackResistance,
  type Track,
} from './conductors/copper.ts';
export { awgDiameter, awgOf, sectionOf, wireResistance } from './conductors/awg.ts';
export {
  IPC_2221,
  trackArea2152,
  trackCurrent2152,
  trackCurrent2221,
  trackWidth2221,
  type Layer,
  type TrackSection,
} from './conductors/track-current.ts';
export { onderdonkFusing, preeceFusing } from './conductors/fusing.ts';
export { wireFor, type WireChoice, type WireWish } from './conductors/wire-for.ts';
export { eSeries, nearestInSeries, SERIES, seriesOf, type Series } from './codes/e-series.ts';
export { EIA_96, readResistorCode, type CodeAnswer, type CodeReading } from './codes/read-resistor-code.ts';
export { readCapacitorCode, voltsOfCode } from './codes/read-capacitor-code.ts';
export { SMALL_TOLERANCES, TOLERANCES } from './codes/tolerance.ts';
export { DIELECTRICS } from './codes/dielectrics.ts';
export { chipSize, chipSizeMeasured, type ChipSize, type ChipSizeAnswer } from './codes/chip-size.ts';
export { dividerVolts, ledResistor, type Divider, type LedResistor } from './divider.ts';
export { runTimeHours, type RunTime } from './run-time.ts';
export { ALLOYS, workTemperatures, type Alloy, type WorkTemperatures } from './alloys.ts';
export {
  HEAT_PROFILES,
  judgeHeat,
  timeWhere,
  type HeatLimit,
  type HeatLimitId,
  type HeatProfile,
  type HeatSample,
  type HeatVerdict,
} from './heat-log.ts';
export { CHEMISTRIES, type Chemistry, type ChemistryId } from './chemistries.ts';
export { CELL_LIMITS, cellShipping, type CellShipping } from './cell-shipping.ts';
export { judgeCharge, type ChargeAnswer, type ChargeJudged, type ChargeQuestion } from './charge/judge-charge.ts';
export { countCharge, type Charge } from './charge/count-charge.ts';
export { twoLoadResistance, type LoggedResistance } from './charge/two-load-resistance.ts';
export type { Phase, PhaseKind } from './charge/phases.ts';
export type { Alarm, AlarmKind } from './charge/alarms.ts';
export type { Reason, Verdict, Verdicts } from './charge/verdicts.ts';
export type { ChargeSample, Gap } from './charge/sample.ts';
export { readLog, type LogGuess, type LogRefusal, type LogRow, type LogWish, type ReadLog, type SplitRows } from './logs/read-log.ts';
export type { Column, Role } from './logs/columns.ts';
export type { ClockNote } from './logs/mend-clock.ts';
export { measureTone, type Tone, type ToneAnswer } from './sound/measure-tone.ts';
export { againstReference, type ToneDifference } from './sound/against-reference.ts';
export { readWav, type Wav } from './sound/read-wav.ts';
