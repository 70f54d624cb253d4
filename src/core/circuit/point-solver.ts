import { orderPivots, type Circuit } from './compile.ts';
import { JUNCTION_GMIN, type Bank, type Conditions, type Loading } from './devices/bank.ts';
import type { Effort } from './effort.ts';
import { loadClamp, loadProbe, probePlaces, type Probe } from './probe.ts';

/** The way that led to an answer. */
export type Way = 'newton' | 'gmin-steps' | 'source-steps' | 'pseudo-transient';

/** Newton steps after which an unknown that swings to and fro is damped: before, it may well be on its way. */
const SWINGS_AFTER = 15;

/** Steps of pseudo-time, and the tie of each voltage to its place in S, at which it is given up. */
const ROUNDS_IN_TIME = 100;
const MOST_TIE_S = 1e3;

/** What is held fixed while Newton runs: share of the sources, shunt to ground, and tie of each voltage to its place at the start. */
interface Hold {
  readonly sourceShare: number;
  readonly shuntS: number;
  readonly tieS: number;
}

/**
 * Solves one circuit again and again without making anything anew: parts that do not bend are loaded once a solution, and the answer stays in
 * `x`. Solvers of one circuit take turns; none may be used inside another. The method is told at `operatingPoint`.
 */
export class PointSolver {
  /** The last answer as `Circuit` numbers its unknowns, V and A, with ground past its end. */
  readonly x: Float64Array;
  iterations = 0;
  way: Way = 'newton';
  /** Whether the last failure was for want of a pivot. */
  singular = false;
  /** The unknown that moved most in the last step. */
  worst = -1;
  private conditions!: Conditions;
  private probe: Probe | undefined;
  private places: readonly number[] = [];
  private loading: Loading;
  private baseValues: Float64Array;
  private readonly baseRhs: Float64Array;
  private readonly next: Float64Array;
  private readonly anchor: Float64Array;
  private readonly unit: Float64Array;
  private readonly origin: Float64Array;
  private readonly straight: readonly Bank[];
  private readonly bent: readonly Bank[];
  private readonly absolute: Float64Array;
  private readonly longest: Float64Array;
  /** Longest step of each unknown in this run of Newton, and the direction of its last step that was cut. */
  private readonly caps: Float64Array;
  private readonly turns: Int8Array;
  private swings = false;
  private stride = 1;

  constructor(
    private readonly circuit: Circuit,
    private readonly effort: Effort,
  ) {
    const room = (): Float64Array => new Float64Array(circuit.size + 1);
    [this.x, this.next, this.anchor, this.origin, this.unit, this.baseRhs] = [room(), room(), room(), room(), room(), room()];
    this.straight = circuit.banks.filter((bank) => !bank.bends);
    this.bent = circuit.banks.filter((bank) => bank.bends);
    this.loading = { x: this.x, values: circuit.lu.values, rhs: room(), limited: false, settledV: this.effort.absoluteV };
    this.baseValues = new Float64Array(circuit.lu.values.length);
    this.absolute = Float64Array.from(circuit.isVoltage, (isVoltage) => (isVoltage ? effort.absoluteV : effort.absoluteA));
    const longest = (isVoltage: number): number => (isVoltage ? effort.stepV : effort.stepA);
    this.longest = Float64Array.from(circuit.isVoltage, (isVoltage) => (circuit.bends ? longest(isVoltage) : Infinity));
    this.caps = this.longest.slice();
    this.turns = new Int8Array(circuit.size);
  }

  /** Finds the operating point into `x` from the guess `start` (nothing: all at 0), by Newton and then by each fall-back. False: none found. */
  solve(conditions: Conditions, start?: Float64Array, probe?: Probe): boolean {
    this.begin(conditions, probe);
    const from = this.origin;
    if (start) from.set(start);
    else from.fill(0);
    return this.walk(from, 1) || this.walk(from, 0.5);
  }

  /** Newton, then each fall-back, with steps of no more than a share of the longest ones. */
  private walk(from: Float64Array, stride: number): boolean {
    this.stride = stride;
    const whole: Hold = { sourceShare: 1, shuntS: this.effort.shuntS, tieS: 0 };
    return (
      this.reached('newton', this.newton(from, whole)) ||
      this.reached('pseudo-transient', this.byPseudoTime(from, whole)) ||
      this.reached('gmin-steps', this.byShunts(whole)) ||
      this.reached('source-steps', this.bySources(whole))
    );
  }

  /** Resistance that a small current sees between two unknowns at the last answer, Ω. */
  resistance(red: number, black: number): number {
    const { next, unit, circuit } = this;
    unit.fill(0);
    unit[red]! += 1;
    unit[black]! -= 1;
    circuit.lu.solve(unit, next);
    return (red === circuit.size ? 0 : next[red]!) - (black === circuit.size ? 0 : next[black]!);
  }

  private begin(conditions: Conditions, probe: Probe | undefined): void {
    this.conditions = conditions;
    this.probe = probe;
    this.iterations = 0;
    this.singular = false;
    this.followOrder();
  }

  private reached(way: Way, found: boolean): boolean {
    if (found) this.way = way;
    return found;
  }

  /** Takes over the present order of pivots, which another solver of the same circuit may have changed. */
  private followOrder(): void {
    const { lu } = this.circuit;
    if (this.loading.values !== lu.values) {
      this.loading = { x: this.x, values: lu.values, rhs: this.loading.rhs, limited: false, settledV: this.effort.absoluteV };
      this.baseValues = new Float64Array(lu.values.length);
    }
    if (this.probe) this.places = probePlaces(this.circuit, this.probe);
  }

