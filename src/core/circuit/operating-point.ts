import { SparseLuError } from '../numeric/index.ts';
import { asWritten, orderPivots, type Circuit } from './compile.ts';
import { JUNCTION_GMIN, type Conditions, type Loading } from './devices/bank.ts';

/** How hard to try. Defaults in `DEFAULT_EFFORT`. */
export interface Effort {
  /** Newton steps before one attempt is given up. */
  readonly iterations: number;
  /** Longest step of a node voltage, V, and of a branch current, A. */
  readonly stepV: number;
  readonly stepA: number;
  /** An answer stands when no voltage moves by more than this, V, plus `relative` of itself. */
  readonly absoluteV: number;
  readonly absoluteA: number;
  readonly relative: number;
  /** Shunt from each node to ground, S: 1 GΩ keeps floating nodes somewhere. */
  readonly shuntS: number;
}

export const DEFAULT_EFFORT: Effort = {
  iterations: 60,
  stepV: 2,
  stepA: 0.5,
  absoluteV: 1e-7,
  absoluteA: 1e-10,
  relative: 1e-7,
  shuntS: 1e-9,
};

export interface OperatingPoint {
  readonly ok: true;
  /** Unknowns as `Circuit` numbers them, V and A. */
  readonly x: Float64Array;
  readonly iterations: number;
  /** The way that led there. */
  readonly by: 'newton' | 'gmin-steps' | 'source-steps' | 'pseudo-transient';
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
  const attempt = new Attempt(circuit, conditions, effort);
  const direct = attempt.newton(start ?? attempt.zero(), 1, effort.shuntS, 0);
  if (direct) return attempt.found(direct, 'newton');
  for (const [by, walk] of [
    ['gmin-steps', () => attempt.byShunts()],
    ['source-steps', () => attempt.bySources()],
    ['pseudo-transient', () => attempt.byPseudoTime(start ?? attempt.zero())],
  ] as const) {
    const x = walk();
    if (x) return attempt.found(x, by);
  }
  return { ok: false, code: attempt.singular ? 'singular' : 'no-convergence', iterations: attempt.iterations, worst: attempt.worstName() };
}

class Attempt {
  iterations = 0;
  singular = false;
  private worst = -1;
  private sourceShare = 1;
  private readonly loading: Loading;
  private readonly next: Float64Array;

  constructor(
    private readonly circuit: Circuit,
    private readonly conditions: Conditions,
    private readonly effort: Effort,
  ) {
    this.loading = { x: this.zero(), values: circuit.lu.values, rhs: new Float64Array(circuit.size + 1), limited: false };
    this.next = this.zero();
  }

  zero(): Float64Array {
    return new Float64Array(this.circuit.size + 1);
  }

  found(x: Float64Array, by: OperatingPoint['by']): OperatingPoint {
    return { ok: true, x, iterations: this.iterations, by };
  }

  worstName(): string {
    return this.circuit.netlist.nodes[this.worst] ?? 'a branch current';
  }

  /** Newton from `start`; undefined when it does not settle. `holdS` ties each voltage to its place at the start (pseudo-time). */
  newton(start: Float64Array, sourceShare: number, shuntS: number, holdS: number): Float64Array | undefined {
    const { circuit, loading } = this;
    const x = loading.x;
    x.set(start);
    this.sourceShare = sourceShare;
    for (const bank of circuit.banks) bank.prepare(this.conditions, x, sourceShare);
    for (let i = 0; i < this.effort.iterations; i++) {
      this.iterations++;
      if (!this.linearise(start, shuntS, holdS)) return undefined;
      circuit.lu.solve(loading.rhs, this.next);
      const settled = this.step(x);
      if (settled && !loading.limited && (i > 0 || !circuit.bends)) return x.slice();
    }
    return undefined;
  }

  private linearise(start: Float64Array, shuntS: number, holdS: number): boolean {
    if (this.assemble(start, shuntS, holdS)) return true;
    if (!this.reorder()) return false;
    return this.assemble(start, shuntS, holdS);
  }

  private assemble(start: Float64Array, shuntS: number, holdS: number): boolean {
    const { circuit, loading } = this;
    loading.values.fill(0);
    loading.rhs.fill(0);
    loading.limited = false;
    for (const bank of circuit.banks) bank.load(loading);
    const { places } = circuit.diagonal;
    const nodes = circuit.netlist.nodes.length;
    for (let i = 0; i < places.length; i++) loading.values[places[i]!]! += (i < nodes ? shuntS : JUNCTION_GMIN) + holdS;
    if (holdS > 0) for (let i = 0; i < circuit.size; i++) if (circuit.isVoltage[i]) loading.rhs[i]! += holdS * start[i]!;
    return circuit.lu.factor();
  }

  /** Another order of pivots, made for the present guess. */
  private reorder(): boolean {
    try {
      this.circuit.lu = orderPivots(this.circuit, this.conditions, this.loading.x);
    } catch (error) {
      if (!(error instanceof SparseLuError)) throw error;
      this.singular = true;
      return false;
    }
    Object.assign(this.loading, { values: this.circuit.lu.values });
    for (const bank of this.circuit.banks) bank.prepare(this.conditions, this.loading.x, this.sourceShare);
    return true;
  }

  /** Moves `x` towards the solution of the linearised equations, each unknown by no more than its longest step. True when it is there. */
  private step(x: Float64Array): boolean {
    const { circuit, effort, next } = this;
    let settled = true;
    let most = 0;
    for (let i = 0; i < circuit.size; i++) {
      const isVoltage = circuit.isVoltage[i] === 1;
      const move = next[i]! - x[i]!;
      const size = Math.abs(move);
      if (!(size <= (isVoltage ? effort.absoluteV : effort.absoluteA) + effort.relative * Math.abs(next[i]!))) settled = false;
      if (!(size <= most)) [most, this.worst] = [size, i];
      const longest = circuit.bends ? (isVoltage ? effort.stepV : effort.stepA) : Infinity;
      x[i]! += size > longest ? Math.sign(move) * longest : move;
    }
    if (!Number.isFinite(most)) x.fill(0);
    return settled && Number.isFinite(most);
  }

  byShunts(): Float64Array | undefined {
    let x: Float64Array | undefined = this.zero();
    for (let shunt = 1e-2; x && shunt > this.effort.shuntS; shunt /= 10) x = this.newton(x, 1, shunt, 0);
    return x && this.newton(x, 1, this.effort.shuntS, 0);
  }

  /** Turns the sources up from nothing; a share that fails is approached in smaller steps. */
  bySources(): Float64Array | undefined {
    let x = this.newton(this.zero(), 0, this.effort.shuntS, 0);
    let share = 0;
    let step = 0.1;
    while (x && share < 1 && step > 1e-4) {
      const reached: Float64Array | undefined = this.newton(x, Math.min(share + step, 1), this.effort.shuntS, 0);
      if (reached) [x, share, step] = [reached, Math.min(share + step, 1), step * 2];
      else step /= 4;
    }
    return share >= 1 ? x : undefined;
  }

  /** Lets every node move as if it had a capacitor, with ever longer steps of time, until nothing moves. */
  byPseudoTime(start: Float64Array): Float64Array | undefined {
    let x = start;
    let hold = 1e-1;
    for (let i = 0; i < 200 && hold < 1e6; i++) {
      const moved: Float64Array | undefined = this.newton(x, 1, this.effort.shuntS, hold);
      hold = moved ? hold / 2.5 : hold * 8;
      if (moved) x = moved;
      if (moved && hold < 1e-10) return this.newton(x, 1, this.effort.shuntS, 0);
    }
    return undefined;
  }
}
