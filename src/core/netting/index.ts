export { netsOf, type Contradiction, type Link, type Net, type Nets, type PinNamed, type PinsJoined } from './nets-of.ts';
export { readNetName, type NetName } from './net-names.ts';
export { assertNets } from './assert-nets.ts';
export { netlistText, type WrittenNetlist, type WrittenPart } from './netlist-text.ts';
export {
  guessColumns,
  LENGTH_UNITS,
  PLACEMENT_FIELDS,
  type ColumnMapping,
  type GuessedColumns,
  type LengthUnit,
  type PlacementField,
} from './placement-columns.ts';
export { mapPlacement, type MappingDefaults, type TableRow, type UnreadCell } from './map-placement.ts';
export { mismatches, type DrawnPart, type LaidPart, type Mend, type Mismatch, type Sources, type Where } from './mismatches.ts';
export { tracedNetlist, type TracedNetlist, type TracedPart } from './traced-netlist.ts';
export { NettingError } from './netting-error.ts';
export { unknownLoadParts, type UnknownLoad } from './unknown-load.ts';
export { likelyMistakes, oddness, oddReadings, type Edit, type LikelyMistake, type SuspectNet } from './likely-mistakes.ts';
