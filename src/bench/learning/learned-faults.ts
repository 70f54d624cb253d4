import { learnedRate } from '../../core/numeric/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { historyOf, weightOf } from './job.ts';

type Number = LearnedView['numbers'][number];

/** Units that the model's own rate weighs. Weak on purpose; common practice, no source. */
const RATE_WEIGHT = 12;

/**
 * How often each fault of a model is met: a remedy that mended a unit counts for the faults that it mends, in proportion to their rates and to
 * its chance to mend each. Counted over the units of the model that were looked at.
 */
export function learnedFaults(state: Readonly<BenchState>, model: Model): Number[] {
  const { file } = model;
  const history = historyOf(state, file.id);
  const mended = history.flatMap(({ item, entry }) => {
    const spec = entry.kind === 'remedy' && entry.outcome === 'mended' ? file.remedies.find(({ id }) => id === entry.remedy) : undefined;
    return spec ? [{ item, entry, spec }] : [];
  });
  return file.faults.flatMap((fault): Number[] => {
    const id = `fault-rate.${file.id}.${fault.id}`;
    const jobs = mended.flatMap(({ item, entry, spec }) => {
      const parts = file.faults.map((each) => ({ id: each.id, part: each.rate * (spec.mends[each.id] ?? 0) }));
      const all = parts.reduce((sum, { part }) => sum + part, 0);
      const share = all > 0 ? parts.find((each) => each.id === fault.id)!.part / all : 0;
      const weight = share * weightOf(state, id, entry.at);
      if (weight < 0.01) return [];
      const text = `#${item.number} ${item.name}: ${spec.name} mended it, ${Math.round(100 * share)} % this fault`;
      return [{ event_id: entry.eventId, item_id: item.id, at: entry.at, text, weight }];
    });
    if (jobs.length === 0) return [];
    const things = unitsLookedAt(state, model, id);
    const came = jobs.reduce((sum, { weight }) => sum + weight, 0);
    const learned = learnedRate(Math.max(fault.rate, 1e-4), RATE_WEIGHT, came, things);
    return [
      {
        id,
        about: 'fault-rate',
        unit: 'share',
        model_id: file.id,
        name: `${fault.name}, ${file.name}`,
        before: fault.rate,
        ...learned,
        jobs,
        reset_at: state.learning.resets.get(id) ?? null,
      },
    ];
  });
}

/** Units of the model on which something was tried, seen, measured or done, each as fresh as its newest entry. */
function unitsLookedAt(state: Readonly<BenchState>, model: Model, about: string): number {
  return [...state.items.values()]
    .filter((item) => item.kind === 'unit' && item.modelId === model.file.id)
    .reduce((sum, item) => {
      const last = item.history.findLast(({ kind }) => kind !== 'claim');
      return sum + (last ? weightOf(state, about, last.at) : 0);
    }, 0);
}
