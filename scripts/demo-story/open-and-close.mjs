import { stepEvents } from '../../dist/bench/hands/step-events.js';

/**
 * A unit that is opened or closed step by step, as the bench orders the steps: `steps` names the goal ("stage:board-out"; "stage:closed" puts all back), `minutes`
 * are spread over them as the model has it, and `odd` says by set of fasteners what did not come out as it belongs. Each step is a gesture of its own.
 */
export function gesturesOfSteps({ steps: goal, on, minutes = 0, odd = {} }, { bench, models }) {
  const way = bench.opening(on, goal);
  if (way.reached !== 'way') throw new Error(`${goal}: ${way.reached}`);
  const isBack = goal === 'stage:closed';
  const steps = isBack ? way.back : way.steps;
  const usual = steps.reduce((sum, step) => sum + step.model_minutes, 0);
  const { file } = models.get(way.model_id);
  const onMat = new Map(way.fasteners.sets.map((set) => [set.set, set.on_mat]));
  return steps.map(({ id, model_minutes, fasteners }) => {
    const all = isBack ? onMat.get(fasteners?.set) : fasteners?.count;
    const counted = fasteners ? { count: all, foreign: 0, ...odd[fasteners.set] } : null;
    const took = Math.round(((10 * minutes) / usual) * model_minutes) / 10;
    return { minutes: took, events: stepEvents(file, { itemId: on, step: id, way: isBack ? 'back' : 'in', minutes: took, counted }) };
  });
}
