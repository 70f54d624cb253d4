import type { TestPoint } from '../model.ts';
import type { Baseline } from '../readings/index.ts';

/**
 * What is known of a device whose circuit is known. The first faults of its model are those of the circuit, in the order of the dictionary; faults that
 * the circuit does not hold come after them.
 */
export interface BoardSense {
  readonly baseline: Baseline;
  /** The same for boards that have a fault already, by its place in the model; as far as they are computed. */
  readonly withFault: ReadonlyMap<number, Baseline>;
  /** What good boards were seen to read, by point. */
  readonly references: ReadonlyMap<string, NonNullable<TestPoint['reference']>>;
}

/** Faults of the circuit come first in the model; so many of them. */
export const heldByCircuit = ({ baseline }: BoardSense): number => baseline.kernels.dictionary.faults.length;

/** Index of a point in the dictionary; −1 for one that the circuit does not tell of. */
export const boardPointIndex = ({ baseline }: BoardSense, point: string): number =>
  baseline.kernels.dictionary.points.findIndex(({ id }) => id === point);
