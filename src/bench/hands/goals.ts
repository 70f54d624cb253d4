import type { Need } from '../../core/teardown/index.ts';
import type { Stage } from '../events/index.ts';
import type { Model, ModelFile } from '../models/index.ts';

/** What one can want to get at. */
export type Goal =
  | { readonly kind: 'stage'; readonly stage: Stage }
  | { readonly kind: 'block'; readonly block: string }
  | { readonly kind: 'slot'; readonly slot: string }
  | { readonly kind: 'remedy'; readonly remedy: string }
  | { readonly kind: 'check'; readonly check: string }
  /** A part by its reference in the placement: U7. */
  | { readonly kind: 'part'; readonly part: string };

export type GoalNeeds =
  { readonly ok: true; readonly needs: readonly Need[] } | { readonly ok: false; readonly code: 'unknown-goal' | 'no-step-leads-there' };

/**
 * What must be done for a goal, as needs on the steps of the model. A block or slot is reached by a step that frees it; by
 * one that frees the assembly that it is part of; or else at the stage at which the model works on boards. A remedy is
 * reached at its stage, a transplant when its slot is free; a check at its stage. A part on the board is reached when the
 * board is out, one beside it as its block is.
 */
export function needsOf(model: Model, goal: Goal): GoalNeeds {
  const { file } = model;
  if (goal.kind === 'stage') return stageNeeds(file, goal.stage);
  if (goal.kind === 'block') return blockNeeds(file, goal.block);
  if (goal.kind === 'slot') return file.slots.some(({ id }) => id === goal.slot) ? placeNeeds(file, goal.slot) : UNKNOWN;
  if (goal.kind === 'part') return partNeeds(model, goal.part);
  if (goal.kind === 'check') {
    const check = file.checks.find(({ id }) => id === goal.check);
    return check ? stageNeeds(file, check.stage) : UNKNOWN;
  }
  const remedy = file.remedies.find(({ id }) => id === goal.remedy);
  if (!remedy) return UNKNOWN;
  return remedy.slot === undefined ? stageNeeds(file, remedy.stage) : both(placeNeeds(file, remedy.slot), stageNeeds(file, remedy.stage));
}

/** Every goal that a model has steps for, blocks and slots that a step frees and stages that one reaches, for a list to pick from. */
export function goalsOf(file: ModelFile): { readonly goal: Goal; readonly name: string }[] {
  const free = new Set(file.steps.flatMap(({ frees }) => frees));
  const stages = (['open', 'board-out'] as const).filter((stage) => file.steps.some(({ reaches }) => reaches === stage));
  return [
    ...stages.map((stage) => ({ goal: { kind: 'stage', stage } as const, name: stage === 'open' ? 'Open it' : 'Take the board out' })),
    ...file.slots.filter(({ id }) => free.has(id)).map(({ id, name }) => ({ goal: { kind: 'slot', slot: id } as const, name })),
    ...file.blocks
      .filter(({ id }) => free.has(id) && !file.slots.some((slot) => slot.id === id))
      .map(({ id, name }) => ({ goal: { kind: 'block', block: id } as const, name })),
  ];
}

const UNKNOWN = { ok: false, code: 'unknown-goal' } as const;
const NO_STEP = { ok: false, code: 'no-step-leads-there' } as const;

const oneOf = (steps: readonly { readonly id: string }[]): GoalNeeds => {
  if (steps.length === 0) return NO_STEP;
  return { ok: true, needs: [steps.length === 1 ? steps[0]!.id : { any: steps.map(({ id }) => id) }] };
};

const both = (a: GoalNeeds, b: GoalNeeds): GoalNeeds => {
  if (!a.ok) return b;
  return b.ok ? { ok: true, needs: [...a.needs, ...b.needs] } : a;
};

const stageNeeds = (file: ModelFile, stage: Stage): GoalNeeds =>
  stage === 'closed' ? { ok: true, needs: [] } : oneOf(file.steps.filter(({ reaches }) => reaches === stage));

const freeing = (file: ModelFile, name: string): GoalNeeds => oneOf(file.steps.filter(({ frees }) => frees.includes(name)));

function placeNeeds(file: ModelFile, slot: string): GoalNeeds {
  const freed = freeing(file, slot);
  return freed.ok ? freed : stageNeeds(file, 'board-out');
}

function blockNeeds(file: ModelFile, name: string): GoalNeeds {
  const block = file.blocks.find(({ id }) => id === name);
  if (!block) return UNKNOWN;
  const freed = freeing(file, name);
  if (freed.ok || block.assembly === undefined) return freed;
  return placeNeeds(file, block.assembly);
}

function partNeeds({ file, circuit }: Model, ref: string): GoalNeeds {
  const part = circuit?.parts.find((each) => each.ref === ref);
  if (!part) return UNKNOWN;
  return part.side === 'off' ? blockNeeds(file, part.block) : stageNeeds(file, 'board-out');
}
