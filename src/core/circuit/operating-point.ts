import { asWritten, type Circuit } from './compile.ts';
import type { Conditions } from './devices/bank.ts';
import { DEFAULT_EFFORT, type Effort } from './effort.ts';
import { PointSolver, type Way } from './point-solver.ts';

export interface OperatingPoint {
  readonly ok: true;
  /** Unknowns as `Circuit` numbers them, V and A. */
  readonly x: Float64Array;
  readonly iterations: number;
  /** The way that led there. */
  readonly by: Way;
}

export interface NoConvergence {
  readonly ok: false;
  readonly code: 'no-convergence' | 'singular';
  readonly iterations: number;
  /** The unknown that moved most in the last step, by name of its node, or "a branch current". */
  readonly worst: string;
}

export type Solution = OperatingPoint | NoConvergence;

/**
 * The state of the circuit at rest: node voltages and branch currents where all currents balance (modified nodal analysis, Ho, Ruehli & Brennan 1975;
 * Newton with junction limiting and bounded steps). `start` is a guess, best the answer of a like circuit. Where plain Newton fails: shunts
 * to ground that are taken away step by step, then sources that are turned up, then a damped walk in pseudo-time.
 * No convergence is an answer: `{ok: false}`.
 */
export function operatingPoint(
  circuit: Circuit,
  conditions: Conditions = asWritten(circuit.netlist),
  start?: Float64Array,
  effort: Effort = DEFAULT_EFFORT,
): Solution {
  const solver = new PointSolver(circuit, effort);
  if (solver.solve(conditions, start)) return { ok: true, x: solver.x, iterations: solver.iterations, by: solver.way };
  return noConvergence(circuit, solver);
}

/** Why a solver found nothing. */
export function noConvergence(circuit: Circuit, solver: PointSolver): NoConvergence {
  const worst = circuit.netlist.nodes[solver.worst] ?? 'a branch current';
  return { ok: false, code: solver.singular ? 'singular' : 'no-convergence', iterations: solver.iterations, worst };
}
