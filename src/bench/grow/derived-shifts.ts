import type { ModelFile } from '../models/index.ts';

type Point = ModelFile['points'][number];
type Shift = ModelFile['faults'][number]['shifts'][string];

/** Of the functions that need a block, so many must need another one too for that to feed it. Common practice, no source. */
const FEEDS_SHARE = 0.75;

/**
 * What readings at a point tell of faults, for points of which no fault says anything: faults of its own block move it in any way, and under power those of
 * blocks that feed it take it down. Without this a point that a person adds would be measured in vain. A point that one fault names is left alone.
 */
export function withDerivedShifts(file: ModelFile): ModelFile {
  const named = new Set(file.faults.flatMap(({ shifts }) => Object.keys(shifts)));
  const silent = file.points.filter(({ id }) => !named.has(id));
  if (silent.length === 0) return file;
  const moved = new Map(silent.map((point) => [point.id, movedBy(file, point)]));
  const faults = file.faults.map((fault) => {
    const more = silent.flatMap(({ id }) => {
      const shift = moved.get(id)!.get(fault.block);
      return shift ? [[id, shift] as const] : [];
    });
    return more.length === 0 ? fault : { ...fault, shifts: { ...fault.shifts, ...Object.fromEntries(more) } };
  });
  return { ...file, faults };
}

/** By block, what its faults do to the point. */
function movedBy(file: ModelFile, { block, power, mode }: Point): ReadonlyMap<string, Shift> {
  const isPowered = power !== 'off' && (mode === 'volts' || mode === 'amps');
  const feeding = isPowered ? blocksFeeding(file, block) : [];
  return new Map<string, Shift>([...feeding.map((id) => [id, 'low'] as const), [block, 'any']]);
}

/**
 * Blocks that feed another: nearly every function that needs the one needs them, and either more functions need them or they stand before it in the list, where
 * a device is written down from its battery on.
 */
function blocksFeeding({ blocks, functions }: ModelFile, block: string): string[] {
  const needs = functions.map((each) => new Set(each.needs.flatMap((need) => (typeof need === 'string' ? [need] : need.any))));
  const users = needs.filter((all) => all.has(block));
  const at = blocks.findIndex(({ id }) => id === block);
  return blocks.flatMap(({ id }, index) => {
    const shared = users.filter((all) => all.has(id)).length;
    const isUsual = shared > 0 && shared >= FEEDS_SHARE * users.length;
    const isBefore = index < at || needs.filter((all) => all.has(id)).length > users.length;
    return id !== block && isUsual && isBefore ? [id] : [];
  });
}
