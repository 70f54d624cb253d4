import type { ModelFile } from '../models/index.ts';

type Needs = ModelFile['functions'][number]['needs'];

/**
 * A model file without some of its blocks and functions, and without all that speaks of these alone: their faults, points, accessories, checks,
 * remedies that mend nothing else, and slots in which nothing is left. It holds together as well as the file did.
 */
export function withoutBlocks(file: ModelFile, blocks: ReadonlySet<string>, functions: ReadonlySet<string>): ModelFile {
  const kept = file.blocks.filter(({ id }) => !blocks.has(id));
  const lost = (section: readonly { readonly id: string; readonly block: string }[]): ReadonlySet<string> =>
    new Set(section.flatMap(({ id, block }) => (blocks.has(block) ? [id] : [])));
  const faults = lost(file.faults);
  const points = lost(file.points);
  const accessories = lost(file.accessories);
  const slots = new Set(file.slots.flatMap(({ id }) => (wasEmptied(file, kept, id) ? [id] : [])));
  return {
    ...file,
    blocks: kept,
    slots: file.slots.filter(({ id }) => !slots.has(id)),
    functions: file.functions.flatMap((each) => functionLeft(each, blocks, functions)),
    faults: file.faults.filter(({ id }) => !faults.has(id)).map((fault) => ({ ...fault, shifts: without(fault.shifts, points) })),
    accessories: file.accessories.filter(({ id }) => !accessories.has(id)),
    points: file.points.filter(({ id }) => !points.has(id)),
    checks: file.checks.filter((check) => {
      const asks = [functions.has(check.try ?? ''), blocks.has(check.look ?? ''), points.has(check.measure ?? '')];
      return !asks.includes(true) && !check.with.some((id) => accessories.has(id));
    }),
    remedies: file.remedies.flatMap((remedy) => {
      const mends = without(remedy.mends, faults);
      return Object.keys(mends).length === 0 || slots.has(remedy.slot ?? '') ? [] : [{ ...remedy, mends }];
    }),
    steps: file.steps.map((step) => ({
      ...step,
      frees: step.frees.filter((id) => !blocks.has(id) && !slots.has(id)),
      look_for: step.look_for.filter(({ at }) => !blocks.has(at)),
    })),
  };
}

/** An assembly of which nothing is left; one that never held a block stays. */
const wasEmptied = (file: ModelFile, kept: ModelFile['blocks'], slot: string): boolean =>
  file.blocks.some(({ assembly }) => assembly === slot) && !kept.some(({ assembly }) => assembly === slot);

function functionLeft(each: ModelFile['functions'][number], blocks: ReadonlySet<string>, functions: ReadonlySet<string>) {
  const needs = each.needs.flatMap((need): Needs => {
    if (typeof need === 'string') return blocks.has(need) ? [] : [need];
    const any = need.any.filter((id) => !blocks.has(id));
    return any.length > 1 ? [{ any }] : any;
  });
  return functions.has(each.id) || needs.length === 0 ? [] : [{ ...each, needs }];
}

const without = <T>(record: Readonly<Record<string, T>>, names: ReadonlySet<string>): Record<string, T> =>
  Object.fromEntries(Object.entries(record).filter(([name]) => !names.has(name)));
