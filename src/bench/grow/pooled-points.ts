import { holm, median, medianDeviation, welch, type Group } from '../../core/numeric/index.ts';
import { floorOf, referenceOf, type Model, type ModelFile, type Reference, type ReferenceReading } from '../models/index.ts';

type Point = ModelFile['points'][number];

/** What the boards of one revision show at a point; a middle of null is OL. */
export interface RevisionShows {
  readonly revision: string;
  readonly middle: number | null;
  readonly boards: readonly string[];
}

/** A point with what known-good boards show there, and whether revisions of the board differ. */
export interface PooledPoint {
  readonly point: Point;
  readonly reference: Reference | null;
  /** The boards that were measured, each with the middle of its readings. */
  readonly boards: readonly { readonly board: string; readonly revision: string; readonly value: number | null }[];
  readonly revisions: readonly RevisionShows[];
  /** Chance that so large a difference between two revisions comes about by itself, put right for all points and pairs; null with one revision. */
  readonly sameChance: number | null;
  readonly differs: boolean;
}

/** Points at which revisions differ are told with this chance of one false one among all, at most. */
const ALPHA = 0.05;

/**
 * The points of a model with the readings of known-good boards pooled: median and spread over boards, one value a board, so that a wild board moves nothing.
 * Boards that say their revision are compared revision by revision.
 */
export function pooledPoints(model: Model): PooledPoint[] {
  const pools = model.file.points.map((point) => ({ point, boards: boardsAt(model.readings, point) }));
  const pairs = pools.flatMap(({ point, boards }, at) =>
    pairsOf(revisionsOf(boards)).map(([one, other]) => ({ at, chance: sameChance(point, one, other) })),
  );
  const adjusted = holm(pairs.map(({ chance }) => chance));
  return pools.map(({ point, boards }, index) => {
    const chances = pairs.flatMap(({ at }, i) => (at === index ? [adjusted[i]!] : []));
    const same = chances.length > 0 ? Math.min(...chances) : null;
    return {
      point,
      reference: referenceOf(model, point.id, point.mode),
      boards,
      revisions: revisionsOf(boards).map(({ revision, values, names }) => ({ revision, middle: middleOf(values), boards: names })),
      sameChance: same,
      differs: same !== null && same < ALPHA,
    };
  });
}

interface Revision {
  readonly revision: string;
  readonly names: readonly string[];
  readonly values: readonly (number | null)[];
}

function boardsAt(readings: readonly ReferenceReading[], { id, mode }: Point): PooledPoint['boards'] {
  const boards = new Map<string, { revision: string; values: (number | null)[] }>();
  for (const { board, point, mode: measured, value, revision = '' } of readings) {
    if (point !== id || measured !== mode) continue;
    const known = boards.get(board) ?? { revision, values: [] };
    boards.set(board, { revision: known.revision || revision, values: [...known.values, value] });
  }
  return [...boards].map(([board, { revision, values }]) => ({ board, revision, value: middleOf(values) }));
}

/** Only boards that say their revision are compared. */
function revisionsOf(boards: PooledPoint['boards']): Revision[] {
  const named = [...new Set(boards.flatMap(({ revision }) => (revision === '' ? [] : [revision])))];
  return named.map((revision) => {
    const own = boards.filter((each) => each.revision === revision);
    return { revision, names: own.map(({ board }) => board), values: own.map(({ value }) => value) };
  });
}

const pairsOf = (revisions: readonly Revision[]): [Revision, Revision][] =>
  revisions.flatMap((one, at) => revisions.slice(at + 1).map((other): [Revision, Revision] => [one, other]));

/** The middle of what was shown; OL where most of it is. */
function middleOf(values: readonly (number | null)[]): number | null {
  const shown = values.filter((value) => value !== null);
  return shown.length * 2 > values.length ? median(shown) : null;
}

/** One that shows OL and one that does not are unlike as soon as either was seen on two boards; else by location and spread. */
function sameChance({ mode }: Point, one: Revision, other: Revision): number {
  const [a, b] = [middleOf(one.values), middleOf(other.values)];
  if (a === null && b === null) return 1;
  if (a === null || b === null) return one.values.length + other.values.length > 2 ? 0 : 1;
  return welch(groupOf(mode, a, one), groupOf(mode, b, other)).chance;
}

function groupOf(mode: Point['mode'], middle: number, { values }: Revision): Group {
  const shown = values.filter((value) => value !== null);
  return { mean: middle, spread: Math.max(medianDeviation(shown), floorOf(mode, middle, shown.length)), count: shown.length };
}
