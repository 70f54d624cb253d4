import { STAGES, type Stage } from '../../../bench/events/index.ts';
import { goalText, stepEvents } from '../../../bench/hands/index.ts';
import type { ItemFile, OpeningStep } from '../../../bench/views/index.ts';
import { factor, modelOf, note, type Workplace } from './workplace.ts';

/** Share of sets of fasteners of which a hand before has lost one. Invented for the walk. */
const LOST_SHARE = 0.05;
/** Spread of the logarithm of the minutes of a step. */
const TIME_SPREAD = 0.25;

/** Opens a unit step by step as far as the work needs; one that is open far enough stays as it is. */
export function openTo(place: Workplace, file: ItemFile, stage: Stage): void {
  if (STAGES.indexOf(file.stage) >= STAGES.indexOf(stage)) return;
  const { steps } = place.bench.opening(file.row.id, goalText({ kind: 'stage', stage }))!;
  for (const step of steps) {
    const belong = step.fasteners?.count ?? 0;
    tick(place, file, step, 'in', belong > 1 && place.random() < LOST_SHARE ? belong - 1 : belong);
  }
}

/** Puts a unit together again, with all that came out. */
export function close(place: Workplace, file: ItemFile): void {
  if (file.stage === 'closed') return;
  const { back, fasteners } = place.bench.opening(file.row.id, goalText({ kind: 'stage', stage: 'closed' }))!;
  for (const step of back) tick(place, file, step, 'back', fasteners.sets.find(({ set }) => set === step.fasteners?.set)?.on_mat ?? 0);
}

function tick(place: Workplace, file: ItemFile, step: OpeningStep, way: 'in' | 'back', count: number): void {
  const minutes = Math.round(10 * step.model_minutes * factor(TIME_SPREAD, place.random)) / 10;
  const counted = step.fasteners ? { count, foreign: 0 } : null;
  for (const { kind, body } of stepEvents(modelOf(place, file).file, { itemId: file.row.id, step: step.id, way, minutes, counted })) {
    note(place, kind, { ...body });
    if (kind === 'finding-noted') place.say(`  Found while opening: ${body.text}.`);
  }
  place.clock.pass(minutes);
}
