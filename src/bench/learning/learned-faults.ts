import { learnedRate } from '../../core/numeric/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { attribution, hasLeft } from './attribution.ts';
import { weightOf } from './job.ts';
import { shared, takenIn, type LearnedNumber } from './taken-in.ts';

/** Units that the model's own rate weighs. Weak on purpose; common practice, no source. */
const RATE_WEIGHT = 12;
/** A share of a job below this is not worth a line. */
const LEAST_SHARE = 0.01;
const NOTHING = { came: 0, things: 0 };

/** How often each fault of a model is met: each unit that was worked on counts for the faults that it probably had. */
export function learnedFaults(state: Readonly<BenchState>, model: Model): LearnedNumber[] {
  const { file } = model;
  const worked = [...state.items.values()].flatMap((item) => {
    if (item.kind !== 'unit' || item.modelId !== file.id || !hasLeft(item)) return [];
    const faults = attribution(model, item);
    const last = item.history.findLast(({ kind }) => kind === 'remedy');
    return faults.size > 0 && last ? [{ item, faults, last }] : [];
  });
  return file.faults.flatMap((fault): LearnedNumber[] => {
    const id = `fault-rate.${file.id}.${fault.id}`;
    const aged = worked.map((each) => ({ ...each, fresh: weightOf(state, id, each.last.at), share: each.faults.get(fault.id) ?? 0 }));
    const things = aged.reduce((sum, { fresh }) => sum + fresh, 0);
    const others = takenIn(state, file.id, 'fault-rate', fault.id);
    if (things === 0 && others.length === 0) return [];
    const came = aged.reduce((sum, { fresh, share }) => sum + fresh * share, 0);
    const jobs = aged
      .filter(({ fresh, share }) => fresh * share >= LEAST_SHARE)
      .map(({ item, last, fresh, share }) => ({
        event_id: last.eventId,
        item_id: item.id,
        at: last.at,
        text: `#${item.number} ${item.name}: ${Math.round(100 * share)} % this fault`,
        weight: fresh * share,
      }));
    const elsewhere = others.reduce((sum, { mean, weight }) => ({ came: sum.came + mean * weight, things: sum.things + weight }), NOTHING);
    const learned = learnedRate(Math.max(fault.rate, 1e-4), RATE_WEIGHT, came + elsewhere.came, things + elsewhere.things);
    const reset_at = state.learning.resets.get(id) ?? null;
    const name = `${fault.name}, ${file.name}`;
    const all = [...jobs, ...others.map(({ job }) => job)];
    const number = { id, unit: 'share', model_id: file.id, name, before: fault.rate, ...learned, jobs: all, reset_at } as const;
    return [{ number: { ...number, about: 'fault-rate' }, own: shared('fault-rate', fault.id, things, came / things) }];
  });
}
