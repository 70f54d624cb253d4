import { learnedChance, learnedTime } from '../../core/numeric/index.ts';
import type { Model, ModelFile } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { attribution, hasLeft } from './attribution.ts';
import { weightOf, type Job } from './job.ts';

type Number = LearnedView['numbers'][number];
type Spec = ModelFile['remedies'][number];

/** Jobs that the model's own figure weighs, and the spread of the logarithm of a time. Weak on purpose; common practice, no source. */
const CHANCE_WEIGHT = 4;
const TIME_WEIGHT = 2;
const TIME_SPREAD = 0.5;

interface RemedyJob extends Job {
  /** Null: it was not tried after the work. */
  readonly mended: boolean | null;
  /** Chance that what it mends was there. */
  readonly fitting: number;
  readonly minutes: number;
}

/** How often each remedy of a model mends what it is for, and how long it takes this person, from the model's own figures and the jobs done. */
export function learnedRemedies(state: Readonly<BenchState>, model: Model): Number[] {
  const { file } = model;
  const jobs = allJobs(state, model);
  return file.remedies.flatMap((spec) => {
    const [chanceId, timeId] = [`remedy-chance.${file.id}.${spec.id}`, `remedy-time.${file.id}.${spec.id}`];
    const own = jobs.get(spec.id) ?? [];
    const told = aged(state, chanceId, own).filter(({ mended, fitting }) => mended !== null && fitting > 0.02);
    const timed = aged(state, timeId, own).filter(({ minutes }) => minutes > 0);
    return [
      ...(told.length > 0 ? [chanceOf(state, model, spec, chanceId, told)] : []),
      ...(timed.length > 0 ? [timeOf(state, model, spec, timeId, timed)] : []),
    ];
  });
}

function allJobs(state: Readonly<BenchState>, model: Model): ReadonlyMap<string, readonly RemedyJob[]> {
  const jobs = new Map<string, RemedyJob[]>();
  for (const item of state.items.values()) {
    if (item.modelId !== model.file.id || !hasLeft(item)) continue;
    const faults = attribution(model, item);
    for (const entry of item.history) {
      if (entry.kind !== 'remedy') continue;
      const mended = entry.outcome === 'not-tried-yet' ? null : entry.outcome === 'mended';
      const mends = model.file.remedies.find(({ id }) => id === entry.remedy)?.mends ?? {};
      const fitting = mended ? 1 : Object.keys(mends).reduce((sum, fault) => sum + (faults.get(fault) ?? 0), 0);
      const text = `#${item.number} ${item.name}: ${entry.outcome.replaceAll('-', ' ')}, ${entry.minutes} min`;
      const job = { eventId: entry.eventId, itemId: item.id, at: entry.at, text, weight: 1, mended, fitting, minutes: entry.minutes };
      jobs.set(entry.remedy, [...(jobs.get(entry.remedy) ?? []), job]);
    }
  }
  return jobs;
}

const aged = (state: Readonly<BenchState>, about: string, jobs: readonly RemedyJob[]): RemedyJob[] =>
  jobs.map((job) => ({ ...job, weight: weightOf(state, about, job.at) })).filter(({ weight }) => weight > 0);

/** Of what it is for, as the model says: each fault counts by its rate. */
export function chanceBefore(file: ModelFile, { mends }: Spec): number {
  const rated = file.faults.filter(({ id }) => (mends[id] ?? 0) > 0).map(({ id, rate }) => ({ rate, chance: mends[id]! }));
  const all = rated.reduce((sum, { rate }) => sum + rate, 0);
  return all > 0 ? rated.reduce((sum, { rate, chance }) => sum + (rate * chance) / all, 0) : 0.5;
}

/** A job that did not mend counts as far as what the remedy is for was there. */
function chanceOf(state: Readonly<BenchState>, model: Model, spec: Spec, id: string, jobs: readonly RemedyJob[]): Number {
  const counted = jobs.map((job) => ({ ...job, weight: job.weight * job.fitting }));
  const sum = (mended: boolean): number => counted.reduce((all, job) => all + (job.mended === mended ? job.weight : 0), 0);
  const before = chanceBefore(model.file, spec);
  const learned = learnedChance(before, CHANCE_WEIGHT, sum(true), sum(false));
  return { ...common(state, model, spec, id, counted), about: 'remedy-chance', unit: 'share', before, ...learned };
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
