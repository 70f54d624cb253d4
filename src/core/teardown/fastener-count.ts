/** A kind of fastener as the model knows it. */
export interface FastenerSet {
  readonly id: string;
  readonly count: number;
}

/** What came out, or went in again, of one set; `foreign` of them are not what belongs there. */
export interface Counted {
  readonly set: string;
  readonly count: number;
  readonly foreign?: number;
}

export interface SetCount {
  readonly set: string;
  readonly belongs: number;
  readonly out: number;
  readonly back: number;
  /** Not there when it was opened. */
  readonly missing: number;
  /** Of those that came out, not of the kind that belongs there: somebody was in there before. */
  readonly foreign: number;
  /** Still on the mat. */
  readonly onMat: number;
  /** Went in beyond what came out: bought, or of another set. */
  readonly added: number;
  /** To be bought, so that each place holds what belongs there: the missing, and one for each foreign one, less what was added. */
  readonly toBuy: number;
}

export interface FastenerCount {
  readonly sets: readonly SetCount[];
  /** Nothing is on the mat, and as many went in as came out. */
  readonly even: boolean;
  /** Every place holds what belongs there. */
  readonly whole: boolean;
}

/**
 * What came out against what went in, by set. Counts of one set add up; a set that the model does not have belongs
 * nowhere, so all of it is foreign.
 */
export function fastenerCount(sets: readonly FastenerSet[], out: readonly Counted[], back: readonly Counted[]): FastenerCount {
  const known = new Map(sets.map(({ id, count }) => [id, count]));
  const ids = new Set([...known.keys(), ...out.map(({ set }) => set), ...back.map(({ set }) => set)]);
  const counts = [...ids].map((id) => countOf(id, known.get(id), total(out, id), total(back, id)));
  return {
    sets: counts,
    even: counts.every(({ onMat, added }) => onMat === 0 && added === 0),
    whole: counts.every(({ belongs, back: put, toBuy }) => toBuy === 0 && put === belongs),
  };
}

interface Total {
  readonly count: number;
  readonly foreign: number;
}

function countOf(set: string, belongs: number | undefined, out: Total, back: Total): SetCount {
  const foreign = belongs === undefined ? out.count : out.foreign;
  const missing = Math.max(0, (belongs ?? 0) - out.count);
  const added = Math.max(0, back.count - out.count);
  return {
    set,
    belongs: belongs ?? 0,
    out: out.count,
    back: back.count,
    missing,
    foreign,
    onMat: Math.max(0, out.count - back.count),
    added,
    toBuy: belongs === undefined ? 0 : Math.max(0, missing + foreign - added),
  };
}

function total(counted: readonly Counted[], set: string): Total {
  const mine = counted.filter((each) => each.set === set);
  return {
    count: mine.reduce((sum, { count }) => sum + count, 0),
    foreign: mine.reduce((sum, { foreign = 0 }) => sum + foreign, 0),
  };
}
