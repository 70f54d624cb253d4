import { CircuitError } from '../circuit-error.ts';
import { compileCircuit, type Circuit } from '../compile.ts';
import type { Conditions } from '../devices/bank.ts';
import { DEFAULT_EFFORT, type Effort } from '../effort.ts';
import { noConvergence, type NoConvergence } from '../operating-point.ts';
import { PointSolver } from '../point-solver.ts';
import type { Probe } from '../probe.ts';
import { HANDHELD_METER, meterError, type DrivenRange, type MeterMode, type MeterProfile } from './meter-profile.ts';
import { inPowerState, UNPOWERED, type PowerState } from './power-state.ts';

/** Where the leads are; the black one is on ground unless it is said. Nodes are named as in the netlist. */
interface MeterLeads {
  readonly red: string;
  readonly black?: string;
}

/**
 * What to measure. Resistance, junctions and continuity are measured on an unpowered board; `switches` may be set for them.
 * `amps` is what a supply gives into the board, as the meter of a bench supply shows it: without the burden of a meter in series.
 */
export type MeterRequest =
  | ({ readonly mode: 'volts'; readonly power: PowerState } & MeterLeads)
  | ({ readonly mode: 'ohms' | 'diode' | 'continuity'; readonly switches?: PowerState['switches'] } & MeterLeads)
  | { readonly mode: 'amps'; readonly supply: string; readonly power: PowerState };

export interface MeterReading {
  readonly ok: true;
  readonly mode: MeterMode;
  /** V, Ω, V of drop, Ω, A; null is OL. Exact: rounding to the last digit is left to whoever shows it. */
  readonly value: number | null;
  /** How far off the meter may be, ±; 0 where it shows OL. */
  readonly limit: number;
  /** Whether the sounder would sound; only for continuity. */
  readonly sounds?: boolean;
  /** The state of the circuit while it was measured, as a start for the next one. */
  readonly x: Float64Array;
}

/** A meter that measures one circuit: `start` is a guess of its state, `profile` the meter. */
export interface MeasureOptions {
  readonly start?: Float64Array;
  readonly profile?: MeterProfile;
}

/**
 * What the meter would show. Voltages are exact under the meter's own input resistance: it is in the circuit while that is solved. Resistance is
 * the voltage over the test current, with whatever junctions conduct, in the finest range that holds it. Throws CircuitError for unknown names.
 */
export function measure(
  circuit: Circuit,
  conditions: Conditions,
  request: MeterRequest,
  options: MeasureOptions = {},
): MeterReading | NoConvergence {
  const { profile = HANDHELD_METER } = options;
  const power = request.mode === 'volts' || request.mode === 'amps' ? request.power : { ...UNPOWERED, switches: request.switches ?? {} };
  const fed = inPowerState(circuit.netlist, conditions, power);
  if (request.mode === 'amps') return supplyCurrent(circuit, fed, request.supply, profile, options.start);
  const bench = new MeterBench(circuit, fed, request, request.mode === 'volts' ? DEFAULT_EFFORT : UNPOWERED_EFFORT, options.start);
  if (request.mode === 'volts') return bench.volts(profile);
  return request.mode === 'ohms' ? bench.ohms(profile) : bench.driven(profile, request.mode);
}

/** Effort on an unpowered board: shunts of 100 GΩ, so that a hundred nodes together still read as open, and steps that suit a few volts at most. */
export const UNPOWERED_EFFORT: Effort = { ...DEFAULT_EFFORT, shuntS: 1e-11, stepV: 0.4 };

class MeterBench {
  private readonly circuit: Circuit;
  private readonly solver: PointSolver;
  private readonly red: number;
  private readonly black: number;

  constructor(
    circuit: Circuit,
    private readonly conditions: Conditions,
    { red, black = '0' }: MeterLeads,
    effort: Effort,
    private start: Float64Array | undefined,
  ) {
    [this.red, this.black] = [unknownOf(circuit, red), unknownOf(circuit, black)];
    const free = this.red !== circuit.size && this.black !== circuit.size && this.red !== this.black;
    this.circuit = free ? compileCircuit(circuit.netlist, [[nameOf(circuit, this.red), nameOf(circuit, this.black)]]) : circuit;
    this.solver = new PointSolver(this.circuit, effort);
  }

