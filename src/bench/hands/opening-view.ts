import { after, EMPTY_HANDS, type Stance, type Tick } from '../../core/teardown/index.ts';
import type { Model, ModelFile } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';
import type { FastenersView, OpeningStep, OpeningView } from '../views/opening.ts';
import { goalList } from './goal-list.ts';
import { goalOf, goalText } from './goal-text.ts';
import { screwCountOf, stepTimesOf, ticksOf } from './of-item.ts';
import { signsAt } from './signs.ts';
import { teardownSteps } from './teardown-steps.ts';
import { wayIn, type WayIn, type WayStep } from './way-in.ts';

/** How to open an item to a goal, or to close it, from where it stands; `goal` is a word of `goalText`, null for the first that there is. */
export function openingView(state: Readonly<BenchState>, model: Model, item: Item, goal: string | null): OpeningView {
  const { file } = model;
  const goals = goalList(model);
  const wanted = goal ?? goals[0]?.goal ?? goalText({ kind: 'stage', stage: 'open' });
  const times = stepTimesOf(state, file.id);
  const shown = (steps: readonly WayStep[]): OpeningStep[] =>
    steps.map((step) => stepView(model, step, times.get(step.spec.id)?.length ?? 0));
  const way = wayOf(model, ticksOf(item), times, wanted);
  const base = {
    item_id: item.id,
    number: item.number,
    name: item.name,
    model_id: file.id,
    stage: item.stage,
    goals,
    goal: wanted,
    fasteners: fastenersView(file, item),
  };
  const done = item.opened.map((id) => ({ id, name: file.steps.find((step) => step.id === id)?.name ?? id }));
  if (!way.ok) return { ...base, ...NOTHING, done, reached: way.code };
  const { effort } = way;
  return {
    ...base,
    reached: 'way',
    steps: shown(way.steps),
    back: shown(way.back),
    done,
    minutes: effort.minutes,
    tool_changes: effort.toolChanges,
    turnings: effort.turnings,
    risk: effort.risk,
    cost_minutes: effort.cost,
    bound_minutes: way.bound,
    exact: way.exact,
  };
}

const NOTHING = {
  steps: [],
  back: [],
  minutes: 0,
  tool_changes: 0,
  turnings: 0,
  risk: 0,
  cost_minutes: 0,
  bound_minutes: 0,
  exact: true,
};

function wayOf(model: Model, ticks: readonly Tick[], times: ReadonlyMap<string, readonly number[]>, wanted: string): WayIn {
  const goal = goalOf(wanted);
  if (!goal) return { ok: false, code: 'unknown-goal' };
  return wayIn(model, goal, { ticks, times, start: stanceAfter(model.file, ticks) });
}

/** What is in the hand and which side is up after the steps that are done. */
function stanceAfter(file: ModelFile, ticks: readonly Tick[]): Stance {
  const byId = new Map(teardownSteps(file).map((step) => [step.id, step]));
  return ticks.reduce((stance, { step }) => {
    const done = byId.get(step);
    return done ? after(stance, done) : stance;
  }, EMPTY_HANDS);
}

function stepView({ file, photos }: Model, { spec, minutes, changesTool, turns, fasteners }: WayStep, times: number): OpeningStep {
  const picture = spec.picture?.replace(/\.\w+$/, '');
  return {
    id: spec.id,
    name: spec.name,
    how: spec.how,
    tool: spec.tool ?? null,
    side: spec.side ?? null,
    minutes,
    model_minutes: spec.minutes,
    times,
    risk: spec.risk,
    cautions: spec.cautions,
    changes_tool: changesTool,
    turns,
    reaches: spec.reaches ?? null,
    fasteners: fasteners && {
      set: spec.fasteners!,
      name: fasteners.name,
      drive: fasteners.drive,
      length_mm: fasteners.lengthMm,
      count: fasteners.count,
    },
    signs: signsAt(file, spec).map(({ at, atName, sees, name }) => ({ at, at_name: atName, sees, name })),
    picture: photos.some(({ side }) => side === picture) ? picture! : null,
  };
}

function fastenersView(file: ModelFile, item: Item): FastenersView {
  const { even, whole, sets, findings, shopping } = screwCountOf(file, item);
  return {
    even,
    whole,
    sets: sets.map(({ set, name, belongs, out, foreign, back, onMat }) => {
      const spec = file.fasteners.find(({ id }) => id === set);
      return { set, name, drive: spec?.drive ?? '', length_mm: spec?.length_mm ?? 0, belongs, out, foreign, back, on_mat: onMat };
    }),
    findings: [...findings],
    shopping: shopping.map(({ set, text, count, priceMinor }) => ({ set, text, count, price_minor: priceMinor })),
  };
}
