import { learnedChance, learnedTime } from '../../core/numeric/index.ts';
import type { Model, ModelFile } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { attribution, hasLeft } from './attribution.ts';
import { meanAndSpread, weightOf, type Job } from './job.ts';
import { shared, takenIn, twoValues, type LearnedNumber, type TakenIn } from './taken-in.ts';

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
export function learnedRemedies(state: Readonly<BenchState>, model: Model): LearnedNumber[] {
  const jobs = allJobs(state, model);
  return model.file.remedies.flatMap((spec) => {
    const own = jobs.get(spec.id) ?? [];
    return [...chanceOf(state, model, spec, own), ...timeOf(state, model, spec, own)];
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
      const others = jobs.get(entry.remedy);
      if (others) others.push(job);
      else jobs.set(entry.remedy, [job]);
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
function chanceOf(state: Readonly<BenchState>, model: Model, spec: Spec, jobs: readonly RemedyJob[]): LearnedNumber[] {
  const id = `remedy-chance.${model.file.id}.${spec.id}`;
  const told = aged(state, id, jobs).filter(({ mended, fitting }) => mended !== null && fitting > 0.02);
  const others = takenIn(state, model.file.id, 'remedy-chance', spec.id);
  if (told.length + others.length === 0) return [];
  const counted = told.map((job) => ({ ...job, weight: job.weight * job.fitting }));
  const sum = (mended: boolean): number => counted.reduce((all, job) => all + (job.mended === mended ? job.weight : 0), 0);
  const [came, failed] = [sum(true), sum(false)];
  const elsewhere = others.reduce((all, { mean, weight }) => all + mean * weight, 0);
  const weights = others.reduce((all, { weight }) => all + weight, 0);
  const before = chanceBefore(model.file, spec);
  const learned = learnedChance(before, CHANCE_WEIGHT, came + elsewhere, failed + weights - elsewhere);
  const number = { ...common(state, model, spec, id, counted, others), about: 'remedy-chance', unit: 'share', before, ...learned } as const;
  return [{ number, own: shared('remedy-chance', spec.id, came + failed, came / (came + failed)) }];
}

function timeOf(state: Readonly<BenchState>, model: Model, spec: Spec, jobs: readonly RemedyJob[]): LearnedNumber[] {
  const id = `remedy-time.${model.file.id}.${spec.id}`;
  const timed = aged(state, id, jobs).filter(({ minutes }) => minutes > 0);
  const others = takenIn(state, model.file.id, 'remedy-time', spec.id);
  if (timed.length + others.length === 0) return [];
  const before = Math.max(0.5, spec.minutes);
  const times = timed.map(({ minutes, weight }) => ({ value: minutes, weight }));
  const elsewhere = others
    .flatMap((other) => twoValues({ ...other, mean: Math.log(other.mean) }))
    .map(({ value, weight }) => ({ value: Math.exp(value), weight }));
  const learned = learnedTime(before, TIME_WEIGHT, TIME_SPREAD, [...times, ...elsewhere]);
  const number = { ...common(state, model, spec, id, timed, others), about: 'remedy-time', unit: 'min', before, ...learned } as const;
  const logs = times.map(({ value, weight }) => ({ value: Math.log(value), weight }));
  const own = meanAndSpread(logs);
  return [{ number, own: shared('remedy-time', spec.id, own.weight, Math.exp(own.mean), own.spread) }];
}

const common = (
  state: Readonly<BenchState>,
  { file }: Model,
  spec: Spec,
  id: string,
  jobs: readonly Job[],
  others: readonly TakenIn[],
) => ({
  id,
  model_id: file.id,
  name: `${spec.name}, ${file.name}`,
  jobs: [
    ...jobs.map(({ eventId, itemId, at, text, weight }) => ({ event_id: eventId, item_id: itemId, at, text, weight })),
    ...others.map(({ job }) => job),
  ],
  reset_at: state.learning.resets.get(id) ?? null,
});