  /** Newton from `start`, into `x`. False when it does not settle. */
  private newton(start: Float64Array, hold: Hold): boolean {
    this.anchor.set(start);
    this.x.set(start);
    for (let i = 0; i < this.caps.length; i++) this.caps[i] = this.longest[i]! * this.stride;
    this.turns.fill(0);
    this.prepare(hold);
    for (let i = 0; i < this.effort.iterations; i++) {
      this.iterations++;
      this.swings = i >= SWINGS_AFTER;
      this.assemble();
      if (!this.circuit.lu.factor() && !this.reorder(hold)) return false;
      this.circuit.lu.solve(this.loading.rhs, this.next);
      if (this.step() && !this.loading.limited) return true;
    }
    return false;
  }

  /** Loads all that stays the same while Newton runs. */
  private prepare({ sourceShare, shuntS, tieS }: Hold): void {
    const { circuit, conditions, x, baseValues, baseRhs } = this;
    baseValues.fill(0);
    baseRhs.fill(0);
    for (const bank of circuit.banks) bank.prepare(conditions, x, sourceShare);
    const base: Loading = { x, values: baseValues, rhs: baseRhs, limited: false, settledV: this.effort.absoluteV };
    for (const bank of this.straight) bank.load(base);
    const { places } = circuit.diagonal;
    const nodes = circuit.netlist.nodes.length;
    for (let i = 0; i < places.length; i++) baseValues[places[i]!]! += (i < nodes ? shuntS : JUNCTION_GMIN) + tieS;
    if (tieS > 0) for (let i = 0; i < circuit.size; i++) if (circuit.isVoltage[i]) baseRhs[i]! += tieS * this.anchor[i]!;
    if (this.probe) loadProbe(this.probe, this.places, base, sourceShare);
  }

  private assemble(): void {
    const { loading } = this;
    loading.values.set(this.baseValues);
    loading.rhs.set(this.baseRhs);
    loading.limited = false;
    for (let i = 0; i < this.bent.length; i++) this.bent[i]!.load(loading);
    if (this.probe) loadClamp(this.probe, this.places, loading);
  }

  /** Another order of pivots, made for the present guess, and the matrix factored in it. False when there is none. */
  private reorder(hold: Hold): boolean {
    const lu = orderPivots(this.circuit, this.conditions, this.x);
    this.singular = lu === undefined;
    if (!lu) return false;
    this.circuit.lu = lu;
    this.followOrder();
    this.prepare(hold);
    this.assemble();
    return lu.factor();
  }

  /** Moves `x` towards the solution of the linearised equations, each unknown by no more than its longest step. True when it is there. */
  private step(): boolean {
    const { x, next, absolute, caps } = this;
    const { relative } = this.effort;
    let settled = true;
    let most = 0;
    for (let i = 0; i < absolute.length; i++) {
      const move = next[i]! - x[i]!;
      const size = Math.abs(move);
      if (!(size <= absolute[i]! + relative * Math.abs(next[i]!))) settled = false;
      if (!(size <= most)) {
        most = size;
        this.worst = i;
      }
      x[i]! += size > caps[i]! ? this.capped(i, Math.sign(move)) : move;
    }
    if (Number.isFinite(most)) return settled;
    x.fill(0);
    return false;
  }

  /**
   * A step that is cut to the cap of its unknown. After a while one that goes back on the cut step before it halves the cap, so that no two states
   * alternate for ever, and one that goes on gives half of it back.
   */
  private capped(i: number, sign: number): number {
    const onward = sign * this.turns[i]!;
    this.turns[i] = sign;
    if (this.swings && onward !== 0)
      this.caps[i] = onward < 0 ? this.caps[i]! / 2 : Math.min(this.caps[i]! * 1.5, this.longest[i]! * this.stride);
    return sign * this.caps[i]!;
  }

  /** Shunts to ground that are taken away step by step; a step that fails is made shorter. */
  private byShunts(whole: Hold): boolean {
    this.x.fill(0);
    let reached = this.x.slice();
    let shuntS = 1e-2;
    if (!this.newton(reached, { ...whole, shuntS })) return false;
    for (let factor = 10; shuntS > whole.shuntS;) {
      reached = this.x.slice();
      const next = Math.max(shuntS / factor, whole.shuntS);
      if (this.newton(reached, { ...whole, shuntS: next })) [shuntS, factor] = [next, Math.min(factor * factor, 1000)];
      else {
        this.x.set(reached);
        factor = Math.sqrt(factor);
      }
      if (factor < 1.3) return false;
    }
    return true;
  }

  /** Turns the sources up from nothing; a share that fails is approached in smaller steps. */
  private bySources(whole: Hold): boolean {
    this.x.fill(0);
    if (!this.newton(this.x.slice(), { ...whole, sourceShare: 0 })) return false;
    let reached = this.x.slice();
    let share = 0;
    for (let step = 0.1; share < 1;) {
      const sourceShare = Math.min(share + step, 1);
      if (this.newton(reached, { ...whole, sourceShare })) [reached, share, step] = [this.x.slice(), sourceShare, step * 2];
      else step /= 4;
      if (step < 1e-4) return false;
    }
    return true;
  }

  /** Lets every node move as if it had a capacitor, with ever longer steps of time, until nothing moves. */
  private byPseudoTime(start: Float64Array, whole: Hold): boolean {
    let reached = start;
    let [tieS, factor] = [1e-3, 10];
    for (let round = 0; tieS > 1e-10; round++) {
      if (round === ROUNDS_IN_TIME || tieS > MOST_TIE_S) return false;
      const moved = this.newton(reached, { ...whole, tieS });
      if (moved) reached = this.x.slice();
      factor = moved ? Math.min(factor * 2, 100) : Math.max(factor / 4, 1.2);
      tieS = moved ? tieS / factor : tieS * 10;
    }
    return this.newton(reached, whole);
  }
}
