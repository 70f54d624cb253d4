import { partRemedyNamed } from '../boards/part-remedies.ts';
import { needsOf } from '../hands/goals.ts';
import { planSteps } from '../../core/teardown/index.ts';
import { teardownSteps } from '../hands/teardown-steps.ts';
import type { Model, ModelFile } from '../models/index.ts';
import type { HistoryEntry } from '../state.ts';
import { blocksOfSlot } from './device-model.ts';

/** How work came to bear on a block, the strongest first. */
export const TOUCHES = ['worked-on', 'moved', 'near-heat', 'opened'] as const;
export type Touch = (typeof TOUCHES)[number];

/** Heat of an iron or of hot air reaches parts so far away. Common practice, no source. */
const HEAT_MM = 10;

/** The blocks that the work on a unit touched or could have touched, each with how at its strongest. */
export function touchedByWork(model: Model, life: readonly HistoryEntry[]): ReadonlyMap<string, Touch> {
  const touched = new Map<string, Touch>();
  for (const entry of life) for (const [block, touch] of touchesOf(model, entry)) strongest(touched, block, touch);
  return touched;
}

function strongest(touched: Map<string, Touch>, block: string, touch: Touch): void {
  const before = touched.get(block);
  if (before === undefined || TOUCHES.indexOf(touch) < TOUCHES.indexOf(before)) touched.set(block, touch);
}

type Touched = readonly [block: string, touch: Touch];
const known = new WeakMap<Model, Map<string, readonly Touched[]>>();

/** What one entry touches depends on the model and on its remedy or slot alone, so it is reckoned once. */
function touchesOf(model: Model, entry: HistoryEntry): readonly Touched[] {
  if (entry.kind !== 'remedy' && entry.kind !== 'slot') return [];
  const key = entry.kind === 'slot' ? `slot ${entry.slot}` : `remedy ${entry.remedy} ${entry.place ?? ''}`;
  const ofModel = known.get(model) ?? new Map<string, readonly Touched[]>();
  known.set(model, ofModel);
  const before = ofModel.get(key);
  if (before) return before;
  const found = entry.kind === 'slot' ? touchesOfSlot(model, entry.slot) : touchesOfRemedy(model, entry.remedy, entry.place);
  ofModel.set(key, found);
  return found;
}

const touchesOfSlot = (model: Model, slot: string): Touched[] => [
  ...blocksOfSlot(model.file, slot).map((block): Touched => [block, 'moved']),
  ...onTheWay(model, { kind: 'slot', slot }),
];

function touchesOfRemedy(model: Model, id: string, place: string | null): Touched[] {
  const { file } = model;
  const spec = file.remedies.find((remedy) => remedy.id === id);
  if (!spec) return touchesOnPart(model, id);
  const mended = file.faults.filter((fault) => (spec.mends[fault.id] ?? 0) > 0).map(({ block }) => block);
  const worked = place !== null && file.blocks.some((block) => block.id === place) ? [place] : mended;
  const slot = spec.slot === undefined ? [] : blocksOfSlot(file, spec.slot);
  return [
    ...worked.map((block): Touched => [block, 'worked-on']),
    ...slot.map((block): Touched => [block, 'moved']),
    ...(spec.cautions.includes('hot-tool') ? nearby(file, worked).map((block): Touched => [block, 'near-heat']) : []),
    ...onTheWay(model, { kind: 'remedy', remedy: id }),
  ];
}

/** Work on one part of the board: its block, and with heat the blocks of the parts around it. */
function touchesOnPart(model: Model, id: string): Touched[] {
  const remedy = partRemedyNamed(model, id);
  if (!remedy) return [];
  const parts = model.circuit?.parts ?? [];
  const part = parts.find(({ ref }) => ref === remedy.ref);
  const near = parts.filter(
    (each) => part && each !== part && each.side === part.side && Math.hypot(each.x - part.x, each.y - part.y) <= HEAT_MM,
  );
  return [
    ...(part ? [[part.block, 'worked-on'] as const] : []),
    ...(remedy.spec.cautions.includes('hot-tool') ? near.map(({ block }): Touched => [block, 'near-heat']) : []),
    ...onTheWay(model, { kind: 'stage', stage: 'board-out' }),
  ];
}

/** Blocks of the same assembly whose middle lies within reach of the heat. */
function nearby(file: ModelFile, worked: readonly string[]): string[] {
  const hot = file.blocks.filter(({ id, at }) => worked.includes(id) && at);
  return file.blocks
    .filter(({ id, at, assembly }) =>
      hot.some(
        (each) => each.id !== id && each.assembly === assembly && at && Math.hypot(at[0] - each.at![0], at[1] - each.at![1]) <= HEAT_MM,
      ),
    )
    .map(({ id }) => id);
}

/** What the steps of the way in free, so that it was unplugged, lifted or laid open. */
function onTheWay(model: Model, goal: Parameters<typeof needsOf>[1]): Touched[] {
  const needs = needsOf(model, goal);
  const plan = needs.ok ? planSteps(teardownSteps(model.file), needs.needs) : null;
  if (!plan?.ok) return [];
  const steps = new Set(plan.order.map(({ id }) => id));
  const freed = model.file.steps.filter(({ id }) => steps.has(id)).flatMap(({ frees }) => frees);
  const blocks = freed.flatMap((name) => (model.file.slots.some(({ id }) => id === name) ? blocksOfSlot(model.file, name) : [name]));
  return blocks.map((block) => [block, 'opened']);
}
