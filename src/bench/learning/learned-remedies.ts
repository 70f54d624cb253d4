import { learnedChance, learnedTime } from '../../core/numeric/index.ts';
import type { Model, ModelFile } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { historyOf, weightOf, type Job } from './job.ts';

type Number = LearnedView['numbers'][number];
type Spec = ModelFile['remedies'][number];

/** Jobs that the model's own figure weighs, and the spread of the logarithm of a time. Weak on purpose; common practice, no source. */
const CHANCE_WEIGHT = 4;
const TIME_WEIGHT = 3;
const TIME_SPREAD = 0.4;

interface RemedyJob extends Job {
  readonly mended: boolean | null;
  readonly minutes: number;
}

/** How often each remedy of a model mends the unit, and how long it takes this person, from the model's own figures and the jobs done. */
export function learnedRemedies(state: Readonly<BenchState>, model: Model): Number[] {
  return model.file.remedies.flatMap((spec) => {
    const chanceId = `remedy-chance.${model.file.id}.${spec.id}`;
    const timeId = `remedy-time.${model.file.id}.${spec.id}`;
    const told = jobsOf(state, model, spec, chanceId).filter(({ mended }) => mended !== null);
    const timed = jobsOf(state, model, spec, timeId).filter(({ minutes }) => minutes > 0);
    return [
      ...(told.length > 0 ? [chanceOf(state, model, spec, chanceId, told)] : []),
      ...(timed.length > 0 ? [timeOf(state, model, spec, timeId, timed)] : []),
    ];
  });
}

function jobsOf(state: Readonly<BenchState>, model: Model, spec: Spec, about: string): RemedyJob[] {
  return historyOf(state, model.file.id).flatMap(({ item, entry }) => {
    if (entry.kind !== 'remedy' || entry.remedy !== spec.id) return [];
    const weight = weightOf(state, about, entry.at);
    const mended = entry.outcome === 'not-tried-yet' ? null : entry.outcome === 'mended';
    const text = `#${item.number} ${item.name}: ${entry.outcome.replaceAll('-', ' ')}, ${entry.minutes} min`;
    return weight > 0 ? [{ eventId: entry.eventId, itemId: item.id, at: entry.at, text, weight, mended, minutes: entry.minutes }] : [];
  });
}

/** The middle of what the model says of the faults that it mends. */
const chanceBefore = ({ mends }: Spec): number => {
  const chances = Object.values(mends);
  return chances.length === 0 ? 0.5 : chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
};

function chanceOf(state: Readonly<BenchState>, model: Model, spec: Spec, id: string, jobs: readonly RemedyJob[]): Number {
  const sum = (mended: boolean): number => jobs.reduce((all, job) => all + (job.mended === mended ? job.weight : 0), 0);
  const before = chanceBefore(spec);
  return {
    ...common(state, model, spec, id, jobs),
    about: 'remedy-chance',
    unit: 'share',
    before,
    ...learnedChance(before, CHANCE_WEIGHT, sum(true), sum(false)),
  };
}

function timeOf(state: Readonly<BenchState>, model: Model, spec: Spec, id: string, jobs: readonly RemedyJob[]): Number {
  const before = Math.max(0.5, spec.minutes);
  const times = jobs.map(({ minutes, weight }) => ({ value: minutes, weight }));
  return {
    ...common(state, model, spec, id, jobs),
    about: 'remedy-time',
    unit: 'min',
    before,
    ...learnedTime(before, TIME_WEIGHT, TIME_SPREAD, times),
  };
}

const common = (state: Readonly<BenchState>, { file }: Model, spec: Spec, id: string, jobs: readonly Job[]) => ({
  id,
  model_id: file.id,
  name: `${spec.name}, ${file.name}`,
  jobs: jobs.map(({ eventId, itemId, at, text, weight }) => ({ event_id: eventId, item_id: itemId, at, text, weight })),
  reset_at: state.learning.resets.get(id) ?? null,
});
