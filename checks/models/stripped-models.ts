import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { partialCircuit } from '../../src/bench/netting/index.ts';
import type { CsvRow, Model } from '../../src/bench/models/index.ts';
import { refOf } from '../../src/core/circuit/index.ts';
import { netlistText } from '../../src/core/netting/index.ts';

/** Blocks of the Tern TN-20 that carry its power, with what feeds it from outside. */
export const POWER_TREE: ReadonlySet<string> = new Set([
  'battery',
  'charger',
  'battery-socket',
  'charge-port',
  'charge-control',
  'fuse',
  'switch',
  'converter',
  'regulator',
]);

/** The model with only its power tree drawn: what is left of its netlist, made whole by unknown loads. */
export async function treeOf(model: Model): Promise<Model> {
  const circuit = model.circuit!;
  const kept = new Set(circuit.parts.filter(({ block }) => POWER_TREE.has(block)).map(({ ref }) => ref.toLowerCase()));
  const parts = circuit.netlist.parts.filter(({ name }) => kept.has(refOf(name)));
  const partial = partialCircuit(model.file, netlistText({ ...circuit.netlist, parts }), await placementOf(model.file.id));
  if (!partial.ok) throw new Error(partial.problems.join('\n'));
  return { ...model, file: partial.file, circuit: partial.circuit };
}

/** The model with readings of good boards and without a netlist. */
export function levelOneOf({ circuit: _none, ...model }: Model): Model {
  const { circuit: _left, ...file } = model.file;
  return { ...model, file: { ...file, level: 1 } };
}

/** The model of blocks alone. */
export function levelZeroOf(model: Model): Model {
  const one = levelOneOf(model);
  return { ...one, file: { ...one.file, level: 0 }, readings: [] };
}

async function placementOf(id: string): Promise<CsvRow[]> {
  const text = await readFile(join(import.meta.dirname, `../../models/${id}/placement.csv`), 'utf8');
  return text
    .trim()
    .split('\n')
    .map((line, i) => ({ line: i + 1, cells: line.split(',').map((cell) => cell.replace(/^"|"$/g, '')) }));
}