  volts(profile: MeterProfile): MeterReading | NoConvergence {
    const { inputOhm } = profile.volts;
    return this.solve({ siemens: 1 / inputOhm, ampere: 0, complianceV: Infinity })
      ? this.reading(profile, 'volts', this.across())
      : this.failure();
  }

  ohms(profile: MeterProfile): MeterReading | NoConvergence {
    const { complianceV, ranges } = profile.ohms;
    for (const range of ranges) {
      if (!this.drive(range, complianceV)) return this.failure();
      const ohm = this.across() / range.testA;
      if (ohm <= range.upTo && this.across() <= complianceV) return this.reading(profile, 'ohms', ohm);
    }
    return this.reading(profile, 'ohms', null);
  }

  driven(profile: MeterProfile, mode: 'diode' | 'continuity'): MeterReading | NoConvergence {
    const { complianceV, ranges } = profile[mode];
    const [range] = ranges;
    if (!this.drive(range, complianceV)) return this.failure();
    const volt = this.across();
    const value = mode === 'diode' ? volt : volt / range.testA;
    const reading = this.reading(profile, mode, volt > complianceV || value > range.upTo ? null : value);
    return mode === 'continuity'
      ? { ...reading, sounds: reading.value !== null && reading.value < profile.continuity.closedBelowOhm }
      : reading;
  }

  private drive({ testA }: DrivenRange, complianceV: number): boolean {
    return this.solve({ siemens: 0, ampere: testA, complianceV });
  }

  private solve(meter: Omit<Probe, 'red' | 'black'>): boolean {
    const solved = this.solver.solve(this.conditions, this.start, { ...meter, red: this.red, black: this.black });
    if (solved) this.start = this.solver.x.slice();
    return solved;
  }

  private across(): number {
    return this.solver.x[this.red]! - this.solver.x[this.black]!;
  }

  private failure(): NoConvergence {
    return noConvergence(this.circuit, this.solver);
  }

  private reading(profile: MeterProfile, mode: MeterMode, value: number | null): MeterReading {
    return { ok: true, mode, value, limit: value === null ? 0 : meterError(profile, mode, value), x: this.solver.x };
  }
}

function supplyCurrent(
  circuit: Circuit,
  fed: Conditions,
  supply: string,
  profile: MeterProfile,
  start: Float64Array | undefined,
): MeterReading | NoConvergence {
  const part = circuit.partIndex.get(supply.toLowerCase());
  if (part === undefined) throw new CircuitError('unknown-name', `the netlist has no part "${supply}"`);
  const solver = new PointSolver(circuit, DEFAULT_EFFORT);
  if (!solver.solve(fed, start)) return noConvergence(circuit, solver);
  const value = currentOut(circuit, fed, part, solver.x);
  return { ok: true, mode: 'amps', value, limit: meterError(profile, 'amps', value), x: solver.x };
}

/** Current that a supply drives out of its plus end, A, at a state of the circuit. */
export function currentOut(circuit: Circuit, conditions: Conditions, part: number, x: Float64Array): number {
  const { kind, name, nodes, params, value } = circuit.netlist.parts[part]!;
  if (conditions.removed[part]) return 0;
  if (kind === 'V') return -x[circuit.currentOf.get(name.toLowerCase())!]!;
  if (kind === 'I') return -value * conditions.scale[part]!;
  if (kind !== 'BATTERY') throw new CircuitError('unknown-name', `${name} is not a supply`);
  const across = x[unknownOf(circuit, nodes[0]!)]! - x[unknownOf(circuit, nodes[1]!)]!;
  return (params['v']! * conditions.scale[part]! - across) / params['r']!;
}

/** The unknown of a node by name; ground is `circuit.size`. */
export function unknownOf(circuit: Circuit, node: string): number {
  const name = node.toLowerCase();
  if (name === '0' || name === 'gnd') return circuit.size;
  const unknown = circuit.nodeIndex.get(name);
  if (unknown === undefined) throw new CircuitError('unknown-name', `the netlist has no node "${node}"`);
  return unknown;
}

const nameOf = (circuit: Circuit, unknown: number): string => circuit.netlist.nodes[unknown]!;
