import { learnedRate } from '../../core/numeric/index.ts';
import type { Model, ModelFile } from '../models/index.ts';
import type { BenchState, HistoryEntry, Item } from '../state.ts';
import { attribution, hasLeft } from './attribution.ts';
import { fadedSince } from './job.ts';
import { shared, takenIn, type LearnedNumber } from './taken-in.ts';

type Fault = ModelFile['faults'][number];

/** Units that the model's own rate weighs. Weak on purpose; common practice, no source. */
const RATE_WEIGHT = 12;
/** A share of a job below this is not worth a line. */
const LEAST_SHARE = 0.01;
const NOTHING = { came: 0, things: 0 };

/** A unit that was worked on and has left, with the chance of each fault that it had. */
interface Worked {
  readonly item: Item;
  readonly last: HistoryEntry;
  readonly faults: ReadonlyMap<string, number>;
  /** Weight by age. */
  readonly faded: number;
}

/** How often each fault of a model is met: each unit that was worked on counts for the faults that it probably had. */
export function learnedFaults(state: Readonly<BenchState>, model: Model): LearnedNumber[] {
  const worked = [...state.items.values()].flatMap((item): Worked[] => {
    if (item.kind !== 'unit' || item.modelId !== model.file.id || !hasLeft(item)) return [];
    const faults = attribution(model, item);
    const last = item.history.findLast(({ kind }) => kind === 'remedy');
    return faults.size > 0 && last ? [{ item, faults, last, faded: fadedSince(state, last.at) }] : [];
  });
  return model.file.faults.flatMap((fault) => learnedFault(state, model, fault, worked));
}

function learnedFault(state: Readonly<BenchState>, { file }: Model, fault: Fault, worked: readonly Worked[]): LearnedNumber[] {
  const id = `fault-rate.${file.id}.${fault.id}`;
  const reset_at = state.learning.resets.get(id) ?? null;
  const aged = worked.filter(({ last }) => last.at > (reset_at ?? ''));
  const shareOf = ({ faults }: Worked): number => faults.get(fault.id) ?? 0;
  const things = aged.reduce((sum, { faded }) => sum + faded, 0);
  const came = aged.reduce((sum, each) => sum + each.faded * shareOf(each), 0);
  const others = takenIn(state, file.id, 'fault-rate', fault.id);
  if (things === 0 && others.length === 0) return [];
  const elsewhere = others.reduce((sum, { mean, weight }) => ({ came: sum.came + mean * weight, things: sum.things + weight }), NOTHING);
  const jobs = aged
    .filter((each) => each.faded * shareOf(each) >= LEAST_SHARE)
    .map((each) => ({
      event_id: each.last.eventId,
      item_id: each.item.id,
      at: each.last.at,
      text: `#${each.item.number} ${each.item.name}: ${Math.round(100 * shareOf(each))} % this fault`,
      weight: each.faded * shareOf(each),
    }));
  const number: LearnedNumber['number'] = {
    id,
    about: 'fault-rate',
    unit: 'share',
    model_id: file.id,
    name: `${fault.name}, ${file.name}`,
    before: fault.rate,
    ...learnedRate(Math.max(fault.rate, 1e-4), RATE_WEIGHT, came + elsewhere.came, things + elsewhere.things),
    jobs: [...jobs, ...others.map(({ job }) => job)],
    reset_at,
  };
  return [{ number, own: shared('fault-rate', fault.id, things, came / things) }];
}
