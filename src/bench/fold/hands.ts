import { STAGES, type Stage } from '../events/index.ts';
import type { Model } from '../models/index.ts';
import type { Item } from '../state.ts';
import { onItem, type Apply, type Fold } from './fold.ts';
import { undoProof } from './work.ts';

/**
 * A step of opening was done, or put back. The stage follows the steps that are done: the deepest that one of them reaches.
 * Reaching deeper undoes the proof, as opening does. A first step after all was put back begins a new count of fasteners.
 */
export const stepDone: Apply<'step-done'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { step, way, minutes } = event.body;
    item.minutes += minutes;
    const model = modelOf(fold, item);
    if (way === 'back') item.opened = stillOpen(item, step, model);
    else open(item, step, minutes);
    follow(item, model, way);
  });

function open(item: Item, step: string, minutes: number): void {
  if (item.opened.length === 0) item.fasteners.clear();
  if (!item.opened.includes(step)) item.opened.push(step);
  if (minutes > 0) item.stepTimes.push({ step, minutes });
}

/** What is open once a step is put back: nothing, where all that is left is of the kind of which nothing is put back. */
function stillOpen(item: Item, step: string, model: Model | undefined): string[] {
  const left = item.opened.filter((id) => id !== step);
  const isPutBack = (id: string): boolean => model?.file.steps.find((each) => each.id === id)?.put_back ?? true;
  return left.some(isPutBack) ? left : [];
}

const modelOf = (fold: Fold, item: Item): Model | undefined => fold.models.get(item.modelId);

/** Steps say nothing of the stage before the first of them is done that reaches one, nor where the model has none. */
function follow(item: Item, model: Model | undefined, way: 'in' | 'back'): void {
  const reached = item.opened.flatMap((id) => model?.file.steps.find((step) => step.id === id)?.reaches ?? []);
  const stage: Stage = STAGES.findLast((each) => reached.includes(each)) ?? 'closed';
  const [now, next] = [STAGES.indexOf(item.stage), STAGES.indexOf(stage)];
  if (way === 'in' ? next <= now : next >= now) return;
  item.stage = stage;
  if (way === 'in') undoProof(item);
}

/** Counts of one set add up until the item is opened anew. */
export const fastenersCounted: Apply<'fasteners-counted'> = (fold, event) =>
  onItem(fold, event, (item) => {
    const { fasteners: set, way, count, foreign } = event.body;
    const before = item.fasteners.get(set) ?? { out: 0, foreign: 0, back: 0 };
    const counted =
      way === 'out' ? { ...before, out: before.out + count, foreign: before.foreign + foreign } : { ...before, back: before.back + count };
    item.fasteners.set(set, counted);
  });
