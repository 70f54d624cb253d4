export { readNetlist } from './netlist/read-netlist.ts';
export { parseEngineering } from './netlist/engineering.ts';
export { BEHAVIOURS } from './netlist/read-part.ts';
export type { Netlist, NetlistProblem, NetlistResult, Part } from './netlist/types.ts';
export { netCurrents } from './net-currents.ts';
export { asWritten, compileCircuit, type Circuit } from './compile.ts';
export type { Conditions } from './devices/bank.ts';
export { CircuitError } from './circuit-error.ts';
export { DEFAULT_EFFORT, type Effort } from './effort.ts';
export { operatingPoint, type NoConvergence, type OperatingPoint, type Solution } from './operating-point.ts';
export { currentOut, measure, type MeasureOptions, type MeterReading, type MeterRequest } from './meter/measure.ts';
export {
  HANDHELD_METER,
  meterError,
  rangeFor,
  standardUncertainty,
  type DrivenRange,
  type MeterMode,
  type MeterProfile,
  type MeterRange,
} from './meter/meter-profile.ts';
export { CLOSED_CONTACT_OHM, inPowerState, isSupply, UNPOWERED, type PowerState } from './meter/power-state.ts';
export { applyFaults, type FaultedNetlist } from './faults/apply-faults.ts';
export { pathOfFault, type FaultPath } from './faults/path-of-fault.ts';
export { atSeverity } from './faults/at-severity.ts';
export { componentsOf, isRegion, refOf, type Component, type Role } from './faults/components.ts';
export type { Change, CircuitFault, CircuitFaultKind } from './faults/fault.ts';
export { BRIDGE_GAP_MM, faultUniverse, LEAK_GAP_MM, type UniverseOptions } from './faults/fault-universe.ts';
export { isInside, type LiquidRegion, type Pad, type Placement } from './faults/placement.ts';
export { BRIDGE_RATE, FAULT_RATES, FAULT_VALUES, LIQUID_LEAK_RATE } from './faults/rates.ts';
export { drawBoards, TOLERANCES, type Draw } from './simulate/draws.ts';
export type { FaultSet, LeadsAt } from './simulate/faulted-board.ts';
export type { UnpoweredPoint } from './simulate/point-meter.ts';
export { powered, SIMULATION_EFFORT, type PoweredOptions, type PoweredPoint } from './simulate/powered.ts';
export type { Simulated } from './simulate/simulated.ts';
export { unpowered, type UnpoweredOptions } from './simulate/unpowered.ts';
