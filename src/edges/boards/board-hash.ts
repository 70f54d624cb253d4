import { createHash } from 'node:crypto';
import type { BoardTask } from '../../bench/boards/index.ts';

/** Counts up whenever the same circuit would be computed to other numbers. */
const VERSION = 3;

/** Names everything that a dictionary of boards is computed from, 32 hexadecimal digits. */
export function boardHash({ model, faults, points, already }: BoardTask): string {
  const { circuit, file } = model;
  const parts = [
    VERSION,
    file.id,
    circuit!.netlist,
    circuit!.parts,
    file.circuit,
    faults.map(({ circuit: fault }) => fault),
    points,
    already.map(({ id }) => id),
  ];
  return createHash('sha256').update(JSON.stringify(parts)).digest('hex').slice(0, 32);
}
