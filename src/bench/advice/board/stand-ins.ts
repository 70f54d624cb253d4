import type { Kernels } from '../../../core/diagnosis/readings/index.ts';
import type { BoardFault, BoardKnowledge } from '../../boards/board-knowledge.ts';
import type { Model, ModelFile } from '../../models/index.ts';
import { KINDS_OF_MODE } from './fault-kinds.ts';

type FileFault = ModelFile['faults'][number];

/**
 * By fault of the model file, the faults of the circuit that it is: those of the same block and of a kind that its mode means, of the part that its own name
 * or that of its block tells; else of the only part there that can have it; else those that move the points of the file as it says. A fault of the file that none
 * stands for is not here: the circuit does not hold it. Dirt may sit on any contact of its block, and what liquid leaves is no fault of a part.
 */
export function standIns(model: Model, knowledge: BoardKnowledge): ReadonlyMap<string, readonly BoardFault[]> {
  const found = model.file.faults.flatMap((fault) => {
    const faults = standInsOf(model, knowledge, fault);
    return faults.length > 0 ? [[fault.id, faults] as const] : [];
  });
  return new Map(found);
}

function standInsOf(model: Model, knowledge: BoardKnowledge, fault: FileFault): readonly BoardFault[] {
  if (isOfLiquid(fault)) return knowledge.faults.filter(({ block, circuit }) => block === fault.block && circuit.kind === 'liquid-leak');
  const own = knowledge.faults.filter(({ block }) => block === fault.block);
  const blockName = model.file.blocks.find(({ id }) => id === fault.block)?.name ?? '';
  for (const kinds of KINDS_OF_MODE[fault.mode]) {
    const like = own.filter(({ circuit }) => kinds.includes(circuit.kind));
    for (const name of [fault.name, blockName]) {
      const named = like.filter(({ refs }) => refs[0] !== undefined && namesPart(name, refs[0]));
      if (named.length > 0) return named;
    }
    if (fault.mode === 'dirty-contact' || new Set(like.map(({ refs }) => refs[0])).size === 1) return like;
    const agreeing = like.filter((each) => agrees(knowledge, each, fault));
    if (agreeing.length > 0) return agreeing;
  }
  return [];
}

const namesPart = (name: string, ref: string): boolean =>
  name.split(/[^A-Za-z0-9]+/).some((word) => word.toUpperCase() === ref.toUpperCase());

/** What the eye finds of it is residue before all else. */
function isOfLiquid({ seen }: FileFault): boolean {
  const residue = seen.residue ?? 0;
  return residue > 0.3 && Object.values(seen).every((chance) => (chance ?? 0) <= residue);
}

/** Departure, in spreads, from which on a fault moves a point. */
const MOVED = 4;

/** Whether a fault moves some point of the file, and each that it moves as the file says. */
function agrees({ baseline, faults }: BoardKnowledge, each: BoardFault, fault: FileFault): boolean {
  const { kernels } = baseline;
  const row = 1 + faults.indexOf(each);
  const told = Object.entries(fault.shifts).flatMap(([point, shift]) => {
    const p = kernels.dictionary.points.findIndex(({ id }) => id === point);
    if (p < 0 || kernels.known[row] === 0) return [];
    return [{ moves: kernels.far[p * kernels.rows + row]! > MOVED, way: wayOf(kernels, p, row), shift }];
  });
  const moving = told.filter(({ moves }) => moves);
  return moving.length > 0 && moving.every(({ way, shift }) => isWay(way, shift));
}

/** Where a row goes from the healthy board: `open` for OL. */
function wayOf(kernels: Kernels, p: number, row: number): 'low' | 'high' | 'open' {
  const { draws } = kernels.dictionary;
  const [at, healthy] = [(p * kernels.rows + row) * draws, p * kernels.rows * draws];
  if (kernels.ol[at]! > 0.5) return 'open';
  return kernels.centre[at]! < kernels.centre[healthy]! ? 'low' : 'high';
}

function isWay(way: 'low' | 'high' | 'open', shift: FileFault['shifts'][string]): boolean {
  if (shift === 'any') return true;
  if (shift === 'open') return way === 'open' || way === 'low';
  if (shift === 'zero' || shift === 'low') return way === 'low';
  return way !== 'low';
}
