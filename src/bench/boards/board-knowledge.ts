import type { CircuitFault } from '../../core/circuit/index.ts';
import type { Baseline, ReadingPoint } from '../../core/diagnosis/readings/index.ts';
import type { MeterMode } from '../events/index.ts';
import type { Model } from '../models/index.ts';

/** A fault of a board as a person would say it, and what it is to the circuit. */
export interface BoardFault {
  /** As in the circuit: `r12:open`, `u3@v33:open-joint`. */
  readonly id: string;
  /** "R12 is open", "A joint of U3 at v33 is open". */
  readonly name: string;
  /** Block of the model. */
  readonly block: string;
  /** References concerned, as the placement writes them; the first is the part that a remedy would be done to. */
  readonly refs: readonly string[];
  readonly nets: readonly string[];
  readonly rate: number;
  readonly circuit: CircuitFault;
}

/** Where and how a board can be measured: a point of the model, or a net of the circuit at one of its pads. */
export interface BoardPoint extends ReadingPoint {
  readonly name: string;
  readonly mode: MeterMode;
  /** Nets at the two leads; of a current the supply that it is measured at. */
  readonly red: string;
  readonly black: string;
  readonly supply?: string;
  /** A key or switch that is held down meanwhile, as the placement writes it. */
  readonly held?: string;
  /** True of a point that the model file names; such a point may have readings of known-good boards. */
  readonly named: boolean;
}

/**
 * What the circuit of a model says of its boards, as far as it is computed: expected readings and how functions behave, of each fault on each drawn board.
 * Rows that are not computed yet are unknown and weigh as their prior does.
 */
export interface BoardKnowledge {
  /** Of everything that it was computed from. */
  readonly hash: string;
  readonly faults: readonly BoardFault[];
  readonly points: readonly BoardPoint[];
  /** Kernels with their dictionary, functions by row and draw, simulation of pairs. Rows are `faults` in this order. */
  readonly baseline: Baseline;
  /** Rows that are computed, of all rows. It counts up while the work goes on. */
  readonly done: number;
  readonly rows: number;
}

/** Where the bench gets its knowledge of boards. Asking for it begins the work where it is not done; the answer is what there is now. */
export interface Boards {
  /**
   * `confirmed` are ids of circuit faults that are certain and not yet mended: they stand in the baseline, so readings are those of a board that has them.
   * Null while nothing is known, and always for a model without a circuit.
   */
  knowledge(model: Model, confirmed: readonly string[]): BoardKnowledge | null;
}

/** How far a dictionary is. `confirmed` are the faults that stand in it. */
export interface BoardProgress {
  readonly modelId: string;
  readonly confirmed: readonly string[];
  readonly done: number;
  readonly rows: number;
  readonly stage: 'waiting' | 'computing' | 'ready' | 'stopped' | 'failed';
}

/** Knowledge of boards that is computed meanwhile. */
export interface BoardShelf extends Boards {
  /** What was asked for so far, and how far it is. */
  progress(): readonly BoardProgress[];
  /** Waits until nothing more will be known of healthy boards of a model for now, and says how it came to that; null for a model without a circuit. */
  settled(model: Model): Promise<BoardProgress | null>;
  /** Calls `tell` whenever more is known; returns what ends that. */
  watch(tell: () => void): () => void;
  /** Computes nothing more until `go`; what is known stays. */
  stop(): void;
  /** Goes on where it was stopped, and tries again what failed. */
  go(): void;
  close(): Promise<void>;
}
