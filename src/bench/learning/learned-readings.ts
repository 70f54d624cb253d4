import { learnedNormal } from '../../core/numeric/index.ts';
import { floorOf, referenceOf, type Model, type ModelFile, type Reference } from '../models/index.ts';
import type { BenchState, HistoryEntry, Item } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { meanAndSpread, weightOf, type Job } from './job.ts';
import { shared, takenIn, twoValues, type LearnedNumber, type TakenIn } from './taken-in.ts';

type Number = LearnedView['numbers'][number];
type Point = ModelFile['points'][number];

/** Boards that the shipped reference weighs at most. Weak on purpose; common practice, no source. */
const MOST_WEIGHT = 5;
/** Where such a unit ends up, it was well when it was last measured. */
const PROVED_WELL: ReadonlySet<Item['status']> = new Set(['proved', 'listed', 'kept', 'sold']);

const UNITS: Readonly<Record<Point['mode'], Number['unit']>> = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' };

export interface LearnedReference {
  readonly point: string;
  readonly reference: Reference;
  readonly numbers: readonly LearnedNumber[];
}

/**
 * What good boards show at the points of a model that have a shipped reference, from readings of units that were proved: the value, and how far single
 * readings lie from it. The last reading since the last work counts, one of each unit.
 */
export function learnedReadings(state: Readonly<BenchState>, model: Model): LearnedReference[] {
  const good = [...state.items.values()].filter((item) => item.kind === 'unit' && item.modelId === model.file.id && isWell(item));
  return model.file.points.flatMap((point) => {
    const shipped = referenceOf(model, point.id, point.mode);
    if (!shipped || shipped.mean === null) return [];
    const id = `reference.${model.file.id}.${point.id}`;
    const jobs = good.flatMap((item) => jobsAt(state, item, point, id));
    const others = takenIn(state, model.file.id, 'reference', point.id);
    return jobs.length + others.length > 0 ? [learnedAt(state, model, point, { ...shipped, mean: shipped.mean }, jobs, others)] : [];
  });
}

/** Sold as working where it was sold. */
const isWell = ({ status, sale, proof }: Item): boolean => PROVED_WELL.has(status) && proof.size > 0 && sale?.as !== 'for-parts';

interface ReadingJob extends Job {
  readonly value: number;
}

function jobsAt(state: Readonly<BenchState>, item: Item, point: Point, id: string): ReadingJob[] {
  const since = item.history.findLastIndex(({ kind }) => kind === 'remedy' || kind === 'slot');
  const last = item.history
    .slice(since + 1)
    .findLast((entry): entry is Extract<HistoryEntry, { kind: 'reading' }> => entry.kind === 'reading' && entry.point === point.id);
  if (!last || last.mode !== point.mode || last.value === null || isTaught(state, item, point.id)) return [];
  const weight = weightOf(state, id, last.at);
  const text = `#${item.number} ${item.name}: ${last.value} ${UNITS[point.mode]}`;
  return weight > 0 ? [{ eventId: last.eventId, itemId: item.id, at: last.at, text, weight, value: last.value }] : [];
}

/** A unit that the model was taught from stands in its reference already. */
const isTaught = ({ grown }: Readonly<BenchState>, item: Item, point: string): boolean =>
  grown.get(item.modelId)?.readings.some((taught) => taught.itemId === item.id && taught.point === point) ?? false;

function learnedAt(
  state: Readonly<BenchState>,
  { file }: Model,
  point: Point,
  shipped: Reference & { readonly mean: number },
  jobs: readonly ReadingJob[],
  others: readonly TakenIn[],
): LearnedReference {
  const elsewhere = others.flatMap(twoValues);
  const { mean, spread } = learnedNormal(shipped, Math.min(MOST_WEIGHT, shipped.boards), [...jobs, ...elsewhere]);
  const own = meanAndSpread(jobs);
  const id = `reference.${file.id}.${point.id}`;
  const boards = shipped.boards + jobs.length;
  const common = {
    unit: UNITS[point.mode],
    model_id: file.id,
    jobs: [
      ...jobs.map(({ eventId, itemId, at, text, weight }) => ({ event_id: eventId, item_id: itemId, at, text, weight })),
      ...others.map(({ job }) => job),
    ],
    reset_at: state.learning.resets.get(id) ?? null,
  };
  return {
    point: point.id,
    reference: { mean: mean.mean, spread: Math.max(spread.mean, floorOf(point.mode, mean.mean, boards)), boards },
    numbers: [
      {
        number: { id, about: 'reference', name: `${point.name} of a good board, ${file.name}`, before: shipped.mean, ...mean, ...common },
        own: shared('reference', point.id, own.weight, own.mean, own.spread),
      },
      {
        number: {
          id,
          about: 'noise',
          name: `${point.name}: how far good boards differ, ${file.name}`,
          before: shipped.spread,
          ...spread,
          ...common,
        },
        own: null,
      },
    ],
  };
}
