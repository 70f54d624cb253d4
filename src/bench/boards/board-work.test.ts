import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { applyFaults, compileCircuit, inPowerState, measure } from '../../core/circuit/index.ts';
import { circuitInState, modelCircuit, ModelFile, type Model } from '../models/index.ts';
import { BoardWork, boardTask, DRAWS, GrownKnowledge, simulatedPairs, slicesOf, stepsOf, type BoardRows } from './index.ts';
import { lookAt } from './look.ts';

/** The small player as it ships: 186 faults on a board of some sixty parts. */
function corrie(): Model {
  const dir = join(import.meta.dirname, '../../../models/corrie-cp4');
  const file = ModelFile.parse(parse(readFileSync(join(dir, 'model.yaml'), 'utf8')));
  const [head, ...lines] = readFileSync(join(dir, 'placement.csv'), 'utf8').trim().split(/\r?\n/).map((line) => line.split(','));
  const rows = lines.map((cells, i) => ({ line: i + 2, cells: Object.fromEntries(head!.map((name, c) => [name.toLowerCase(), cells[c] ?? ''])) }));
  const read = modelCircuit(file, file.circuit!, readFileSync(join(dir, 'board.cir'), 'utf8'), { rows, commaIsDecimal: false } as never);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { file, readings: [], photos: [], circuit: read.circuit };
}
